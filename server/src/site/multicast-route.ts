/** A route for multicast, so that a host sends and joins groups by the port that is meant. */

import { formatAddress, formatSubnet } from '../standards/ipv4.ts';
import { type Edit, type Fix, fixOf, nameText, putElement, setValue } from './edit.ts';
import type { Item } from './item.ts';
import type { Device, HostRoute } from './model.ts';
import { asName } from '../text/words.ts';

/** The length of the prefix of 224.0.0.0/4, all multicast. */
const ALL_GROUPS = 4;

/** Where a route leads: to a port, and into one of its VLANs where it carries several. */
export interface RouteTarget {
  readonly port: string;
  readonly vlan: string | undefined;
}

/**
 * Changes the route that decides now if it is for multicast only, else adds one. With `alone` the route is for that
 * group only, so that others stay as they are.
 */
export function sendMulticastBy(
  { item, name, routes }: Device,
  by: RouteTarget,
  decides: HostRoute | undefined,
  alone?: number,
): Fix[] {
  const { port, vlan } = by;
  const what = alone === undefined ? 'multicast' : formatAddress(alone);
  const title = `Let ${asName(name)} send ${what} by ${port}${vlan === undefined ? '' : `, into ${vlan}`}`;
  if (decides !== undefined && decides.to.prefix >= (alone === undefined ? ALL_GROUPS : 32)) {
    return fixOf(title, ...leadBy(item, decides, by));
  }
  const to = alone === undefined ? '224.0.0.0/4' : `${formatAddress(alone)}/32`;
  // Linux refuses a second route for one destination.
  if (routes.some((route) => formatSubnet(route.to) === to)) return [];
  const into = vlan === undefined ? '' : `, vlan: ${nameText(vlan)}`;
  return fixOf(title, putElement(item, 'routes', `{to: ${to}, port: ${nameText(port)}${into}}`));
}

/** Lets a route lead elsewhere. A route with a VLAN or gateway, which belong to the present port, is written anew. */
export function leadBy(item: Item, route: HostRoute, { port, vlan }: RouteTarget): Edit[] {
  if (vlan === undefined && route.vlan === undefined && route.via === undefined)
    return [setValue(item, [...route.keyPath, 'port'], nameText(port))];
  const to = route.to.prefix === 0 ? 'default' : formatSubnet(route.to);
  const into = vlan === undefined ? '' : `, vlan: ${nameText(vlan)}`;
  return [setValue(item, route.keyPath, `{to: ${to}, port: ${nameText(port)}${into}}`)];
}
