/**
 * Cables whose ends differ in their VLANs: between switches, at a host, and among hosts on a switch without VLANs.
 *
 * The three cases are one rule, as they share what is known, lost and set; the changes to ports are in
 * `network/vlan-fixes.ts`. A quarter of the file is examples.
 */

import { grouped } from '../../grouped.ts';
import { type AddressUse, isOutside } from '../../network/address-uses.ts';
import type { Causes } from '../../network/causes.ts';
import type { Link } from '../../network/link.ts';
import {
  type BroadcastDomain,
  type VlanMembership,
  agreed,
  domainsOf,
  hasVlans,
  tagsAll,
} from '../../network/vlan-membership.ts';
import { isUncabled } from '../../network/delivery.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import type { KeyPath } from '../../text/syntax.ts';
import {
  type Differing,
  setAlike,
  setForHost,
  setRangeLikeFarEnds,
  vlanNames,
  vlanListWords,
} from '../../network/vlan-fixes.ts';
import type { Topology } from '../../network/wiring.ts';
import { type TransparentSegment, carriedIn, isTransparent } from '../../network/transparent-segments.ts';
import { contains } from '../../standards/ipv4.ts';
import { type Port, type Site, portName } from '../../site/model.ts';
import { few, list, asName } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Fix } from '../../site/edit.ts';

export const vlanMismatch: Rule = {
  id: 'vlan-mismatch',
  severity: 'error',
  showAfter: 'item',
  summary: 'The two ends of a cable differ in their VLANs.',
  why: `A frame is taken only where the far end means the same VLAN by its tag, or by its lack of one. What only one
end carries stops at the other; two access ports of different VLANs mix the two up. Make the lists equal, and the
native VLANs too. A host without a trunk belongs at an access port.`,
  source: 'IEEE 802.1Q: ingress rules and the port VLAN ID (from memory)',
  check({ site, network }: RuleContext, report: Report): void {
    const { topology, causes, addressUses } = network;
    const context = { site, network, topology, causes, addressUses };
    const found: Mismatch[] = [];
    const take = (mismatch: Mismatch): number => found.push(mismatch);
    for (const link of topology.links) {
      const { a, b } = link;
      if (a.forwards && b.forwards) {
        if (!isTransparent(a) && !isTransparent(b)) betweenSwitches(context, { a, b, link, faults: [link] }, take);
      } else if (a.forwards || b.forwards) {
        const [inner, host] = a.forwards ? [a, b] : [b, a];
        const segment = isTransparent(inner) ? topology.segments.get(inner.device) : undefined;
        const wire =
          segment === undefined ? topology.vlanMembershipOf(inner) : carriedIn(segment, topology.vlanMembershipOf);
        const ports = segment === undefined ? [inner] : segment.edges.map(({ port }) => port);
        const [from] = ports;
        // A host without tags on a switch without VLANs: see oddOnes.
        if (segment !== undefined && !hasVlans(host)) continue;
        if (from !== undefined && ports.every((port) => isKnown(site, port)))
          atHost(context, { link, from, host }, wire, take);
      }
    }
    for (const segment of new Set(topology.segments.values())) {
      const { devices, edges, hosts } = segment;
      oddOnes(context, segment, report);
      const [first, second] = edges;
      if (first === undefined || second === undefined || edges.length > 2 || hosts.length > 0) continue;
      if (devices.every(({ kind }) => kind === 'media-converter'))
        betweenSwitches(
          context,
          { a: first.port, b: second.port, link: second.link, faults: [first.link, second.link] },
          take,
        );
    }
    // The ports of a range are set together.
    for (const [first, ...others] of grouped(found, ({ set, lost }) => rangeOf(set, lost)).values())
      if (first !== undefined) report(together(topology, first, others));
  },
};

interface Mismatch extends Differing {
  /** The VLANs that do not pass, as text. */
  readonly lost: string;
  readonly finding: Finding;
}

function rangeOf({ device, keyPath, name, vlan, native, trunk }: Port, lost: string): object | string {
  return keyPath[1] === name || keyPath.length === 0
    ? {}
    : [device.name, ...keyPath, vlan ?? '', native ?? '', ...(trunk ?? []), lost].join(' ');
}

function together(topology: Topology, first: Mismatch, others: readonly Mismatch[]): Finding {
  const { finding } = first;
  if (others.length === 0) return finding;
  const all = others.map((other) => other.finding);
  return {
    ...finding,
    acceptAt: [...new Set([...finding.acceptAt, ...all.flatMap(({ acceptAt }) => acceptAt)])],
    related: [
      ...(finding.related ?? []),
      ...others.map((other) => ({ at: other.finding.at, message: `so does ${portName(other.set)}` })),
      ...all.flatMap(({ related = [] }) => related),
    ],
    entails: [...(finding.entails ?? []), ...all.flatMap(({ entails = [] }) => entails)],
    fixes: () => [...setRangeLikeFarEnds(topology, first, others), ...(finding.fixes?.() ?? [])],
  };
}

/**
 * On switches without VLANs, hosts that tag everything and hosts without tags cannot communicate. A single host that
 * tags is reported; else the first of the others, with the rest.
 */
function oddOnes(context: Context, { devices, edges, hosts }: TransparentSegment<Link>, report: Report): void {
  const { site, topology, causes } = context;
  if (edges.some(({ port }) => topology.vlanMembershipOf(port).untagged !== undefined)) return;
  const tagging = [...edges, ...hosts].filter(({ port }) => tagsAll(topology.vlanMembershipOf(port)));
  const plain = hosts.filter(({ port }) => !hasVlans(port));
  const [tags, another] = tagging;
  const [first, ...others] = plain;
  if (tags === undefined || first === undefined || !tagging.every(({ port }) => isKnown(site, port))) return;
  const is = vlanListWords(topology, tags.port);
  const own = [{ at: placeOfVlans(tags.port), message: `${portName(tags.port)}: ${is}` }];
  if (another === undefined) {
    report({
      at: placeOfEnd(tags.link, tags.port),
      message:
        `${portName(tags.port)} is ${is}, and what else is at ${list(devices.map(({ name }) => name))} knows no tags: ` +
        `nothing passes between them. Let ${portName(tags.port)} send without tags, or take a switch that knows VLANs.`,
      acceptAt: acceptAtPorts(tags.port),
      ...consequencesOf(causes, [tags.link], own),
      fixes: () => setForHost(site, tags.port, first.port),
    });
    return;
  }
  const [has, it] = others.length === 0 ? ['has', 'it'] : ['have', 'them'];
  report({
    at: placeOfEnd(first.link, first.port),
    message:
      `${portName(tags.port)} is ${is}, and ${few(plain.map(({ port }) => port.device.name))} ${has} none: nothing ` +
      `without a tag gets there. Make ${portName(tags.port)} an access port, or give ${it} a trunk.`,
    acceptAt: acceptAtPorts(...plain.map(({ port }) => port), tags.port),
    ...consequencesOf(
      causes,
      plain.map(({ link }) => link),
      [
        ...own,
        ...others.map(({ link, port }) => ({
          at: placeOfEnd(link, port),
          message: `${asName(port.device.name)} has no tags`,
        })),
      ],
    ),
    fixes: () => setForHost(site, tags.port, first.port),
  });
}

/** Whether the port has VLANs, and all of them are declared. */
function isKnown(site: Site, port: Port): boolean {
  const { vlan, native, trunk = [] } = port;
  return hasVlans(port) && [vlan, native, ...trunk].every((name) => name === undefined || site.vlanByName.has(name));
}

interface Context {
  readonly site: Site;
  readonly network: Network;
  readonly topology: Topology;
  readonly causes: Causes;
  readonly addressUses: readonly AddressUse[];
}

/** Two ports of switches joined by a cable, or by converters with a cable on each side. */
interface SwitchCable {
  readonly a: Port;
  readonly b: Port;
  readonly link: Link;
  readonly faults: readonly Link[];
}

function betweenSwitches(
  context: Context,
  { a, b, link, faults }: SwitchCable,
  take: (mismatch: Mismatch) => void,
): void {
  const { site, topology } = context;
  if (!isKnown(site, a) || !isKnown(site, b)) return;
  const [own, other] = [topology.vlanMembershipOf(a), topology.vlanMembershipOf(b)];
  const passing = domainsOf(agreed(own, other));
  const mixed = own.untagged !== undefined && other.untagged !== undefined && own.untagged !== other.untagged;
  const [mine, theirs] = [domainsOf(own), domainsOf(other)];
  const lost = [...new Set([...mine, ...theirs])].filter((network) => {
    if (passing.includes(network)) return false;
    // Both have the network, one tagged and one untagged; or it is mixed with another.
    if (mixed || (mine.includes(network) && theirs.includes(network))) return true;
    return isUsed(context, mine.includes(network) ? b : a, network);
  });
  if (lost.length === 0) return;
  const lacking = domainsOf(other).length <= domainsOf(own).length ? b : a;
  const more = lacking === b ? a : b;
  const accesses = own.tagged.length === 0 && other.tagged.length === 0;
  const stays = lost.filter((network) => !mixed || (network !== own.untagged && network !== other.untagged));
  const effects = [
    ...(mixed
      ? [accesses ? 'the two VLANs are mixed up' : `${list(vlanNames([own.untagged, other.untagged]))} are mixed up`]
      : []),
    ...(stays.length === 0 ? [] : [`${list(vlanNames(stays))} ${stays.length === 1 ? 'does' : 'do'} not pass`]),
  ];
  const followed = consequencesOf(
    context.causes,
    faults,
    [more, lacking].map((port) => ({
      at: placeOfVlans(port),
      message: `${portName(port)}: ${vlanListWords(topology, port)}`,
    })),
  );
  const finding: Finding = {
    at: placeOfEnd(link, lacking === link.a || lacking === link.b ? lacking : link.b),
    message:
      `${portName(more)} is ${vlanListWords(topology, more)}, ${portName(lacking)} ${vlanListWords(topology, lacking)}: ` +
      `${effects.join(', and ')}. Make both alike.`,
    acceptAt: acceptAtPorts(lacking, more),
    ...followed,
    // The wrong port may not feed it either.
    entails: [...followed.entails, a, b, ...strayAt(context, [a, b])],
    // A consequence of a cable in a port that does not take it, which is reported.
    effects: [link.cable],
    fixes: () => setAlike(topology, lacking, more),
  };
  take({ set: lacking, more, lost: effects.join(), finding });
}

/** Addresses whose network differs from their port's, as its VLANs are wrong. */
function strayAt({ addressUses }: Context, ports: readonly Port[]): KeyPath[] {
  return addressUses.flatMap((use) =>
    use.port !== undefined && ports.includes(use.port) && isOutside(use, use.vlans) ? [use.keyPath] : [],
  );
}

/** Adds the deliveries that fail where the mismatch leaves a host in no network at all. */
function withoutNetwork(context: Context, finding: Finding, { device }: Port): Finding {
  const cutOff = lossesAt(context.network, [device]).obstacles.filter(isUncabled);
  return { ...finding, entails: [...(finding.entails ?? []), ...cutOff] };
}

/** Whether a switch uses a VLAN at another port or for its own address, or declares no other ports. */
function isUsed({ topology }: Context, beside: Port, domain: BroadcastDomain): boolean {
  const { ports, address } = beside.device;
  const subnet = domain.vlan?.subnet;
  const others = ports.filter((port) => port !== beside && hasVlans(port));
  return (
    others.length === 0 ||
    others.some((port) => domainsOf(topology.vlanMembershipOf(port)).includes(domain)) ||
    (address !== undefined && subnet !== undefined && contains(subnet, address))
  );
}

function placeOfVlans(port: Port): ReturnType<typeof placeOfPort> {
  return placeOfPort(port, port.trunk !== undefined ? 'trunk' : port.vlan !== undefined ? 'vlan' : 'native');
}

/** A cable from a switch to a host. */
interface HostCable {
  readonly link: Link;
  /** The switch port that sends to the host. */
  readonly from: Port;
  readonly host: Port;
}

/** Compares a host with `wire`, the VLANs that arrive at it. */
function atHost(context: Context, cable: HostCable, wire: VlanMembership, take: (mismatch: Mismatch) => void): void {
  const { from, host } = cable;
  if (!hasVlans(host)) {
    if (wire.untagged !== undefined || wire.tagged.length === 0) return;
    const what =
      `${asName(host.device.name)} has none: nothing without a tag gets to it. Make ${portName(from)} an access port, or ` +
      `give ${asName(host.device.name)} a trunk.`;
    take({
      set: from,
      lost: what,
      finding: withoutNetwork(
        context,
        findingAtHost(context, cable, what, () => setForHost(context.site, from, host)),
        host,
      ),
    });
    return;
  }
  if (!isKnown(context.site, host)) return;
  const own = context.topology.vlanMembershipOf(host);
  const lost = own.tagged.filter((domain) => !wire.tagged.includes(domain));
  const differs = own.untagged !== undefined && own.untagged !== wire.untagged;
  if (lost.length === 0 && !differs) return;
  const missing = vlanNames(differs ? [own.untagged, ...lost] : lost);
  const what =
    `${portName(host)} ${vlanListWords(context.topology, host)}: ${list(missing)} ${missing.length === 1 ? 'does' : 'do'} not get ` +
    'to it. Make both alike.';
  const finding = findingAtHost(context, cable, what, () => setAlike(context.topology, from, host));
  // An address whose network differs from the port's is reported.
  const stray = context.addressUses.some((use) => use.port === host && isOutside(use, use.vlans));
  take({
    set: from,
    lost: list(missing),
    finding: stray && own.tagged.length === 0 ? { ...finding, effects: [host] } : finding,
  });
}

function findingAtHost(context: Context, { link, from, host }: HostCable, what: string, fixes: () => Fix[]): Finding {
  const is = vlanListWords(context.topology, from);
  const isAtCable = from === link.a || from === link.b;
  const followed = consequencesOf(
    context.causes,
    [link],
    [{ at: placeOfVlans(from), message: `${portName(from)}: ${is}` }],
  );
  return {
    at: placeOfEnd(link, isAtCable && !isHostToBeSet(context, link, host) ? from : host),
    message: `${portName(from)} is ${is}, and ${what}`,
    acceptAt: acceptAtPorts(host, from),
    ...followed,
    effects: [link.cable],
    // The wrong port may not feed it either.
    entails: [...followed.entails, host, ...(isAtCable ? [from] : [])],
    fixes,
  };
}

/**
 * Whether to correct the host's port and not the switch's: all VLANs of its addresses arrive, or it names several VLANs
 * and tags none.
 */
function isHostToBeSet({ site }: Context, link: Link, host: Port): boolean {
  if (!hasVlans(host)) return host.addresses.length > 1;
  const got = vlanNames(domainsOf(link));
  return host.addresses.every(({ address, vlan: named }) => {
    const vlan = named ?? site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address))?.name;
    return vlan === undefined || got.includes(vlan);
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [video]}, 2: {vlan: house}}}
cables:
  - {from: core/16, to: barn/1}
#                       ^^^^^^ core/16 is a trunk of house and video, barn/1 a trunk of video: house does not pass
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: house}}}
cables:
  - {from: core/16, to: barn/1}
`,
  },
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/16, to: paddock-cam}
#          ^^^^^^^ core/16 is a trunk of house and video, and paddock-cam has none: nothing without a tag gets to it
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {16: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/16, to: paddock-cam}
`,
  },
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {3: {vlan: video}, 4: {vlan: house}}}
  barn: {kind: switch, ports: {1: {vlan: house}}}
cables:
  - {from: core/3, to: barn/1}
#                      ^^^^^^ core/3 is an access port of video, barn/1 an access port of house: the two VLANs are mixed up
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {3: {vlan: video}, 4: {vlan: house}}}
  barn: {kind: switch, ports: {1: {vlan: video}}}
cables:
  - {from: core/3, to: barn/1}
`,
  },
  {
    bad: `
vlans: {lan: {id: 1, subnet: 192.168.1.0/24}, guests: {id: 30}}
devices:
  stable: {kind: switch, ports: {1-5: {}}}
  stable-ap: {kind: access-point, ports: {eth: {trunk: [lan, guests]}}}
  paddock-cam: {kind: camera, address: 192.168.1.31}
  recorder: {kind: server, address: 192.168.1.5}
cables:
  - {from: stable/1, to: paddock-cam}
  - {from: stable/2, to: recorder}
  - {from: stable/3, to: stable-ap}
#                        ^^^^^^^^^ stable-ap/eth is a trunk of lan and guests, and what else is at stable knows no tags
`,
    good: `
vlans: {lan: {id: 1, subnet: 192.168.1.0/24}, guests: {id: 30}}
devices:
  stable: {kind: switch, ports: {1-5: {}}}
  stable-ap: {kind: access-point, ports: {eth: {trunk: [lan, guests], native: lan}}}
  paddock-cam: {kind: camera, address: 192.168.1.31}
  recorder: {kind: server, address: 192.168.1.5}
cables:
  - {from: stable/1, to: paddock-cam}
  - {from: stable/2, to: recorder}
  - {from: stable/3, to: stable-ap}
`,
  },
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s, vlan: house}, 16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [house, video]}}}
cables:
  - {from: core/4, to: barn/1}
#          ^^^^^^ barn/1 is a trunk of house and video, core/4 an access port of house
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1-3: {speed: 1 Gb/s, vlan: house}, 4: {speed: 1 Gb/s, trunk: [house, video]}, 5-8: {speed: 1 Gb/s, vlan: house}, 16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [house, video]}}}
cables:
  - {from: core/4, to: barn/1}
`,
  },
];
