/** What the plan has for one direction of a link, as counters would count it. */

import { type Link, carries } from '../../network/link.ts';
import type { WireRates } from '../../network/rates.ts';
import type { Plan } from '../../plan.ts';
import type { Port, Stream } from '../../site/model.ts';

/** How octets are counted: the rates of frames with or without their check sequence. */
export type Octets = 'frame' | 'frameWithFcs';

/** bit/s */
export interface Planned {
  readonly nominal: number;
  readonly peak: number;
  /**
   * Acknowledgements among it. A receiver may send fewer, where it takes segments in bulk, or one for each segment
   * instead of for each second one (RFC 5681 §4.2): from none to twice as many are as planned.
   */
  readonly replies: { readonly nominal: number; readonly peak: number };
}

const NOTHING: Planned = { nominal: 0, peak: 0, replies: { nominal: 0, peak: 0 } };

/** @param direction 2·link from `a` to `b`, 2·link + 1 back; `undefined` at a port without a cable */
export function plannedIn({ network }: Plan, direction: number | undefined, octets: Octets): Planned {
  const load = direction === undefined ? undefined : network.loads[direction]?.[octets];
  if (direction === undefined || load === undefined) return NOTHING;
  const replies = { nominal: 0, peak: 0 };
  for (const { stream, repliesUntagged, repliesTagged } of network.crossings.at(direction)) {
    const reply = network.rates[stream.index]?.reply;
    for (const part of ['nominal', 'peak'] as const)
      replies[part] +=
        repliesUntagged * (reply?.untagged[octets][part] ?? 0) + repliesTagged * (reply?.tagged[octets][part] ?? 0);
  }
  return { ...load, replies };
}

/** bit/s that each stream puts there on its way to its receivers. */
export function sharesIn(
  { network }: Plan,
  { direction, octets }: { readonly direction: number; readonly octets: Octets },
): Map<Stream, number> {
  const shares = new Map<Stream, number>();
  for (const { stream, untagged, tagged } of network.crossings.at(direction)) {
    const rates = network.rates[stream.index];
    const rate = untagged * (rates?.untagged[octets].nominal ?? 0) + tagged * (rates?.tagged[octets].nominal ?? 0);
    if (rate > 0) shares.set(stream, rate);
  }
  return shares;
}

export interface Stray {
  readonly stream: Stream;
  /** bit/s that one copy of it would put there. */
  readonly rate: number;
}

/**
 * The streams that are not planned in a direction, and could come there: what the sender sends itself, or what is sent
 * in a network that the link carries where the sender passes frames on.
 */
export function straysIn(plan: Plan, link: Link, out: Port, direction: number, octets: Octets): Stray[] {
  const { network } = plan;
  const planned = new Set(
    network.crossings
      .at(direction)
      .filter(({ untagged, tagged }) => untagged + tagged > 0)
      .map(({ stream }) => stream),
  );
  const passesOn = out.device.bridging || out.device.kind === 'router';
  return network.deliveries.flatMap(({ stream, source, networks }): Stray[] => {
    if (planned.has(stream) || source === undefined || (!passesOn && source !== out.device)) return [];
    const own = networks.length > 0 ? networks : network.interfaces.of(source).map((at) => at.network);
    const how = own.map((index) => carries(link, index)).find((each) => each !== 'no');
    const rates: WireRates | undefined = how === undefined ? undefined : network.rates[stream.index]?.[how];
    const rate = rates?.[octets].nominal ?? 0;
    return rate === 0 ? [] : [{ stream, rate }];
  });
}
