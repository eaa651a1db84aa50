/** Elements that may fail: a cable, a device, a disk, or a duct, rack or supply that several share. */

import { closest } from 'fastest-levenshtein';
import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import { type MemberLink, cablesOf } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { type Cable, type Device, type Volume, endName, portName } from '../site/model.ts';

/** The parts of a plan that decide a failure. */
export type Works = Pick<Plan, 'site' | 'network' | 'storage' | 'supply'>;

export type ElementKind = 'cable' | 'device' | 'volume' | 'duct' | 'rack';

export interface Element {
  readonly kind: ElementKind;
  /** The name to ask for it: `core/16 – stable/9`, `stable`, `archive`. */
  readonly name: string;
  readonly cables: readonly Cable[];
  readonly devices: readonly Device[];
  /** The volume of a disk that fails. */
  readonly volume: Volume | undefined;
}

/** All that may fail alone, in the order of the site. */
export function elementsOf(plan: Works): readonly Element[] {
  const { site } = plan;
  return [
    ...plan.network.topology.links.flatMap(cablesOf).map(cableElement),
    ...site.devices.filter(isInNetwork).map(deviceElement),
    ...site.volumes.map(volumeElement),
    ...sharedIn(site).duct.values(),
    ...sharedIn(site).rack.values(),
  ];
}

/** Parts of the aerial system and panels carry no packets. */
function isInNetwork({ ports, kind, host, ups }: Device): boolean {
  return (ports.length > 0 && kind !== 'patch-panel') || host !== undefined || ups !== undefined || kind === 'circuit';
}

export function cableElement({ cable, a, b }: MemberLink): Element {
  return {
    kind: 'cable',
    name: `${portName(a)} – ${portName(b)}`,
    cables: [cable],
    devices: [],
    volume: undefined,
  };
}

export function deviceElement(device: Device): Element {
  return { kind: 'device', name: device.name, cables: [], devices: [device], volume: undefined };
}

export function volumeElement(volume: Volume): Element {
  return { kind: 'volume', name: volume.name, cables: [], devices: [], volume };
}

/** What cables or devices have in common, by its name. */
const sharedIn = perObject((site: Works['site']) => {
  const ducts = grouped(site.cables, ({ duct }) => duct);
  const racks = grouped(site.devices, ({ mounting }) => mounting?.rack);
  const none = { cables: [], devices: [], volume: undefined };
  return {
    duct: new Map(
      [...ducts].map(([name, cables]): [string, Element] => [name, { ...none, kind: 'duct', name, cables }]),
    ),
    rack: new Map(
      [...racks].map(([name, all]): [string, Element] => [name, { ...none, kind: 'rack', name, devices: all }]),
    ),
  };
});

/** The element of a name: a device, a cable by either end or its label, a volume, a duct or a rack. */
export function elementNamed(plan: Works, name: string): Element | undefined {
  const { site, network } = plan;
  const device = site.deviceByName.get(name);
  if (device !== undefined) return deviceElement(device);
  const members = network.topology.links.flatMap(cablesOf);
  const isNamed = ({ cable, a, b }: MemberLink): boolean =>
    portName(a) === name ||
    portName(b) === name ||
    cable.label === name ||
    cableElement({ cable, a, b, capacity: undefined }).name === name ||
    [cable.from, cable.to].some((end) => end !== undefined && endName(end) === name);
  const member = members.find(isNamed);
  if (member !== undefined) return cableElement(member);
  const volume = site.volumeByName.get(name);
  if (volume !== undefined) return volumeElement(volume);
  return sharedIn(site).duct.get(name) ?? sharedIn(site).rack.get(name);
}

/** All the names that `elementNamed` knows. */
function elementNames(plan: Works): string[] {
  const members = plan.network.topology.links.flatMap(cablesOf);
  const labels = members.flatMap(({ cable }) => cable.label ?? []);
  const ends = members.flatMap(({ a, b }) => [portName(a), portName(b)]);
  return [...elementsOf(plan).map(({ name }) => name), ...labels, ...ends];
}

/** The message for a name of no element. */
export function noElementWords(plan: Works, name: string): string {
  const names = elementNames(plan);
  if (names.length === 0) return 'The site has nothing that could fail.';
  const ports = plan.site.devices.flatMap((device) => device.ports);
  if (ports.some((port) => portName(port) === name)) return `No cable is in ${name}, so nothing is lost with it.`;
  return `Nothing here is called ${name}. The nearest is ${closest(name, names)}.`;
}

/** `the cable core/16 – stable/9`, `a disk of archive` */
export function elementWords({ kind, name }: Element): string {
  switch (kind) {
    case 'cable':
      return `the cable ${name}`;
    case 'device':
      return name;
    case 'volume':
      return `a disk of ${name}`;
    case 'duct':
      return `all that lies in ${name}`;
    case 'rack':
      return `all that is in the rack ${name}`;
  }
}
