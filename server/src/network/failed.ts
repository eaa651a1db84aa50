/**
 * What has failed, and not been taken away: nothing passes it, but whoever is at its other end keeps address and routes.
 *
 * A kernel of Linux as it comes keeps the route of a card without carrier and sends into nothing (measured; other hosts
 * may withdraw it, so this is the worse case).
 */

import type { Cable, Device } from '../site/model.ts';
import type { Member } from './link.ts';

export interface Failed {
  readonly cables: ReadonlySet<Cable>;
  readonly devices: ReadonlySet<Device>;
}

export function isDown({ cables, devices }: Failed, { cable, a, b }: Member): boolean {
  return cables.has(cable) || devices.has(a.device) || devices.has(b.device);
}
