/** The route that puts right by which port a host sends and joins groups. */

import { formatAddress } from '../standards/ipv4.ts';
import { type Fix, addElement, addEntry, nameText, nodeAt, setValue } from './edit.ts';
import type { Device, HostRoute } from './model.ts';

/** The length of the prefix of 224.0.0.0/4, all multicast. */
const ALL_GROUPS = 4;

/**
 * Changes the route that decides now where that is for multicast alone, else adds one. With `alone` it is for that
 * group only, where others must go on as they do.
 */
export function sendMulticastBy(
  { item, name }: Device,
  port: string,
  decides: HostRoute | undefined,
  alone?: number,
): Fix[] {
  const title = `Let ${name} send ${alone === undefined ? 'multicast' : formatAddress(alone)} by ${port}`;
  if (decides !== undefined && decides.to.prefix >= (alone === undefined ? ALL_GROUPS : 32)) {
    return [{ title, safe: false, edits: [setValue(item, [...decides.route, 'port'], nameText(port))] }];
  }
  const to = alone === undefined ? '224.0.0.0/4' : `${formatAddress(alone)}/32`;
  const route = `{to: ${to}, port: ${nameText(port)}}`;
  const edit =
    nodeAt(item, ['routes']) === undefined
      ? addEntry(item, [], 'routes', `[${route}]`)
      : addElement(item, ['routes'], route);
  return edit === undefined ? [] : [{ title, safe: false, edits: [edit] }];
}
