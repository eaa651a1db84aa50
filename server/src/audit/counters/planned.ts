/** The planned load of one direction of a link, as counters would count it. */

import { type Direction, taggingOf } from '../../network/link.ts';
import { loadOf } from '../../network/loads.ts';
import type { Plan } from '../../plan.ts';
import type { Stream } from '../../site/model.ts';

/** How octets are counted: the rates of frames with or without their check sequence. */
export type Octets = 'frame' | 'frameWithFcs';

/** bit/s */
export interface PlannedCounters {
  readonly nominal: number;
  readonly peak: number;
  /**
   * The part that is acknowledgements and traffic other than streams. A receiver may acknowledge many segments at once,
   * or each segment instead of each second one (RFC 5681 §4.2): so anything from none to twice as many agrees.
   */
  readonly replies: { readonly nominal: number; readonly peak: number };
}

/** The plan for a port without a cable. */
export const NOTHING: PlannedCounters = { nominal: 0, peak: 0, replies: { nominal: 0, peak: 0 } };

/** A direction of a link that is counted. */
export interface CountedDirection extends Direction {
  readonly octets: Octets;
}

export function plannedIn({ network }: Plan, { link, out, octets }: CountedDirection): PlannedCounters {
  const replies = { nominal: 0, peak: 0 };
  for (const { stream, repliesUntagged, repliesTagged } of network.copies(link, out)) {
    const { reply } = network.rates(stream);
    for (const part of ['nominal', 'peak'] as const)
      replies[part] += repliesUntagged * reply.untagged[octets][part] + repliesTagged * reply.tagged[octets][part];
  }
  // Other traffic comes and goes, so like acknowledgements it may be missing.
  for (const copies of network.trafficCopies(link, out)) {
    const own = loadOf(copies, copies.rates)[octets];
    for (const part of ['nominal', 'peak'] as const) replies[part] += own[part];
  }
  return { ...network.load(link, out)[octets], replies };
}

/** bit/s of each stream in this direction, on its way to its receivers. */
export function sharesIn({ network }: Plan, { link, out, octets }: CountedDirection): Map<Stream, number> {
  const shares = new Map<Stream, number>();
  for (const { stream, untagged, tagged } of network.copies(link, out)) {
    const rates = network.rates(stream);
    const rate = untagged * rates.untagged[octets].nominal + tagged * rates.tagged[octets].nominal;
    if (rate > 0) shares.set(stream, rate);
  }
  return shares;
}

export interface Stray {
  readonly stream: Stream;
  /** bit/s of one copy in this direction. */
  readonly rate: number;
}

/**
 * The streams that are not planned in a direction but could come there: those that the sender sends itself, or where it
 * forwards frames, those that are sent in a network that the link carries.
 */
export function straysIn({ network }: Plan, { link, out, octets }: CountedDirection): Stray[] {
  const planned = new Set(
    network
      .copies(link, out)
      .filter(({ untagged, tagged }) => untagged + tagged > 0)
      .map(({ stream }) => stream),
  );
  const passesOn = out.device.bridging || out.device.routing;
  return network.deliveries.flatMap(({ stream, source, domains }): Stray[] => {
    if (planned.has(stream) || source === undefined || (!passesOn && source !== out.device)) return [];
    const own = domains.length > 0 ? domains : network.interfaces.of(source).map(({ domain }) => domain);
    const how = own.map((domain) => taggingOf(link, domain)).find((each) => each !== 'no');
    const rate = how === undefined ? 0 : network.rates(stream)[how][octets].nominal;
    return rate === 0 ? [] : [{ stream, rate }];
  });
}
