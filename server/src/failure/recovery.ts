/** How long streams that find another way are interrupted. */

import type { Failed } from '../network/failed.ts';
import { hasFailed } from '../network/failed.ts';
import { type Link, cablesOf } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import type { Cable, Stream } from '../site/model.ts';
import { QUERY_INTERVAL, QUERY_RESPONSE_INTERVAL } from '../standards/igmp.ts';
import { timeToReconverge } from '../standards/spanning-tree.ts';
import type { Available } from './available.ts';
import type { Works } from './element.ts';

export interface Recovery {
  /** Seconds at the most until frames go another way, by the timers of the older spanning tree; 0 without one. */
  readonly frames: number;
  /**
   * Seconds more at the most until a group is back: the switches on its new way know no members until they are asked
   * again. They may be asked at once (RFC 4541 §2.1.1(4)).
   */
  readonly groups: number;
  /** What is interrupted for so long. */
  readonly streams: readonly Stream[];
}

export function recoveryOf(
  { site, network: before }: Works,
  after: Network,
  failed: Failed,
  available: Available,
): Recovery | undefined {
  const passed = (network: Network, link: Link): Stream[] =>
    [link.a, link.b].flatMap((out) => network.copies(link, out).map(({ stream }) => stream));
  const cut = before.topology.links.filter((link) => cablesOf(link).some((member) => hasFailed(failed, member)));
  const interrupted = new Set(cut.flatMap((link) => passed(before, link)));
  const streams = site.streams.filter((stream) => interrupted.has(stream) && available.reaches(stream).size > 0);
  if (streams.length === 0) return undefined;
  const idle = new Set<Cable>();
  const opened = before.topology.spanningTree.blocked.filter((link) => {
    idle.add(link.cable);
    return after.topology.links.some((now) => now.cable === link.cable && now.blocked === undefined);
  });
  if (opened.length === 0) return rerouted(after, failed, streams);
  // Its own cable is cut where the port that discarded is at one of the ends.
  const ends = new Set(cut.flatMap(({ a, b }) => [a.device, b.device]));
  const isOwn = opened.every(({ blocked }) => blocked !== undefined && ends.has(blocked.device));
  const joined = streams.some(({ group }) => group !== undefined) && opened.some((link) => isForgetful(link));
  return {
    frames: timeToReconverge(isOwn),
    groups: joined ? QUERY_INTERVAL + QUERY_RESPONSE_INTERVAL : 0,
    streams,
  };
}

/** Streams that still reach somebody else, or go on over the other cables of one link, are not interrupted. */
function rerouted(after: Network, failed: Failed, streams: readonly Stream[]): Recovery | undefined {
  const isAggregated = after.topology.links.some(({ a }) => a.lag !== undefined && !failed.devices.has(a.device));
  return isAggregated ? { frames: 0, groups: 0, streams } : undefined;
}

/** Whether a switch at it keeps a group back until somebody has joined. */
function isForgetful({ a, b }: Link): boolean {
  return [a, b].some(({ device }) => device.snooping && device.unregistered === 'drop');
}
