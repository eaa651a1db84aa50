/** Places of ports, cable ends and parts of values in the text. */

import type { KeyPath } from '../text/syntax.ts';
import { nodeAt } from './edit.ts';
import { type Item, type Place, namePlace, placeOf } from './item.ts';
import type { Cable, CableEnd, Device, Port } from './model.ts';

/** Two ports and the cable between them; `a` is the port at its `from`. */
export interface Cabled {
  readonly cable: Cable;
  readonly a: Port;
  readonly b: Port;
}

/** The end of the cable that names the port. */
export function endAt({ cable, a }: Cabled, port: Port): CableEnd | undefined {
  return port === a ? cable.from : cable.to;
}

/** Where the cable names the port. */
export function placeOfEnd(cabled: Cabled, port: Port): Place {
  return placeOf(cabled.cable.item, endAt(cabled, port)?.keyPath ?? []);
}

/** The place of a port's key, or of the port itself if the key is not written. */
export function placeOfPort(port: Port, ...keys: readonly string[]): Place {
  return placeOf(port.device.item, [...port.keyPath, ...keys]);
}

/** Where a device declares what feeds it, else its name. */
export function placeOfPower({ item, ownPower }: Device): Place {
  return ownPower === undefined ? namePlace(item) : placeOf(item, ['power']);
}

/** From `start` to `end` of the value's own characters; the whole value where they are not written one for one. */
export function partOf(item: Item, keyPath: KeyPath, start: number, end: number): Place {
  const node = nodeAt(item, keyPath);
  const whole = placeOf(item, keyPath);
  if (node?.kind !== 'scalar' || node.style === 'block') return whole;
  const open = node.style === 'quoted' ? 1 : 0;
  const { piece } = whole;
  const written = piece.text.slice(whole.start + open, whole.end - open);
  return written === String(node.value)
    ? { piece, start: whole.start + open + start, end: whole.start + open + end }
    : whole;
}

/** The first line of a place: a mark over many lines hides more than it shows. */
export function firstLine(place: Place): Place {
  const newline = place.piece.text.slice(place.start, place.end).search(/[\r\n]/);
  return newline === -1 ? place : { ...place, end: place.start + newline };
}
