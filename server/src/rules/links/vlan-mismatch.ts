import type { Link } from '../../network/link.ts';
import { type Membership, NONE, agreed, hasVlans, membershipOf } from '../../network/membership.ts';
import { carriedIn, isTransparent } from '../../network/segments.ts';
import { contains } from '../../standards/ipv4.ts';
import { type Port, type Site, portName } from '../../site/model.ts';
import { list } from '../../text/words.ts';
import { aboutPorts } from '../../site/about.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import { type PortVlans, setVlans, vlansOf } from '../../site/port-vlans.ts';
import type { Example, Finding, Report, Rule, Subject } from '../../lint/rule.ts';
import type { Fix } from '../../site/edit.ts';

export const vlanMismatch: Rule = {
  id: 'vlan-mismatch',
  severity: 'error',
  summary: 'The two ends of a cable differ in their VLANs.',
  why: `A frame is taken only where the far end means the same VLAN by its tag, or by its lack of one. What only one
end carries stops at the other; two access ports of different VLANs mix the two up. Make the lists equal, and the
native VLANs too. A host without a trunk belongs at an access port.`,
  source: 'IEEE 802.1Q: ingress rules and the port VLAN ID (from memory)',
  check({ site, network: { topology } }: Subject, report: Report): void {
    for (const link of topology.links) {
      const { a, b } = link;
      if (a.device.bridging && b.device.bridging) {
        if (!isTransparent(a) && !isTransparent(b)) betweenSwitches(site, a, b, link, report);
      } else if (a.device.bridging || b.device.bridging) {
        const [inner, host] = a.device.bridging ? [a, b] : [b, a];
        const segment = isTransparent(inner) ? topology.segments.get(inner.device) : undefined;
        const wire = segment === undefined ? membershipOf(site, inner) : carriedIn(site, segment);
        const ports = segment === undefined ? [inner] : segment.edges.map(({ port }) => port);
        const [from] = ports;
        if (from !== undefined && ports.every((port) => isKnown(site, port)))
          atHost(site, from, wire, host, link, report);
      }
    }
    for (const { devices, edges, hosts } of new Set(topology.segments.values())) {
      const [first, second] = edges;
      if (first === undefined || second === undefined || edges.length > 2 || hosts.length > 0) continue;
      if (devices.every(({ kind }) => kind === 'media-converter'))
        betweenSwitches(site, first.port, second.port, second.link, report);
    }
  },
};

/** Whether VLANs are set, and all of them are declared. */
function isKnown(site: Site, port: Port): boolean {
  const { vlan, native, trunk = [] } = port;
  return hasVlans(port) && [vlan, native, ...trunk].every((name) => name === undefined || site.vlanByName.has(name));
}

function all({ untagged, tagged }: Membership): number[] {
  return untagged === NONE ? [...tagged] : [untagged, ...tagged];
}

function names(site: Site, networks: readonly number[]): string[] {
  return networks.flatMap((network) => site.vlans[network]?.name ?? []);
}

function described(site: Site, port: Port): string {
  const { untagged, tagged } = membershipOf(site, port);
  const without = names(site, [untagged]);
  if (tagged.length === 0) return `an access port of ${list(without)}`;
  return `a trunk of ${list(names(site, tagged))}${without.length === 0 ? '' : ` with native ${list(without)}`}`;
}

function betweenSwitches(site: Site, a: Port, b: Port, link: Link, report: Report): void {
  if (!isKnown(site, a) || !isKnown(site, b)) return;
  const [own, other] = [membershipOf(site, a), membershipOf(site, b)];
  const passing = all(agreed(own, other));
  const lost = [...new Set([...all(own), ...all(other)])].filter((network) => !passing.includes(network));
  if (lost.length === 0) return;
  const mixed = own.untagged !== NONE && other.untagged !== NONE && own.untagged !== other.untagged;
  const lacking = all(other).length <= all(own).length ? b : a;
  const more = lacking === b ? a : b;
  const accesses = own.tagged.length === 0 && other.tagged.length === 0;
  const stays = lost.filter((network) => !mixed || (network !== own.untagged && network !== other.untagged));
  const effects = [
    ...(mixed
      ? [accesses ? 'the two VLANs are mixed up' : `${list(names(site, [own.untagged, other.untagged]))} are mixed up`]
      : []),
    ...(stays.length === 0 ? [] : [`${list(names(site, stays))} ${stays.length === 1 ? 'does' : 'do'} not pass`]),
  ];
  report({
    at: placeOfEnd(link, lacking === link.a || lacking === link.b ? lacking : link.b),
    message:
      `${portName(more)} is ${described(site, more)}, ${portName(lacking)} ${described(site, lacking)}: ` +
      `${effects.join(', and ')}. Make both alike.`,
    about: aboutPorts(lacking, more),
    related: [more, lacking].map((port) => ({
      at: placeOfVlans(port),
      message: `${portName(port)}: ${described(site, port)}`,
    })),
    fixes: () => alike(site, lacking, more),
  });
}

function placeOfVlans(port: Port): ReturnType<typeof placeOfPort> {
  return placeOfPort(port, port.trunk !== undefined ? 'trunk' : port.vlan !== undefined ? 'vlan' : 'native');
}

/** Both as they are together where both are trunks; else one as the other. */
function alike(site: Site, lacking: Port, more: Port): Fix[] {
  const fixes: Fix[] = [];
  const offer = (title: string, changes: readonly (readonly [Port, PortVlans])[]): void => {
    const edits = changes.map(([port, vlans]) => setVlans(port, vlans));
    const possible = edits.flatMap((edit) => edit ?? []);
    if (edits.every((edit) => edit !== undefined) && possible.length > 0)
      fixes.push({ title, safe: false, edits: possible });
  };
  const [mine, theirs] = [vlansOf(lacking), vlansOf(more)];
  if (
    mine.trunk !== undefined &&
    theirs.trunk !== undefined &&
    (mine.native ?? theirs.native) === (theirs.native ?? mine.native)
  ) {
    const native = mine.native ?? theirs.native;
    const trunk = [...new Set([...theirs.trunk, ...mine.trunk])];
    offer(`Let ${list(trunk)} cross both ${portName(more)} and ${portName(lacking)}`, [
      [lacking, { trunk, native }],
      [more, { trunk, native }],
    ]);
    if (trunk.length === theirs.trunk.length) return fixes;
  }
  offer(`Set ${portName(lacking)} as ${described(site, more)}, like ${portName(more)}`, [[lacking, theirs]]);
  offer(`Set ${portName(more)} as ${described(site, lacking)}, like ${portName(lacking)}`, [[more, mine]]);
  return fixes;
}

/** `wire` is what comes to the host, `from` the port of a switch that sends it. */
function atHost(site: Site, from: Port, wire: Membership, host: Port, link: Link, report: Report): void {
  if (!hasVlans(host)) {
    if (wire.untagged !== NONE || wire.tagged.length === 0) return;
    const what =
      `${host.device.name} has none: nothing without a tag gets to it. Make ${portName(from)} an access port, or ` +
      `give ${host.device.name} a trunk.`;
    report(findingAtHost(site, from, host, link, what, () => forHost(site, from, host)));
    return;
  }
  if (!isKnown(site, host)) return;
  const own = membershipOf(site, host);
  const lost = own.tagged.filter((network) => !wire.tagged.includes(network));
  const differs = own.untagged !== NONE && own.untagged !== wire.untagged;
  if (lost.length === 0 && !differs) return;
  const missing = names(site, differs ? [own.untagged, ...lost] : lost);
  const what =
    `${portName(host)} ${described(site, host)}: ${list(missing)} ${missing.length === 1 ? 'does' : 'do'} not get ` +
    `to it. Make both alike.`;
  report(findingAtHost(site, from, host, link, what, () => alike(site, from, host)));
}

function findingAtHost(site: Site, from: Port, host: Port, link: Link, what: string, fixes: () => Fix[]): Finding {
  return {
    at: placeOfEnd(link, host),
    message: `${portName(from)} is ${described(site, from)}, and ${what}`,
    about: aboutPorts(host, from),
    related: [{ at: placeOfVlans(from), message: `${portName(from)}: ${described(site, from)}` }],
    fixes,
  };
}

/** A trunk of the VLANs that the host has addresses for; else the one of its address, without a tag. */
function forHost(site: Site, from: Port, host: Port): Fix[] {
  const named = (from.trunk ?? []).filter((name) => host.addresses.some(({ vlan }) => vlan === name));
  if (named.length > 0) {
    const edits = setVlans(host, { trunk: named });
    return edits === undefined
      ? []
      : [{ title: `Give ${portName(host)} a trunk of ${list(named)}`, safe: false, edits }];
  }
  const vlan = site.vlans.find(
    ({ subnet }) => subnet !== undefined && host.addresses.some(({ address }) => contains(subnet, address)),
  );
  if (vlan === undefined) return [];
  const access = setVlans(from, { vlan: vlan.name });
  const native = setVlans(from, { trunk: from.trunk, native: vlan.name });
  return [
    ...(access === undefined
      ? []
      : [{ title: `Make ${portName(from)} an access port of ${vlan.name}`, safe: false, edits: access }]),
    ...(native === undefined
      ? []
      : [{ title: `Make ${vlan.name} the native VLAN of ${portName(from)}`, safe: false, edits: native }]),
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [video]}}}
cables:
  - {from: core/16, to: barn/1}
#                       ^^^^^^ core/16 is a trunk of house and video, barn/1 a trunk of video: house does not pass
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [house, video]}}}
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
#                       ^^^^^^^^^^^ core/16 is a trunk of house and video, and paddock-cam has none: nothing without a tag gets to it
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
];
