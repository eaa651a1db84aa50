/** The route that puts right by which port a host sends and joins groups. */

import { addElement, addEntry, nodeAt, setValue } from '../site/edit.ts';
import type { Device, HostRoute } from '../site/model.ts';
import type { Fix } from './rule.ts';

/** The length of the prefix of 224.0.0.0/4, all multicast. */
const ALL_GROUPS = 4;

/** Changes the route that decides now where that is for multicast alone, else adds one. */
export function sendMulticastBy({ item, name }: Device, port: string, decides: HostRoute | undefined): Fix[] {
  const title = `Let ${name} send multicast by ${port}`;
  if (decides !== undefined && decides.to.prefix >= ALL_GROUPS) {
    return [{ title, safe: false, edits: [setValue(item, [...decides.route, 'port'], port)] }];
  }
  const route = `{to: 224.0.0.0/4, port: ${port}}`;
  const edit =
    nodeAt(item, ['routes']) === undefined
      ? addEntry(item, [], 'routes', `[${route}]`)
      : addElement(item, ['routes'], route);
  return edit === undefined ? [] : [{ title, safe: false, edits: [edit] }];
}
