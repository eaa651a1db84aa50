/** Where links and ports stand in the text, and the names by which an acceptance may mean them. */

import type { Link } from '../network/link.ts';
import { type Place, placeOf } from '../site/item.ts';
import { type Port, portName } from '../site/model.ts';

/** The end of the link's cable that names the port. */
export function placeOfEnd(link: Link, port: Port): Place {
  const end = port === link.a ? link.cable.from : link.cable.to;
  return placeOf(link.cable.item, end?.route ?? []);
}

/** What is said of a port under a key; its own name where that is not said. */
export function placeOfPort(port: Port, ...keys: readonly string[]): Place {
  return placeOf(port.device.item, [...port.route, ...keys]);
}

/** The ports, then their devices. */
export function aboutPorts(...ports: readonly Port[]): string[] {
  return [...ports.map(portName), ...ports.map(({ device }) => device.name)];
}
