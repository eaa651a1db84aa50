/**
 * Channels of terrestrial television to the frequency of their centre.
 *
 * Source: the grids of the scan tables for DVB-T, ATSC and ISDB-T that distributions package (thousands of
 * transmitters lie on them); Japan from memory, with Brazil's offset.
 */

export type ChannelPlan = 'region-1' | 'australia' | 'north-america' | 'brazil' | 'japan';

/** Channels `from` to `to` have their centre at `base + step · channel`, Hz. */
interface Band {
  readonly from: number;
  readonly to: number;
  readonly base: number;
  readonly step: number;
}

const MHZ = 1e6;
/** ISDB-T puts its centre a seventh of a megahertz above that of the channel. */
const SEVENTH = MHZ / 7;

interface Plan {
  readonly bands: readonly Band[];
  /** Channels without a number in a band, by name. */
  readonly named?: ReadonlyMap<string, number>;
  /** How far from the grid transmitters may be, Hz: up to that it is an offset and not a mistake. */
  readonly offset: number;
}

const PLANS: Readonly<Record<ChannelPlan, Plan>> = {
  'region-1': {
    bands: [
      { from: 5, to: 12, base: 142.5 * MHZ, step: 7 * MHZ },
      { from: 21, to: 69, base: 306 * MHZ, step: 8 * MHZ },
    ],
    offset: 0.5 * MHZ,
  },
  'australia': {
    bands: [
      { from: 6, to: 9, base: 135.5 * MHZ, step: 7 * MHZ },
      { from: 10, to: 12, base: 142.5 * MHZ, step: 7 * MHZ },
      { from: 28, to: 69, base: 333.5 * MHZ, step: 7 * MHZ },
    ],
    named: new Map([['9A', 205.5 * MHZ]]),
    offset: 0.25 * MHZ,
  },
  'north-america': {
    bands: [
      { from: 2, to: 4, base: 45 * MHZ, step: 6 * MHZ },
      { from: 5, to: 6, base: 49 * MHZ, step: 6 * MHZ },
      { from: 7, to: 13, base: 135 * MHZ, step: 6 * MHZ },
      { from: 14, to: 69, base: 389 * MHZ, step: 6 * MHZ },
    ],
    offset: 0.05 * MHZ,
  },
  'brazil': {
    bands: [
      { from: 7, to: 13, base: 135 * MHZ + SEVENTH, step: 6 * MHZ },
      { from: 14, to: 69, base: 389 * MHZ + SEVENTH, step: 6 * MHZ },
    ],
    offset: 0.2 * MHZ,
  },
  'japan': { bands: [{ from: 13, to: 62, base: 395 * MHZ + SEVENTH, step: 6 * MHZ }], offset: 0.2 * MHZ },
};

/** The centre of a channel, Hz; `undefined` where the plan has no such channel. */
export function channelFrequency(plan: ChannelPlan, channel: number | string): number | undefined {
  const { bands, named } = PLANS[plan];
  const number = Number(channel);
  const band = bands.find(({ from, to }) => Number.isInteger(number) && number >= from && number <= to);
  return band === undefined ? named?.get(String(channel)) : band.base + band.step * number;
}

/** The channel with its centre at the frequency, or within the offset of the plan's transmitters. */
export function channelAt(plan: ChannelPlan, frequency: number): number | string | undefined {
  const { bands, named = new Map<string, number>(), offset } = PLANS[plan];
  for (const { from, to, base, step } of bands) {
    const channel = Math.round((frequency - base) / step);
    if (channel >= from && channel <= to && Math.abs(base + step * channel - frequency) <= offset) return channel;
  }
  return [...named].find(([, centre]) => Math.abs(centre - frequency) <= offset)?.[0];
}

/** Whether a frequency is that of the channel, or off it by no more than transmitters of the plan are, Hz. */
export function isOnChannel(plan: ChannelPlan, channel: number | string, frequency: number): boolean {
  const centre = channelFrequency(plan, channel);
  return centre !== undefined && Math.abs(centre - frequency) <= PLANS[plan].offset;
}

/** Where television ends and mobile telephony begins, Hz; `undefined` for plans where that is not known here. */
export function televisionEnds(plan: ChannelPlan): number | undefined {
  return { 'region-1': 694 * MHZ, 'australia': 694 * MHZ, 'north-america': 608 * MHZ }[plan as string];
}
