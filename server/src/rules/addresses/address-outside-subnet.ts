import { contains, formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { type AddressUse, holder, isOutside } from '../../network/address-uses.ts';
import { oppositePort } from '../../network/link.ts';
import type { Topology } from '../../network/wiring.ts';
import { type Fix, fixOf, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, type Site, type Vlan, portName } from '../../site/model.ts';
import { few, list } from '../../text/words.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const addressOutsideSubnet: Rule = {
  id: 'address-outside-subnet',
  severity: 'error',
  summary: 'An address is not in the subnet of the VLAN that its port is in.',
  why: `Hosts look for an address of their own subnet on the link, and for any other behind a router. One with an
address of another subnet is looked for in the wrong place and is not reached, not even from the next port. Correct
the address, or cable the device to a port in the VLAN that the address belongs to.`,
  source: 'RFC 1122 §3.3.1.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const use of network.addressUses) {
      const vlans = use.port === undefined ? site.vlans : use.vlans;
      if (!isOutside(use, vlans)) continue;
      const about = [use.device.name, holder(use), formatAddress(use.address)];
      const at = placeOf(use.device.item, use.route);
      const address = formatAddress(use.address);
      if (use.port === undefined) {
        const message =
          `${address} is in the subnet of no VLAN, so ${use.device.name} cannot be reached. Take one of ` +
          `${few(vlans.map(subnetText))}.`;
        report({ at, message, about, fixes: () => nextFreeAddressFix(site, nearest(vlans, use.address), use) });
        continue;
      }
      report({
        at,
        message:
          `${address} is not in ${list(vlans.map(subnetText), 'or')}${cabledTo(network.topology, use, use.port)}. ` +
          'Correct the address, or the VLAN.',
        about,
        effects: [use],
        ...consequencesOf(
          network.causes,
          [use],
          vlans
            .slice(0, 2)
            .map((vlan) => ({ at: placeOf(vlan.item, ['subnet']), message: `the subnet of ${vlan.name}` })),
        ),
        fixes: () => [...nextFreeAddressFix(site, vlans[0], use), ...otherVlan(site, network.topology, use)],
      });
    }
  },
};

function subnetText({ name, subnet }: Vlan): string {
  return subnet === undefined ? name : `${formatSubnet(subnet)} of ${name}`;
}

/** By which cable the port is in that VLAN, where it is not said at the address. */
function cabledTo(topology: Topology, { route, device }: AddressUse, port: Port): string {
  const link = topology.linkAt(port);
  if (link === undefined || route.includes('addresses')) return '';
  return (
    `, which ${portName(oppositePort(link, port))} puts ` +
    `${device.ports.length === 1 ? device.name : portName(port)} in`
  );
}

/** Puts the switch's port into the VLAN that the address belongs to. */
function otherVlan(site: Site, topology: Topology, { port, address }: AddressUse): Fix[] {
  const link = port === undefined ? undefined : topology.linkAt(port);
  const vlan = site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
  if (link === undefined || port === undefined || vlan === undefined) return [];
  const { device, name, route, vlan: access } = oppositePort(link, port);
  if (access === undefined || route[1] !== name) return [];
  return fixOf(
    `Put ${device.name}/${name} into ${vlan.name}`,
    setValue(device.item, [...route, 'vlan'], scalarText(vlan.name, true)),
  );
}

function nearest(vlans: readonly Vlan[], address: number): Vlan | undefined {
  const distance = ({ subnet }: Vlan): number => (subnet === undefined ? Infinity : Math.abs(subnet.network - address));
  return vlans.reduce<Vlan | undefined>(
    (best, vlan) => (best === undefined || distance(vlan) < distance(best) ? vlan : best),
    undefined,
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.10.31}
#                                      ^^^^^^^^^^^^^ is not in 192.168.20.0/24 of video, which core/1 puts paddock-cam in
cables:
  - {from: core/1, to: paddock-cam}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/1, to: paddock-cam}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, address: 192.168.2.2}
#                               ^^^^^^^^^^^ is in the subnet of no VLAN
  router: {kind: router, ports: {lan: {addresses: {video: 192.168.2.1}}}}
#                                                         ^^^^^^^^^^^ is not in 192.168.20.0/24 of video
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, address: 192.168.20.2}
  router: {kind: router, ports: {lan: {addresses: {video: 192.168.20.1}}}}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, address: 192.168.20.2}
  router: {kind: router, ports: {lan: {addresses: {video: 192.168.2.1}}}}
`,
  },
];
