/** The things that a site declares by name, and what a text names. */

import { textAt } from '../text/syntax.ts';
import type { Item } from './item.ts';
import type { Device, Rack, Recording, Site, Stream, Traffic, Vlan, Volume } from './model.ts';
import type { Multiplex, Occasion, Service } from './television/facts.ts';
import { readEnd } from './read.ts';
import { senderOf } from './sender.ts';
import type { NameKind } from './shape.ts';

/** Sections whose items have names. */
export type NamedSection =
  | 'devices'
  | 'vlans'
  | 'racks'
  | 'multiplexes'
  | 'services'
  | 'occasions'
  | 'streams'
  | 'traffic'
  | 'volumes'
  | 'recordings';

/** What an item of the section is called. */
export const THING: Readonly<Record<NamedSection, string>> = {
  devices: 'device',
  vlans: 'VLAN',
  racks: 'rack',
  multiplexes: 'multiplex',
  services: 'service',
  occasions: 'occasion',
  streams: 'stream',
  traffic: 'traffic entry',
  volumes: 'volume',
  recordings: 'recording',
};

export const NAMED_SECTIONS = Object.keys(THING) as readonly NamedSection[];

/** What a section declares, by name. */
export function thingsOf(
  site: Site,
  section: NamedSection,
): ReadonlyMap<string, Device | Vlan | Rack | Multiplex | Service | Occasion | Stream | Traffic | Volume | Recording> {
  switch (section) {
    case 'devices':
      return site.deviceByName;
    case 'vlans':
      return site.vlanByName;
    case 'racks':
      return site.rackByName;
    case 'multiplexes':
      return site.multiplexByName;
    case 'services':
      return site.serviceByName;
    case 'occasions':
      return site.occasionByName;
    case 'streams':
      return site.streamByName;
    case 'traffic':
      return site.trafficByName;
    case 'volumes':
      return site.volumeByName;
    case 'recordings':
      return site.recordingByName;
  }
}

/** Whether the site declares what the text names; for an end of a cable, whether it declares the device. */
export function isDeclared(site: Site, item: Item, names: Exclude<NameKind, 'rules'>, text: string): boolean {
  switch (names) {
    case 'port-end':
      return site.deviceByName.has(readEnd(text, [])?.device ?? '');
    case 'own-port':
      return ownDevice(site, item)?.portByName.has(text) ?? true;
    default:
      return thingsOf(site, names).has(text);
  }
}

/** The device whose ports an item names without saying whose: itself, or what sends a stream. */
export function ownDevice(site: Site, item: Item): Device | undefined {
  if (item.section === 'devices') return site.deviceByName.get(item.name);
  return senderOf(site, { source: textAt(item.data, ['source']) });
}
