/** The things at a place in the text, by the names that drawings use. */

import type { Checked } from '../lint/check.ts';
import type { SiteText } from '../site/folder.ts';
import type { Item } from '../site/item.ts';
import { locate } from '../site/locate.ts';
import { type Port, portName } from '../site/model.ts';
import { linkAt } from './link-at.ts';
import { nameAt } from './names/uses.ts';

/** A section, or `ports`, and the name of one of its things. */
export interface ThingName {
  readonly names: string;
  readonly name: string;
}

/**
 * The nearest first: the name at the place, the port declared there, the item or the ports that a cable joins, and the
 * other ends of a device's or port's cables, as a drawing may show it only there.
 */
export function thingsAt(checked: Checked, file: SiteText, offset: number): ThingName[] {
  const found = nameAt(checked, file, offset)?.named;
  const at = locate(file, offset);
  const own = [
    ...(found === undefined ? [] : [{ names: found.kind, name: found.name }]),
    ...(at === undefined ? [] : thingsOf(checked, at.item, at.route)),
  ];
  const all = [...own, ...own.flatMap((one) => cabledTo(checked, one))];
  return [...new Map(all.map((one) => [`${one.names} ${one.name}`, one])).values()];
}

function thingsOf({ plan }: Checked, item: Item, route: readonly (string | number)[]): ThingName[] {
  if (item.section === 'cables') {
    const link = linkAt(plan, item);
    return link === undefined ? [] : [link.a, link.b].map(named);
  }
  const own = { names: item.section, name: item.name };
  const [key, entry] = route;
  if (item.section !== 'devices' || key !== 'ports' || entry === undefined) return [own];
  const device = plan.site.deviceByName.get(item.name);
  const declared = device?.ports.filter((port) => port.device.item === item && port.route[1] === entry) ?? [];
  return [...declared.map(named), own];
}

/** Ports of a device, and those at the other ends of their cables. */
function cabledTo({ plan }: Checked, { names, name }: ThingName): ThingName[] {
  if (names !== 'devices' && names !== 'ports') return [];
  const [device = '', port] = name.split('/');
  const all = plan.site.deviceByName.get(device)?.ports ?? [];
  const ports = names === 'devices' ? all : all.filter((one) => one.name === port);
  const links = ports.flatMap((one) => plan.network.topology.linkAt(one) ?? []);
  return [...ports, ...links.flatMap(({ a, b }) => [a, b])].map(named);
}

function named(port: Port): ThingName {
  return { names: 'ports', name: portName(port) };
}
