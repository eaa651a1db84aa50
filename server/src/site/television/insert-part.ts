/** Edits that put a part into a coax, take one out, or move it elsewhere. */

import { type Edit, removeItem, scalarText, setValue } from '../edit.ts';
import { type Item, LONGEST_NAME } from '../item.ts';
import { type Cable, type Connector, type Device, type Site, connectorAt } from '../model.ts';
import { type Values, elementBehind, entryBehind } from '../new-entry.ts';

type Facts = Pick<Site, 'cables' | 'deviceByName'>;

/** The length of coax from one part to the next beside it. */
const SHORT = '0.1 m';

/** A part with a connector `in` and one `out`, as it is written. */
export interface NewPart {
  readonly name: string;
  /** Its kind and what it does. */
  readonly values: Values;
  /** Direct current needs to pass it. */
  readonly passesCurrent: boolean;
}

/** Edits for a new part at a connector; none where no coax ends there. */
export function insertEdits(
  site: Facts,
  at: Connector,
  { name: wanted, values, passesCurrent }: NewPart,
): readonly (Edit | undefined)[] {
  const end = coaxEnd(site, at);
  if (end === undefined) return [];
  const name = freeName(site, wanted);
  const { cable, key } = end;
  const wire = (side: 'in' | 'out'): string => scalarText(`${name}/${side}`, true);
  return [
    entryBehind(at.device.item, name, [...values, ...(passesCurrent ? [['power-pass', 'true'] as const] : [])]),
    setValue(cable.item, [key], wire('in')),
    elementBehind(cable.item, [
      ['from', wire('out')],
      ['to', endText(at)],
      ['type', scalarText(cable.type ?? 'coax-6', true)],
      ['length', SHORT],
    ]),
  ];
}

function freeName({ deviceByName }: Facts, wanted: string): string {
  const base = wanted.slice(0, LONGEST_NAME - 3);
  for (let number = 1; ; number++) {
    const name = number === 1 ? base : `${base}-${number}`;
    if (!deviceByName.has(name)) return name;
  }
}

interface CoaxEnd {
  readonly cable: Cable;
  readonly item: Item;
  /** The key that names the connector, and the one that names the other end. */
  readonly key: 'from' | 'to';
  readonly otherKey: 'from' | 'to';
  readonly other: Connector;
}

function coaxEnd(site: Facts, at: Connector): CoaxEnd | undefined {
  for (const cable of site.cables) {
    const [from, to] = [connectorAt(site, cable.from), connectorAt(site, cable.to)];
    if (from === undefined || to === undefined) continue;
    if (from === at) return { cable, item: cable.item, key: 'from', otherKey: 'to', other: to };
    if (to === at) return { cable, item: cable.item, key: 'to', otherKey: 'from', other: from };
  }
  return undefined;
}

/** The name of a connector at the end of a cable; the name of the part alone where it has only one. */
function endText({ device, name }: Connector): string {
  return scalarText(
    device.connectorByName.size === 1 && device.ports.length === 0 ? device.name : `${device.name}/${name}`,
    true,
  );
}

/** Where a part is put: into the coax that ends at a connector, at that end. */
export interface Target {
  readonly at: Connector;
  /** Signals come out of the connector, so the part follows it. */
  readonly isSource: boolean;
}

/**
 * Moves a part with `in` and `out` into another coax: the coax before it goes on to what is behind it, and the coax
 * behind it becomes the short one at its new place. No edits where its coax has an inserter that would be lost.
 */
export function moveEdits(site: Facts, part: Device, { at, isSource }: Target): readonly (Edit | undefined)[] {
  const [before, behind, into] = [coaxEndOf(site, part, 'in'), coaxEndOf(site, part, 'out'), coaxEnd(site, at)];
  if (before === undefined || behind === undefined || into === undefined || into.cable === behind.cable) return [];
  const length = totalLength(before.cable, behind.cable);
  // Along its own coax only the lengths change.
  if (into.cable === before.cable)
    return before.cable.type === behind.cable.type && before.cable.through.length === 0 && isSource
      ? [...setLength(before.cable, SHORT), ...setLength(behind.cable, length)]
      : [];
  if (behind.cable.through.length > 0 || part.aerial?.poweredBy !== undefined) return [];
  const [inner, outer] = isSource ? ['in', 'out'] : ['out', 'in'];
  return [
    setValue(before.item, [before.key], endText(behind.other)),
    ...setLength(before.cable, length),
    setValue(into.item, [into.key], scalarText(`${part.name}/${outer}`, true)),
    setValue(behind.item, [behind.otherKey], endText(at)),
    setValue(behind.item, [behind.key], scalarText(`${part.name}/${inner}`, true)),
    ...setLength(behind.cable, SHORT),
  ];
}

/**
 * Removes a part: the coax before it goes on to what is behind it. No edits where that would lose an inserter, or where
 * something else names the part.
 */
export function takeOutEdits(site: Facts & Pick<Site, 'items'>, part: Device): readonly (Edit | undefined)[] {
  const [before, behind] = [coaxEndOf(site, part, 'in'), coaxEndOf(site, part, 'out')];
  if (before === undefined || behind === undefined || before.cable === behind.cable) return [];
  if (behind.cable.through.length > 0 || part.aerial?.poweredBy !== undefined) return [];
  const edited = new Set<Item>([part.item, before.item, behind.item]);
  if (site.items.some((item) => !edited.has(item) && item.names.some(({ text }) => text === part.name))) return [];
  return [
    setValue(before.item, [before.key], endText(behind.other)),
    ...setLength(before.cable, totalLength(before.cable, behind.cable)),
    removeItem(behind.item),
    removeItem(part.item),
  ];
}

function coaxEndOf(site: Facts, { connectorByName }: Device, name: 'in' | 'out'): CoaxEnd | undefined {
  const connector = connectorByName.get(name);
  return connector === undefined ? undefined : coaxEnd(site, connector);
}

/** The sum as text; `undefined` where one of the lengths is undeclared. */
function totalLength(...cables: readonly Cable[]): string | undefined {
  let sum = 0;
  for (const { length } of cables) {
    if (length === undefined) return undefined;
    sum += length;
  }
  return `${sum / 1000} m`;
}

function setLength({ item, length }: Cable, text: string | undefined): Edit[] {
  return length === undefined || text === undefined ? [] : [setValue(item, ['length'], text)];
}
