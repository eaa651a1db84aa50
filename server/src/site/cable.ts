/** What a cable is, and which devices it joins or passes. */

import { type Medium, moduleNamed } from '../standards/modules.ts';
import { type Cable, type Device, type Port, type Site, portAt } from './model.ts';

/** The devices at its ends and the patch panels on its way, in order. */
export function cableDevices({ deviceByName }: Pick<Site, 'deviceByName'>, { from, through, to }: Cable): Device[] {
  return [from, ...through, to].flatMap((end) => (end === undefined ? [] : (deviceByName.get(end.device) ?? [])));
}

/** The medium that a port takes: that of its module, else the declared one. */
export function mediumAt({ module, medium }: Port): Medium | undefined {
  return (module === undefined ? undefined : moduleNamed(module)?.medium) ?? medium;
}

/** By its type; without one, by the ports at its ends: PoE needs copper, else their medium decides. */
export function isCopper(site: Pick<Site, 'deviceByName'>, { type, from, to }: Cable): boolean | 'unknown' {
  if (type !== undefined) return !type.startsWith('om') && !type.startsWith('os');
  const ends = [from, to].flatMap((end) => portAt(site, end) ?? []);
  if (ends.some(({ pd }) => pd !== undefined)) return true;
  const [medium] = ends.flatMap((port) => mediumAt(port) ?? []);
  return medium === undefined ? 'unknown' : medium === 'copper' || medium === 'direct-attach';
}
