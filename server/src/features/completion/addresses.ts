/** Addresses, groups, subnets and numbers that are free. */

import {
  type ParsedSubnet,
  formatAddress,
  contains,
  formatSubnet,
  overlaps,
  parseSubnet,
} from '../../standards/ipv4.ts';
import { type AddressSpace, addressBeside, spaceInUse, spaceOfMost } from '../../site/free/address.ts';
import { AUTO } from '../../site/item.ts';
import { nextFreeGroup } from '../../site/free/group.ts';
import { nextFreePort } from '../../site/free/port.ts';
import { RTP_PORT, RTSP_PORT } from '../../standards/rtp.ts';
import { groupRoutes } from '../../network/group-routes.ts';
import { type DeviceKind, type Site, type Vlan, ownAddresses, isRtsp } from '../../site/model.ts';
import { type FormKind, deviceKinds } from '../../site/shape.ts';
import { ownTimeZone } from '../../site/time-zone.ts';
import type { Offer } from './offer.ts';
import { isMapping } from '../../text/syntax.ts';
import { type CompletionContext, dataAtCursor, textAtCursor } from './wanted.ts';
import { portWanted, vlansWanted } from './home-vlans.ts';

export function addressOffers(wanted: CompletionContext, form: FormKind): Offer[] {
  const { site } = wanted;
  switch (form) {
    case 'address':
      return wanted.keyPath[wanted.keyPath.length - 1] === 'via'
        ? gateways(site, wanted.name)
        : [...spacesWanted(wanted).flatMap((space) => freeAddress(site, space, textAtCursor(wanted, ['kind']))), LATER];
    case 'group': {
      const group = freeGroup(wanted);
      return [
        ...(group === undefined
          ? []
          : [{ label: formatAddress(group), kind: 'address' as const, detail: 'the next free group' }]),
        LATER,
      ];
    }
    case 'subnet':
      return freeSubnet(wanted);
    case 'address-range':
      return pool(wanted);
    case 'destination':
      return destinations(wanted);
    case 'time-zone':
      return timeZones();
    case 'frequency-range':
      return BANDS.map(([label, detail]) => ({ label, kind: 'number', detail }));
    case 'mac':
      return [];
  }
}

/** Frequency bands on coax, as the trade divides them. */
const BANDS: readonly (readonly [range: string, what: string])[] = [
  ['470-694 MHz', 'UHF, below mobile telephones'],
  ['174-230 MHz', 'VHF band III'],
  ['5-862 MHz', 'all of television'],
  ['950-2150 MHz', 'satellite, first intermediate frequency'],
  ['5-2400 MHz', 'television and satellite'],
];

/** A free group, if possible one that the source's routes send towards a receiver. */
function freeGroup(wanted: CompletionContext): number | undefined {
  const { site, checked } = wanted;
  const next = nextFreeGroup(site);
  const source = site.deviceByName.get(textAtCursor(wanted, ['source']) ?? '');
  const names = dataAtCursor(wanted, ['receivers']);
  if (source === undefined || !Array.isArray(names)) return next;
  const { leavesThere, routes } = groupRoutes(site, checked.plan.network.topology, source, names.map(String));
  const candidates = [next, ...routes.map(({ to }) => nextFreeGroup(site, to.network))];
  return candidates.find((group) => group !== undefined && leavesThere(group)) ?? next;
}

/** Destinations of routes, without those that the device has a route to: Linux takes one route for each. */
function destinations(wanted: CompletionContext): Offer[] {
  const [, index] = wanted.keyPath;
  const routes = dataAtCursor(wanted, ['routes']);
  const others = Array.isArray(routes) ? routes.filter((_, own) => own !== index) : [];
  const taken = new Set(others.map((route) => (isMapping(route) ? route['to'] : undefined)));
  return [
    { label: '224.0.0.0/4', kind: 'address' as const, detail: 'all multicast' },
    { label: 'default', kind: 'word' as const, detail: 'all that no other route is for' },
    ...wanted.site.vlans.flatMap(({ name, subnet }): Offer[] =>
      subnet === undefined ? [] : [{ label: formatSubnet(subnet), kind: 'address', detail: name }],
    ),
  ].filter(({ label }) => !taken.has(label));
}

const LATER: Offer = { label: AUTO, kind: 'address', detail: 'to be filled in later' };

function spacesWanted(wanted: CompletionContext): readonly AddressSpace[] {
  const vlans = vlansWanted(wanted);
  const flat = spaceAround(wanted) ?? spaceInUse(wanted.site.devices);
  return vlans.length > 0 || flat === undefined ? vlans : [flat];
}

/** The subnet of most devices in the port's network. */
function spaceAround(wanted: CompletionContext): AddressSpace | undefined {
  const { topology } = wanted.checked.plan.network;
  const port = portWanted(wanted);
  const domain = port === undefined ? undefined : topology.linkAt(port)?.untagged;
  if (domain === undefined) return undefined;
  const others = wanted.site.ports.filter((other) => other !== port && topology.linkAt(other)?.untagged === domain);
  return spaceOfMost(others.flatMap(({ addresses }) => addresses.map(({ address }) => address)));
}

/** The next free address, beside those of devices of the same kind. */
function freeAddress(site: Site, vlan: AddressSpace & Partial<Pick<Vlan, 'name'>>, kind: string | undefined): Offer[] {
  const known = deviceKinds().includes(kind ?? '') ? (kind as DeviceKind) : undefined;
  const free = addressBeside(site, vlan, known);
  return free === undefined
    ? []
    : [
        {
          label: formatAddress(free),
          kind: 'address',
          detail: `the next free address${vlan.name === undefined ? '' : ` of ${vlan.name}`}`,
        },
      ];
}

/** Addresses of other routers, as next hops: those in the device's own subnets, where it has any. */
function gateways({ devices, deviceByName, vlans }: Site, name: string): Offer[] {
  const own = deviceByName.get(name);
  const holds = (subnet: ParsedSubnet): boolean =>
    own !== undefined && ownAddresses(own).some(({ address }) => contains(subnet, address));
  const near = vlans.flatMap(({ subnet }) => (subnet !== undefined && holds(subnet) ? [subnet] : []));
  return devices
    .filter((device) => device.routing && device !== own)
    .flatMap((device) =>
      ownAddresses(device)
        .filter(({ address }) => near.length === 0 || near.some((subnet) => contains(subnet, address)))
        .map(({ address, vlan }): Offer => ({
          label: formatAddress(address),
          kind: 'address',
          detail: `${device.name}${vlan === undefined ? '' : ` in ${vlan}`}`,
        })),
    );
}

/** The subnet of 256 addresses with the VLAN's id as its third number, or the next that is free. */
function freeSubnet(wanted: CompletionContext): Offer[] {
  const subnet = nextFreeSubnet(wanted, Number(textAtCursor(wanted, ['id'])));
  return subnet === undefined ? [] : [{ label: subnet, kind: 'address', detail: 'a free subnet' }];
}

/** The next free subnet for a VLAN with that id. */
export function nextFreeSubnet(wanted: CompletionContext, id: number): string | undefined {
  const { site, name } = wanted;
  const taken = site.vlans.filter((vlan) => vlan.name !== name).flatMap(({ subnet }) => subnet ?? []);
  const around = subnetAround(wanted);
  if (around !== undefined && !taken.some((other) => overlaps(other, around))) return formatSubnet(around);
  const flat = taken.length === 0 ? spaceInUse(site.devices)?.subnet : undefined;
  if (flat !== undefined) return formatSubnet(flat);
  const first =
    taken[0] === undefined || taken[0].prefix !== 24
      ? '192.168'
      : formatAddress(taken[0].network).split('.').slice(0, 2).join('.');
  const candidates = [...(id >= 0 && id < 256 ? [id] : []), ...Array.from({ length: 256 }, (_, third) => third)];
  for (const third of candidates) {
    const subnet: ParsedSubnet | undefined = parseSubnet(`${first}.${third}.0/24`);
    if (subnet !== undefined && !taken.some((other) => overlaps(other, subnet))) return formatSubnet(subnet);
  }
  return undefined;
}

/** The smallest subnet, of 256 addresses at least, that holds the addresses of all ports cabled to the VLAN. */
function subnetAround({ site, checked, name }: CompletionContext): ParsedSubnet | undefined {
  const { topology } = checked.plan.network;
  const addresses = site.ports
    .filter((port) => name !== '' && topology.linkAt(port)?.untagged?.vlan?.name === name)
    .flatMap((port) => port.addresses.map(({ address }) => address));
  const [first] = addresses;
  if (first === undefined) return undefined;
  for (let prefix = 24; prefix >= 16; prefix--) {
    const network = (first & (0xffffffff << (32 - prefix))) >>> 0;
    const subnet: ParsedSubnet = { network, prefix, hostBits: false };
    if (addresses.every((address) => contains(subnet, address))) return subnet;
  }
  return undefined;
}

/** Time zones, this computer's first. */
function timeZones(): Offer[] {
  const own = ownTimeZone();
  const others = Intl.supportedValuesOf('timeZone').filter((zone) => zone !== own);
  return [
    { label: own, kind: 'word', detail: "this computer's" },
    ...others.map((zone): Offer => ({ label: zone, kind: 'word' })),
  ];
}

/** The hundred addresses from .100 on, where no device has one of them. */
function pool(wanted: CompletionContext): Offer[] {
  const subnet = parseSubnet(textAtCursor(wanted, ['subnet']) ?? '');
  if (subnet === undefined || subnet.prefix > 24) return [];
  const [first, last] = [subnet.network + 100, subnet.network + 199];
  const isTaken = wanted.site.devices.some((device) =>
    ownAddresses(device).some(({ address }) => address >= first && address <= last),
  );
  return isTaken
    ? []
    : [{ label: `${formatAddress(first)}-${formatAddress(last)}`, kind: 'address', detail: 'a hundred addresses' }];
}

/** The next VLAN id, and the ports of streams. */
export function numberOffers(wanted: CompletionContext): Offer[] {
  const { site, section, name, keyPath } = wanted;
  const key = keyPath.join('/');
  if (section === 'vlans' && key === 'id') {
    const ids = new Set(site.vlans.filter((vlan) => vlan.name !== name).map(({ id }) => id));
    for (let id = 10; id <= 4090; id += 10)
      if (!ids.has(id)) return [{ label: String(id), kind: 'number', detail: 'the next free id in tens' }];
  }
  if (section !== 'streams' || key !== 'port') return [];
  if (isRtsp(textAtCursor(wanted, ['transport'])))
    return [{ label: String(RTSP_PORT), kind: 'number', detail: 'of RTSP' }];
  const stream = site.streamByName.get(name);
  const free = stream === undefined ? RTP_PORT : nextFreePort(site, stream);
  return [
    ...(free === undefined
      ? []
      : [{ label: String(free), kind: 'number' as const, detail: 'the next free pair, for RTP and RTCP' }]),
    ...(textAtCursor(wanted, ['transport']) === undefined && free !== RTSP_PORT
      ? [{ label: String(RTSP_PORT), kind: 'number' as const, detail: 'of RTSP' }]
      : []),
    LATER,
  ];
}
