/** Which devices can ask for memberships. */

import type { Device } from '../site/model.ts';

/** Kinds of device that are never a querier; a server or computer can be made one. */
const SILENT: readonly (string | undefined)[] = [
  'camera',
  'display',
  'tuner',
  'patch-panel',
  'media-converter',
  'access-point',
];

/**
 * Whether a device can be a querier. Common practice, no source: a switch has one as part of its IGMP snooping or its
 * multicast routing.
 */
export function canQuery({ kind, snooping, routing, multicastRouting }: Device): boolean {
  return !SILENT.includes(kind) && (kind !== 'switch' || snooping || (routing && multicastRouting));
}
