/**
 * The parts to buy for a site: cables by type and cut length, leads, panel and switch ports by need, modules, disks
 * with a spare, UPS, rack units. Never a price and never a make.
 */

import { memberLinkAt } from '../network/link.ts';
import { grouped } from '../grouped.ts';
import type { Network } from '../network/network.ts';
import type { PoeFigures } from '../network/poe.ts';
import type { Cable, Device, Port, Rack, Site, Volume } from '../site/model.ts';
import { endName, portName } from '../site/model.ts';
import { isCoax } from '../standards/television/coax.ts';
import { naturally } from '../text/natural-order.ts';
import { bitRate, bytes, metres, voltAmperes, wattHours, watts } from '../text/words.ts';
import { cutLength, stockLength } from './cut-length.ts';

export interface Purchase {
  readonly group: PurchaseGroup;
  /** `cat6, 20 m`; together with the group it describes the part. */
  readonly what: string;
  readonly count: number;
  /** The total length of laid cables, mm. */
  readonly length: number | undefined;
  /** What it is for. */
  readonly at: readonly string[];
}

export const PURCHASE_GROUPS = [
  'cable',
  'lead',
  'connector',
  'panel port',
  'switch port',
  'module',
  'device',
  'disk',
  'UPS',
  'rack unit',
] as const;

export type PurchaseGroup = (typeof PURCHASE_GROUPS)[number];

export interface Purchases {
  /** In the order of the groups, each in natural order. */
  readonly lines: readonly Purchase[];
  /** Undeclared parts, which are left out or have to be measured. */
  readonly notSaid: readonly string[];
}

/** The parts of a plan that decide it. */
export interface Planned {
  readonly site: Pick<Site, 'cables' | 'devices' | 'deviceByName' | 'volumes' | 'racks'>;
  readonly network: Pick<Network, 'topology'>;
  readonly poe: readonly PoeFigures[];
}

export function purchasesOf(plan: Planned): Purchases {
  const list = new List();
  for (const cable of plan.site.cables) addCable(list, cable, plan.site.deviceByName);
  const sources = new Map(plan.poe.map((source) => [source.device, source]));
  for (const device of plan.site.devices) addDevice(list, plan, device, sources.get(device));
  addDisks(list, plan.site.volumes);
  const inRacks = grouped(plan.site.devices, ({ mounting }) => mounting.rack);
  for (const rack of plan.site.racks) addRack(list, rack, inRacks.get(rack.name) ?? []);
  return list.done();
}

/** A purchase, as far as it is known. */
interface Line extends Purchase {
  count: number;
  length: number | undefined;
  readonly at: string[];
}

class List {
  private readonly lines = new Map<string, Line>();
  private readonly missing: string[] = [];

  add(group: PurchaseGroup, what: string, at: string, count = 1, length?: number): void {
    const key = `${group}\n${what}`;
    const own = this.lines.get(key) ?? { group, what, count: 0, length: undefined, at: [] };
    this.lines.set(key, own);
    own.count += count;
    if (length !== undefined) own.length = (own.length ?? 0) + length;
    own.at.push(at);
  }

  notSaid(what: string): void {
    this.missing.push(what);
  }

  done(): Purchases {
    const rank = ({ group }: Purchase): number => PURCHASE_GROUPS.indexOf(group);
    return {
      lines: [...this.lines.values()]
        .map((line) => ({ ...line, at: [...line.at].sort(naturally) }))
        .sort((a, b) => rank(a) - rank(b) || naturally(a.what, b.what)),
      notSaid: [...this.missing].sort(naturally),
    };
  }
}

function addCable(
  list: List,
  { from, to, type, length, fibres, through }: Cable,
  deviceByName: Site['deviceByName'],
): void {
  if (from === undefined || to === undefined) return;
  const at = `${endName(from)} – ${endName(to)}`;
  if (type === undefined) list.notSaid(`${at}: the type of the cable`);
  if (length === undefined) list.notSaid(`${at}: the length of the cable`);
  const kind = type ?? 'cable';
  const lead = through.length > 0 || length === undefined || isCoax(type) ? undefined : stockLength(length);
  if (lead !== undefined) {
    list.add('lead', `${kind}, ${metres(lead)}`, at);
    return;
  }
  if (length !== undefined) {
    const cut = cutLength(length);
    list.add('cable', `${kind}, ${metres(cut)}`, at, 1, cut);
  }
  if (type !== undefined) {
    const cores = isGlass({ type }) ? (fibres ?? 2) : 1;
    list.add('connector', `${kind}, ${cores === 1 ? 'end of a cable' : `end of ${cores} fibres`}`, at, 2);
  }
  // Coax is also led through parts other than panels.
  const panels = through.filter((end) => deviceByName.get(end.device)?.kind === 'patch-panel');
  for (const panel of panels) list.add('panel port', panelWords(panel.device, deviceByName), endName(panel));
  // A cable that ends in a panel is led on by one lead there and one at its outlet.
  if (panels.length > 0) list.add('lead', `${kind}, as long as rack and outlet need`, at, 2);
}

/** `panel-a, which has 24`: the ports of the panel; the needed number is in the line. */
function panelWords(name: string, deviceByName: Site['deviceByName']): string {
  const all = deviceByName.get(name)?.ports.length ?? 0;
  return all === 0 ? name : `${name}, which has ${all}`;
}

function addDevice(list: List, { network }: Planned, device: Device, source: PoeFigures | undefined): void {
  const { kind, ports, ups, name } = device;
  if (kind === undefined) {
    list.notSaid(`${name}: its kind`);
    return;
  }
  if (ups !== undefined) list.add('UPS', upsWords(ups), name);
  else if (kind !== 'circuit' && kind !== 'internet') list.add('device', deviceWords(device), name);
  const feeds = new Map(source?.feeds.map((feed) => [feed.from, feed]));
  for (const port of ports) {
    if (port.module !== undefined) list.add('module', port.module, portName(port));
    const link = network.topology.linkAt(port);
    const cable = link === undefined ? undefined : memberLinkAt(link, port)?.cable;
    // A converter has its optics built in.
    if (port.module === undefined && cable !== undefined && isGlass(cable) && kind !== 'media-converter')
      list.add('module', moduleWords(port, cable), portName(port));
    if (link === undefined || !device.bridging || kind === 'access-point') continue;
    const feed = feeds.get(port);
    list.add('switch port', `${name}: ${portWords(port, feed?.class.class)}`, portName(port));
  }
}

function upsWords({ rated, ratedPower, battery }: NonNullable<Device['ups']>): string {
  const known = [
    rated === undefined ? undefined : voltAmperes(rated),
    ratedPower === undefined ? undefined : watts(ratedPower),
    battery === undefined ? undefined : wattHours(battery),
  ].filter((part) => part !== undefined);
  return known.length === 0 ? 'of undeclared ratings' : known.join(', ');
}

function isGlass({ type }: Pick<Cable, 'type'>): boolean {
  return type !== undefined && /^o[ms]\d/.test(type);
}

/** An undeclared module by its task: `1 Gb/s over os2, 180 m`. */
function moduleWords({ speed }: Port, { type, fibres, length }: Cable): string {
  const over = `${speed === undefined ? 'undeclared speed' : bitRate(speed)} over ${type ?? 'glass'}`;
  return [over, ...(length === undefined ? [] : [metres(length)]), ...(fibres === 1 ? ['one fibre'] : [])].join(', ');
}

/** A camera by its power class; all else by its kind. */
function deviceWords({ kind, ports }: Device): string {
  const draws = ports.find((port) => port.pd !== undefined)?.pd;
  const own = (kind ?? 'device').replaceAll('-', ' ');
  if (draws === undefined) return own;
  return `${own}, ${draws.class === undefined ? 'by PoE' : `PoE class ${draws.class}`}`;
}

/** `1 Gb/s`, `100 Mb/s, PoE class 3`. */
function portWords({ speed, medium, module }: Port, fed: number | undefined): string {
  const words = [speed === undefined ? 'undeclared speed' : bitRate(speed)];
  if (module !== undefined || (medium !== undefined && medium !== 'copper')) words.push('for a module');
  if (fed !== undefined) words.push(`PoE class ${fed}`);
  return words.join(', ');
}

function addDisks(list: List, volumes: readonly Volume[]): void {
  const sizes = new Set<number>();
  for (const { name, capacity, disks } of volumes) {
    if (capacity === undefined) {
      list.notSaid(`${name}: its capacity`);
      continue;
    }
    sizes.add(capacity);
    list.add('disk', bytes(capacity), name, disks ?? 1);
  }
  for (const size of sizes) list.add('disk', `${bytes(size)}, spare`, 'on the shelf');
}

function addRack(list: List, { name, units }: Rack, devices: readonly Device[]): void {
  const inside = devices.filter(({ mounting }) => mounting.unit !== undefined);
  const taken = inside.reduce((sum, { mounting }) => sum + mounting.units, 0);
  if (taken > 0) list.add('rack unit', `${name}${units === undefined ? '' : `, which has ${units}`}`, name, taken);
}
