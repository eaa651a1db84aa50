/** Everything that can be made, in the order in which it is listed. */

import { playlist } from './announcements/playlist.ts';
import { sdp } from './announcements/sdp.ts';
import { announcements } from './announcements/units.ts';
import { dnsmasq } from './addresses/dnsmasq.ts';
import { iproute2 } from './network/iproute2.ts';
import { networkd } from './network/networkd.ts';
import type { Output } from './output.ts';

export const OUTPUTS: readonly Output[] = [
  iproute2,
  networkd,
  dnsmasq,
  sdp,
  announcements,
  playlist,
];
