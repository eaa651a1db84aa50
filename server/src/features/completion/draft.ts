/** The likeliest values of a new item, chosen together: a stream's source and a receiver that it reaches. */

import { type Device, type Port, type Site, type Stream, isRtsp } from '../../site/model.ts';
import type { Service } from '../../site/television/facts.ts';
import type { Checked } from '../../lint/check.ts';
import { type BroadcastDomain, domainsOf } from '../../network/vlan-membership.ts';
import { contains } from '../../standards/ipv4.ts';
import { ORGANIZATION_LOCAL } from '../../site/free/group.ts';
import { nextCable, nextCoax } from './next-cable.ts';
import type { CompletionContext } from './wanted.ts';

export interface Draft {
  /** The item's name; `undefined` where the example's name is kept. */
  readonly name: string | undefined;
  /** Values by key; `null` where one is still to be typed, `undefined` where the key is left out. */
  readonly values: ReadonlyMap<string, string | null | undefined>;
}

/** @param body what the example has under the item's name */
export function draftOf(wanted: CompletionContext, body: object): Draft {
  const { section, checked, item } = wanted;
  const none: Draft = { name: undefined, values: new Map() };
  switch (section) {
    case 'cables': {
      const isCoax = 'type' in body && String(body.type).includes('coax');
      const next = isCoax ? nextCoax(checked, item) : nextCable(checked, item);
      return drafted({ from: next?.from, to: next?.to, ...(next !== undefined && { type: next.type }) });
    }
    case 'vlans':
      return vlanDraft(wanted);
    case 'streams':
      if ('carries' in body) return reSentDraft(wanted);
      return 'service' in body ? programmeDraft(wanted) : cameraDraft(wanted);
    case 'recordings':
      return recordingDraft(wanted);
    case 'volumes':
      return drafted({ host: hostForVolume(checked.plan.site) });
    case 'traffic': {
      const { devices } = checked.plan.site;
      const from = devices.find(({ kind }) => kind === 'server');
      const to = devices.find((device) => device.kind === 'computer' && isNear(checked, from, device));
      return drafted({ from: from?.name, to: to?.name });
    }
    default:
      return none;
  }
}

/** A draft in which unknown values are still to be typed. */
function drafted(values: Readonly<Record<string, string | undefined>>, name?: string): Draft {
  return { name, values: new Map(Object.entries(values).map(([key, value]) => [key, value ?? null])) };
}

/** A VLAN that ports already name, and a switch that can be its querier. */
function vlanDraft({ checked, name }: CompletionContext): Draft {
  const { site, network } = checked.plan;
  const isOf = (port: Port, vlan: string): boolean => port.vlan === vlan || port.trunk?.includes(vlan) === true;
  const named = site.ports.flatMap(({ vlan: access, trunk = [] }) => [
    ...(access === undefined ? [] : [access]),
    ...trunk,
  ]);
  const wished = name === '' ? named.find((vlan) => !site.vlanByName.has(vlan)) : name;
  const asks =
    wished === undefined
      ? undefined
      : site.devices.find(
          ({ snooping, ports }) =>
            snooping && ports.some((port) => isOf(port, wished) && network.topology.linkAt(port) !== undefined),
        );
  return { name: wished, values: new Map([['querier', asks?.name]]) };
}

/** A camera that sends nothing yet, to a server that it reaches. */
function cameraDraft({ checked, name }: CompletionContext): Draft {
  const { site } = checked.plan;
  const sending = new Set(site.streams.filter((stream) => stream.name !== name).map(({ source }) => source));
  const cameras = site.devices.filter((device) => device.kind === 'camera' && !sending.has(device.name));
  const servers = site.devices.filter(({ kind }) => kind === 'server');
  const named = cameras.filter((camera) => name !== '' && subjectOf(camera.name) === subjectOf(name));
  const pairs = [...named, ...cameras].map((camera) => ({
    camera,
    server: servers.find((server) => isNear(checked, camera, server)),
  }));
  const found = pairs.find(({ server }) => server !== undefined) ?? pairs[0];
  const camera = named[0] ?? found?.camera;
  const server = pairs.find((pair) => pair.camera === camera)?.server ?? uncabled(checked, servers, camera);
  return drafted(
    { source: camera?.name, receivers: server?.name },
    camera === undefined ? undefined : subjectOf(camera.name),
  );
}

/** A stream that a server receives and does not re-send yet, to a screen that its groups reach. */
function reSentDraft({ checked, name }: CompletionContext): Draft {
  const { site } = checked.plan;
  const carried = new Set(site.streams.filter((stream) => stream.name !== name).map(({ carries }) => carries));
  const pairs = site.streams.flatMap((stream): [Device, Stream][] => {
    if (carried.has(stream.name) || stream.name === name || !isRtsp(stream.transport)) return [];
    const server = stream.receivers
      .map((receiver) => site.deviceByName.get(receiver))
      .find((device) => device?.kind === 'server');
    return server === undefined ? [] : [[server, stream]];
  });
  const [server, stream] = pairs.find(([, carried]) => `${carried.name}-live` === name) ?? pairs[0] ?? [];
  const screen = screenFor(checked, server);
  return drafted(
    { source: server?.name, carries: stream?.name, receivers: screen?.name },
    stream === undefined ? undefined : `${stream.name}-live`,
  );
}

/** A programme that no tuner sends yet. */
function programmeDraft({ checked, name }: CompletionContext): Draft {
  const { site } = checked.plan;
  const sent = new Set(site.streams.filter((stream) => stream.name !== name).map(({ service }) => service));
  const tuners = site.devices.filter(
    ({ kind, ports, host }) => kind === 'tuner' && (ports.length > 0 || host !== undefined),
  );
  const pairs = site.services
    .filter((service) => !sent.has(service.name))
    .flatMap((service) => {
      const tuner = tuners.find(
        (device) => networksOf(checked, sender(site, device)).size > 0 && receives(site, device, service),
      );
      return tuner === undefined ? [] : [{ service, tuner }];
    });
  const { service, tuner } = pairs.find((pair) => pair.service.name === name) ?? pairs[0] ?? {};
  const screen = tuner === undefined ? undefined : screenFor(checked, sender(site, tuner));
  return drafted({ source: tuner?.name, service: service?.name, receivers: screen?.name }, service?.name);
}

/** The device by whose network port a tuner's streams leave. */
function sender({ deviceByName }: Site, tuner: Device): Device {
  return (tuner.host === undefined ? undefined : deviceByName.get(tuner.host)) ?? tuner;
}

/** Whether one of its tuners is for a system that the programme is sent in. */
function receives({ multiplexByName }: Site, { tuners }: Device, { multiplexes }: Service): boolean {
  const systems = multiplexes.flatMap((multiplex) => multiplexByName.get(multiplex)?.system ?? []);
  return tuners.some((unit) => unit.systems.length === 0 || systems.some((system) => unit.systems.includes(system)));
}

/** A stream that is on no disk yet, and a disk of a host that receives it. */
function recordingDraft({ checked, name }: CompletionContext): Draft {
  const { site } = checked.plan;
  const recorded = new Set(site.recordings.filter((recording) => recording.name !== name).map(({ stream }) => stream));
  const open = site.streams.filter((stream) => !recorded.has(stream.name));
  const pairs = open.flatMap((stream) =>
    site.volumes
      .filter(({ host }) => host !== undefined && stream.receivers.includes(host))
      .map((volume) => ({ stream, volume })),
  );
  const found = pairs.find(({ stream }) => stream.name === name) ?? pairs[0];
  const stream = found?.stream ?? (site.volumes.length === 0 ? open[0] : undefined);
  return drafted({ stream: stream?.name, volume: found?.volume.name }, stream?.name);
}

/** A server, one without a disk first. */
function hostForVolume({ devices, volumes }: Site): string | undefined {
  const servers = devices.filter(({ kind }) => kind === 'server');
  return (servers.find(({ name }) => !volumes.some((volume) => volume.host === name)) ?? servers[0])?.name;
}

/** The subject of a camera, by its name: `gate` of `gate-cam`. */
function subjectOf(name: string): string {
  return /^(.+?)[-_.]?(?:cam|camera)$/i.exec(name)?.[1] ?? name;
}

function screenFor(checked: Checked, source: Device | undefined): Device | undefined {
  const screens = checked.plan.site.devices.filter(({ kind, ports }) => kind === 'display' && ports.length > 0);
  const sent = source === undefined ? new Set<BroadcastDomain>() : groupNetworks(checked, source);
  const reached = screens.find((screen) => [...networksOf(checked, screen)].some((domain) => sent.has(domain)));
  return reached ?? uncabled(checked, screens, source);
}

/** The networks that a host's groups enter: that of the port of its route for groups, where it has one. */
function groupNetworks(checked: Checked, source: Device): Set<BroadcastDomain> {
  const [route] = source.routes
    .filter(({ to }) => contains(to, ORGANIZATION_LOCAL))
    .sort((a, b) => b.to.prefix - a.to.prefix);
  const port = route === undefined ? undefined : source.portByName.get(route.port);
  return networksOf(checked, port === undefined ? source : { ports: [port] });
}

/** A device that may still be reached, as it or the other end has no cable yet. */
function uncabled(checked: Checked, devices: readonly Device[], other: Device | undefined): Device | undefined {
  const isOpen = (device: Device | undefined): boolean =>
    device === undefined || networksOf(checked, device).size === 0;
  return isOpen(other) ? devices[0] : devices.find(isOpen);
}

/** Whether both are in one network, or in two that a router joins. */
function isNear(checked: Checked, a: Device | undefined, b: Device): boolean {
  if (shareNetwork(checked, a, b)) return true;
  return (
    a !== undefined &&
    checked.plan.network.routers.some(
      (router) => router !== a && shareNetwork(checked, a, router) && shareNetwork(checked, router, b),
    )
  );
}

function shareNetwork(checked: Checked, a: Device | undefined, b: Device): boolean {
  if (a === undefined || a === b) return false;
  const networks = networksOf(checked, a);
  return [...networksOf(checked, b)].some((domain) => networks.has(domain));
}

function networksOf(checked: Checked, { ports }: Pick<Device, 'ports'>): Set<BroadcastDomain> {
  const { topology } = checked.plan.network;
  return new Set(
    ports.flatMap((port) => {
      const link = topology.linkAt(port);
      return link === undefined ? [] : domainsOf(link);
    }),
  );
}
