/** Networks that lose the router which leads out of them. */

import { pathBetween } from '../network/bridge-tree.ts';
import type { Failed } from '../network/failed.ts';
import type { Network } from '../network/network.ts';
import type { Device, Vlan } from '../site/model.ts';
import type { Works } from './element.ts';

export interface GatewayLoss {
  readonly vlan: Vlan;
  readonly gateway: Device;
  /** Hosts that are alive, and reached it before. */
  readonly hosts: readonly Device[];
}

export function gatewaysLost({ site, network: before }: Works, after: Network, { devices }: Failed): GatewayLoss[] {
  return site.vlans.flatMap((vlan): GatewayLoss[] => {
    const gateway = vlan.gateway === undefined ? undefined : site.deviceByName.get(vlan.gateway);
    if (gateway === undefined) return [];
    const reached = (network: Network): Set<Device> => {
      const domain = network.topology.domainOf(vlan);
      const to = network.interfaces.in(gateway, domain);
      if (to === undefined) return new Set();
      const tree = network.tree(domain);
      return new Set(
        site.devices.filter((device) => {
          const from = device === gateway ? undefined : network.interfaces.in(device, domain);
          return from !== undefined && pathBetween(tree, from, to) !== undefined;
        }),
      );
    };
    const now = devices.has(gateway) ? new Set<Device>() : reached(after);
    const hosts = [...reached(before)].filter((device) => !now.has(device) && !devices.has(device));
    return hosts.length === 0 ? [] : [{ vlan, gateway, hosts }];
  });
}
