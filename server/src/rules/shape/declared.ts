/** What a text in the site names, and whether there is such a thing. */

import { textAt } from '../../text/syntax.ts';
import type { Item } from '../../site/item.ts';
import type { Device, Site } from '../../site/model.ts';
import { readEnd } from '../../site/read.ts';
import type { NameKind } from '../../site/shape.ts';
import { faultIds, ruleIds } from '../ids.generated.ts';

const KNOWN_RULES: ReadonlySet<string> = new Set([...ruleIds, ...faultIds]);

/** Whether the site declares what the text names. Of a port, only its device is looked at; see `deviceOf`. */
export function isDeclared(site: Site, item: Item, names: NameKind, text: string): boolean {
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
    case 'rules':
      return KNOWN_RULES.has(text);
    case 'port-end':
      return site.deviceByName.has(readEnd(text, [])?.device ?? '');
    case 'own-port':
      return ownDevice(site, item)?.portByName.has(text) ?? true;
  }
}

/** All names that could stand there. */
export function declaredNames(site: Site, names: NameKind): Iterable<string> {
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
    case 'rules':
      return KNOWN_RULES;
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
