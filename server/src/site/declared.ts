/** What a text in the site names, and whether there is such a thing. */

import { textAt } from '../text/syntax.ts';
import type { Item } from './item.ts';
import type { Device, Site } from './model.ts';
import { readEnd } from './read.ts';
import type { NameKind } from './shape.ts';

/** Names that the site itself declares. */
export type DeclaredKind = Exclude<NameKind, 'rules'>;

/** Whether the site declares what the text names. Of a port, only its device is looked at; see `deviceOf`. */
export function isDeclared(site: Site, item: Item, names: DeclaredKind, text: string): boolean {
  switch (names) {
    case 'devices':
      return site.deviceByName.has(text);
    case 'vlans':
      return site.vlanByName.has(text);
    case 'streams':
      return site.streamByName.has(text);
    case 'volumes':
      return site.volumeByName.has(text);
    case 'recordings':
      return site.recordingByName.has(text);
    case 'port-end':
      return site.deviceByName.has(readEnd(text, [])?.device ?? '');
    case 'own-port':
      return ownDevice(site, item)?.portByName.has(text) ?? true;
  }
}

/** All names that could stand there. */
export function declaredNames(site: Site, names: DeclaredKind): Iterable<string> {
  switch (names) {
    case 'devices':
    case 'port-end':
      return site.deviceByName.keys();
    case 'vlans':
      return site.vlanByName.keys();
    case 'streams':
      return site.streamByName.keys();
    case 'volumes':
      return site.volumeByName.keys();
    case 'recordings':
      return site.recordingByName.keys();
    case 'own-port':
      return [];
  }
}

/** The device whose ports an item names without saying whose: itself, or the source of a stream. */
export function ownDevice(site: Site, item: Item): Device | undefined {
  if (item.section === 'devices') return site.deviceByName.get(item.name);
  const source = textAt(item.data, ['source']);
  return source === undefined ? undefined : site.deviceByName.get(source);
}
