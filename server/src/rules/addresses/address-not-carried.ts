import { formatAddress } from '../../standards/ipv4.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { type VlanMembership, domainsOf, hasVlans } from '../../network/vlan-membership.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type Port, type Vlan, portName } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import { setVlans } from '../../site/port-vlans.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Fix, fixOf } from '../../site/edit.ts';

export const addressNotCarried: Rule = {
  id: 'address-not-carried',
  severity: 'error',
  showAfter: 'item',
  summary: 'A port has an address in a VLAN that it does not carry.',
  why: `Nothing in that VLAN reaches the address: a router does not route there, and a host neither sends into the VLAN nor
hears from it. Let the port carry the VLAN, at both ends of its cable, or move the address to a port that does.`,
  source: 'IEEE 802.1Q: a frame stays in its VLAN (from memory)',
  check({ site, network }: RuleContext, report: Report): void {
    for (const port of site.ports) {
      if (!port.addresses.some(({ vlan }) => vlan !== undefined)) continue;
      const carried = carriedBy({ site, network }, port);
      if (carried === undefined) continue;
      for (const { address, vlan: name, keyPath } of port.addresses) {
        const vlan = name === undefined ? undefined : site.vlanByName.get(name);
        if (vlan === undefined) continue;
        const all = domainsOf(carried).flatMap((domain) => domain.vlan?.name ?? []);
        if (all.includes(vlan.name)) continue;
        const own = portName(port);
        const followed = consequencesOf(network.causes, [network.topology.linkAt(port)]);
        report({
          at: placeOf(port.device.item, keyPath),
          message:
            `${own} carries ${all.length === 0 ? 'no VLAN' : list(all)}, so nothing in ${asName(vlan.name)} reaches ` +
            `${formatAddress(address)}. Let it carry ${asName(vlan.name)}, or remove the address.`,
          acceptAt: [own, port.device.name, formatAddress(address)],
          ...followed,
          entails: [...followed.entails, ...missingWithout(network, port.device, vlan)],
          fixes: () => carrying(network.topology.linkAt(port), port, vlan),
        });
      }
    }
  },
};

/** Routes of the device into the VLAN, and the deliveries to and from it that fail there. */
function missingWithout(network: Network, device: Device, { name }: Vlan): object[] {
  const lost = lossesAt(network, [device]).obstacles.filter((why) => Object.values(why).includes(name));
  return [...device.routes.filter(({ vlan }) => vlan === name), ...lost];
}

/** The VLANs of the port, else the untagged VLAN of its cable; `undefined` where neither is known. */
function carriedBy({ site, network }: Pick<RuleContext, 'site' | 'network'>, port: Port): VlanMembership | undefined {
  const { vlan, native, trunk = [] } = port;
  const isKnown = [vlan, native, ...trunk].every((name) => name === undefined || site.vlanByName.has(name));
  if (hasVlans(port)) return isKnown ? network.topology.vlanMembershipOf(port) : undefined;
  const link = network.topology.linkAt(port);
  return link?.untagged === undefined ? undefined : link;
}

/** Adds the VLAN to the port, and to the switch port at the other end where that lacks it. */
function carrying(link: Link | undefined, port: Port, vlan: Vlan): Fix[] {
  const other = link === undefined ? undefined : oppositePort(link, port);
  const there = other === undefined ? [] : [other.vlan, other.native, ...(other.trunk ?? [])];
  const carries = other === undefined || !hasVlans(other) || there.includes(vlan.name);
  const ports = carries || other === undefined ? [port] : [port, other];
  const edits = ports.map((end) => {
    const { vlan: access, native = access, trunk = [] } = end;
    return setVlans(end, { trunk: [...trunk, vlan.name], native });
  });
  if (edits.some((edit) => edit === undefined)) return [];
  const title = `Let ${list(ports.map(portName))} carry ${asName(vlan.name)}`;
  return fixOf(title, ...edits.flatMap((edit) => edit ?? []));
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  router: {kind: router, ports: {lan: {trunk: [house], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
#                                                                                              ^^^^^^^^^^^^ router/lan carries house, so nothing in video reaches 192.168.20.1
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
`,
  },
];
