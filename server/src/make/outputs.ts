/** All outputs, in the order in which they are listed. */

import { channelList } from './announcements/channel-list.ts';
import { playlist } from './announcements/playlist.ts';
import { sdp } from './announcements/sdp.ts';
import { announcements } from './announcements/units.ts';
import { addressPlan } from './addresses/address-plan.ts';
import { dnsmasq } from './addresses/dnsmasq.ts';
import { deletion } from './media/deletion.ts';
import { recorders } from './media/recorders.ts';
import { relays } from './media/relays.ts';
import { iproute2 } from './network/iproute2.ts';
import { networkd } from './network/networkd.ts';
import type { Output } from './output.ts';
import { billOfMaterials } from './purchases/bill-of-materials.ts';
import { outletSchedule } from './television/outlet-schedule.ts';
import { cableLabels } from './wiring/cable-labels.ts';
import { patchSchedule } from './wiring/patch-schedule.ts';
import { portTable } from './wiring/port-table.ts';

export const OUTPUTS: readonly Output[] = [
  iproute2,
  networkd,
  dnsmasq,
  addressPlan,
  portTable,
  patchSchedule,
  cableLabels,
  billOfMaterials,
  outletSchedule,
  sdp,
  announcements,
  playlist,
  channelList,
  relays,
  recorders,
  deletion,
];
