/** What a cable is, and which devices it joins or passes. */

import { type Cable, type Device, type Site, portAt } from './model.ts';

/** The devices at its ends and the patch panels on its way, in order. */
export function cableDevices({ deviceByName }: Pick<Site, 'deviceByName'>, { from, through, to }: Cable): Device[] {
  return [from, ...through, to].flatMap((end) => (end === undefined ? [] : (deviceByName.get(end.device) ?? [])));
}

/** By its type; without one it is copper where a device is powered over it. */
export function isCopper(site: Pick<Site, 'deviceByName'>, { type, from, to }: Cable): boolean | 'unknown' {
  if (type !== undefined) return type.startsWith('cat') || type === 'dac';
  return [from, to].some((end) => portAt(site, end)?.draws !== undefined) ? true : 'unknown';
}
