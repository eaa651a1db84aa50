import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Interface } from '../../network/interfaces.ts';
import type { BroadcastDomain } from '../../network/vlan-membership.ts';
import { portName } from '../../site/model.ts';
import { placeOfPort } from '../../site/places.ts';
import { formatAddress } from '../../standards/ipv4.ts';

export const twoPortsOneSubnet: Rule = {
  id: 'two-ports-one-subnet',
  severity: 'warning',
  summary: 'A host has addresses at two ports in one network.',
  why: `Linux answers for any of its addresses at any of its ports, so which port the others send to is luck, and it
changes. What it sends itself, and groups that it joins, go by one of the ports alone; the second adds no speed. Cable
the second port into another VLAN, or take its address out.`,
  source: 'RFC 1122 §3.3.4.2 (the weak end system model), from memory; Linux: ip-sysctl, arp_ignore and arp_filter',
  check({ site, network }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.bridging || device.ports.length < 2) continue;
      const first = new Map<BroadcastDomain, Interface>();
      for (const own of network.interfaces.of(device)) {
        if (own.address === undefined) continue;
        const other = first.get(own.domain);
        if (other === undefined) first.set(own.domain, own);
        if (other === undefined || other.port === own.port || other.address === undefined) continue;
        report({
          at: placeOfPort(own.port),
          message:
            `${portName(own.port)} (${formatAddress(own.address)}) and ${portName(other.port)} ` +
            `(${formatAddress(other.address)}) are both in ${own.domain.name}: which of them the others send to is ` +
            'luck. Cable one into another VLAN, or take its address out.',
          about: [portName(own.port), portName(other.port), device.name],
          related: [{ at: placeOfPort(other.port), message: `${portName(other.port)} is there too` }],
        });
      }
    }
  },
};

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
