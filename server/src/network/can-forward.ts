/** Which devices can forward packets from one network to another. */

import type { Device } from '../site/model.ts';

/** Routers and switches that route; a server or a computer can be set up to forward between its ports. */
export function canForward({ kind, routing }: Device): boolean {
  return routing || kind === 'server' || kind === 'computer';
}
