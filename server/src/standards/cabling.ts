/**
 * How far a cable carries a speed.
 *
 * Sources: the channel of 100 m, 90 m of it laid and 10 m of cords, TIA-568, secondary (several pages quote it);
 * least categories up to 10GBASE-T secondary (encyclopedia table); every other figure is from memory of IEEE 802.3
 * and marked so. None of the standards was read.
 */

export type CableType =
  'cat5' | 'cat5e' | 'cat6' | 'cat6a' | 'cat7' | 'cat8' | 'om1' | 'om2' | 'om3' | 'om4' | 'om5' | 'os2' | 'dac';

/** The length of a whole channel of copper, in metres: 90 laid, and 10 of cords. */
export const CHANNEL = 100;

/** How a figure was verified: in a secondary source that names the standard, or from memory. */
export type Verified = 'secondary' | 'from memory';

export interface Reach {
  readonly metres: number;
  /** The kind of Ethernet that reaches so far, and on what condition. */
  readonly basis: string;
  readonly source: string;
  readonly verified: Verified;
}

/**
 * How far the cable carries the speed in bit/s, or undefined if it does not carry it at all. A speed between two
 * kinds of Ethernet is that of the faster.
 */
export function reach(type: CableType, bitsPerSecond: number): Reach | undefined {
  const row = reaches[type].find(([fastest]) => bitsPerSecond <= fastest);
  if (row === undefined || (type === 'dac' && bitsPerSecond < G)) {
    return undefined;
  }
  const [, metres, basis, source, verified = 'from memory'] = row;
  return { metres, basis, source, verified };
}

/** Whether a type of cable is one that Ethernet runs over, and not a coax. */
export function isEthernetCable(type: string | undefined): type is CableType {
  return type !== undefined && Object.hasOwn(reaches, type);
}

/** Types for the same sockets, the least able first. */
const families: readonly (readonly CableType[])[] = [
  ['cat5', 'cat5e', 'cat6', 'cat6a', 'cat7', 'cat8'],
  ['om1', 'om2', 'om3', 'om4', 'om5'],
  ['os2'],
  ['dac'],
];

/** The least type for the same sockets that carries the speed so far; bit/s, millimetres. */
export function leastCableType(like: CableType, bitsPerSecond: number, millimetres = 0): CableType | undefined {
  const family = families.find((types) => types.includes(like)) ?? [];
  return family.find((type) => (reach(type, bitsPerSecond)?.metres ?? -1) * 1000 >= millimetres);
}

type Row = readonly [fastest: number, metres: number, basis: string, source: string, verified?: Verified];

const M = 1e6;
const G = 1e9;

const fast: Row = [100 * M, CHANNEL, '100BASE-TX channel', 'IEEE 802.3 clause 25, TIA-568', 'secondary'];
const gigabit: Row = [G, CHANNEL, '1000BASE-T channel', 'IEEE 802.3 clause 40, TIA-568', 'secondary'];
const multigigabit: Row = [2.5 * G, CHANNEL, '2.5GBASE-T channel', 'IEEE 802.3bz', 'secondary'];
const fiveGigabit: Row = [5 * G, CHANNEL, '5GBASE-T channel', 'IEEE 802.3bz', 'secondary'];
const fiveGigabitOn5e: Row = [
  5 * G,
  CHANNEL,
  '5GBASE-T channel, if the cabling is tested for it',
  'IEEE 802.3bz',
  'secondary',
];
const tenGigabit: Row = [10 * G, CHANNEL, '10GBASE-T channel', 'IEEE 802.3an, TIA-568', 'secondary'];
const tenGigabitOn6: Row = [10 * G, 55, '10GBASE-T on category 6, 37 m where cables lie close', 'TIA TSB-155'];

const fastMultimode: Row = [100 * M, 2000, '100BASE-FX, full duplex', 'IEEE 802.3 clause 26'];
const gigabitShort = (metres: number): Row => [G, metres, '1000BASE-SX', 'IEEE 802.3 clause 38'];
const tenGigabitShort = (metres: number): Row => [10 * G, metres, '10GBASE-SR', 'IEEE 802.3 clause 52'];

/** OM5 differs from OM4 at wavelengths that none of these kinds of Ethernet uses. */
const fasterMultimode: readonly Row[] = [
  fastMultimode,
  gigabitShort(550),
  tenGigabitShort(400),
  [25 * G, 100, '25GBASE-SR', 'IEEE 802.3by'],
  [40 * G, 150, '40GBASE-SR4, four fibres each way', 'IEEE 802.3ba'],
  [100 * G, 100, '100GBASE-SR4, four fibres each way', 'IEEE 802.3bm'],
];

/** For each cable the fastest speed of a kind of Ethernet and its reach, in ascending order of speed. */
const reaches: Readonly<Record<CableType, readonly Row[]>> = {
  cat5: [fast, gigabit],
  cat5e: [fast, gigabit, multigigabit, fiveGigabitOn5e],
  cat6: [fast, gigabit, multigigabit, fiveGigabit, tenGigabitOn6],
  cat6a: [fast, gigabit, multigigabit, fiveGigabit, tenGigabit],
  cat7: [fast, gigabit, multigigabit, fiveGigabit, tenGigabit],
  cat8: [
    fast,
    gigabit,
    multigigabit,
    fiveGigabit,
    tenGigabit,
    [25 * G, 30, '25GBASE-T channel of 24 m and two cords', 'IEEE 802.3bq'],
    [40 * G, 30, '40GBASE-T channel of 24 m and two cords', 'IEEE 802.3bq'],
  ],
  om1: [fastMultimode, gigabitShort(275), tenGigabitShort(33)],
  om2: [fastMultimode, gigabitShort(550), tenGigabitShort(82)],
  om3: [
    fastMultimode,
    gigabitShort(550),
    tenGigabitShort(300),
    [25 * G, 70, '25GBASE-SR', 'IEEE 802.3by'],
    [40 * G, 100, '40GBASE-SR4, four fibres each way', 'IEEE 802.3ba'],
    [100 * G, 70, '100GBASE-SR4, four fibres each way', 'IEEE 802.3bm'],
  ],
  om4: fasterMultimode,
  om5: fasterMultimode,
  os2: [
    [100 * M, 10_000, '100BASE-LX10', 'IEEE 802.3 clause 58'],
    [G, 5000, '1000BASE-LX; 1000BASE-LX10 reaches 10 km', 'IEEE 802.3 clauses 38 and 59'],
    [10 * G, 10_000, '10GBASE-LR', 'IEEE 802.3 clause 52'],
    [25 * G, 10_000, '25GBASE-LR', 'IEEE 802.3cc'],
    [40 * G, 10_000, '40GBASE-LR4', 'IEEE 802.3ba'],
    [100 * G, 10_000, '100GBASE-LR4', 'IEEE 802.3ba'],
  ],
  dac: [
    [10 * G, 7, 'passive direct attach, 1 to 10 Gb/s', 'SFF-8431'],
    [25 * G, 5, '25GBASE-CR', 'IEEE 802.3by'],
    [40 * G, 7, '40GBASE-CR4', 'IEEE 802.3ba'],
    [100 * G, 5, '100GBASE-CR4', 'IEEE 802.3bj'],
  ],
};
