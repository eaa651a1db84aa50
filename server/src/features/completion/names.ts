/** Names of the site that fit at the cursor, the likeliest first. */

import { ruleById } from '../../check.ts';
import { contains, formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { bitRate, bytes } from '../../text/words.ts';
import { oppositePort } from '../../network/link.ts';
import { scalarText } from '../../site/edit.ts';
import { portNames } from '../../site/port-names.ts';
import type { Device, Port, Recording, Stream, Vlan, Volume } from '../../site/model.ts';
import { isPowerSource } from '../../supply/feeding.ts';
import type { NameKind } from '../../site/shape.ts';
import { ownDevice } from '../../site/declared.ts';
import { endOffers, portDetail } from './ends.ts';
import type { Offer, OfferKind } from './offer.ts';
import { type CompletionContext, othersInList, textAtCursor, dataAtCursor } from './wanted.ts';

/** `role` is the key that the name stands under, or whose list it is in. */
export function nameOffers(wanted: CompletionContext, names: NameKind, role = roleOf(wanted)): Offer[] {
  const { site } = wanted;
  const others = new Set(othersInList(wanted));
  switch (names) {
    case 'devices':
      return devicesFor(wanted, role)
        .filter(({ name }) => !others.has(name))
        .map((device) => offer('devices', device.name, deviceDetail(device)));
    case 'vlans':
      return vlansFor(wanted, role)
        .filter((name) => !others.has(name))
        .map((name) => {
          const vlan = site.vlanByName.get(name);
          const subnet = vlan?.subnet === undefined ? '' : formatSubnet(vlan.subnet);
          return offer(
            'vlans',
            name,
            [vlan?.id === undefined ? '' : `id ${vlan.id}`, subnet].filter((text) => text !== '').join(', '),
          );
        });
    case 'racks':
      return site.racks.map(({ name, units }) => offer('racks', name, units === undefined ? '' : `${units} U`));
    case 'streams':
      return streamsFor(wanted, role).map((stream) => offer('streams', stream.name, streamDetail(wanted, stream)));
    case 'multiplexes':
      return site.multiplexes
        .filter(({ name }) => !others.has(name))
        .map(({ name, system }) => offer('multiplexes', name, system ?? ''));
    case 'services': {
      const sent = new Set(site.streams.filter(({ name }) => name !== wanted.name).map(({ service }) => service));
      return ranked(site.services, ({ name }) => Number(role === 'service' && sent.has(name)))
        .filter(({ name }) => !others.has(name))
        .map(({ name, multiplexes }) => offer('services', name, multiplexes.join(', ')));
    }
    case 'volumes':
      return volumesFor(wanted).map((volume) =>
        offer(
          'volumes',
          volume.name,
          [volume.host ?? '', volume.capacity === undefined ? '' : bytes(volume.capacity)]
            .filter((text) => text !== '')
            .join(', '),
        ),
      );
    case 'recordings':
      return site.recordings
        .filter((recording) => !others.has(recording.name) && keepsPolicy(wanted, recording))
        .map(({ name, stream }) => offer('recordings', name, stream ?? ''));
    case 'rules':
      return ruleOffers(wanted);
    case 'port-end':
      return endOffers(wanted, role);
    case 'own-port': {
      const device = wanted.item === undefined ? undefined : ownDevice(site, wanted.item);
      return portsFor(wanted, role, device).map((port) => offer('ports', port.name, portDetail(port)));
    }
  }
}

/** Whether a recording is kept as long as the policy that would name it asks. */
function keepsPolicy({ site, item, keyPath }: CompletionContext, { keep }: Recording): boolean {
  const policy = site.policies.retention.find(
    (own) => own.item === item && own.keyPath.every((step, index) => step === keyPath[index]),
  );
  if (policy === undefined) return true;
  const { atLeast, atMost } = policy;
  if (keep === undefined) return atLeast === undefined && atMost === undefined;
  return keep >= (atLeast ?? 0) && keep <= (atMost ?? Infinity);
}

export function roleOf({ keyPath, name }: CompletionContext): string {
  const keys = keyPath.filter((step) => typeof step === 'string');
  return keys[keys.length - 1] ?? name;
}

function offer(kind: OfferKind, name: string, detail: string): Offer {
  return { label: name, kind, detail, insert: scalarText(name, true) };
}

const NO_HOSTS: readonly (string | undefined)[] = ['patch-panel', 'router', 'ups', 'circuit'];

function isHost({ kind, bridging }: Device): boolean {
  return !bridging && !NO_HOSTS.includes(kind);
}

function deviceDetail({ kind, ports, address }: Device): string {
  const own = address ?? ports.flatMap(({ addresses }) => addresses)[0]?.address;
  return [kind ?? 'device', own === undefined ? '' : formatAddress(own)].filter((text) => text !== '').join(', ');
}

function devicesFor(wanted: CompletionContext, role: string): Device[] {
  const { site } = wanted;
  switch (role) {
    case 'source': {
      const sends = new Set(site.streams.filter(({ name }) => name !== wanted.name).map(({ source }) => source));
      return ranked(site.devices.filter(isHost), (device) =>
        device.kind === 'camera' || device.kind === 'tuner'
          ? sends.has(device.name)
            ? 2
            : 0
          : device.kind === 'server'
            ? 1
            : 3,
      );
    }
    case 'receivers': {
      const source = textAtCursor(wanted, ['source']);
      const order: readonly (string | undefined)[] =
        source !== undefined && site.deviceByName.get(source)?.kind === 'server'
          ? ['display', 'computer', 'server']
          : ['server', 'display', 'computer'];
      // A source takes in its own stream only to record it or to send it on.
      const isUsed = (device: Device): boolean =>
        site.streams.some((own) => own.carries === wanted.name && own.source === device.name) ||
        site.recordings.some(
          (own) =>
            own.stream === wanted.name && site.volumes.find(({ name }) => name === own.volume)?.host === device.name,
        );
      const takes = site.devices.filter(
        (device) =>
          isHost(device) &&
          device.kind !== 'camera' &&
          device.kind !== 'tuner' &&
          (device.name !== source || isUsed(device)),
      );
      return ranked(takes, ({ kind, name, ports }) => {
        if (name === source) return 3 * order.length;
        const isCabled = ports.some((port) => wanted.checked.plan.network.topology.linkAt(port) !== undefined);
        return (order.includes(kind) ? order.indexOf(kind) : order.length) + (isCabled ? 0 : order.length + 1);
      });
    }
    case 'gateway':
      return site.devices.filter(({ routing, kind }) => routing || kind === undefined);
    case 'querier':
      return ranked(
        site.devices.filter(({ kind }) => kind === 'switch' || kind === 'router' || kind === undefined),
        ({ snooping, kind }) => (snooping ? 0 : kind === 'router' ? 1 : 2),
      );
    case 'clock':
      return ranked(
        site.devices.filter(({ ports, kind }) => ports.length > 0 && kind !== 'patch-panel' && kind !== 'camera'),
        ({ kind }) => (kind === 'router' ? 0 : kind === 'server' ? 1 : 2),
      );
    case 'from':
    case 'to': {
      if (wanted.keyPath[0] === 'power')
        return site.devices.filter((device) => isPowerSource(device) && device.name !== wanted.name);
      const other = textAtCursor(wanted, [role === 'from' ? 'to' : 'from']);
      return site.devices.filter((device) => isHost(device) && device.name !== other);
    }
    case 'host':
      return ranked(site.devices.filter(isHost), ({ kind }) => (kind === 'server' ? 0 : kind === 'computer' ? 1 : 2));
    default:
      return [...site.devices];
  }
}

/** The list sorted by rank, and within a rank in the order of the site. */
function ranked<T>(list: readonly T[], rank: (element: T) => number): T[] {
  return [...list].sort((a, b) => rank(a) - rank(b));
}

function vlansFor(wanted: CompletionContext, role: string): string[] {
  const names = wanted.site.vlans.map(({ name }) => name);
  if ((role === 'vlan' || role === 'trunk') && wanted.keyPath[0] === 'ports') return byWhatIsCabled(wanted, names);
  if (role !== 'native' && role !== 'addresses') return names;
  const trunk = dataAtCursor(wanted, [
    ...wanted.keyPath.slice(0, role === 'native' ? -1 : wanted.keyPath.indexOf('addresses')),
    'trunk',
  ]);
  if (!Array.isArray(trunk)) return names;
  return names.filter((name) => trunk.some((carried) => carried === name || carried === Number(name)));
}

/** Ports, for a stream those first that are in a network with a receiver, and of those the one that its route leads to. */
function portsFor(wanted: CompletionContext, role: string, device: Device | undefined): readonly Port[] {
  const ports = device?.ports ?? [];
  const receivers = dataAtCursor(wanted, ['receivers']);
  if (role !== 'egress' || !Array.isArray(receivers)) return ports;
  const { topology, delivery } = wanted.checked.plan.network;
  const vlanAt = (port: Port): Vlan | undefined => topology.linkAt(port)?.untagged?.vlan;
  const theirs = new Set(
    receivers.flatMap((name) => wanted.site.deviceByName.get(String(name))?.ports.map(vlanAt) ?? []),
  );
  const stream = wanted.site.streamByName.get(wanted.name);
  const byRoute = stream === undefined ? undefined : delivery(stream).leaves?.port;
  return ranked(ports, (port) => 2 * Number(!theirs.has(vlanAt(port))) + Number(port !== byRoute));
}

/** VLANs first that the device at the other end of the cable carries or has an address in. */
function byWhatIsCabled({ site, checked, name, keyPath }: CompletionContext, names: readonly string[]): string[] {
  const { topology } = checked.plan.network;
  const device = site.deviceByName.get(name);
  const others = portNames(String(keyPath[1])).flatMap((own) => {
    const port = device?.portByName.get(own);
    const link = port === undefined ? undefined : topology.linkAt(port);
    return port === undefined || link === undefined ? [] : [oppositePort(link, port)];
  });
  return ranked(names, (own) => {
    const subnet = site.vlanByName.get(own)?.subnet;
    const isThere = ({ vlan, trunk, addresses }: Port): boolean =>
      vlan === own ||
      trunk?.includes(own) === true ||
      (subnet !== undefined && addresses.some(({ address }) => contains(subnet, address)));
    return -others.filter(isThere).length;
  });
}

/** Volumes whose host receives the stream first, and those without files of the same names. */
function volumesFor(wanted: CompletionContext): Volume[] {
  const stream = wanted.site.streamByName.get(textAtCursor(wanted, ['stream']) ?? '');
  const file = textAtCursor(wanted, ['file']);
  const alike = wanted.site.recordings.filter((own) => own.name !== wanted.name && own.file === file);
  return ranked(
    wanted.site.volumes,
    ({ host, name }) =>
      2 * Number(stream !== undefined && (host === undefined || !stream.receivers.includes(host))) +
      Number(alike.some(({ volume }) => volume === name)),
  );
}

function streamsFor(wanted: CompletionContext, role: string): Stream[] {
  const { site, name } = wanted;
  if (role === 'carries') {
    return ranked(
      site.streams.filter((stream) => stream.name !== name),
      ({ carries, group }) => (carries !== undefined ? 2 : group !== undefined ? 1 : 0),
    );
  }
  const recorded = new Set(site.recordings.filter((recording) => recording.name !== name).map(({ stream }) => stream));
  // An .mp4 file holds no uncompressed sound.
  const isMp4 = textAtCursor(wanted, ['file'])?.endsWith('.mp4') === true;
  const volume = textAtCursor(wanted, ['volume']);
  const host = volume === undefined ? undefined : wanted.site.volumes.find((own) => own.name === volume)?.host;
  return ranked(
    site.streams,
    (stream) =>
      (isMp4 && site.media(stream).audio?.codec?.startsWith('pcm') === true ? 2 : 0) +
      (host === undefined || stream.receivers.includes(host) ? 0 : 4) +
      (stream.name === name ? -1 : recorded.has(stream.name) ? 1 : 0),
  );
}

function streamDetail({ checked }: CompletionContext, stream: Stream): string {
  const rate = checked.plan.network.rates(stream).payload.nominal;
  const { source, group, carries } = stream;
  return [
    source === undefined ? '' : `from ${source}`,
    group === undefined ? '' : formatAddress(group),
    carries === undefined ? '' : `carries ${carries}`,
    rate === 0 ? '' : bitRate(rate),
  ]
    .filter((text) => text !== '')
    .join(', ');
}

/** Rules that find something in the site come first. */
function ruleOffers({ checked }: CompletionContext): Offer[] {
  const finds = (id: string): number => {
    for (const [rule, { findings }] of checked.runs) if (rule.id === id) return findings.length;
    return 0;
  };
  return ranked([...ruleById.values()], ({ id }) => (finds(id) > 0 ? 0 : 1)).map(({ id, summary, why, severity }) => ({
    label: id,
    kind: 'rules',
    detail: summary,
    documentation: `${why.trim()}\n\nSeverity: ${severity}`,
  }));
}
