/**
 * Edits that leave the wiring as it is: another speed, another length, another label. A host that is edited so stays
 * the same object, and a cable is known by its ends, so that all that follows from the wiring need not be found again.
 */

import type { Item } from './item.ts';
import type { Cable, CableEnd, Device, HostRoute, Port, PortAddress } from './model.ts';

/**
 * Takes over into a host what its item says now.
 *
 * @param before the host as it was; it says the same as `now` from here on
 * @returns whether it could be done: what an item says of ports, VLANs, addresses or routes has to be as it was
 */
export function takenOver(before: Device, now: Device): boolean {
  if (before.bridging || !isWiredAlike(before, now)) return false;
  const { ports, portByName, routes, index, item } = before;
  for (const [at, port] of ports.entries()) Object.assign(port, now.ports[at], { device: before, index: port.index });
  Object.assign(before, now, { ports, portByName, routes, index });
  forget(item);
  return true;
}

/** The item is gone; should it come back, it is read again. */
function forget(item: Item): void {
  item.fact = undefined;
}

function isWiredAlike(a: Device, b: Device): boolean {
  return (
    a.kind === b.kind &&
    a.multicastRouting === b.multicastRouting &&
    isEach(a.ports, b.ports, isPortAlike) &&
    isEach(a.routes, b.routes, isRouteAlike)
  );
}

function isPortAlike(a: Port, b: Port): boolean {
  return (
    a.name === b.name &&
    a.vlan === b.vlan &&
    a.native === b.native &&
    (a.trunk === b.trunk || isEach(a.trunk ?? [], b.trunk ?? [], Object.is)) &&
    (a.trunk === undefined) === (b.trunk === undefined) &&
    isEach(a.addresses, b.addresses, isAddressAlike)
  );
}

function isAddressAlike(a: PortAddress, b: PortAddress): boolean {
  return a.address === b.address && a.vlan === b.vlan;
}

function isRouteAlike(a: HostRoute, b: HostRoute): boolean {
  return (
    a.to.network === b.to.network && a.to.prefix === b.to.prefix && a.to.hostBits === b.to.hostBits && a.port === b.port
  );
}

/** Whether both lie between the same ports. */
export function isLaidAlike(a: Cable, b: Cable): boolean {
  return a === b || (isEndAlike(a.from, b.from) && isEndAlike(a.to, b.to));
}

function isEndAlike(a: CableEnd | undefined, b: CableEnd | undefined): boolean {
  return a?.device === b?.device && a?.port === b?.port;
}

function isEach<T>(a: readonly T[], b: readonly T[], isAlike: (a: T, b: T) => boolean): boolean {
  if (a.length !== b.length) return false;
  for (const [index, one] of a.entries()) {
    const other = b[index];
    if (other === undefined || !isAlike(one, other)) return false;
  }
  return true;
}
