/** The things at a place in the text, by the names that drawings use. */

import type { Checked } from '../lint/check.ts';
import type { SiteText } from '../site/folder.ts';
import type { Item } from '../site/item.ts';
import { locate } from '../site/locate.ts';
import { type Connector, type Port, connectorAt } from '../site/model.ts';
import { readCable } from '../site/read.ts';
import { linkAt } from './link-at.ts';
import { nameAt } from './names/uses.ts';

/** A section, or `ports`, and the name of one of its things. */
export interface ThingName {
  readonly names: string;
  readonly name: string;
}

/**
 * The nearest first: the name at the place, the port or connector declared there, the item or what a cable joins, and
 * the connectors of a device and the other ends of its or a port's cables, as a drawing may show it only there.
 */
export function thingsAt(checked: Checked, file: SiteText, offset: number): ThingName[] {
  const found = nameAt(checked, file, offset)?.named;
  const at = locate(file, offset);
  const own = [
    ...(found === undefined ? [] : [{ names: found.kind, name: found.name }]),
    ...(at === undefined ? [] : thingsOf(checked, at.item, at.keyPath)),
  ];
  const all = [...own, ...own.flatMap((one) => endsOf(checked, one))];
  return [...new Map(all.map((one) => [`${one.names} ${one.name}`, one])).values()];
}

function thingsOf({ plan }: Checked, item: Item, keyPath: readonly (string | number)[]): ThingName[] {
  if (item.section === 'cables') {
    const link = linkAt(plan, item);
    const { from, to } = readCable(item);
    const connectors = [from, to].flatMap((end) => connectorAt(plan.site, end) ?? []);
    const devices = connectors.map(({ device }) => ({ names: 'devices', name: device.name }));
    return link === undefined ? [...connectors.map(named), ...devices] : [link.a, link.b].map(named);
  }
  const own = { names: item.section, name: item.name };
  const [key, entry] = keyPath;
  if (item.section !== 'devices' || entry === undefined) return [own];
  const device = plan.site.deviceByName.get(item.name);
  const ends: readonly (Port | Connector)[] =
    device?.item === item ? [...device.ports, ...device.connectorByName.values()] : [];
  const declared = ends.filter(({ keyPath: [section, name] }) => section === key && name === entry);
  return [...declared.map(named), own];
}

/** Ports and connectors of a device, and what is at the other ends of their cables. */
function endsOf({ plan }: Checked, { names, name }: ThingName): ThingName[] {
  if (names !== 'devices' && names !== 'ports') return [];
  const [device = '', port] = name.split('/');
  const all = plan.site.deviceByName.get(device)?.ports ?? [];
  const ports = names === 'devices' ? all : all.filter((one) => one.name === port);
  const connectors =
    names === 'devices' ? [...(plan.site.deviceByName.get(device)?.connectorByName.values() ?? [])] : [];
  const links = ports.flatMap((one) => plan.network.topology.linkAt(one) ?? []);
  return [...ports, ...connectors, ...links.flatMap(({ a, b }) => [a, b])].map(named);
}

function named({ device, name }: Port | Connector): ThingName {
  return { names: 'ports', name: `${device.name}/${name}` };
}
