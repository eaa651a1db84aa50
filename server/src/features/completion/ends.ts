/** Ports and connectors that an end of a cable may have: those without a cable. */

import { bitRate } from '../../text/words.ts';
import {
  type Connector,
  type Device,
  type Port,
  type Site,
  connectorAt,
  connectorName,
  portAt,
  portName,
} from '../../site/model.ts';
import { readEnd } from '../../site/read.ts';
import type { Checked } from '../../lint/check.ts';
import { hasVlans } from '../../network/vlan-membership.ts';
import { isInput, isLedThrough, isTerminated, nextCable } from './next-cable.ts';
import type { Offer } from './offer.ts';
import { misfit, plugOf } from './suiting-port.ts';
import { type CompletionContext, dataAtCursor, othersInList, textAtCursor } from './wanted.ts';

/** Above this many free ports only a few of each device are offered until its name is typed. */
const ALL_PORTS = 400;
const FEW_PORTS = 2;

/** Ports and connectors. */
export function endOffers(wanted: CompletionContext, role: string): Offer[] {
  const other = role === 'through' ? undefined : readEnd(textAtCursor(wanted, [role === 'from' ? 'to' : 'from']), []);
  const [toPort, toConnector] = [portAt(wanted.site, other), connectorAt(wanted.site, other)];
  // The other end shows whether this end is a port or a connector.
  if (toPort !== undefined) return portOffers(wanted, role);
  if (toConnector !== undefined) return connectorOffers(wanted, role, toConnector);
  return [...portOffers(wanted, role), ...connectorOffers(wanted, role, undefined)];
}

/** Coax connectors without a coax; under `through` the parts that a coax can be led through. */
function connectorOffers(wanted: CompletionContext, role: string, other: Connector | undefined): Offer[] {
  const { site, item, typed } = wanted;
  const device = /^["']?([^/]*)\//.exec(typed)?.[1];
  const taken = new Set(
    site.cables
      .filter((cable) => cable.item !== item)
      .flatMap(({ from, to }) => [connectorAt(site, from), connectorAt(site, to)]),
  );
  if (role === 'through') {
    const others = othersInList(wanted);
    return site.devices
      .filter((own) => isLedThrough(own) && !others.includes(own.name))
      .map(({ name, kind = 'device' }) => ({ label: name, kind: 'devices' as const, detail: kind }));
  }
  // A coax is written from output to input; where one end is typed, the other end is the opposite.
  const wantsInput = other === undefined ? role === 'to' : !isInput(other);
  const passed = dataAtCursor(wanted, ['through']);
  const isPassed = ({ device: own }: Connector): boolean => Array.isArray(passed) && passed.includes(own.name);
  const direction = (connector: Connector): number =>
    Number(isInput(connector) !== wantsInput) +
    2 * Number(isLedThrough(connector.device)) +
    4 * Number(other !== undefined && PLANES.includes(other.name) && connector.name !== other.name);
  return site.devices
    .filter(({ name }) => device === undefined || name === device)
    .flatMap((own) => [...own.connectorByName.values()])
    .filter((connector) => !taken.has(connector) && !isTerminated(connector))
    .filter((connector) => connector.device !== other?.device && !isPassed(connector))
    .sort((a, b) => direction(a) - direction(b))
    .map((connector) => ({
      label: connectorName(connector),
      kind: 'ports' as const,
      detail: `${connector.device.kind ?? 'device'}, coax`,
    }));
}

function portOffers(wanted: CompletionContext, role: string): Offer[] {
  const { site, typed } = wanted;
  const isThrough = role === 'through';
  const taken = takenBesides(wanted, isThrough);
  const device = /^["']?([^/]*)\//.exec(typed)?.[1];
  const other = isThrough
    ? undefined
    : portAt(site, readEnd(textAtCursor(wanted, [role === 'from' ? 'to' : 'from']), []));
  const free = site.devices
    .filter(({ kind, name }) => (kind === 'patch-panel') === isThrough && (device === undefined || name === device))
    .map((own) => ({
      device: own,
      ports: own.ports.filter((port) => !taken.has(port) && port.device !== other?.device),
    }))
    .filter(({ ports }) => ports.length > 0);
  const next =
    isThrough || device !== undefined || other !== undefined ? undefined : nextCable(wanted.checked, wanted.item);
  const total = free.reduce((sum, { ports }) => sum + ports.length, 0);
  const shown = total > ALL_PORTS ? free.map((own) => ({ ...own, ports: own.ports.slice(0, FEW_PORTS) })) : free;
  const offers = shown
    .sort((a, b) => rank(a.device, role, other) - rank(b.device, role, other))
    .flatMap(({ device: own, ports }) =>
      [...ports]
        .sort((a, b) => inOrder(a, b, other))
        .map((port) => ({ port, offer: offer(own, port, device !== undefined) })),
    );
  const by = other === undefined ? undefined : suitability(wanted.checked, other);
  const order = (one: (typeof offers)[number]): number =>
    by?.(one.port) ?? (next !== undefined && one.offer.label === next[role === 'to' ? 'to' : 'from'] ? -1 : NOT_SUITED);
  return offers
    .map((one) => ({ ...one, by: order(one) }))
    .sort((a, b) => a.by - b.by)
    .map((one) => one.offer);
}

/** The connectors of an LNB and of a multiswitch that go together by name. */
const PLANES = ['vl', 'vh', 'hl', 'hh'];

/** More than any misfit. */
const NOT_SUITED = 1000;

/** How well a port suits the one at the other end of the cable; `undefined` where it does not. */
function suitability(checked: Checked, other: Port): (port: Port) => number | undefined {
  if (other.lag !== undefined) return besideItsGroup(checked, other);
  if (!other.forwards) {
    const plug = plugOf(checked, other);
    return (port) => misfit(port, plug);
  }
  return (port) =>
    port.forwards ? betweenBridges(checked, port, other) : roughly(misfit(other, plugOf(checked, port)));
}

/** Best a trunk to a trunk of the same VLANs, then ports of one VLAN, then a switch that knows no VLANs. */
function betweenBridges({ plan }: Checked, port: Port, other: Port): number | undefined {
  const { topology } = plan.network;
  const knowsVlans = ({ device }: Port): boolean => device.ports.some(hasVlans);
  const vlanAt = (one: Port): string | undefined =>
    knowsVlans(one) ? one.vlan : one.device.ports.flatMap((own) => topology.linkAt(own)?.untagged?.vlan?.name ?? [])[0];
  const [here, there] = [vlanAt(port), vlanAt(other)];
  if (here !== undefined && there !== undefined && here !== there) return undefined;
  const isAlike =
    port.vlan === other.vlan && port.native === other.native && String(port.trunk) === String(other.trunk);
  if (isAlike) return other.trunk === undefined ? 64 : 0;
  return knowsVlans(port) !== knowsVlans(other) && (port.vlan ?? other.vlan) !== undefined ? 96 : undefined;
}

/** Suited are the ports of the group at which the other cables of a link aggregation group end. */
function besideItsGroup(checked: Checked, { device, lag }: Port): (port: Port) => number | undefined {
  const { site } = checked.plan;
  const mates = device.ports.filter((port) => port.lag === lag);
  const far = site.cables.flatMap(({ from, to }) => {
    const [a, b] = [portAt(site, from), portAt(site, to)];
    return a !== undefined && b !== undefined ? (mates.includes(a) ? [b] : mates.includes(b) ? [a] : []) : [];
  });
  return (port) => (far.some((one) => one.device === port.device && one.lag === port.lag) ? 0 : undefined);
}

/** Ignores small misfits, so that a faster port, or one that could feed, does not change the order of devices. */
function roughly(by: number | undefined): number | undefined {
  return by === undefined ? undefined : Math.floor(by / 4);
}

/** Ports of one VLAN before trunks, but towards a trunk; then by number. */
function inOrder(a: Port, b: Port, other: Port | undefined): number {
  const wantsTrunk = other?.trunk !== undefined;
  const odd = (port: Port): number => Number((port.trunk !== undefined) !== wantsTrunk);
  return odd(a) - odd(b) || Number(a.name) - Number(b.name) || 0;
}

/** A switch is usually named first, and a device without a cable at the other end. */
function rank({ bridging, kind }: Device, role: string, other: Port | undefined): number {
  const wantsSwitch = other === undefined ? role === 'from' : !other.forwards;
  const isLate = kind === 'router' && other?.trunk === undefined;
  return (bridging === wantsSwitch ? 0 : 2) + Number(isLate);
}

function offer(device: Device, port: Port, isNamed: boolean): Offer {
  const alone = device.ports.length === 1 && !isNamed && device.kind !== 'patch-panel';
  return {
    label: alone ? device.name : portName(port),
    kind: alone ? 'devices' : 'ports',
    detail: [device.kind ?? 'device', portDetail(port)].filter((text) => text !== '').join(', '),
  };
}

export function portDetail({ speed, vlan, trunk, pse }: Port): string {
  return [
    speed === undefined ? '' : bitRate(speed),
    vlan ?? '',
    trunk === undefined ? '' : `trunk of ${trunk.join(', ')}`,
    pse === undefined ? '' : `feeds ${pse}`,
  ]
    .filter((text) => text !== '')
    .join(', ');
}

/** Ports that other cables take; a position of a patch panel takes one cable, once. */
function takenBesides(wanted: CompletionContext, isThrough: boolean): Set<Port> {
  const { site, item } = wanted;
  const taken = new Set<Port>();
  for (const cable of site.cables) {
    if (cable.item === item) continue;
    for (const end of isThrough ? cable.through : [cable.from, cable.to]) {
      const port = portAt(site, end);
      if (port !== undefined) taken.add(port);
    }
  }
  if (isThrough) for (const text of othersInList(wanted)) add(site, text, taken);
  return taken;
}

function add(site: Site, text: string, taken: Set<Port>): void {
  const port = portAt(site, readEnd(text, []));
  if (port !== undefined) taken.add(port);
}
