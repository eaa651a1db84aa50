/** Which devices can ask for memberships. */

import type { Device } from '../site/model.ts';

/** Kinds of device that never ask; a server or computer can be made a querier. */
const SILENT: readonly (string | undefined)[] = [
  'camera',
  'display',
  'tuner',
  'patch-panel',
  'media-converter',
  'access-point',
];

/**
 * Whether a device can ask for memberships. Common practice, no source: a switch has a querier with its IGMP snooping,
 * or to route multicast.
 */
export function canQuery({ kind, snooping, routing, multicastRouting }: Device): boolean {
  return !SILENT.includes(kind) && (kind !== 'switch' || snooping || (routing && multicastRouting));
}
