/**
 * Cables and devices that have failed without being removed: nothing passes them, but the other end of a failed cable
 * keeps its address and routes.
 *
 * By default the Linux kernel keeps the route of a card without carrier, and what it sends there is lost (measured;
 * other hosts may withdraw the route, so this is the worse case).
 */

import type { Cable, Device } from '../site/model.ts';
import type { MemberLink } from './link.ts';

export interface Failed {
  readonly cables: ReadonlySet<Cable>;
  readonly devices: ReadonlySet<Device>;
}

export function hasFailed({ cables, devices }: Failed, { cable, a, b }: MemberLink): boolean {
  return cables.has(cable) || devices.has(a.device) || devices.has(b.device);
}
