/** What a place in the text is about, as a drawing names it. */

import type { Checked } from '../lint/check.ts';
import type { SiteText } from '../site/folder.ts';
import type { Item } from '../site/item.ts';
import { locate } from '../site/locate.ts';
import { portName } from '../site/model.ts';
import { linkAt } from './link-at.ts';
import { nameAt } from './names/uses.ts';

/** A section, or `ports`, and the name of one of its things. */
export interface ThingName {
  readonly names: string;
  readonly name: string;
}

/** The nearest first: the name at the place, the port that is declared there, the item or the ports that a cable joins. */
export function thingsAt(checked: Checked, file: SiteText, offset: number): ThingName[] {
  const named = nameAt(checked, file, offset)?.named;
  const at = locate(file, offset);
  const all = [
    ...(named === undefined ? [] : [{ names: named.kind, name: named.name }]),
    ...(at === undefined ? [] : thingsOf(checked, at.item, at.route)),
  ];
  return [...new Map(all.map((one) => [`${one.names} ${one.name}`, one])).values()];
}

function thingsOf({ plan }: Checked, item: Item, route: readonly (string | number)[]): ThingName[] {
  if (item.section === 'cables') {
    const link = linkAt(plan, item);
    return link === undefined ? [] : [link.a, link.b].map((port) => ({ names: 'ports', name: portName(port) }));
  }
  const own = { names: item.section, name: item.name };
  const [key, entry] = route;
  if (item.section !== 'devices' || key !== 'ports' || entry === undefined) return [own];
  const device = plan.site.deviceByName.get(item.name);
  const declared = device?.ports.filter((port) => port.device.item === item && port.route[1] === entry) ?? [];
  return [...declared.map((port) => ({ names: 'ports', name: portName(port) })), own];
}
