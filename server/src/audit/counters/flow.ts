/** The traffic of one direction of an interface, from its samples. */

import { type Counter, advance } from '../../standards/if-mib.ts';
import type { Sample } from './sample.ts';

/** A stretch between two samples with a known number of octets; times in milliseconds. */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly octets: number;
}

export interface FlowBalance {
  /** In the order of time. */
  readonly steps: readonly Step[];
  readonly octets: number;
  /** The sum of the known stretches. */
  readonly milliseconds: number;
  /** bit/s over the known time. */
  readonly mean: number;
  /** bit/s in the busiest and the quietest stretch; the mean, where no stretch is long enough. */
  readonly busiest: number;
  readonly quietest: number;
  /** How often the counters were reset. */
  readonly beginnings: number;
  /** Stretches in which a counter may have wrapped more than once: their number, and the longest in milliseconds. */
  readonly tooFar: { readonly count: number; readonly longest: number };
}

/**
 * @param samples of one interface, by time, no two of the same
 * @param counterOf the direction
 * @param capacity bit/s, where the samples do not say
 * @param over the shortest stretch that counts as busiest or quietest; milliseconds
 */
export function flowOf(
  samples: readonly Sample[],
  counterOf: (sample: Sample) => Counter | undefined,
  capacity: number | undefined,
  over: number,
): FlowBalance {
  const steps: Step[] = [];
  let [beginnings, count, longest] = [0, 0, 0];
  // Times in whole seconds may be off by almost one.
  const coarse = samples.every(({ time }) => time % 1000 === 0) ? 1000 : 0;
  let last: Sample | undefined;
  let before: Counter | undefined;
  for (const sample of samples) {
    const after = counterOf(sample);
    if (after === undefined) continue;
    if (last !== undefined && before !== undefined) {
      const time = sample.time - last.time;
      const speed = sample.speed ?? capacity;
      const most = speed === undefined ? undefined : (speed * (time + coarse)) / 8000;
      const came = beganAnew(last, sample) ? ({ unknown: 'began-anew' } as const) : advance(before, after, most);
      if ('octets' in came) steps.push({ from: last.time, to: sample.time, octets: came.octets });
      else if (came.unknown === 'began-anew') beginnings++;
      else [count, longest] = [count + 1, Math.max(longest, time)];
    }
    [last, before] = [sample, after];
  }
  const octets = steps.reduce((total, step) => total + step.octets, 0);
  const milliseconds = steps.reduce((total, { from, to }) => total + to - from, 0);
  const mean = milliseconds === 0 ? 0 : (octets * 8000) / milliseconds;
  const stretches = rates(steps, over, coarse);
  const busiest = stretches.reduce((most, { least }) => Math.max(most, least), 0);
  const quietest = stretches.reduce((fewest, { most }) => Math.min(fewest, most), Infinity);
  return {
    steps,
    octets,
    milliseconds,
    mean,
    busiest: Math.max(busiest, mean),
    quietest: Math.min(quietest, mean),
    beginnings,
    tooFar: { count, longest },
  };
}

/** Whether counters were reset: the equipment reports it, or both counters fell at once, unlikely by wrapping. */
function beganAnew(before: Sample, after: Sample): boolean {
  if (before.since !== after.since) return true;
  if (before.upTime !== undefined && after.upTime !== undefined) {
    // Up time advances with the clock, but for the clocks' differences and the delay of the request.
    const passed = (after.time - before.time) / 10;
    return after.upTime - before.upTime < Math.max(0, passed * 0.99 - 200);
  }
  const fell = (a: Counter | undefined, b: Counter | undefined): boolean =>
    a !== undefined && b !== undefined && b.value < a.value;
  return fell(before.received, after.received) && fell(before.sent, after.sent);
}

/**
 * The rates of the shortest stretches of at least `over`, one from every sample: the least and the most that each can
 * be, as times in whole seconds are not exact.
 */
function rates(
  steps: readonly Step[],
  over: number,
  coarse: number,
): { readonly least: number; readonly most: number }[] {
  const found: { least: number; most: number }[] = [];
  let end = 0;
  let octets = 0;
  for (let start = 0; start < steps.length; start++) {
    const first = steps[start];
    if (first === undefined) break;
    if (end <= start) [end, octets] = [start + 1, first.octets];
    const upTo = (): Step | undefined => steps[end - 1];
    // A stretch ends at a gap.
    for (
      let next = steps[end];
      next !== undefined && next.from === upTo()?.to && (upTo()?.to ?? 0) - first.from < over;
      next = steps[end]
    ) {
      octets += next.octets;
      end++;
    }
    const time = (upTo()?.to ?? first.to) - first.from;
    if (time >= over)
      found.push({ least: (octets * 8000) / (time + coarse), most: (octets * 8000) / Math.max(1, time - coarse) });
    octets -= first.octets;
  }
  return found;
}

/** The number of lost frames by name of the counter; a counter that fell was reset, and that step is skipped. */
export function lostIn(samples: readonly Sample[]): ReadonlyMap<string, number> {
  const lost = new Map<string, number>();
  const last = new Map<string, number>();
  let before: Sample | undefined;
  for (const sample of samples) {
    if (before !== undefined && beganAnew(before, sample)) last.clear();
    for (const [name, value] of sample.lost) {
      const was = last.get(name);
      if (was !== undefined && value > was) lost.set(name, (lost.get(name) ?? 0) + value - was);
      last.set(name, value);
    }
    before = sample;
  }
  return lost;
}
