/** A rack from the front and from behind: its numbered units, the devices in them, and the free ones. */

import { type Clashes, clashesIn } from '../racks/clashes.ts';
import { type MountedDevice, type RackFigures, type RackSide, meet } from '../racks/racks.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import type { Plan } from '../plan.ts';
import type { Device } from '../site/model.ts';
import { type Box, type Drawing, type DrawingKind, type Mark, deviceNamed } from './drawing.ts';
import { words } from './words.ts';
import { factsOf, faultOf, fedWords, wholeWords } from './rack/words.ts';
import { rackNamed, tableOf } from './rack/units.ts';

const UNIT = 34;
/** As a panel is to its unit: 482.6 mm to 44.45 mm. */
const PANEL = 369;
/** The least width of a device beside others, so that its name fits. */
const LEAST = 72;
const MARGIN = 16;
const NUMBERS = 34;
const HEAD = 66;
const BETWEEN = 28;

export const rackFronts: DrawingKind = {
  kind: 'rack',
  title: 'Rack',
  summary: 'front and rear: what is in which unit, what is free, what it weighs',
  subjects: ({ racks }) => racks.map(({ rack }) => rack.name),
  draw(plan, subject) {
    const figures = plan.racks.find(({ rack }) => rack.name === subject);
    if (figures === undefined) throw new Error(`${subject} is not a rack of this site`);
    return drawn(plan, figures);
  },
};

function drawn(plan: Plan, figures: RackFigures): Drawing {
  const { rack, placed, elsewhere } = figures;
  const clashes = clashesIn(figures);
  const lanes = { front: lanesOf(placed, 'front'), rear: lanesOf(placed, 'rear') };
  const most = Math.max(1, ...[...lanes.front.values(), ...lanes.rear.values()].map(({ of }) => of));
  const panel = Math.max(PANEL, most * LEAST);
  const rows = rowsOf(figures);
  const side = NUMBERS + panel;
  const width = 2 * MARGIN + 2 * side + BETWEEN;
  const bottom = HEAD + rows.numbers.length * UNIT;
  const marks = (['front', 'rear'] as const).flatMap((one, index): Mark[] => {
    const x = MARGIN + index * (side + BETWEEN) + NUMBERS;
    return [
      words(one === 'front' ? 'Front' : 'Rear', x, HEAD - 12, { strong: true, size: 13 }),
      ...sideMarks({ plan, figures, clashes, lanes, rows, side: one, x, panel }),
    ];
  });
  const others = elsewhere.map((device, index): Mark => {
    const box = { x: MARGIN + NUMBERS, y: bottom + 34 + index * (UNIT + 4), width: panel, height: UNIT };
    return deviceThing(plan, device, box, { note: 'unit not said', look: 'idle' });
  });
  const caption =
    elsewhere.length === 0
      ? []
      : [words('Also in it', MARGIN + NUMBERS, bottom + 24, { size: 12, look: 'quiet' as const })];
  const from = rack.numberedFrom === 'top' ? 'top' : 'bottom';
  return {
    title: `Rack ${rack.name}`,
    description:
      `${rack.name}: ${wholeWords(plan, figures)}. Units count from the ${from}. At the rear, what is fixed to the front is seen ` +
      'from behind. Earthing and mains in a rack: local codes and licensed practice decide; lift nothing heavy alone.',
    width,
    height: bottom + (elsewhere.length === 0 ? 0 : 34 + elsewhere.length * (UNIT + 4)) + MARGIN,
    marks: [rackThing(plan, figures, width), ...marks, ...caption, ...others],
    tables: [tableOf(plan, figures, clashes)],
  };
}

function rackThing(plan: Plan, figures: RackFigures, width: number): Mark {
  const { rack } = figures;
  const answer = wholeWords(plan, figures);
  return {
    mark: 'thing',
    at: rackNamed(rack.name),
    role: 'rack',
    label: `${rack.name}: ${answer}`,
    marks: [
      words(`${rack.name} · ${answer}`, MARGIN, MARGIN + 12, { size: 14, strong: true, maxWidth: width - 2 * MARGIN }),
    ],
  };
}

interface Rows {
  /** From the top row on: the number of each unit. */
  readonly numbers: readonly number[];
  /** How many from the top one that the rack does not have are. */
  top(first: number, last: number): number;
}

/** Those of the rack, and those beyond it that something is said to be in. */
function rowsOf({ rack, placed }: RackFigures): Rows {
  const highest = placed.reduce((most, { last }) => Math.max(most, last), rack.units ?? 1);
  const upwards = Array.from({ length: highest }, (_, index) => index + 1);
  const fromTop = rack.numberedFrom === 'top';
  return {
    numbers: fromTop ? upwards : upwards.toReversed(),
    top: (first, last) => (fromTop ? first - 1 : highest - last),
  };
}

/** Which of how many lanes beside each other something is in. */
interface Lane {
  readonly index: number;
  readonly of: number;
}

/** What shares a unit is drawn side by side. */
function lanesOf(all: readonly MountedDevice[], side: RackSide): ReadonlyMap<MountedDevice, Lane> {
  const lanes = new Map<MountedDevice, Lane>();
  let group: { placed: MountedDevice; index: number }[] = [];
  let end = 0;
  const close = (): void => {
    const of = Math.max(0, ...group.map(({ index }) => index)) + 1;
    for (const { placed, index } of group) lanes.set(placed, { index, of });
  };
  for (const placed of all) {
    if (placed.side !== side) continue;
    if (placed.first > end) {
      close();
      group = [];
    }
    const taken = new Set(group.filter((other) => meet(other.placed, placed)).map(({ index }) => index));
    let index = 0;
    while (taken.has(index)) index++;
    group.push({ placed, index });
    end = Math.max(end, placed.last);
  }
  close();
  return lanes;
}

interface Shown {
  readonly plan: Plan;
  readonly figures: RackFigures;
  readonly clashes: Clashes;
  readonly lanes: Readonly<Record<RackSide, ReadonlyMap<MountedDevice, Lane>>>;
  readonly rows: Rows;
  readonly side: RackSide;
  readonly x: number;
  readonly panel: number;
}

function sideMarks({ plan, figures, clashes, lanes, rows, side, x, panel }: Shown): Mark[] {
  const { rack, placed, free } = figures;
  const boxOf = (one: MountedDevice): Pick<Box, 'x' | 'y' | 'width' | 'height'> => {
    const { index, of } = lanes[one.side].get(one) ?? { index: 0, of: 1 };
    const wide = panel / of;
    // From behind left is right.
    const at = side === one.side ? index : of - 1 - index;
    return {
      x: x + at * wide + 1,
      y: HEAD + rows.top(one.first, one.last) * UNIT + 1,
      width: wide - 2,
      height: (one.last - one.first + 1) * UNIT - 2,
    };
  };
  const own = placed.filter((one) => one.side === side);
  const behind = placed.filter((one) => one.side !== side && !own.some((other) => meet(one, other)));
  const hidden = new Set(
    behind.flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, at) => first + at)),
  );
  const numbers = rows.numbers.map((number, index) =>
    words(String(number), x - 8, HEAD + index * UNIT + UNIT / 2 + 4, { anchor: 'end', size: 12, look: 'quiet' }),
  );
  const freeMarks = free[side]
    .filter((unit) => side === 'front' || !hidden.has(unit))
    .flatMap((unit): Mark[] => {
      const y = HEAD + rows.top(unit, unit) * UNIT;
      return [
        { mark: 'box', x: x + 1, y: y + 1, width: panel - 2, height: UNIT - 2, look: 'idle' },
        words('free', x + panel / 2, y + UNIT / 2 + 4, { anchor: 'middle', size: 11, look: 'quiet' }),
      ];
    });
  return [
    ...numbers,
    ...freeMarks,
    ...(side === 'rear'
      ? behind.map((one) =>
          deviceThing(plan, one.device, boxOf(one), {
            note: fedWords(plan, one.device) || 'from behind',
            look: 'faded',
          }),
        )
      : []),
    ...own.map((one) => {
      const fault = faultOf(figures, clashes, one, rack.units);
      return deviceThing(plan, one.device, boxOf(one), {
        note: fault === '' ? factsOf(plan, one.device) : `▲ ${fault}`,
        look: fault === '' ? 'plain' : 'bad',
      });
    }),
  ];
}

/** A box with the name at the left and a note at the right; both below each other where there is room for no more. */
function deviceThing(
  plan: Plan,
  device: Device,
  box: Pick<Box, 'x' | 'y' | 'width' | 'height'>,
  { note, look }: { readonly note: string; readonly look: Box['look'] },
): Mark {
  const inner = box.width - 16;
  const middle = box.y + box.height / 2 + 4;
  const isWide = note !== '' && box.width > 200;
  return {
    mark: 'thing',
    at: deviceNamed(device.name),
    role: device.kind ?? 'device',
    label: [`${device.name}: ${deviceAnswer(plan, device) || (device.kind ?? 'device')}`, note]
      .filter((part) => part !== '')
      .join(', '),
    marks: [
      { mark: 'box', ...box, look, round: 2 },
      words(!isWide && look === 'bad' ? `▲ ${device.name}` : device.name, box.x + 8, middle, {
        size: 13,
        strong: look !== 'faded',
        maxWidth: isWide ? inner * 0.42 : inner,
        look: textLook(look),
      }),
      ...(isWide
        ? [
            words(note, box.x + box.width - 8, middle, {
              anchor: 'end' as const,
              size: 11,
              maxWidth: inner * 0.55,
              look: look === 'bad' ? ('bad' as const) : ('quiet' as const),
            }),
          ]
        : []),
    ],
  };
}

function textLook(look: Box['look']): Box['look'] {
  return look === 'faded' ? 'faded' : 'plain';
}
