/** Ends of an aggregated link that do not fit. Long by its examples. */

import { canAggregate } from '../../network/aggregation.ts';
import type { Network } from '../../network/network.ts';
import { type Link, type MemberLink, cablesOf, oppositePort } from '../../network/link.ts';
import { type Fix, addEntry, fixOf, scalarText, setValue } from '../../site/edit.ts';
import { type Cable, type Port, type Site, portName } from '../../site/model.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { endAt, placeOfEnd, placeOfPort } from '../../site/places.ts';
import { bitRate, few, list, asName } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const aggregationMismatch: Rule = {
  id: 'aggregation-mismatch',
  severity: 'error',
  summary: 'Cables that should form one link do not match.',
  why: `Link aggregation needs both ends: each bundles the same cables, both by LACP with one end active or both
without it, all at one speed and in the same VLANs. Where one end bundles alone, frames are lost on the cables that the
other end does not expect them on, or the cables close a loop; a cable of another speed stays out. Until then
the plan counts only on the first cable.`,
  source:
    'IEEE 802.1AX-2020 §6.3 and §6.4 (from memory): members share speed, key and partner; two passive ends are silent',
  check({ site, network }: RuleContext, report: Report): void {
    const leading = new Map<string, Link>();
    const astray: Astray[] = [];
    for (const link of network.topology.links) {
      const { a, b } = link;
      if (a.lag === undefined && b.lag === undefined) continue;
      const ends = [a, b].filter(({ lag }) => lag !== undefined);
      for (const port of ends) {
        const group = `${port.device.name}/${port.lag ?? ''}`;
        const other = leading.get(group);
        if (other === undefined) leading.set(group, link);
        else astray.push({ port, link, other });
      }
      const all = [...link.members, ...link.idle];
      if (all.length < 2) continue;
      const why = (ends.length < 2 ? oneEnd(link, all) : (disagreement(link) ?? speeds(all))) ?? vlans(site, all, ends);
      if (why !== undefined) report({ ...findingAt(why.at, link, why.message), fixes: why.fixes });
    }
    const exchanged = astray.length < 2 ? undefined : swappedAmong(site.cables, network.topology.links);
    if (exchanged !== undefined) return report(swapped(exchanged, astray));
    for (const one of astray) {
      const stray = strayOf(one);
      const better = stray === undefined ? undefined : uncabledIn(network, one, stray);
      const { port, link, other } = one;
      const near = stray === undefined ? port : portAt(stray, port);
      const far = stray === undefined ? undefined : oppositePort(stray, near);
      const remedy =
        far === undefined || better === undefined
          ? 'Give the ports to each their own group, or put them into one.'
          : `The cable at ${portName(far)} seems to belong at ${portName(better)}.`;
      report({
        ...findingAt(
          port,
          link,
          `${groupName(port)} leads to ${farEnd(other, port)} and to ${farEnd(link, port)}: a link has only one far ` +
            `end. ${remedy}`,
        ),
        // A cable at the wrong port has other VLANs, speed and medium too.
        entails: [link, other, ...(stray === undefined ? [] : [stray.cable])],
        fixes: () =>
          stray === undefined || far === undefined || better === undefined ? [] : moved(stray, far, better),
      });
    }
  },
};

/** A group of ports whose cables lead to two far ends. */
interface Astray {
  readonly port: Port;
  readonly link: Link;
  readonly other: Link;
}

/** The one of two links of a group whose far end is in no group, or in one of its own. */
function strayOf({ port, link, other }: Astray): Link | undefined {
  const [one, first] = [link, other].map((each) => oppositePort(each, portAt(each, port)));
  if (one === undefined || first === undefined) return undefined;
  if ((one.lag === undefined) !== (first.lag === undefined)) return one.lag === undefined ? link : other;
  return link;
}

/** The end of a link at the device of a port. */
function portAt({ a, b }: Link, { device }: Port): Port {
  return a.device === device ? a : b;
}

/** The port without a cable in the group that the other cables lead to. */
function uncabledIn({ topology }: Network, { port, link, other }: Astray, stray: Link): Port | undefined {
  const right = stray === link ? other : link;
  const { device, lag } = oppositePort(right, portAt(right, port));
  if (lag === undefined) return undefined;
  return device.ports.find((one) => one.lag === lag && topology.linkAt(one) === undefined);
}

function moved(link: Link, from: Port, to: Port): Fix[] {
  const end = endAt(link, from);
  return end === undefined
    ? []
    : fixOf(
        `Lead the cable from ${portName(from)} to ${portName(to)}`,
        setValue(link.cable.item, end.keyPath, scalarText(portName(to), true)),
      );
}

/** The two cables that are swapped, where swapping them back puts all groups right. */
function swappedAmong(all: readonly Cable[], links: readonly Link[]): readonly [MemberLink, MemberLink] | undefined {
  const order = new Map(all.map((cable, index) => [cable, index]));
  const cables = links
    .flatMap(cablesOf)
    .filter(({ a, b }) => a.lag !== undefined || b.lag !== undefined)
    .sort((a, b) => (order.get(a.cable) ?? 0) - (order.get(b.cable) ?? 0));
  const ends = cables.map(({ a, b }): Ends => [a, b]);
  // Neighbouring cables are the likeliest to be swapped.
  for (let apart = 1; apart < cables.length; apart++) {
    for (const [index, one] of cables.entries()) {
      const other = cables[index + apart];
      if (other === undefined) break;
      const rest = ends.filter((_, at) => at !== index && at !== index + apart);
      const turned: readonly (readonly Ends[])[] = [
        [
          [one.a, other.b],
          [other.a, one.b],
        ],
        [
          [one.a, other.a],
          [one.b, other.b],
        ],
      ];
      if (turned.some((pair) => haveOneFarEnd([...rest, ...pair]))) return [one, other];
    }
  }
  return undefined;
}

type Ends = readonly [Port, Port];

/** Whether each group of ports leads to one group, or to one device. */
function haveOneFarEnd(cables: readonly Ends[]): boolean {
  const far = new Map<string, string>();
  const endOf = ({ device, lag }: Port): string => (lag === undefined ? device.name : `${device.name}/${lag}`);
  for (const [a, b] of cables) {
    for (const [near, other] of [
      [a, b],
      [b, a],
    ] as const) {
      if (near.lag === undefined) continue;
      const known = far.get(endOf(near));
      if (near.device === other.device || (known !== undefined && known !== endOf(other))) return false;
      far.set(endOf(near), endOf(other));
    }
  }
  return true;
}

function swapped([one, other]: readonly [MemberLink, MemberLink], astray: readonly Astray[]): Finding {
  const [port] = [other.a, other.b].filter(({ lag }) => lag !== undefined);
  const away = list([...new Set(astray.map(({ port: own }) => groupName(own)))]);
  const words = ({ a, b }: MemberLink): string => `${portName(a)} to ${portName(b)}`;
  return {
    at: placeOfEnd(other, port ?? other.a),
    message:
      `The cables from ${words(one)} and from ${words(other)} seem to be swapped: ${away} lead to two far ends each, ` +
      'and to one if you swap them.',
    acceptAt: acceptAtPorts(one.a, one.b, other.a, other.b),
    related: [{ at: placeOfEnd(one, one.a), message: `the cable from ${words(one)}` }],
    entails: astray.flatMap(({ link, other: leading }) => [link, leading]),
  };
}

interface Mismatch {
  readonly at: Port;
  readonly message: string;
  readonly fixes: () => Fix[];
}

function findingAt(port: Port, { a, b }: Pick<Link, 'a' | 'b'>, message: string): Parameters<Report>[0] {
  return { at: placeOfPort(port, 'lag'), message, acceptAt: acceptAtPorts(port, port === a ? b : a) };
}

function groupName({ device, lag }: Port): string {
  return `${lag ?? ''} of ${device.name}`;
}

function farEnd({ a, b }: Link, near: Port): string {
  const far = a.device === near.device ? b : a;
  return far.lag === undefined ? far.device.name : groupName(far);
}

/** The ports of the cables at a device. */
function portsAt(all: readonly MemberLink[], { device }: Port): Port[] {
  return all.map(({ a, b }) => (a.device === device ? a : b));
}

function oneEnd({ a, b }: Link, all: readonly MemberLink[]): Mismatch {
  const [with_, without] = a.lag === undefined ? [b, a] : [a, b];
  const ports = portsAt(all, without);
  const own = ports.filter(({ keyPath, name }) => keyPath[1] === name);
  const name = with_.lag ?? '';
  return {
    at: with_,
    message:
      `${list(portsAt(all, with_).map(portName))} are one link, ${asName(name)}, and ${few(ports.map(portName), 3)} at the other ` +
      `end are not: frames are lost or circulate. Put them into a group of ${asName(without.device.name)}, or remove ${asName(name)}.`,
    fixes: () =>
      own.length < ports.length
        ? []
        : fixOf(
            `Put ${list(ports.map(portName))} into a group ${asName(name)}`,
            ...own.map(({ device, keyPath }) => addEntry(device.item, keyPath, 'lag', scalarText(name, true))),
          ),
  };
}

function disagreement({ a, b }: Link): Mismatch | undefined {
  if (canAggregate({ a, b })) return undefined;
  const isStatic = a.lacp === 'off' || b.lacp === 'off';
  const port = isStatic ? (a.lacp === 'off' ? a : b) : b;
  const remedy = isStatic ? 'Set both the same way' : 'Set one end to active';
  return {
    at: port,
    message: isStatic
      ? `${groupName(port)} bundles without LACP, and ${groupName(port === a ? b : a)} asks for it: the link does not ` +
        `come up whole. ${remedy}.`
      : `${groupName(a)} and ${groupName(b)} are both passive: neither begins, and the cables stay apart. ${remedy}.`,
    fixes: () =>
      port.keyPath[1] !== port.name && port.keyPath.length > 0
        ? []
        : fixOf(`Make ${portName(port)} active`, setValue(port.device.item, [...port.keyPath, 'lacp'], 'active')),
  };
}

function speeds(all: readonly MemberLink[]): Mismatch | undefined {
  const [first] = all;
  const speed = all.find(({ capacity }) => capacity !== undefined)?.capacity;
  const other = all.find(({ capacity }) => capacity !== undefined && capacity !== speed);
  if (first === undefined || speed === undefined || other?.capacity === undefined) return undefined;
  const port = other.a.lag === undefined ? other.b : other.a;
  return {
    at: port,
    message:
      `${portName(port)} runs at ${bitRate(other.capacity)}, the other cables of ${groupName(port)} at ` +
      `${bitRate(speed)}: it stays out of the link. Give all of them one speed.`,
    fixes: () => [],
  };
}

function vlans(site: Site, all: readonly MemberLink[], ends: readonly Port[]): Mismatch | undefined {
  for (const end of ends) {
    const [first, ...others] = portsAt(all, end);
    const other = others.find((port) => first !== undefined && vlansOf(port) !== vlansOf(first));
    // A misspelt VLAN at one of them is reported there.
    if (first === undefined || other === undefined || ![first, other].every((port) => isDeclared(site, port))) continue;
    return {
      at: other,
      message:
        `${portName(first)} and ${portName(other)} are in one group, ${other.lag ?? ''}, and have different VLANs: a ` +
        'link has the same on all its cables. Make both alike.',
      fixes: () => [],
    };
  }
  return undefined;
}

function isDeclared({ vlanByName }: Site, { vlan, native, trunk = [] }: Port): boolean {
  return [vlan, native, ...trunk].every((name) => name === undefined || vlanByName.has(name));
}

function vlansOf({ vlan = '', native = '', trunk = [] }: Port): string {
  return [vlan, native, ...[...trunk].sort()].join(' ');
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink}
#                              ^^^^^^ core/15 and core/16 are one link, uplink, and barn/1 and barn/2 at the other end are not
      16: {speed: 1 Gb/s, lag: uplink}
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s}
      2: {speed: 1 Gb/s}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
    fixed: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink}
      16: {speed: 1 Gb/s, lag: uplink}
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, lag: uplink}
      2: {speed: 1 Gb/s, lag: uplink}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
  },
  {
    bad: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink}
      16: {speed: 1 Gb/s, lag: uplink}
#                              ^^^^^^ core/16 runs at 100 Mb/s, the other cables of uplink of core at 1 Gb/s
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, lag: uplink}
      2: {speed: 100 Mb/s, lag: uplink}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
    good: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink}
      16: {speed: 1 Gb/s, lag: uplink}
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, lag: uplink}
      2: {speed: 1 Gb/s, lag: uplink}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
  },
  {
    bad: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink}
      16: {speed: 1 Gb/s, lag: uplink}
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, lag: uplink, lacp: off}
#                             ^^^^^^ uplink of barn bundles without LACP, and uplink of core asks for it
      2: {speed: 1 Gb/s, lag: uplink, lacp: off}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
    good: `
devices:
  core:
    kind: switch
    ports:
      15: {speed: 1 Gb/s, lag: uplink, lacp: off}
      16: {speed: 1 Gb/s, lag: uplink, lacp: off}
  barn:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, lag: uplink, lacp: off}
      2: {speed: 1 Gb/s, lag: uplink, lacp: off}
cables:
  - {from: core/15, to: barn/1}
  - {from: core/16, to: barn/2}
`,
  },
];
