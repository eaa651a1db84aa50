/** What feeds what: mains, circuits and UPS, then switches, and what they feed by PoE. */

import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { takesPower } from '../report/supply/figures.ts';
import { outageWords } from '../report/supply/words.ts';
import type { Device } from '../site/model.ts';
import { aboutWatts } from '../text/words.ts';
import { type Arrangement, type Standing, arranged } from './arranged.ts';
import { type Drawing, type DrawingKind, type Look, type Mark, type Thing, deviceNamed } from './drawing.ts';
import { feedingTable } from './power/table.ts';
import { goesOnWords, headLines, lookOfDevice, wattsWords } from './power/words.ts';
import { ROUND } from './tree.ts';
import { widthOf, words, wrapped } from './words.ts';

const NAME = 14;
const TEXT = 12;
const SMALL = 11;
const HEAD = 26;
const LINE = 15;
/** A target for a finger (WCAG 2.2, 2.5.8). */
const ROW = 24;
const PAD = 10;
const GAP = 10;

export const powerTree: DrawingKind = {
  kind: 'power',
  title: 'Power',
  summary: 'from the mains by UPS and switch to each camera: watts, and how long each goes on without mains',
  isOfSite: true,
  subjects: () => [],
  isThere: (plan) => plan.site.devices.some((device) => takesPower(plan, device)),
  draw: (plan) => drawn(plan),
};

/** What feeds others, and a row for each that it feeds. */
interface Source {
  /** Nothing of the mains. */
  readonly device: Device | undefined;
  readonly head: readonly string[];
  readonly fed: readonly Fed[];
  readonly standing: Standing;
  readonly rowsAt: number;
}

interface Fed {
  readonly device: Device;
  readonly watts: string;
  readonly goesOn: string;
  /** Where it feeds others itself. */
  readonly source: Source | undefined;
}

interface Columns {
  readonly name: number;
  readonly watts: number;
  readonly goesOn: number;
  readonly width: number;
}

function drawn(plan: Plan): Drawing {
  const supply = plan.supply();
  const shown = plan.site.devices.filter((device) => isShown(plan, device));
  const atMains = shown.filter((device) => supply.feeding.of(device).by === 'mains');
  const columns = columnsOf(plan);
  const most = aboutWatts(supply.total.most);
  const mains = sourceOf({ plan, columns }, undefined, atMains, [`${most} at most`]);
  const arrangement = arranged([mains.standing], []);
  return {
    title: 'Power',
    description:
      `${outageWords(plan)} ${most} at most in all. Watts at most, with all that hangs on a device. Batteries, and what is behind a socket: local ` +
      'codes and licensed practice decide.',
    width: arrangement.width,
    height: arrangement.height,
    marks: sourceMarks({ plan, columns }, arrangement, mains),
    tables: [feedingTable(plan, shown)],
  };
}

/** What is plugged into a host and declares no watts has none of its own to show. */
function isShown(plan: Plan, device: Device): boolean {
  return takesPower(plan, device) || device.ups !== undefined;
}

interface Shown {
  readonly plan: Plan;
  readonly columns: Columns;
}

function columnsOf(plan: Plan): Columns {
  const { devices } = plan.site;
  const widest = (texts: readonly string[], size: number, maxWidth: number): number =>
    Math.min(maxWidth, Math.max(0, ...texts.map((text) => widthOf(text, size))));
  const name = Math.max(
    90,
    widest(
      devices.map((device) => device.name),
      TEXT,
      190,
    ),
  );
  const watts = Math.max(
    48,
    widest(
      devices.map((device) => wattsWords(plan, device)),
      TEXT,
      100,
    ),
  );
  const goesOn = widest(
    devices.map((device) => goesOnWords(plan, device)),
    SMALL,
    110,
  );
  return { name, watts, goesOn, width: 2 * PAD + name + GAP + watts + (goesOn === 0 ? 0 : GAP + goesOn) };
}

function sourceOf(shown: Shown, device: Device | undefined, feeds: readonly Device[], said: readonly string[]): Source {
  const { plan, columns } = shown;
  const supply = plan.supply();
  const fed = feeds.map((one): Fed => {
    const own = supply.feeding.fedBy(one).filter((device) => isShown(plan, device));
    const isSource = own.length > 0 || supply.ups(one) !== undefined;
    return {
      device: one,
      watts: wattsWords(plan, one),
      goesOn: goesOnWords(plan, one),
      source: isSource ? sourceOf(shown, one, own, headLines(plan, one)) : undefined,
    };
  });
  const head = wrapped(said.join(' · '), columns.width - 2 * PAD, SMALL);
  const rowsAt = HEAD + head.length * LINE + 4;
  const children = fed.flatMap(({ source }, index) =>
    source === undefined ? [] : [{ box: source.standing, exit: rowsAt + (index + 0.5) * ROW }],
  );
  const height = rowsAt + fed.length * ROW + 6;
  return { device, head, fed, rowsAt, standing: { width: columns.width, height, entry: HEAD / 2 + 3, children } };
}

/** The box with its rows, then line and box of each that feeds others. */
function sourceMarks(shown: Shown, arrangement: Arrangement, source: Source): Mark[] {
  const { plan, columns } = shown;
  const { device, head, fed, rowsAt, standing } = source;
  const place = arrangement.places.get(standing);
  if (place === undefined) return [];
  const { x, y } = place;
  const maxWidth = columns.width - 2 * PAD;
  const look: Look = device === undefined ? 'main' : lookOfDevice(plan, device);
  const box: Mark[] = [
    { mark: 'box', x, y, width: columns.width, height: standing.height, look, round: 6 },
    words(device?.name ?? 'Mains', x + PAD, y + 20, { size: NAME, strong: true, maxWidth }),
    ...head.map((line, index) =>
      words(line, x + PAD, y + HEAD + 11 + index * LINE, { size: SMALL, look: 'quiet', maxWidth }),
    ),
  ];
  return [
    ...(device === undefined ? box : [thingOf(plan, device, head.join(' '), box)]),
    ...fed.map((one, index) => rowThing(shown, one, { x, y: y + rowsAt + index * ROW })),
    ...fed.flatMap(({ source: next }): Mark[] => {
      const points = next === undefined ? undefined : arrangement.lines.get(next.standing);
      if (next === undefined || points === undefined) return [];
      const isDark = next.device !== undefined && lookOfDevice(plan, next.device) === 'lost';
      const line: Mark = { mark: 'line', points, look: isDark ? 'idle' : 'plain', round: ROUND, arrow: true };
      return [line, ...sourceMarks(shown, arrangement, next)];
    }),
  ];
}

function rowThing({ plan, columns }: Shown, { device, watts, goesOn }: Fed, { x, y }: { x: number; y: number }): Mark {
  const base = y + ROW / 2 + 4;
  const right = x + columns.width - PAD;
  return thingOf(plan, device, [watts, goesOn].filter((part) => part !== '').join(', '), [
    { mark: 'box', x: x + 4, y: y + 1, width: columns.width - 8, height: ROW - 2, look: 'quiet', round: 3 },
    words(device.name, x + PAD, base, { size: TEXT, maxWidth: columns.name }),
    words(watts, x + PAD + columns.name + GAP + columns.watts, base, {
      size: TEXT,
      anchor: 'end',
      maxWidth: columns.watts,
      look: watts === 'not said' ? 'quiet' : 'plain',
    }),
    ...(goesOn === ''
      ? []
      : [words(goesOn, right, base, { size: SMALL, anchor: 'end', maxWidth: columns.goesOn, look: 'quiet' })]),
  ]);
}

function thingOf(plan: Plan, device: Device, otherwise: string, marks: readonly Mark[]): Thing {
  return {
    mark: 'thing',
    at: deviceNamed(device.name),
    role: device.kind ?? 'device',
    label: `${device.name}: ${deviceAnswer(plan, device) || otherwise}`,
    marks,
  };
}
