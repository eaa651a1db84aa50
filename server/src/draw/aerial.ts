/** The aerial system: from the aerial and the dish to outlets and receivers, with level and margin at each. */

import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { connectorName } from '../site/model.ts';
import { isReceiver } from '../television/reception.ts';
import { count } from '../text/words.ts';
import { type Part, partsOf } from './aerial/branch.ts';
import { amplifiersTable, partsTable, pointsTable } from './aerial/tables.ts';
import { amplifierFaults, arrivesWords, cableWords, endOf, faultsAt, ownWords } from './aerial/words.ts';
import { type Drawing, type DrawingKind, type Look, type Mark, type Thing, deviceNamed, portNamed } from './drawing.ts';
import { drawingKindWords } from './kind-words.ts';
import { BUS, type Branch, type PlacedBranch, ROUND, leadsOf, placed } from './tree.ts';
import { widthOf, words, wrapped } from './words.ts';

const MARGIN = 16;
const NAME = 13;
const SMALL = 11;
const HEAD = 24;
const LINE = 15;
const PAD = 10;
const NARROW = 96;
const WIDE = 210;
/** For what is written at a line. */
const MOST = 130;
/** What is wider is not seen at once. */
const SIGHT = 1280;

export const aerialSystem: DrawingKind = {
  kind: 'aerial',
  title: 'Aerial system',
  summary: 'from the aerial and the dish to outlets and receivers: coax, level and margin at each',
  isOfSite: true,
  subjects: () => [],
  isThere: ({ site }) => site.devices.some(({ connectorByName }) => connectorByName.size > 0),
  draw: (plan) => drawn(plan),
};

interface Piece {
  readonly part: Part;
  readonly title: string;
  readonly lines: readonly string[];
  readonly look: Look;
}

function drawn(plan: Plan): Drawing {
  const parts = partsOf(plan);
  const tree = placed(
    parts.map((part) => branchOf(plan, part)),
    MARGIN,
    MARGIN,
    SIGHT,
  );
  const marks: Mark[] = [];
  for (const root of tree.roots) paint({ plan, isFolded: tree.isFolded, marks }, root);
  const ends = [...plan.television.reception.outlets, ...plan.television.reception.receivers].map(({ at }) => at);
  const wrong = ends.filter((at) => faultsAt(plan, at).length > 0).length;
  return {
    title: 'Aerial system',
    description:
      `${count(ends.length, 'outlet or input of a receiver', 'outlets and inputs of receivers')}, ` +
      `${wrong === 0 ? 'none' : wrong} with too much or too little. At each the range of levels at 75 Ω, and the least ` +
      'margin of carrier to noise with its multiplex. Roofs and ladders: falls kill; masts and earthing: local codes and ' +
      'licensed practice decide.',
    width: tree.right + MARGIN,
    height: tree.bottom + MARGIN,
    marks,
    tables: [pointsTable(plan, ends), amplifiersTable(plan), partsTable(parts)].filter(({ rows }) => rows.length > 0),
  };
}

function branchOf(plan: Plan, part: Part): Branch<Piece> {
  const { device, by, run, through, next, isAgain } = part;
  const at = endOf(part);
  const title = at !== undefined && isReceiver(device) ? connectorName(at) : device.name;
  const faults = at === undefined ? amplifierFaults(plan, device) : faultsAt(plan, at);
  const said = isAgain
    ? [drawingKindWords(device), by === undefined ? 'drawn above' : `into ${by.name}; drawn above`]
    : [
        drawingKindWords(device),
        ...faults.map((fault) => `▲ ${fault}`),
        ...(at === undefined ? ownWords(plan, device) : arrivesWords(plan, at)),
      ];
  const lines = said.flatMap((one) => wrapped(one, WIDE - 2 * PAD, SMALL));
  const needed = Math.max(widthOf(title, NAME, true), ...lines.map((line) => widthOf(line, SMALL)));
  return {
    value: {
      part,
      title,
      lines,
      look: isAgain ? 'faded' : faults.length > 0 ? 'bad' : at === undefined ? 'plain' : 'main',
    },
    width: Math.min(WIDE, Math.max(NARROW, needed + 2 * PAD)),
    height: Math.max(HEAD + lines.length * LINE + 8, through.length * LINE + 36),
    lead:
      run === undefined
        ? 0
        : BUS +
          22 +
          Math.max(
            ...[...cableWords(run), ...through.map(({ name }) => name)].map((line) =>
              Math.min(MOST, widthOf(line, SMALL)),
            ),
          ),
    said: run === undefined ? 0 : 2 + through.length,
    next: next.map((one) => branchOf(plan, one)),
    below: [],
  };
}

interface Painting {
  readonly plan: Plan;
  readonly isFolded: boolean;
  readonly marks: Mark[];
}

function paint(on: Painting, box: PlacedBranch<Piece>): void {
  on.marks.push(boxThing(on.plan, box));
  for (const { to, points, left, room, first, second } of leadsOf(box, on.isFolded).leads) {
    const { run, through, isAgain } = to.value.part;
    on.marks.push({ mark: 'line', points, look: isAgain ? 'faded' : 'plain', round: ROUND });
    const maxWidth = Math.min(room, MOST);
    if (run !== undefined) {
      const [type, length] = cableWords(run);
      on.marks.push(
        words(type, left, first, { size: SMALL, look: 'quiet', maxWidth }),
        words(length, left, second, { size: SMALL, look: 'quiet', maxWidth }),
        ...through.map((device, index): Mark => ({
          mark: 'thing',
          at: deviceNamed(device.name),
          role: drawingKindWords(device),
          label: `${device.name}: ${drawingKindWords(device)} on the way`,
          marks: [words(device.name, left, second + (index + 1) * LINE, { size: SMALL, maxWidth })],
        })),
      );
    }
    paint(on, to);
  }
}

function boxThing(plan: Plan, { value, x, y, width, height }: PlacedBranch<Piece>): Thing {
  const { part, title, lines, look } = value;
  const { device } = part;
  const at = endOf(part);
  const maxWidth = width - 2 * PAD;
  return {
    mark: 'thing',
    at: at === undefined ? deviceNamed(device.name) : portNamed(connectorName(at)),
    role: drawingKindWords(device),
    label: `${title}: ${[deviceAnswer(plan, device), ...lines.filter((line) => line.startsWith('▲'))].join(' ')}`,
    marks: [
      { mark: 'box', x, y, width, height, look, round: 4 },
      words(title, x + PAD, y + 19, { size: NAME, strong: true, maxWidth }),
      ...lines.map((line, index) =>
        words(line, x + PAD, y + HEAD + 11 + index * LINE, {
          size: SMALL,
          look: line.startsWith('▲') ? 'bad' : 'quiet',
          maxWidth,
        }),
      ),
    ],
  };
}
