/** The names by which an acceptance may mean a finding. */

import { dataAt } from '../text/syntax.ts';
import { type Item, type Place, itemAt } from './item.ts';
import { type Connector, type Port, connectorName, portName } from './model.ts';

/** The name of the item, or what a cable names. */
export function acceptAtItem(item: Item): string[] {
  if (item.name !== '') return [item.name];
  const ends = [dataAt(item.data, ['from']), dataAt(item.data, ['to'])];
  return ends.filter((end) => typeof end === 'string');
}

/** As `acceptAtItem`, of the item that a place is in. */
export function acceptAtPlace(place: Place): string[] {
  const item = itemAt(place);
  return item === undefined ? [] : acceptAtItem(item);
}

/** The ports, then their devices. */
export function acceptAtPorts(...ports: readonly Port[]): string[] {
  return [...ports.map(portName), ...ports.map(({ device }) => device.name)];
}

/** The connector, then its device. */
export function acceptAtConnector(connector: Connector): string[] {
  return [connectorName(connector), connector.device.name];
}
