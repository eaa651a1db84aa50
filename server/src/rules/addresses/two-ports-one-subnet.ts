import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Network } from '../../network/network.ts';
import { type Device, type Port, type Site, type Vlan, portName } from '../../site/model.ts';
import { placeOfPort } from '../../site/places.ts';
import { contains, formatAddress } from '../../standards/ipv4.ts';
import { asName } from '../../text/words.ts';

export const twoPortsOneSubnet: Rule = {
  id: 'two-ports-one-subnet',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A host has two ports in one network.',
  why: `Linux answers for any of its addresses at any of its ports, so it is a matter of luck which port the others send to, and it
changes. What it sends itself, and groups that it joins, go by one of the ports alone, with or without a cable; the
second adds no speed. Cable the second port into another VLAN, or take its address out. What \`make networkd\` and
\`make iproute2\` write for such a host sets arp_ignore, arp_announce and rp_filter, so that each port answers for its
own address.`,
  source: 'RFC 1122 §3.3.4.2 (the weak end system model), from memory; Linux: ip-sysctl, arp_ignore and arp_filter',
  check({ site, network }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.ports.length < 2) continue;
      const first = new Map<string, Own>();
      for (const own of addressesOf(site, network, device)) {
        const other = first.get(own.network);
        if (other === undefined) first.set(own.network, own);
        if (other === undefined || other.port === own.port) continue;
        // Ports of an aggregation group share one address.
        if (own.port.lag !== undefined && own.port.lag === other.port.lag) continue;
        const idle = [other, own].find(({ isCabled }) => !isCabled);
        const luck =
          idle === undefined
            ? 'it is luck which of them the others send to'
            : `${portName(idle.port)} has no cable, but Linux may still send by it, into nothing`;
        report({
          at: placeOfPort(own.port),
          message:
            `${portName(own.port)} (${formatAddress(own.address)}) and ${portName(other.port)} ` +
            `(${formatAddress(other.address)}) are both in ${asName(own.network)}: ${luck}. Cable one into another VLAN, or ` +
            'remove its address.',
          acceptAt: [portName(own.port), portName(other.port), device.name],
          related: [{ at: placeOfPort(other.port), message: `${portName(other.port)} is there too` }],
          // A consequence of a port in the wrong network, which is reported.
          effects: [other, own].filter(({ isOutside }) => isOutside).map(({ port }) => port),
        });
      }
    }
  },
};

interface Own {
  readonly port: Port;
  readonly address: number;
  /** The name of the address's network. */
  readonly network: string;
  readonly isCabled: boolean;
  /** Whether the address is outside the network's subnet. */
  readonly isOutside: boolean;
}

/** Addresses in the order of the ports; for a port without a cable, those in the subnet of a VLAN. */
function addressesOf(site: Site, { interfaces, topology }: Network, device: Device): Own[] {
  const cabled = interfaces.of(device);
  if (cabled.length === 0) return [];
  return device.ports.flatMap((port): Own[] => {
    if (port.forwards) return [];
    if (topology.linkAt(port) !== undefined)
      return cabled.flatMap(({ port: at, address, domain }) =>
        at !== port || address === undefined
          ? []
          : [{ port, address, network: domain.name, isCabled: true, isOutside: isOutside(domain.vlan, address) }],
      );
    return port.addresses.flatMap(({ address }) => {
      const home = site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
      return home === undefined ? [] : [{ port, address, network: home.name, isCabled: false, isOutside: false }];
    });
  });
}

function isOutside(vlan: Vlan | undefined, address: number): boolean {
  return vlan?.subnet !== undefined && !contains(vlan.subnet, address);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.20.5}, cams: {address: 192.168.20.6}}}
#                                                                      ^^^^^^^^^^^^^^^^^^^^^^^ recorder/cams (192.168.20.6) and recorder/lan (192.168.20.5) are both in video
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2-4: {vlan: video}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.6}}}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
`,
  },
];
