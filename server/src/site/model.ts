/** A resolved site, as computations and rules see it. Its only tie to the text is the item behind each thing. */

import type { ChannelPlan } from '../standards/television/channel-plan.ts';
import type { Item } from './item.ts';
import type { Cable, CableEnd } from './model/cable.ts';
import type { Connector, Device, Port } from './model/device.ts';
import type { Lint, Policies } from './model/policy.ts';
import type { Recording, Volume } from './model/recording.ts';
import type { Rack } from './model/rack.ts';
import type { Media, Stream, Traffic } from './model/stream.ts';
import type { Vlan } from './model/vlan.ts';
import type { SectionName } from './shape.ts';
import type { Multiplex, Occasion, Service } from './television/facts.ts';

export * from './model/cable.ts';
export * from './model/device.ts';
export * from './model/policy.ts';
export * from './model/rack.ts';
export * from './model/recording.ts';
export * from './model/stream.ts';
export * from './model/vlan.ts';

export interface Site {
  readonly name: string | undefined;
  readonly timezone: string | undefined;
  readonly channelPlan: ChannelPlan;
  readonly items: readonly Item[];
  readonly sections: Readonly<Record<SectionName, readonly Item[]>>;
  /** The items with something that does not fit the schema, or cannot be read. */
  readonly faulty: readonly Item[];
  readonly vlans: readonly Vlan[];
  readonly racks: readonly Rack[];
  readonly devices: readonly Device[];
  readonly ports: readonly Port[];
  readonly cables: readonly Cable[];
  readonly multiplexes: readonly Multiplex[];
  readonly services: readonly Service[];
  readonly occasions: readonly Occasion[];
  readonly streams: readonly Stream[];
  readonly traffic: readonly Traffic[];
  readonly volumes: readonly Volume[];
  readonly recordings: readonly Recording[];
  readonly policies: Policies;
  readonly lint: Lint;
  readonly vlanByName: ReadonlyMap<string, Vlan>;
  readonly rackByName: ReadonlyMap<string, Rack>;
  readonly deviceByName: ReadonlyMap<string, Device>;
  readonly multiplexByName: ReadonlyMap<string, Multiplex>;
  readonly serviceByName: ReadonlyMap<string, Service>;
  readonly occasionByName: ReadonlyMap<string, Occasion>;
  readonly trafficByName: ReadonlyMap<string, Traffic>;
  readonly streamByName: ReadonlyMap<string, Stream>;
  readonly volumeByName: ReadonlyMap<string, Volume>;
  readonly recordingByName: ReadonlyMap<string, Recording>;
  /** What a stream consists of; follows `carries`. */
  readonly media: (stream: Stream) => Media;
  /** Streams that carry themselves, directly or through others. */
  readonly carriedInCircle: readonly Stream[];
}

/** The port that an end of a cable names; `undefined` if the site has no such port. */
export function portAt({ deviceByName }: Pick<Site, 'deviceByName'>, end: CableEnd | undefined): Port | undefined {
  if (end === undefined) return undefined;
  const device = deviceByName.get(end.device);
  if (device === undefined) return undefined;
  if (end.port !== undefined) return device.portByName.get(end.port);
  return device.ports.length === 1 ? device.ports[0] : undefined;
}

/** The coax connector that an end of a cable names; `undefined` if the site has none. */
export function connectorAt(
  { deviceByName }: Pick<Site, 'deviceByName'>,
  end: CableEnd | undefined,
): Connector | undefined {
  const device = end === undefined ? undefined : deviceByName.get(end.device);
  if (device === undefined || end === undefined) return undefined;
  if (end.port !== undefined) return connectorNamed(device, end.port);
  const [only, ...others] = device.connectorByName.values();
  return device.ports.length === 0 && others.length === 0 ? only : undefined;
}

/** A connector by its name; the outputs of an LNB also by their numbers in order, `out-1` to `out-4`. */
export function connectorNamed({ kind, connectorByName }: Device, name: string): Connector | undefined {
  const connector = connectorByName.get(name);
  if (connector !== undefined || kind !== 'lnb' || !/^out-[1-4]$/.test(name)) return connector;
  return [...connectorByName.values()][Number(name.slice(-1)) - 1];
}
