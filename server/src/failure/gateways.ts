/** Networks that lose their gateway or their clock. */

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

export function gatewaysLost(works: Works, after: Network, failed: Failed): GatewayLoss[] {
  return works.site.vlans.flatMap((vlan): GatewayLoss[] => {
    const gateway = vlan.gateway === undefined ? undefined : works.site.deviceByName.get(vlan.gateway);
    const hosts = gateway === undefined ? [] : hostsWithout(works, after, failed, { vlan, server: gateway });
    return gateway === undefined || hosts.length === 0 ? [] : [{ vlan, gateway, hosts }];
  });
}

export interface ClockLoss {
  readonly vlan: Vlan;
  readonly clock: Device;
  /** Hosts that are alive, and reached it before. */
  readonly hosts: readonly Device[];
}

/** VLANs that lose their clock; one in another network is reached by the gateway. */
export function clocksLost(works: Works, after: Network, failed: Failed): ClockLoss[] {
  const { site, network } = works;
  return site.vlans.flatMap((vlan): ClockLoss[] => {
    const clock = vlan.clock === undefined ? undefined : site.deviceByName.get(vlan.clock);
    if (clock === undefined) return [];
    const isNear = network.interfaces.in(clock, network.topology.domainOf(vlan)) !== undefined;
    const gateway = vlan.gateway === undefined ? undefined : site.deviceByName.get(vlan.gateway);
    const server = isNear ? clock : gateway;
    if (server === undefined) return [];
    const hosts = hostsWithout(works, after, failed, { vlan, server, isDead: failed.devices.has(clock) });
    return hosts.length === 0 ? [] : [{ vlan, clock, hosts }];
  });
}

/** The hosts of a VLAN that reached a device in it and no longer do. */
function hostsWithout(
  { site, network: before }: Works,
  after: Network,
  { devices }: Failed,
  { vlan, server, isDead = false }: { readonly vlan: Vlan; readonly server: Device; readonly isDead?: boolean },
): Device[] {
  const reached = (network: Network): Set<Device> => {
    const domain = network.topology.domainOf(vlan);
    const to = network.interfaces.in(server, domain);
    if (to === undefined) return new Set();
    const tree = network.tree(domain);
    return new Set(
      site.devices.filter((device) => {
        const from = device === server ? undefined : network.interfaces.in(device, domain);
        return from !== undefined && pathBetween(tree, from, to) !== undefined;
      }),
    );
  };
  const now = isDead || devices.has(server) ? new Set<Device>() : reached(after);
  return [...reached(before)].filter((device) => !now.has(device) && !devices.has(device));
}
