import { type PortPlacement, misplacedIn } from '../../network/misplaced.ts';
import { type LoneAddress, loneAddresses } from '../../network/lone-addresses.ts';
import { oppositePort } from '../../network/link.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { holder } from '../../network/address-uses.ts';
import { type Fix, scalarText, setValue } from '../../site/edit.ts';
import { type CableEnd, endName, portName } from '../../site/model.ts';
import { placeOf } from '../../site/item.ts';
import { endAt, placeOfEnd } from '../../site/places.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { few, list, asName } from '../../text/words.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const cablesSwapped: Rule = {
  id: 'cables-swapped',
  severity: 'error',
  summary: "Two cables are swapped: each is in the other's port.",
  why: `The devices behind each cable have addresses in the VLAN that the other cable leads to, so nobody reaches them.
Swap the two plugs, or their lines here; or correct the addresses, if those are wrong.`,
  source: 'RFC 1122 §3.3.1.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const [one, other] of misplacedIn(site.vlans, network).swapped) {
      const [own, theirs] = [farEnd(one), farEnd(other)];
      const uses = [...one.uses, ...other.uses];
      const followed = consequencesOf(network.causes, uses, [
        { at: placeOfEnd(other.link, theirs), message: `the cable at ${portName(other.port)}` },
      ]);
      report({
        at: placeOfEnd(one.link, own),
        message:
          `The cables at ${portName(one.port)} and ${portName(other.port)} seem to be swapped: ${described(one)}, and ` +
          `${described(other)}. Swap them.`,
        acceptAt: acceptAtPorts(own, theirs, one.port, other.port),
        ...followed,
        // The wrong port may not feed it either.
        entails: [...followed.entails, ...uses, ...uses.flatMap(({ port }) => port ?? [])],
        fixes: () => exchanged(one, other),
      });
    }
    const lone = loneAddresses(site.devices, network);
    for (const [index, one] of lone.entries()) {
      const other = lone
        .slice(index + 1)
        .find((each) => each.elsewhere === one.own.domain && one.elsewhere === each.own.domain);
      if (other !== undefined) report(withoutVlans(network, one.own, other.own));
    }
  },
};

/** Two cables on switches without VLANs, where each address belongs to the network of the other. */
function withoutVlans(network: Network, one: LoneAddress['own'], other: LoneAddress['own']): Finding {
  const [own, theirs] = [one, other].map(({ link, port }) => ({ link, port: oppositePort(link, port) }));
  const { lost, obstacles } = lossesAt(network, [one.device, other.device]);
  const name = ({ device, port }: LoneAddress['own']): string =>
    device.ports.length === 1 ? device.name : portName(port);
  return {
    at: placeOfEnd(one.link, one.port),
    message:
      `The cables of ${name(one)} and ${name(other)} seem to be swapped: ${name(one)} is in ${asName(one.domain.name)} and ` +
      `${name(other)} in ${asName(other.domain.name)}, and each has an address of the other. Swap them.`,
    acceptAt: acceptAtPorts(one.port, other.port),
    related: [
      { at: placeOfEnd(other.link, other.port), message: `the cable of ${name(other)}` },
      ...lost.map(({ stream, receiver }) => ({
        at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
        message: `${asName(receiver)} gets nothing of ${asName(stream.name)}`,
      })),
    ],
    // The wrong ports may not feed them either.
    entails: [...obstacles, one.port, other.port],
    fixes: () => (own === undefined || theirs === undefined ? [] : exchanged(own, theirs)),
  };
}

type End = Pick<PortPlacement, 'link' | 'port'>;

function farEnd({ link, port }: End): PortPlacement['port'] {
  return oppositePort(link, port);
}

function described({ vlan, uses }: PortPlacement): string {
  const names = [...new Set(uses.map(holder))];
  return `${few(names)} ${names.length === 1 ? 'gets' : 'get'} ${asName(vlan.name)} and ${names.length === 1 ? 'has an address' : 'have addresses'} of the other`;
}

/** Exchanges the ends of the two cables. */
function exchanged(one: End, other: End): Fix[] {
  const ends = [one, other].map((placed) => ({
    item: placed.link.cable.item,
    end: endAt(placed.link, farEnd(placed)),
  }));
  const [first, second] = ends;
  if (first?.end === undefined || second?.end === undefined) return [];
  const text = (end: CableEnd): string => scalarText(endName(end), true);
  return [
    {
      title: `Swap ${list([endName(first.end), endName(second.end)])}`,
      safe: false,
      edits: [
        setValue(first.item, first.end.keyPath, text(second.end)),
        setValue(second.item, second.end.keyPath, text(first.end)),
      ],
    },
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 9: {vlan: house}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: office-pc}
#                      ^^^^^^^^^ The cables at core/1 and core/9 seem to be swapped: office-pc gets video and has an address of the other, and paddock-cam gets house
  - {from: core/9, to: paddock-cam}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 9: {vlan: house}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/9, to: office-pc}
`,
  },
  {
    bad: `
devices:
  house: {kind: switch, ports: {1-4: {}}}
  cams: {kind: switch, ports: {1-4: {}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.1.10}, cam: {address: 192.168.9.1}}}
  office-pc: {kind: computer, address: 192.168.1.20}
  hall-pc: {kind: computer, address: 192.168.1.21}
  paddock-cam: {kind: camera, address: 192.168.9.21}
  porch-cam: {kind: camera, address: 192.168.9.22}
cables:
  - {from: house/1, to: recorder/cam}
#                       ^^^^^^^^^^^^ The cables of recorder/cam and recorder/lan seem to be swapped
  - {from: house/2, to: office-pc}
  - {from: house/3, to: hall-pc}
  - {from: cams/1, to: recorder/lan}
  - {from: cams/2, to: paddock-cam}
  - {from: cams/3, to: porch-cam}
`,
    fixed: `
devices:
  house: {kind: switch, ports: {1-4: {}}}
  cams: {kind: switch, ports: {1-4: {}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.1.10}, cam: {address: 192.168.9.1}}}
  office-pc: {kind: computer, address: 192.168.1.20}
  hall-pc: {kind: computer, address: 192.168.1.21}
  paddock-cam: {kind: camera, address: 192.168.9.21}
  porch-cam: {kind: camera, address: 192.168.9.22}
cables:
  - {from: house/1, to: recorder/lan}
  - {from: house/2, to: office-pc}
  - {from: house/3, to: hall-pc}
  - {from: cams/1, to: recorder/cam}
  - {from: cams/2, to: paddock-cam}
  - {from: cams/3, to: porch-cam}
`,
  },
];
