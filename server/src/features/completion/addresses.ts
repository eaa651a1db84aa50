/** Addresses, groups, subnets and numbers that are free. */

import { type ParsedSubnet, formatAddress, formatSubnet, overlaps, parseSubnet } from '../../standards/ipv4.ts';
import { nextFreeAddress } from '../../site/free/address.ts';
import { AUTO } from '../../site/item.ts';
import { nextFreeGroup } from '../../site/free/group.ts';
import { nextFreePort } from '../../site/free/port.ts';
import { RTP_PORT, RTSP_PORT } from '../../standards/rtp.ts';
import { type Site, type Vlan, ownAddresses, isRtsp } from '../../site/model.ts';
import type { FormKind } from '../../site/shape.ts';
import type { Offer } from './offer.ts';
import { type Wanted, textAt } from './wanted.ts';
import { vlansWanted } from './home-vlans.ts';

export function addressOffers(wanted: Wanted, form: FormKind): Offer[] {
  const { site } = wanted;
  switch (form) {
    case 'address':
      return wanted.route[wanted.route.length - 1] === 'via'
        ? gateways(site)
        : [...vlansWanted(wanted).flatMap((vlan) => freeAddress(site, vlan)), LATER];
    case 'group': {
      const group = nextFreeGroup(site);
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
      return [
        { label: '224.0.0.0/4', kind: 'address', detail: 'all multicast' },
        { label: 'default', kind: 'word', detail: 'all that no other route is for' },
        ...site.vlans.flatMap(({ name, subnet }): Offer[] =>
          subnet === undefined ? [] : [{ label: formatSubnet(subnet), kind: 'address', detail: name }],
        ),
      ];
    case 'time-zone':
      return Intl.supportedValuesOf('timeZone').map((zone) => ({ label: zone, kind: 'word' }));
    case 'mac':
    case 'frequency-range':
      return [];
  }
}

const LATER: Offer = { label: AUTO, kind: 'address', detail: 'to be filled in later' };

function freeAddress(site: Site, vlan: Vlan): Offer[] {
  const free = nextFreeAddress(site, vlan);
  return free === undefined
    ? []
    : [{ label: formatAddress(free), kind: 'address', detail: `the next free address of ${vlan.name}` }];
}

/** Addresses of routers, for a route through one. */
function gateways({ devices }: Site): Offer[] {
  return devices
    .filter(({ routing }) => routing)
    .flatMap((device) =>
      ownAddresses(device).map(({ address, vlan }): Offer => ({
        label: formatAddress(address),
        kind: 'address',
        detail: `${device.name}${vlan === undefined ? '' : ` in ${vlan}`}`,
      })),
    );
}

/** The subnet of 256 addresses that bears the VLAN's id, or the next that is free. */
function freeSubnet(wanted: Wanted): Offer[] {
  const { site, name } = wanted;
  const taken = site.vlans.filter((vlan) => vlan.name !== name).flatMap(({ subnet }) => subnet ?? []);
  const id = Number(textAt(wanted, ['id']));
  const first =
    taken[0] === undefined || taken[0].prefix !== 24
      ? '192.168'
      : formatAddress(taken[0].network).split('.').slice(0, 2).join('.');
  const candidates = [...(id >= 0 && id < 256 ? [id] : []), ...Array.from({ length: 256 }, (_, third) => third)];
  for (const third of candidates) {
    const subnet: ParsedSubnet | undefined = parseSubnet(`${first}.${third}.0/24`);
    if (subnet !== undefined && !taken.some((other) => overlaps(other, subnet)))
      return [{ label: formatSubnet(subnet), kind: 'address', detail: 'a free subnet' }];
  }
  return [];
}

/** The hundred addresses from .100 on, where no device has one of them. */
function pool(wanted: Wanted): Offer[] {
  const subnet = parseSubnet(textAt(wanted, ['subnet']) ?? '');
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
export function numberOffers(wanted: Wanted): Offer[] {
  const { site, section, name, route } = wanted;
  const key = route.join('/');
  if (section === 'vlans' && key === 'id') {
    const ids = new Set(site.vlans.filter((vlan) => vlan.name !== name).map(({ id }) => id));
    for (let id = 10; id <= 4090; id += 10)
      if (!ids.has(id)) return [{ label: String(id), kind: 'number', detail: 'the next free id in tens' }];
  }
  if (section !== 'streams' || key !== 'port') return [];
  if (isRtsp(textAt(wanted, ['transport']))) return [{ label: String(RTSP_PORT), kind: 'number', detail: 'of RTSP' }];
  const stream = site.streamByName.get(name);
  const free = stream === undefined ? RTP_PORT : nextFreePort(site, stream);
  return [
    ...(free === undefined
      ? []
      : [{ label: String(free), kind: 'number' as const, detail: 'the next free pair, for RTP and RTCP' }]),
    ...(textAt(wanted, ['transport']) === undefined && free !== RTSP_PORT
      ? [{ label: String(RTSP_PORT), kind: 'number' as const, detail: 'of RTSP' }]
      : []),
    LATER,
  ];
}
