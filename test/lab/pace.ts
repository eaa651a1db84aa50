/** The part of the declared rates that the machine is asked to carry. */

import { directionsOf } from '../directions.ts';
import type { Plan } from '../../server/src/plan.ts';
import { ACK_EVERY, MAXIMUM_SEGMENT } from '../../server/src/standards/tcp.ts';

/** Frames per second over all ports of a site; a switch in user space was seen to lose none at twice as many. */
const MOST_FRAMES = 12_000;

/** Segments a second of data, and of acknowledgements for what comes the other way; bit/s. */
function segments(data: number, acknowledged: number): number {
  return (data + acknowledged / ACK_EVERY) / (8 * MAXIMUM_SEGMENT);
}

/** The part of the declared rates at which a site is run: all of it, or 1/2, 1/5, 1/10 …, as few as it takes. */
export function scaleOf(plan: Plan): number {
  let frames = 0;
  for (const { link, out } of directionsOf(plan)) {
    for (const { stream, tagged, untagged, repliesTagged, repliesUntagged } of plan.network.copies(link, out)) {
      const { runs, replies } = plan.network.rates(stream);
      for (const { perSecond } of runs) frames += (tagged + untagged) * perSecond.nominal;
      for (const { perSecond } of replies) frames += (repliesTagged + repliesUntagged) * perSecond.nominal;
    }
    for (const { traffic, tagged, untagged, repliesTagged, repliesUntagged } of plan.network.trafficCopies(link, out)) {
      const [there, back] = [traffic.rate ?? 0, traffic.back ?? 0];
      frames += (tagged + untagged) * segments(there, back) + (repliesTagged + repliesUntagged) * segments(back, there);
    }
  }
  for (let part = 1; ; part *= 10) {
    for (const divisor of [part, 2 * part, 5 * part]) if (frames / divisor <= MOST_FRAMES) return 1 / divisor;
  }
}
