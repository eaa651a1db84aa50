/** Which devices can hand packets on from one network to another. */

import type { Device } from '../site/model.ts';

/** A server or a computer can be set up to forward between its ports. */
const FORWARDING: readonly (string | undefined)[] = ['router', 'server', 'computer'];

export function canForward({ kind, bridging }: Device): boolean {
  return !bridging && FORWARDING.includes(kind);
}
