/** The VLANs that an address may be meant for. */

import { domainsOf } from '../../network/vlan-membership.ts';
import type { Port, Vlan } from '../../site/model.ts';
import { type Wanted, textAt } from './wanted.ts';

/** One where a key or the cable at the port decides; else all, the likeliest first. */
export function vlansWanted(wanted: Wanted): Vlan[] {
  const { site, route, name } = wanted;
  const withSubnet = site.vlans.filter(({ subnet }) => subnet !== undefined);
  const named =
    route[route.length - 2] === 'addresses' ? route[route.length - 1] : textAt(wanted, [...route.slice(0, -1), 'vlan']);
  const vlan = named === undefined ? undefined : site.vlanByName.get(String(named));
  if (vlan !== undefined) return [vlan];
  const device = site.deviceByName.get(name);
  const portKey = route[0] === 'ports' ? String(route[1]).split('-')[0] : undefined;
  const port =
    portKey === undefined
      ? device?.bridging === true
        ? undefined
        : device?.ports[0]
      : device?.portByName.get(portKey);
  const cabled = port === undefined ? [] : vlansAt(wanted, port);
  if (cabled.length > 0) return cabled;
  if (device?.bridging === true) return likeliest(withSubnet, ({ querier }) => (querier === name ? 0 : 1));
  // The VLAN with most devices of its kind first.
  const kind = wanted.kind ?? textAt(wanted, ['kind']);
  const homes = countByVlan(wanted, kind);
  return likeliest(withSubnet, (own) => -(homes.get(own) ?? 0));
}

function vlansAt({ checked }: Wanted, port: Port): Vlan[] {
  const { topology } = checked.plan.network;
  const link = topology.linkAt(port);
  if (link === undefined) return [];
  return domainsOf(link)
    .flatMap(({ vlan }) => vlan ?? [])
    .filter(({ subnet }) => subnet !== undefined);
}

function countByVlan({ site, checked, name }: Wanted, kind: string | undefined): Map<Vlan, number> {
  const found = new Map<Vlan, number>();
  for (const { kind: own, ports, name: other } of site.devices) {
    if (other === name || (kind !== undefined && own !== kind)) continue;
    for (const port of ports) {
      const link = checked.plan.network.topology.linkAt(port);
      const vlan = link?.untagged?.vlan;
      if (vlan !== undefined) found.set(vlan, (found.get(vlan) ?? 0) + 1);
    }
  }
  return found;
}

function likeliest(vlans: readonly Vlan[], rank: (vlan: Vlan) => number): Vlan[] {
  return [...vlans].sort((a, b) => rank(a) - rank(b));
}
