/** Addresses outside the subnet of their VLAN. Long by its cases, one for each mistake behind such an address, and its examples. */

import { type Subnet, contains, formatAddress, formatSubnet, overlaps } from '../../standards/ipv4.ts';
import { type AddressUse, holder } from '../../network/address-uses.ts';
import { oppositePort } from '../../network/link.ts';
import { type Misplaced, type PortPlacement, misplacedIn } from '../../network/misplaced.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import type { Topology } from '../../network/wiring.ts';
import { grouped } from '../../grouped.ts';
import { type Fix, fixOf, nameText, scalarText, setValue } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { endAt, placeOfEnd, placeOfPort } from '../../site/places.ts';
import { freePorts } from '../../site/free/switch-port.ts';
import { portTypes } from '../../standards/poe.ts';
import { setVlans } from '../../site/port-vlans.ts';
import { type Site, type Vlan, portName } from '../../site/model.ts';
import { few, list, asName } from '../../text/words.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const addressOutsideSubnet: Rule = {
  id: 'address-outside-subnet',
  severity: 'error',
  showAfter: 'value',
  summary: 'An address is not in the subnet of the VLAN that its port is in.',
  why: `Hosts look for an address in their own subnet on the link, and for any other behind a router. One with an
address in another subnet is looked for in the wrong place and never reached, not even from the next port. Correct
the address, or cable the device to a port in the VLAN that the address belongs to. Where all hosts of a VLAN are in
one other subnet, the subnet is what is wrong; where all behind one cable are in the subnet of another VLAN, the port of
the switch is, or the cable is in the wrong one.`,
  source: 'RFC 1122 §3.3.1.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const { subnets, cables, addresses } = misplacedIn(site.vlans, network);
    for (const { vlan, meant, uses } of subnets) report(wrongSubnet(site, network, { vlan, meant, uses }));
    for (const [first, ...others] of grouped(cables, (cable) => rangeOf(cable, cables, network)).values()) {
      if (first === undefined) continue;
      report(others.length === 0 ? wrongPort(site, network, first) : wrongRange(network, first, others));
    }
    const exchanged = new Set<AddressUse>();
    for (const use of addresses) {
      const other = addresses.find((each) => isExchanged(use, each));
      if (other !== undefined) {
        if (!exchanged.has(other)) report(wrongWayRound(network, use, other));
        exchanged.add(use);
        continue;
      }
      const isAnywhere = use.port === undefined && use.vlans.length === 0;
      const vlans = isAnywhere ? site.vlans : use.vlans;
      const acceptAt = [use.device.name, holder(use), formatAddress(use.address)];
      const at = placeOf(use.device.item, use.keyPath);
      const address = formatAddress(use.address);
      if (isAnywhere) {
        const message =
          `${address} is in no VLAN's subnet, so ${asName(use.device.name)} cannot be reached. Use one in ` +
          `${few(vlans.map(subnetText))}.`;
        // A router's wrong address also leaves its VLANs without a gateway.
        const led = site.vlans.filter(({ gateway }) => gateway === use.device.name);
        const entails = led.flatMap(({ subnet }) => subnet ?? []);
        report({
          at,
          message,
          acceptAt,
          entails,
          fixes: () => nextFreeAddressFix(site, nearest(vlans, use.address), use),
        });
        continue;
      }
      const followed = consequencesOf(
        network.causes,
        [use],
        vlans
          .slice(0, 2)
          .map((vlan) => ({ at: placeOf(vlan.item, ['subnet']), message: `the subnet of ${asName(vlan.name)}` })),
      );
      report({
        at,
        message:
          `${address} is not in ${list(vlans.map(subnetText), 'or')}${cabledTo(network.topology, use)}. ` +
          'Correct the address, or the VLAN.',
        acceptAt,
        ...followed,
        // A consequence of merged VLANs, which are reported.
        effects: [use.keyPath],
        // The wrong port may not feed it either.
        entails: [...followed.entails, use, ...(use.port === undefined ? [] : [use.port])],
        fixes: () => nextFreeAddressFix(site, vlans[0], use),
      });
    }
  },
};

/** Two addresses of one device, each in the subnet of the other's VLAN. */
function isExchanged(one: AddressUse, other: AddressUse): boolean {
  const fits = ({ address }: AddressUse, { vlans: [only, second] }: AddressUse): boolean =>
    only?.subnet !== undefined && second === undefined && contains(only.subnet, address);
  return one.device === other.device && one !== other && fits(one, other) && fits(other, one);
}

function wrongWayRound({ causes }: Network, one: AddressUse, other: AddressUse): Finding {
  const { item, name } = one.device;
  const [first, second] = [formatAddress(one.address), formatAddress(other.address)];
  const followed = consequencesOf(
    causes,
    [one, other],
    [{ at: placeOf(item, other.keyPath), message: `${second} is in the subnet of ${one.vlans[0]?.name ?? ''}` }],
  );
  return {
    at: placeOf(item, one.keyPath),
    message:
      `${asName(name)} has ${first} in ${one.vlans[0]?.name ?? ''} and ${second} in ${other.vlans[0]?.name ?? ''}: each is in ` +
      'the subnet of the other. Swap them.',
    acceptAt: [name, first, second],
    ...followed,
    effects: [one.keyPath, other.keyPath],
    entails: [...followed.entails, one, other, ...[one, other].flatMap(({ port }) => port ?? [])],
    fixes: () =>
      fixOf('Swap the two addresses', setValue(item, one.keyPath, second), setValue(item, other.keyPath, first)),
  };
}

/** A VLAN whose hosts are all in another subnet. */
interface Moved {
  readonly vlan: Vlan;
  readonly meant: Subnet;
  readonly uses: readonly AddressUse[];
}

/** All hosts of a VLAN are in another subnet: the VLAN's subnet is wrong. */
function wrongSubnet(site: Site, network: Network, { vlan, meant, uses }: Moved): Finding {
  const { causes } = network;
  const { item, name, subnet } = vlan;
  const devices = [...new Set(uses.map(({ device }) => device))];
  const followed = consequencesOf(
    causes,
    uses,
    devices.map((device) => ({
      at: namePlace(device.item),
      message: `${asName(device.name)} is in ${formatSubnet(meant)}`,
    })),
  );
  return {
    at: placeOf(item, ['subnet']),
    message:
      `${few(devices.map((device) => device.name))} ${devices.length === 1 ? 'is' : 'are'} in ${formatSubnet(meant)}, ` +
      `and the subnet of ${asName(name)} is ${subnet === undefined ? 'another' : formatSubnet(subnet)}. Correct the subnet, or the addresses.`,
    acceptAt: [name],
    ...followed,
    entails: [
      ...followed.entails,
      // Overlaps with the subnets of other VLANs, in either order of declaration.
      ...(subnet === undefined ? [] : overlapping(site, subnet)),
      // With nobody in the VLAN, it has no querier either.
      vlan,
      ...devices,
      ...lossesAt(network, devices).obstacles.filter(isUnasked),
    ],
    fixes: () => fixOf(`Change the subnet to ${formatSubnet(meant)}`, setValue(item, ['subnet'], formatSubnet(meant))),
  };
}

/** Whether the obstacle is a missing querier. */
function isUnasked({ obstacle }: Obstacle): boolean {
  return obstacle === 'report-stays' || obstacle === 'known-nearer';
}

/** The subnet itself, and those of other VLANs that have addresses in common with it. */
function overlapping({ vlans }: Site, subnet: Subnet): Subnet[] {
  return vlans.flatMap(({ subnet: other }) => (other !== undefined && overlaps(other, subnet) ? [other] : []));
}

type Cabled = Misplaced['cables'][number];

/** Ports of one range whose cables all lead to hosts of one other VLAN: the range is wrong. */
function rangeOf({ placed, meant }: Cabled, all: readonly Cabled[], { topology }: Network): object | string {
  const { device, keyPath, name, trunk } = placed.port;
  if (keyPath.length === 0 || keyPath[1] === name || trunk !== undefined) return {};
  const key = keyPath.join(' ');
  const isWhole = device.ports.every(
    (port) =>
      port.keyPath.join(' ') !== key ||
      topology.linkAt(port) === undefined ||
      all.some((other) => other.placed.port === port && other.meant === meant),
  );
  return isWhole ? `${device.name} ${key} ${meant.name}` : {};
}

function wrongRange(network: Network, first: Cabled, others: readonly Cabled[]): Finding {
  const { port, vlan } = first.placed;
  const { device, keyPath } = port;
  const all = [first, ...others];
  const uses = all.flatMap(({ placed }) => placed.uses);
  const followed = consequencesOf(
    network.causes,
    uses,
    uses.map((use) => ({
      at: placeOf(use.device.item, use.keyPath),
      message: `${formatAddress(use.address)} is in ${asName(first.meant.name)}`,
    })),
  );
  const range = `${device.name}/${keyPath[1] ?? port.name}`;
  return {
    at: placeOfPort(port, 'vlan'),
    message:
      `${range} is in ${asName(vlan.name)}, and ${few([...new Set(uses.map(holder))])} there have addresses of ` +
      `${asName(first.meant.name)}. Put ${range} into ${asName(first.meant.name)}, or correct the addresses.`,
    acceptAt: [
      ...all.flatMap(({ placed }) => acceptAtPorts(placed.port, oppositePort(placed.link, placed.port))),
      ...uses.map(({ address }) => formatAddress(address)),
    ],
    ...followed,
    effects: uses.map((use) => use.keyPath),
    entails: [...followed.entails, ...uses, ...uses.flatMap((use) => use.port ?? [])],
    fixes: () =>
      fixOf(
        `Put ${range} into ${asName(first.meant.name)}`,
        setValue(device.item, [...keyPath, 'vlan'], nameText(first.meant.name)),
      ),
  };
}

/** Moves the cable to a free port of the VLAN at the same switch that feeds its device. */
function toPortOf(site: Site, { port, link, uses }: PortPlacement, meant: Vlan): Fix[] {
  const draws = Math.max(-1, ...uses.map(({ port: own }) => (own?.pd === undefined ? -1 : (own.pd.class ?? 0))));
  const free = freePorts(site, port.device).find(
    ({ vlan, trunk, pse, speed }) =>
      vlan === meant.name &&
      trunk === undefined &&
      (speed ?? 0) >= (port.speed ?? 0) &&
      (draws < 0 || (pse !== undefined && portTypes[pse].maxClass >= draws)),
  );
  const end = endAt(link, port);
  return free === undefined || end === undefined
    ? []
    : fixOf(
        `Lead the cable to ${portName(free)}, in ${asName(meant.name)}`,
        setValue(link.cable.item, end.keyPath, scalarText(portName(free), true)),
      );
}

/** All hosts behind a cable belong to another VLAN: the cable is wrong, or the VLAN of its port. */
function wrongPort(site: Site, network: Network, { placed, meant }: Cabled): Finding {
  const { causes, addressUses } = network;
  const { port, link, vlan, uses } = placed;
  const followed = consequencesOf(
    causes,
    uses,
    uses.map((use) => ({
      at: placeOf(use.device.item, use.keyPath),
      message: `${formatAddress(use.address)} is in ${asName(meant.name)}`,
    })),
  );
  const [only, another] = uses;
  const addresses = new Set(uses.map(({ address }) => address));
  const name = portName(port);
  const holders = few([...new Set(uses.map(holder))]);
  return {
    at: placeOfEnd(link, port),
    message:
      only !== undefined && another === undefined
        ? `${asName(name)} carries no ${asName(meant.name)}: it puts ${holders} in ${asName(vlan.name)}, and ${formatAddress(only.address)} is ` +
          `in ${asName(meant.name)}. Put ${asName(name)} into ${asName(meant.name)}, take a port of ${asName(meant.name)} for the cable, or correct ` +
          'the address.'
        : `${asName(name)} carries no ${asName(meant.name)}: it puts ${holders} in ${asName(vlan.name)}, and they have addresses of ` +
          `${asName(meant.name)}. Put ${asName(name)} into ${asName(meant.name)}, or take a port of ${asName(meant.name)} for the cable.`,
    acceptAt: [...acceptAtPorts(port, oppositePort(link, port)), ...uses.map(({ address }) => formatAddress(address))],
    ...followed,
    effects: uses.map(({ keyPath }) => keyPath),
    // The wrong port may not feed it either.
    entails: [...followed.entails, ...uses, ...uses.flatMap((use) => use.port ?? [])],
    fixes: () => {
      // In the right VLAN it would clash with the same address of another device.
      const isTaken = addressUses.some((other) => !uses.includes(other) && addresses.has(other.address));
      const isFed = port.pse !== undefined || uses.every((use) => use.port?.pd === undefined);
      const edits = port.trunk === undefined && !isTaken && isFed ? setVlans(port, { vlan: meant.name }) : undefined;
      return [
        ...(isTaken ? [] : toPortOf(site, placed, meant)),
        ...(edits === undefined ? [] : fixOf(`Put ${asName(name)} into ${asName(meant.name)}`, ...edits)),
        ...(only === undefined || another !== undefined ? [] : nextFreeAddressFix(site, vlan, only)),
      ];
    },
  };
}

function subnetText({ name, subnet }: Vlan): string {
  return subnet === undefined ? name : `${formatSubnet(subnet)} of ${asName(name)}`;
}

/** The cable that puts the port into that VLAN, where the address does not declare it. */
function cabledTo(topology: Topology, { keyPath, device, port }: AddressUse): string {
  const link = port === undefined ? undefined : topology.linkAt(port);
  if (port === undefined || link === undefined || keyPath.includes('addresses')) return '';
  return (
    `, which ${portName(oppositePort(link, port))} puts ` +
    `${device.ports.length === 1 ? device.name : portName(port)} in`
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
  core: {kind: switch, ports: {1: {vlan: house}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/1, to: paddock-cam}
#          ^^^^^^ core/1 carries no video: it puts paddock-cam in house, and 192.168.20.31 is in video. Put core/1 into video
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
  core: {kind: switch, ports: {1: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.2.31}
#                                      ^^^^^^^^^^^^ is not in 192.168.20.0/24 of video, which core/1 puts paddock-cam in
cables:
  - {from: core/1, to: paddock-cam}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
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
#                               ^^^^^^^^^^^ 192.168.2.2 is in no VLAN's
  router: {kind: router, ports: {lan: {addresses: {video: 192.168.3.1}}}}
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
  router: {kind: router, ports: {lan: {addresses: {video: 192.168.3.1}}}}
`,
  },
];
