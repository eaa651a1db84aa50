import { type Placed, misplacedIn } from '../../network/misplaced.ts';
import { oppositePort } from '../../network/link.ts';
import { holder } from '../../network/address-uses.ts';
import { type Fix, scalarText, setValue } from '../../site/edit.ts';
import { type CableEnd, endName, portName } from '../../site/model.ts';
import { endAt, placeOfEnd } from '../../site/places.ts';
import { aboutPorts } from '../../site/about.ts';
import { few, list } from '../../text/words.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const cablesSwapped: Rule = {
  id: 'cables-swapped',
  severity: 'error',
  summary: 'Two cables are each in the port that the other one belongs in.',
  why: `What is behind either cable has addresses of the VLAN that the other one leads to, so nobody there is found.
Exchange the two plugs, or their lines here; or correct the addresses, where those are what is wrong.`,
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
          `${described(other)}. Exchange them.`,
        about: aboutPorts(own, theirs, one.port, other.port),
        ...followed,
        // At the wrong port it may not be fed either.
        entails: [...followed.entails, ...uses, ...uses.flatMap(({ port }) => port ?? [])],
        fixes: () => exchanged(one, other),
      });
    }
  },
};

function farEnd({ link, port }: Placed): Placed['port'] {
  return oppositePort(link, port);
}

function described({ vlan, uses }: Placed): string {
  const names = [...new Set(uses.map(holder))];
  return `${few(names)} ${names.length === 1 ? 'gets' : 'get'} ${vlan.name} and ${names.length === 1 ? 'has an address' : 'have addresses'} of the other`;
}

/** Each of the two lines names what the other one did. */
function exchanged(one: Placed, other: Placed): Fix[] {
  const ends = [one, other].map((placed) => ({
    item: placed.link.cable.item,
    end: endAt(placed.link, farEnd(placed)),
  }));
  const [first, second] = ends;
  if (first?.end === undefined || second?.end === undefined) return [];
  const text = (end: CableEnd): string => scalarText(endName(end), true);
  return [
    {
      title: `Exchange ${list([endName(first.end), endName(second.end)])}`,
      safe: false,
      edits: [
        setValue(first.item, first.end.route, text(second.end)),
        setValue(second.item, second.end.route, text(first.end)),
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
];
