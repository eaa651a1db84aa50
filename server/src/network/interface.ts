/** A host's or router's place in one broadcast domain. */

import type { Device, Port } from '../site/model.ts';
import type { Link } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

export interface Interface {
  readonly device: Device;
  readonly port: Port;
  readonly link: Link;
  readonly domain: BroadcastDomain;
  readonly address: number | undefined;
}
