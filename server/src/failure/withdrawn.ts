/** The site where hosts notice that a card has no carrier, and give up its address and routes. */

import type { Failed } from '../network/failed.ts';
import { hasFailed } from '../network/failed.ts';
import { assemble } from '../site/assemble.ts';
import type { Item } from '../site/item.ts';
import { itemsOf } from '../site/items-of.ts';
import type { Port, Site } from '../site/model.ts';
import { type Data, dataAt, isMapping } from '../text/syntax.ts';
import type { Works } from './element.ts';

/** The site without the cut cards of hosts that have others, and without cut cables; `undefined` if there are none. */
export function withdrawnIn({ site, network }: Works, failed: Failed): Site | undefined {
  const { links, linkAt } = network.topology;
  const cut = links
    .flatMap((link) => link.members)
    .filter((member) => hasFailed(failed, member))
    .flatMap(({ a, b }) => [a, b])
    .filter((port) => !port.forwards && !failed.devices.has(port.device))
    .filter(({ device }) => device.ports.filter((port) => linkAt(port) !== undefined).length > 1);
  if (cut.length === 0) return undefined;
  const changed = new Map<Item, Item>();
  for (const { device } of cut) {
    const gone = cut.filter((port) => port.device === device);
    const [item] = itemsOf('withdrawn', [
      { section: 'devices', name: device.name, data: without(device.item.data, gone) },
    ]);
    if (item !== undefined) changed.set(device.item, item);
  }
  const cables = new Set([...failed.cables].map(({ item }) => item));
  return assemble(site.items.filter((item) => !cables.has(item)).map((item) => changed.get(item) ?? item));
}

function without(data: Data, gone: readonly Port[]): Data {
  if (!isMapping(data)) return data;
  const names = new Set(gone.map(({ name }) => name));
  const ports = dataAt(data, ['ports']);
  const routes = dataAt(data, ['routes']);
  return {
    ...data,
    ...(isMapping(ports) && {
      ports: Object.fromEntries(Object.entries(ports).filter(([name]) => !names.has(name))) as Data,
    }),
    ...(Array.isArray(routes) && {
      routes: routes.filter((route) => !names.has(String(dataAt(route, ['port'])))),
    }),
  };
}
