/** A route for multicast, so that a host sends and joins groups by the port that is meant. */

import { formatAddress } from '../standards/ipv4.ts';
import { type Fix, fixOf, nameText, putElement, setValue } from './edit.ts';
import type { Device, HostRoute } from './model.ts';

/** The length of the prefix of 224.0.0.0/4, all multicast. */
const ALL_GROUPS = 4;

/**
 * Changes the route that decides now if it is for multicast only, else adds one. With `alone` the route is for that
 * group only, so that others stay as they are.
 */
export function sendMulticastBy(
  { item, name }: Device,
  port: string,
  decides: HostRoute | undefined,
  alone?: number,
): Fix[] {
  const title = `Let ${name} send ${alone === undefined ? 'multicast' : formatAddress(alone)} by ${port}`;
  if (decides !== undefined && decides.to.prefix >= (alone === undefined ? ALL_GROUPS : 32)) {
    return fixOf(title, setValue(item, [...decides.route, 'port'], nameText(port)));
  }
  const to = alone === undefined ? '224.0.0.0/4' : `${formatAddress(alone)}/32`;
  const route = `{to: ${to}, port: ${nameText(port)}}`;
  return fixOf(title, putElement(item, 'routes', route));
}
