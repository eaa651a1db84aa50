/** A part of a value as a place: the device of `core/16`, the port of it. */

import type { Route } from '../../text/syntax.ts';
import { nodeAt } from '../../site/edit.ts';
import { type Item, type Place, placeOf } from '../../site/item.ts';

/** From `start` to `end` of the value's own characters; the whole value where they are not written one for one. */
export function partOf(item: Item, route: Route, start: number, end: number): Place {
  const node = nodeAt(item, route);
  const whole = placeOf(item, route);
  if (node?.kind !== 'scalar' || node.style === 'block') return whole;
  const open = node.style === 'quoted' ? 1 : 0;
  const { piece } = whole;
  const written = piece.text.slice(whole.start + open, whole.end - open);
  return written === String(node.value)
    ? { piece, start: whole.start + open + start, end: whole.start + open + end }
    : whole;
}
