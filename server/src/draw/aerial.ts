/** The aerial system: from the aerial and the dish to outlets and receivers, with level and margin at each. */

import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { weakestOf } from '../report/answer/television.ts';
import { type Connector, type Device, connectorName } from '../site/model.ts';
import type { Point as Arrived } from '../television/reception.ts';
import { isReceiver } from '../television/reception.ts';
import type { CoaxRun } from '../television/run.ts';
import { decibels, level as levelWords } from '../text/radio-words.ts';
import { count, metres } from '../text/words.ts';
import { type Part, partsOf } from './aerial/branch.ts';
import {
  type Drawing,
  type Kind,
  type Look,
  type Mark,
  type Row,
  type Table,
  type Thing,
  deviceAt,
  portAt,
} from './drawing.ts';
import { type Branch, type Placed, ROUND, placed } from './tree.ts';
import { widthOf, words, wrapped } from './words.ts';

const MARGIN = 16;
const NAME = 13;
const SMALL = 11;
const HEAD = 24;
const LINE = 15;
const PAD = 10;
const NARROW = 96;
const WIDE = 210;
/** Where a line bends, right of the box before. */
const BUS = 16;

export const aerialSystem: Kind = {
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
  );
  const marks: Mark[] = [];
  for (const root of tree.roots) paint(plan, marks, root);
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
    ? [kindWords(device), by === undefined ? 'drawn above' : `into ${by.name}; drawn above`]
    : [
        kindWords(device),
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
              Math.min(130, widthOf(line, SMALL)),
            ),
          ),
    next: next.map((one) => branchOf(plan, one)),
    below: [],
  };
}

/** The connector at which a picture is wanted: of an outlet, or of a receiver. */
function endOf({ device, by }: Part): Connector | undefined {
  if (device.kind === 'outlet') return device.connectorByName.get('tv');
  return isReceiver(device) ? by : undefined;
}

function kindWords({ kind }: Device): string {
  return kind === 'lnb' ? 'LNB' : (kind ?? 'device').replaceAll('-', ' ');
}

/** What it does to the level. */
function ownWords({ television }: Plan, device: Device): string[] {
  const { aerial } = device;
  if (device.kind === 'amplifier') {
    const headroom = television.amplifier(device)?.headroom;
    const gain = aerial?.gain === undefined ? 'gain not said' : `gain ${decibels(aerial.gain)}`;
    return headroom === undefined || headroom < 0 ? [gain] : [gain, `${decibels(headroom)} below its limit`];
  }
  if (device.kind === 'aerial' || device.kind === 'lnb')
    return [
      count(
        new Set(
          television.signals.all.filter(({ source }) => source.device === device).map(({ multiplex }) => multiplex),
        ).size,
        'multiplex',
        'multiplexes',
      ),
    ];
  return [];
}

function amplifierFaults({ television }: Plan, device: Device): string[] {
  const headroom = device.kind === 'amplifier' ? television.amplifier(device)?.headroom : undefined;
  return headroom !== undefined && headroom < 0 ? [`driven ${decibels(-headroom)} over its limit`] : [];
}

/** `47.1–49.2 dBµV` and the least margin. */
function arrivesWords(plan: Plan, at: Connector): string[] {
  const points = plan.television.reception.pointsAt(at);
  const weakest = weakestOf(points);
  if (weakest === undefined) return ['nothing arrives'];
  return [
    rangeWords(points),
    `${weakest.signal.multiplex.name}: margin ${weakest.margin === undefined ? '?' : decibels(weakest.margin)}`,
  ];
}

function rangeWords(points: readonly Arrived[]): string {
  const levels = points.map(({ signal }) => signal.level);
  const [least, most] = [levelWords(Math.min(...levels)), levelWords(Math.max(...levels))];
  return least === most ? least : `${least.replace(' dBµV', '')} to ${most}`;
}

/** What is wrong where something arrives, in few words. */
function faultsAt({ television: { reception } }: Plan, at: Connector): string[] {
  const points = reception.pointsAt(at);
  const receiver = reception.receivers.find((one) => one.at === at);
  const names = (wrong: readonly Arrived[]): string => {
    const [first, ...others] = wrong.map(({ signal }) => signal.multiplex.name);
    return `${first ?? ''}${others.length === 0 ? '' : ` and ${others.length} more`}`;
  };
  const low = points.filter(({ signal, window }) => window !== undefined && signal.level < window.min);
  const high = points.filter(({ signal, window }) => window !== undefined && signal.level > window.max);
  const noisy = points.filter((point) => remarkOf(point, receiver?.systems) === '▲ too little carrier to noise');
  return [
    ...(low.length === 0 ? [] : [`too low: ${names(low)}`]),
    ...(high.length === 0 ? [] : [`too high: ${names(high)}`]),
    ...(noisy.length === 0 ? [] : [`too noisy: ${names(noisy)}`]),
    ...(receiver !== undefined && receiver.composite > receiver.maxInput
      ? [`too much together: ${levelWords(receiver.composite)}`]
      : []),
  ];
}

function remarkOf({ signal, window, margin }: Arrived, systems: readonly string[] | undefined): string {
  const { level, multiplex } = signal;
  if (window !== undefined && level < window.min) return '▲ too low';
  if (window !== undefined && level > window.max) return '▲ too high';
  // Of what a receiver does not receive nothing is needed.
  if (systems !== undefined && multiplex.system !== undefined && !systems.includes(multiplex.system))
    return 'not received';
  return margin !== undefined && margin < 0 ? '▲ too little carrier to noise' : '';
}

/** `coax-6` and `14 m`, with its label. */
function cableWords({ cable }: CoaxRun): [string, string] {
  return [cable.type ?? 'coax', cable.length === undefined ? '? m' : metres(cable.length)];
}

function level({ y }: Placed<Piece>): number {
  return y + 14;
}

function paint(plan: Plan, marks: Mark[], box: Placed<Piece>): void {
  marks.push(boxThing(plan, box));
  const start = { x: box.x + box.width, y: level(box) };
  let from = start.y;
  for (const next of box.next) {
    const end = { x: next.x, y: level(next) };
    const bend = start.x + BUS;
    const points = end.y === start.y ? [start, end] : [{ x: bend, y: from }, { x: bend, y: end.y }, end];
    from = end.y === start.y ? end.y : end.y - ROUND;
    marks.push({ mark: 'line', points, look: next.value.part.isAgain ? 'faded' : 'plain', round: ROUND });
    const { run, through } = next.value.part;
    if (run !== undefined) {
      const left = start.x + BUS + 8;
      const room = next.x - 6 - left;
      const [type, length] = cableWords(run);
      marks.push(
        words(type, left, end.y - 5, { size: SMALL, look: 'quiet', most: room }),
        words(length, left, end.y + 14, { size: SMALL, look: 'quiet', most: room }),
        ...through.map((device, index): Mark => ({
          mark: 'thing',
          at: deviceAt(device.name),
          role: kindWords(device),
          label: `${device.name}: ${kindWords(device)} on the way`,
          marks: [words(device.name, left, end.y + 14 + (index + 1) * LINE, { size: SMALL, most: room })],
        })),
      );
    }
    paint(plan, marks, next);
  }
}

function boxThing(plan: Plan, { value, x, y, width, height }: Placed<Piece>): Thing {
  const { part, title, lines, look } = value;
  const { device } = part;
  const at = endOf(part);
  const most = width - 2 * PAD;
  return {
    mark: 'thing',
    at: at === undefined ? deviceAt(device.name) : portAt(connectorName(at)),
    role: kindWords(device),
    label: `${title}: ${[deviceAnswer(plan, device), ...lines.filter((line) => line.startsWith('▲'))].join(' ')}`,
    marks: [
      { mark: 'box', x, y, width, height, look, round: 4 },
      words(title, x + PAD, y + 19, { size: NAME, strong: true, most }),
      ...lines.map((line, index) =>
        words(line, x + PAD, y + HEAD + 11 + index * LINE, {
          size: SMALL,
          look: line.startsWith('▲') ? 'bad' : 'quiet',
          most,
        }),
      ),
    ],
  };
}

function pointsTable({ television: { reception } }: Plan, ends: readonly Connector[]): Table {
  const known = (value: number | undefined): { figure: string } => ({
    figure: value === undefined ? '?' : decibels(value),
  });
  const rows = ends.flatMap((at): Row[] => {
    const own = portAt(connectorName(at));
    const points = reception.pointsAt(at);
    const systems = reception.receivers.find((one) => one.at === at)?.systems;
    if (points.length === 0)
      return [{ about: [own], cells: [{ names: [own] }, '', '', '', '', '', 'nothing arrives'] }];
    return points.map((point) => ({
      about: [own],
      cells: [
        { names: [own] },
        { names: [{ names: 'multiplexes', name: point.signal.multiplex.name }] },
        { figure: levelWords(point.signal.level) },
        known(point.carrierToNoise),
        known(point.needed),
        known(point.margin),
        remarkOf(point, systems),
      ],
    }));
  });
  return {
    title: 'Outlets and receivers',
    head: ['At', 'Multiplex', 'Level', 'C/N', 'Needed', 'Margin', 'Remark'],
    rows,
  };
}

function amplifiersTable({ television }: Plan): Table {
  const known = (value: number | undefined, shown: (of: number) => string): { figure: string } => ({
    figure: value === undefined ? '?' : shown(value),
  });
  return {
    title: 'Amplifiers',
    head: ['Amplifier', 'Gain', 'Strongest out', 'Limit', 'Below it'],
    rows: television.amplifiers.map(({ device, strongest, limit, headroom }) => ({
      about: [deviceAt(device.name)],
      cells: [
        { names: [deviceAt(device.name)] },
        known(device.aerial?.gain, decibels),
        { figure: levelWords(strongest.level) },
        known(limit, levelWords),
        known(headroom, (value) => `${value < 0 ? '▲ ' : ''}${decibels(value)}`),
      ],
    })),
  };
}

/** The coax in the order of the picture. */
function partsTable(parts: readonly Part[]): Table {
  const rows: Row[] = [];
  const visit = (part: Part, from: Device | undefined): void => {
    const { device, by, run, through } = part;
    rows.push({
      about: [device, ...through].map(({ name }) => deviceAt(name)),
      cells: [
        { names: from === undefined ? [] : [deviceAt(from.name)] },
        { names: [by === undefined ? deviceAt(device.name) : portAt(connectorName(by))] },
        kindWords(device),
        run === undefined ? '' : cableWords(run).join(', '),
        { names: through.map(({ name }) => deviceAt(name)) },
        part.isAgain ? 'see above' : '',
      ],
    });
    for (const next of part.next) visit(next, device);
  };
  for (const part of parts) visit(part, undefined);
  return { title: 'Parts', head: ['From', 'To', 'Kind', 'Coax', 'By way of', 'Remark'], rows };
}
