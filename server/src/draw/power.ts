/** What feeds what: mains, circuits and UPS, then switches, and what they feed by PoE. */

import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { camerasOn, takesPower } from '../report/supply/figures.ts';
import { lastsWords, outageWords } from '../report/supply/words.ts';
import type { Device } from '../site/model.ts';
import { aboutWatts, percent, runtime, voltAmperes } from '../text/words.ts';
import { type Drawing, type Kind, type Look, type Mark, type Row, deviceAt } from './drawing.ts';
import { type Branch, type Placed, ROUND, placed } from './tree.ts';
import { widthOf, words, wrapped } from './words.ts';

const MARGIN = 16;
const NAME = 13;
const SMALL = 11;
const HEAD = 24;
const LINE = 15;
const PAD = 10;
const NARROW = 96;
const WIDE = 200;
/** Where a line bends, right of the box before. */
const BUS = 16;
const LEAD = 40;

export const powerTree: Kind = {
  kind: 'power',
  title: 'Power',
  summary: 'from the mains by UPS and switch to each camera: watts, and how long each goes on without mains',
  isOfSite: true,
  subjects: () => [],
  isThere: (plan) => plan.site.devices.some((device) => takesPower(plan, device)),
  draw: (plan) => drawn(plan),
};

/** A device, or the mains itself. */
interface Piece {
  readonly device: Device | undefined;
  readonly lines: readonly string[];
  readonly look: Look;
}

function drawn(plan: Plan): Drawing {
  const { feeding, total } = plan.supply();
  const shown = plan.site.devices.filter((device) => takesPower(plan, device) || device.ups !== undefined);
  const roots = shown.filter((device) => feeding.of(device).by === 'mains');
  const mains: Branch<Piece> = {
    ...boxOf('Mains', [`${aboutWatts(total.most)} at most`]),
    value: { device: undefined, lines: [`${aboutWatts(total.most)} at most`], look: 'main' },
    lead: 0,
    next: roots.map((device) => branchOf(plan, device)),
    below: [],
  };
  const tree = placed([mains], MARGIN, MARGIN);
  const marks: Mark[] = [];
  for (const root of tree.roots) paint(plan, marks, root);
  return {
    title: 'Power',
    description:
      `${outageWords(plan)} ${aboutWatts(total.most)} at most in all. Watts at most, with all that hangs on a device. Batteries, and what is behind a socket: local ` +
      'codes and licensed practice decide.',
    width: tree.right + MARGIN,
    height: tree.bottom + MARGIN,
    marks,
    tables: [
      {
        title: 'What feeds what',
        head: ['Device', 'Fed from', 'Own', 'With all on it', 'Without mains', 'Battery'],
        rows: shown.map((device) => rowOf(plan, device)),
      },
    ],
  };
}

function branchOf(plan: Plan, device: Device): Branch<Piece> {
  const said = linesOf(plan, device);
  const lines = said.flatMap((line) => wrapped(line, WIDE - 2 * PAD, SMALL));
  return {
    ...boxOf(device.name, lines),
    value: { device, lines, look: lookOf(plan, device) },
    lead: LEAD,
    next: plan
      .supply()
      .feeding.fedBy(device)
      .map((one) => branchOf(plan, one)),
    below: [],
  };
}

function boxOf(name: string, lines: readonly string[]): { width: number; height: number } {
  const needed = Math.max(widthOf(name, NAME, true), ...lines.map((line) => widthOf(line, SMALL)));
  return {
    width: Math.min(WIDE, Math.max(NARROW, needed + 2 * PAD)),
    height: HEAD + lines.length * LINE + 8,
  };
}

function linesOf(plan: Plan, device: Device): string[] {
  const supply = plan.supply();
  const ups = supply.ups(device);
  const kind = device.kind === 'ups' ? 'UPS' : (device.kind ?? 'device').replaceAll('-', ' ');
  if (ups !== undefined) {
    const { load, apparent, runtime: time, ups: said } = ups;
    const share = (part: number, rated: number | undefined): string =>
      rated === undefined || rated === 0 ? '' : `, ${sign(part / rated)}${percent(part, rated)}`;
    return [
      kind,
      `${aboutWatts(load)}${share(load, said.ratedPower)}`,
      `${voltAmperes(apparent)}${share(apparent, said.rated)}`,
      `lasts ${time === undefined ? '?' : runtime(time)}`,
      `${camerasOn(plan, ups).length} of ${plan.cameraLives().length} cameras`,
    ];
  }
  const { basis, taken, unsaid } = supply.draw(device);
  const isKnown = basis !== 'unsaid';
  const power =
    taken.most === 0 && !isKnown ? 'watts not said' : `${aboutWatts(taken.most)}${unsaid.length > 0 ? ' + ?' : ''}`;
  return [kind, power, ...(supply.upses.length === 0 ? [] : [goesOn(supply.lasts(device))])];
}

/** The sign of a share of a rating, before its figure. */
function sign(share: number): string {
  return share > 1 ? '▲ ' : share > 0.8 ? '△ ' : '';
}

function goesOn(lasts: number | undefined): string {
  return lasts === 0 ? '✕ ends at once' : `has power for ${lastsWords(lasts)}`;
}

function lookOf(plan: Plan, device: Device): Look {
  const supply = plan.supply();
  const ups = supply.ups(device);
  if (ups !== undefined) {
    const { load, apparent, ups: said } = ups;
    const share = Math.max(load / (said.ratedPower ?? Infinity), apparent / (said.rated ?? Infinity));
    return share > 1 ? 'bad' : share > 0.8 ? 'warn' : 'plain';
  }
  return supply.upses.length > 0 && supply.lasts(device) === 0 ? 'lost' : 'plain';
}

function rowOf(plan: Plan, device: Device): Row {
  const supply = plan.supply();
  const fed = supply.feeding.of(device);
  const { own, basis, taken } = supply.draw(device);
  return {
    about: [deviceAt(device.name)],
    cells: [
      { names: [deviceAt(device.name)] },
      fed.by === 'mains'
        ? fed.isSaid
          ? 'mains'
          : 'mains, as nothing is said'
        : { names: [deviceAt(fed.device.name)] },
      { figure: basis === 'unsaid' ? '?' : basis === 'none' ? '' : aboutWatts(own.most) },
      { figure: taken.most === 0 ? '' : aboutWatts(taken.most) },
      { figure: supply.upses.length === 0 ? '' : lastsWords(supply.lasts(device)) },
      supply.ups(device) === undefined ? '' : linesOf(plan, device).slice(1).join('; '),
    ],
  };
}

/** The box, then line and box of each that hangs on it. */
function paint(plan: Plan, marks: Mark[], box: Placed<Piece>): void {
  const { value, x, y, width, height, next } = box;
  const { device, lines, look } = value;
  const most = width - 2 * PAD;
  const own: Mark[] = [
    { mark: 'box', x, y, width, height, look, round: 4 },
    words(device?.name ?? 'Mains', x + PAD, y + 19, { size: NAME, strong: true, most }),
    ...lines.map((line, index) =>
      words(line, x + PAD, y + HEAD + 11 + index * LINE, { size: SMALL, look: 'quiet', most }),
    ),
  ];
  if (device === undefined) marks.push(...own);
  else
    marks.push({
      mark: 'thing',
      at: deviceAt(device.name),
      role: device.kind ?? 'device',
      label: `${device.name}: ${deviceAnswer(plan, device) || lines.join(', ')}`,
      marks: own,
    });
  const start = { x: x + width, y: y + 14 };
  let from = start.y;
  for (const one of next) {
    const end = { x: one.x, y: one.y + 14 };
    const bend = start.x + BUS;
    marks.push({
      mark: 'line',
      points: end.y === start.y ? [start, end] : [{ x: bend, y: from }, { x: bend, y: end.y }, end],
      look: one.value.look === 'lost' ? 'idle' : 'plain',
      round: ROUND,
      arrow: true,
    });
    from = end.y === start.y ? end.y : end.y - ROUND;
    paint(plan, marks, one);
  }
}
