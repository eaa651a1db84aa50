/** Where a thing that a page names is declared. */

import { type Place, namePlace, placeOf } from '../site/item.ts';
import { type Site, connectorNamed } from '../site/model.ts';
import { thingsOf, NAMED_SECTIONS } from '../site/declared.ts';

/** @param names a section, or `ports` for a port or a coax connector: `core/16` */
export function placeOfName(site: Site, names: string, name: string): Place | undefined {
  if (names === 'ports') return placeOfPort(site, name);
  const section = NAMED_SECTIONS.find((one) => one === names);
  const item = section === undefined ? undefined : thingsOf(site, section).get(name)?.item;
  return item === undefined ? undefined : namePlace(item);
}

/** Tries each slash, as the name of a device may wrongly contain one. */
function placeOfPort({ deviceByName }: Site, name: string): Place | undefined {
  let slash = name.indexOf('/');
  while (slash >= 0 && !deviceByName.has(name.slice(0, slash))) slash = name.indexOf('/', slash + 1);
  const device = deviceByName.get(name.slice(0, slash));
  if (slash < 0 || device === undefined) return undefined;
  const port = name.slice(slash + 1);
  const keyPath = (device.portByName.get(port) ?? connectorNamed(device, port))?.keyPath ?? [];
  return keyPath.length === 0 ? namePlace(device.item) : placeOf(device.item, keyPath, 'key');
}
