/** Further cameras like one of the site, as items that could be written into it. */

import type { Plan } from '../plan.ts';
import { type AddressSpace, alike, freeAddresses } from '../site/free/address.ts';
import { freeGroups } from '../site/free/group.ts';
import { freePairs, isDatagrams, portsTaken } from '../site/free/port.ts';
import { type Item, LONGEST_NAME } from '../site/item.ts';
import { macUses } from '../network/mac-uses.ts';
import { type Device, type Port, type Stream, isRtsp, ownAddresses } from '../site/model.ts';
import { contains, formatAddress } from '../standards/ipv4.ts';
import { formatMac } from '../standards/mac.ts';
import { type Data, dataAt, isMapping } from '../text/syntax.ts';
import { type Entry, itemsOf } from '../site/items-of.ts';
import type { Family } from './family.ts';

/** Copies of a camera, with a cable, an address, groups and ports each, as long as there are any. */
export class Copies {
  private readonly plan: Plan;
  private readonly family: Family;
  private readonly at: Device;
  private readonly ports: readonly Port[];
  /** The items for each of the first copies. */
  private readonly made: (readonly Item[])[] = [];
  private readonly own: ReadonlySet<string>;
  private readonly addresses = new Map<number, Iterator<number>>();
  private readonly given = new Set<number>();
  private readonly groups: Iterator<number>;
  private readonly udpPorts = new Map<Stream, Iterator<number>>();
  private readonly macs: ReadonlySet<string>;
  private nextMac = 1;
  private nextNumber = 2;

  /** @param ports the free ports to plug them into, one after another; then others, which `widened` adds */
  constructor(plan: Plan, family: Family, at: Device, ports: readonly Port[]) {
    this.plan = plan;
    this.family = family;
    this.at = at;
    this.ports = ports;
    const { camera, streams, recordings, traffic } = family;
    this.own = new Set([camera, ...streams, ...recordings, ...traffic].map(({ name }) => name));
    this.groups = freeGroups(plan.site, streams.find(({ group }) => group !== undefined)?.group);
    this.macs = new Set(macUses(plan.site).map(({ mac }) => mac));
  }

  /** The items of so many copies. */
  items(number: number): readonly Item[] {
    while (this.made.length < number) this.made.push(this.make(this.made.length));
    return this.made.slice(0, number).flat();
  }

  /** The items of the site with so many more cameras and a port for each, even beyond those of the switch. */
  withPorts(number: number): readonly Item[] {
    const { item } = this.at;
    const lacking = number - this.ports.length;
    const data = lacking > 0 && isMapping(item.data) ? item.data : undefined;
    const ports = dataAt(data, ['ports']);
    if (data === undefined || !isMapping(ports)) return [...this.plan.site.items, ...this.items(number)];
    const added = Object.fromEntries(Array.from({ length: lacking }, (_, i) => [addedName(i), this.likePort()]));
    const [widened] = itemsOf('switch', [
      { section: 'devices', name: item.name, data: { ...data, ports: { ...ports, ...added } } },
    ]);
    return [...this.plan.site.items.map((own) => (own === item ? (widened ?? own) : own)), ...this.items(number)];
  }

  /** The settings of a port for one more: those of a free port, else the camera's, else what the camera needs. */
  private likePort(): Data {
    const { link, port, domain } = this.family;
    const other = link === undefined ? undefined : link.a === port ? link.b : link.a;
    const like = this.ports[0] ?? (other?.device === this.at ? other : undefined);
    const written = like === undefined ? undefined : dataAt(like.device.item.data, like.keyPath);
    if (isMapping(written)) {
      const { lag: _lag, description: _description, ...kept } = written as Record<string, Data>;
      return kept;
    }
    const vlan = domain?.vlan?.name;
    return {
      ...(port?.speed === undefined ? {} : { speed: `${port.speed} b/s` }),
      ...(vlan === undefined ? {} : { vlan }),
      ...(port?.pd === undefined ? {} : { poe: 'bt-type-4' }),
    };
  }

  private make(index: number): readonly Item[] {
    const { camera, streams, recordings, traffic } = this.family;
    const number = this.freeNumber();
    const named = (name: string): string => (this.own.has(name) ? numbered(name, number) : name);
    const entries: Entry[] = [
      { section: 'devices', name: named(camera.name), data: this.device() },
      { section: 'cables', name: '', data: this.cable(named(camera.name), index) },
    ];
    const groups = new Map<number, number | undefined>();
    const groupFor = (group: number): number | undefined => {
      if (!groups.has(group)) groups.set(group, taken(this.groups));
      return groups.get(group);
    };
    for (const stream of streams)
      entries.push({
        section: 'streams',
        name: named(stream.name),
        data: this.stream(stream, named, groupFor),
      });
    for (const { name, item, file } of recordings) {
      const data = renamed(item.data, ['stream'], named);
      entries.push({
        section: 'recordings',
        name: named(name),
        data: file === undefined ? data : { ...data, file: `${named(name)}/${file}` },
      });
    }
    for (const { name, item } of traffic)
      entries.push({ section: 'traffic', name: named(name), data: renamed(item.data, ['from', 'to'], named) });
    return itemsOf(named(camera.name), entries);
  }

  /** A number that makes a new name behind any name of the family. */
  private freeNumber(): number {
    const { deviceByName, streamByName, recordingByName, trafficByName } = this.plan.site;
    const all = [deviceByName, streamByName, recordingByName, trafficByName];
    while ([...this.own].some((name) => all.some((names) => names.has(numbered(name, this.nextNumber)))))
      this.nextNumber++;
    return this.nextNumber++;
  }

  private device(): Data {
    const { camera, link } = this.family;
    const { description: _description, location: _location, ...data } = entriesIn(camera.item.data);
    const isMoved = link === undefined || (link.a.device !== this.at && link.b.device !== this.at);
    if (isMoved) {
      // Plugged into another switch, the copy may be in another building.
      delete data['building'];
      if (this.at.building !== undefined) data['building'] = this.at.building;
    }
    return this.withOwnAddresses(data);
  }

  private withOwnAddresses(data: Record<string, Data>): Record<string, Data> {
    const found: Record<string, Data> = {};
    for (const [key, value] of Object.entries(data)) {
      if (key === 'address') {
        const address = this.address(value);
        if (address !== undefined) found[key] = address;
      } else if (key === 'mac') found[key] = this.mac();
      else if (key === 'addresses') {
        const own = Object.entries(entriesIn(value)).map(([vlan, text]) => [vlan, this.address(text)] as const);
        found[key] = Object.fromEntries(own.flatMap(([vlan, text]) => (text === undefined ? [] : [[vlan, text]])));
      } else if (key === 'ports')
        found[key] = Object.fromEntries(
          Object.entries(entriesIn(value)).map(([name, port]) => [name, this.withOwnAddresses(entriesIn(port))]),
        );
      else found[key] = value;
    }
    return found;
  }

  /** The next address in the same network; `undefined` where none is left. `auto` stays `auto`. */
  private address(written: Data): string | undefined {
    const { camera } = this.family;
    const near = ownAddresses(camera).find(({ address }) => formatAddress(address) === written)?.address;
    if (near === undefined) return typeof written === 'string' ? written : undefined;
    let free = this.addresses.get(near);
    if (free === undefined)
      this.addresses.set(near, (free = freeAddresses(this.plan.site, spaceOf(this.plan, near), near)));
    for (let address = taken(free); address !== undefined; address = taken(free)) {
      if (this.given.has(address)) continue;
      this.given.add(address);
      return formatAddress(address);
    }
    return undefined;
  }

  /** A locally administered MAC address (IEEE 802 §8.2, from memory). */
  private mac(): string {
    for (;;) {
      const low = (this.nextMac++).toString(16).padStart(6, '0');
      const mac = formatMac(`02:00:5e:${low.slice(0, 2)}:${low.slice(2, 4)}:${low.slice(4)}`);
      if (!this.macs.has(mac)) return mac;
    }
  }

  private cable(name: string, index: number): Data {
    const { camera, port, link } = this.family;
    const { type, length, fibres } = entriesIn(link?.cable.item.data ?? null);
    const at = this.ports[index]?.name ?? addedName(index - this.ports.length);
    return {
      from: `${this.at.name}/${at}`,
      to: camera.ports.length > 1 && port !== undefined ? `${name}/${port.name}` : name,
      ...(type === undefined ? {} : { type }),
      ...(length === undefined ? {} : { length }),
      ...(fibres === undefined ? {} : { fibres }),
    };
  }

  private stream(
    stream: Stream,
    named: (name: string) => string,
    groupFor: (group: number) => number | undefined,
  ): Data {
    const data = entriesIn(renamed(stream.item.data, ['source', 'carries'], named));
    if (stream.group !== undefined) {
      const group = groupFor(stream.group);
      if (group === undefined) delete data['group'];
      else data['group'] = formatAddress(group);
    } else if (isDatagrams(stream) && stream.port !== undefined) {
      const port = this.udpPort(stream, stream.port);
      if (port !== undefined) data['port'] = port;
    }
    // A server has an address of its own for each.
    if (isRtsp(stream.transport) && stream.source !== this.family.camera.name)
      data['path'] = `${stream.path === undefined ? '' : `${stream.path}-`}${named(stream.name)}`;
    return data;
  }

  private udpPort(stream: Stream, port: number): number | undefined {
    let free = this.udpPorts.get(stream);
    if (free === undefined) {
      const above = port + Math.max(2, portsTaken(this.plan.site, stream));
      this.udpPorts.set(stream, (free = freePairs(this.plan.site, stream, above)));
    }
    return taken(free);
  }
}

/** The network of an address, to take others from. */
export function spaceOf({ site }: Plan, address: number): AddressSpace {
  return site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address)) ?? alike(address);
}

function taken<T>(from: Iterator<T>): T | undefined {
  const next = from.next();
  return next.done === true ? undefined : next.value;
}

function addedName(index: number): string {
  return `further-${index + 1}`;
}

function numbered(name: string, number: number): string {
  const end = `-${number}`;
  return `${name.slice(0, LONGEST_NAME - end.length)}${end}`;
}

function entriesIn(data: Data): Record<string, Data> {
  return isMapping(data) ? { ...(data as Record<string, Data>) } : {};
}

function renamed(data: Data, keys: readonly string[], named: (name: string) => string): Record<string, Data> {
  const found = entriesIn(data);
  for (const key of keys) {
    const name = found[key];
    if (typeof name === 'string') found[key] = named(name);
  }
  return found;
}
