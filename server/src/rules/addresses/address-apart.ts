import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { oppositePort } from '../../network/link.ts';
import { type LoneAddress, loneAddresses } from '../../network/lone-addresses.ts';
import { lossesAt } from '../../network/lost.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import { placeOfEnd } from '../../site/places.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { asName } from '../../text/words.ts';

export const addressApart: Rule = {
  id: 'address-apart',
  severity: 'warning',
  summary: 'One address is of another network than all others around it.',
  why: `Where no VLAN says the subnet, hosts of 192.168.0.0/16 have a prefix of /24 as a rule, so one whose third number
differs from that of all others is looked for behind a router, and there is none. Correct the address, or cable the
device where the others of its network are. Where the hosts do share a longer network, declare it as the \`subnet\` of a
VLAN.`,
  source: 'RFC 1918 §3 (256 class C networks), from memory; a prefix of /24 there is common practice',
  check({ site, network }: RuleContext, report: Report): void {
    const all = loneAddresses(site.devices, network);
    for (const lone of all) {
      // Two addresses, each in the other's place: cables-swapped reports.
      if (all.some((other) => other.elsewhere === lone.own.domain && lone.elsewhere === other.own.domain)) continue;
      const { own, address, around, elsewhere } = lone;
      const { device, port, link, domain } = own;
      const { lost, obstacles } = lossesAt(network, [device]);
      const said = port.addresses.find((each) => each.address === address);
      const name = device.ports.length === 1 ? device.name : portName(port);
      report({
        at: elsewhere === undefined ? placeOf(device.item, said?.keyPath ?? []) : placeOfEnd(link, elsewhereAt(lone)),
        severity: lost.length > 0 ? 'error' : 'warning',
        message:
          elsewhere === undefined
            ? `${asName(name)} has ${formatAddress(address)}, and all others in ${asName(domain.name)} are in ${formatSubnet(around)}: ` +
              'they look for it behind a router. Correct the address, or declare the subnet that holds them all.'
            : `${asName(name)} has ${formatAddress(address)}, an address of ${asName(elsewhere.name)}, and ` +
              `${portName(elsewhereAt(lone))} puts it in ${asName(domain.name)}. Take a port of ${asName(elsewhere.name)} for the cable, ` +
              'or correct the address.',
        acceptAt: [device.name, portName(port), formatAddress(address)],
        related: lost.map(({ stream, receiver }) => ({
          at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
          message: `${asName(receiver)} gets nothing of ${asName(stream.name)}`,
        })),
        // The wrong port may not feed it either.
        entails: [...obstacles, port],
      });
    }
  },
};

/** The port that puts the address into the wrong network. */
function elsewhereAt({ own: { link, port } }: LoneAddress): Port {
  return oppositePort(link, port);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  sw: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  porch-cam: {kind: camera, address: 192.168.1.21}
  shed-cam: {kind: camera, address: 192.168.11.22}
#                                   ^^^^^^^^^^^^^ shed-cam has 192.168.11.22, and all others in the network of sw are in 192.168.1.0/24
  nas: {kind: server, address: 192.168.1.10}
cables:
  - {from: sw/1, to: porch-cam}
  - {from: sw/2, to: shed-cam}
  - {from: sw/3, to: nas}
`,
    good: `
devices:
  sw: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  porch-cam: {kind: camera, address: 192.168.1.21}
  shed-cam: {kind: camera, address: 192.168.1.22}
  nas: {kind: server, address: 192.168.1.10}
cables:
  - {from: sw/1, to: porch-cam}
  - {from: sw/2, to: shed-cam}
  - {from: sw/3, to: nas}
`,
  },
  {
    bad: `
devices:
  house: {kind: switch, ports: {1-4: {}}}
  cams: {kind: switch, ports: {1-4: {}}}
  nas: {kind: server, ports: {lan: {address: 192.168.1.10}, cam: {address: 192.168.9.1}}}
  desk: {kind: computer, address: 192.168.1.20}
  porch-cam: {kind: camera, address: 192.168.9.21}
  shed-cam: {kind: camera, address: 192.168.9.22}
cables:
  - {from: house/1, to: nas/lan}
  - {from: house/2, to: desk}
  - {from: cams/1, to: nas/cam}
  - {from: cams/2, to: porch-cam}
  - {from: house/3, to: shed-cam}
#          ^^^^^^^ shed-cam has 192.168.9.22, an address of the network of cams, and house/3 puts it in the network of house
`,
    good: `
devices:
  house: {kind: switch, ports: {1-4: {}}}
  cams: {kind: switch, ports: {1-4: {}}}
  nas: {kind: server, ports: {lan: {address: 192.168.1.10}, cam: {address: 192.168.9.1}}}
  desk: {kind: computer, address: 192.168.1.20}
  porch-cam: {kind: camera, address: 192.168.9.21}
  shed-cam: {kind: camera, address: 192.168.9.22}
cables:
  - {from: house/1, to: nas/lan}
  - {from: house/2, to: desk}
  - {from: cams/1, to: nas/cam}
  - {from: cams/2, to: porch-cam}
  - {from: cams/3, to: shed-cam}
`,
  },
];
