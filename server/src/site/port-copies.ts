/** The entry of a range of ports, written anew for some of its ports. */

import { formatAddress, parseAddress } from '../standards/ipv4.ts';
import { type Node, type Span, dataAt, entryOf } from '../text/syntax.ts';
import { type Edit, hasAnchor, lineBreakOf } from './edit.ts';
import type { Item } from './item.ts';
import type { Port } from './model.ts';
import { type PortEntry, keyAs, portEntriesOf } from './port-entries.ts';

interface AddressText extends Span {
  readonly address: number;
}

/** Replaces a part of the entry's text. */
interface Replacement extends Span {
  readonly text: string;
}

/** What copies of an entry are made of: copies by the number of their first port. */
export interface PortCopies {
  /** @param changes to this copy alone */
  copy(first: number, last: number, changes?: readonly Replacement[]): string;
  joined(copies: readonly string[]): string;
}

/** `undefined` where copies would not mean the same: an anchor would come twice, or an address stands elsewhere. */
export function portCopies({ data, piece }: Item, at: PortEntry, flow: boolean): PortCopies | undefined {
  const source = piece.text;
  const { entry, numbers, start, end } = at;
  const addresses = addressesOf(at);
  if (numbers === undefined || addresses === undefined || hasAnchor(source.slice(start, end))) return undefined;
  // The ports of a link aggregation group share one address, as do the sockets of a router; copies would not.
  const isShared = entryOf(entry.value, 'lag') !== undefined || dataAt(data, ['kind']) === 'router';
  if (addresses.length > 0 && isShared) return undefined;
  return {
    copy(first, last, changes = []) {
      const name = first === last ? String(first) : `${first}-${last}`;
      const above = first - numbers.first;
      const shifted = addresses.map(({ address, ...span }) => ({
        ...span,
        text: source.slice(span.start, span.end).replace(/[\d.]+/, formatAddress(address + above)),
      }));
      const key = { start: entry.key.start, end: entry.key.end, text: keyAs(entry, source, name) };
      return replaced(source, { start, end }, [key, ...shifted, ...changes]);
    },
    joined: (copies) => joined(source, at, flow, copies),
  };
}

/** Gives a port of a range an entry of its own, changed by edits of the range's entry. */
export function splitOut(port: Port, edits: readonly Edit[]): Edit | undefined {
  const { item } = port.device;
  const found = portEntriesOf(item, String(port.keyPath[1]));
  const number = Number(port.name);
  if (found?.at.numbers === undefined || !/^\d+$/.test(port.name)) return undefined;
  const { at, mapping } = found;
  const { first, last } = found.at.numbers;
  const copies = portCopies(item, at, mapping.flow);
  if (copies === undefined) return undefined;
  const changes = edits.map(({ at: { start, end }, text }) => ({ start, end, text }));
  const text = copies.joined([
    ...(number > first ? [copies.copy(first, number - 1)] : []),
    copies.copy(number, number, changes),
    ...(number < last ? [copies.copy(number + 1, last)] : []),
  ]);
  return { at: { piece: item.piece, start: at.start, end: at.end }, text };
}

/** The addresses in the entry's own text; `undefined` where one stands elsewhere, and all ports would get the same. */
function addressesOf({ entry: { key, value } }: PortEntry): AddressText[] | undefined {
  const several = entryOf(value, 'addresses')?.value;
  const nodes = [
    entryOf(value, 'address')?.value,
    ...(several?.kind === 'mapping' ? several.entries.map((entry) => entry.value) : []),
  ];
  const found: AddressText[] = [];
  for (const node of nodes) {
    const address = node === undefined ? undefined : addressOf(node);
    if (node === undefined || address === undefined) continue;
    if (node.start < key.end || node.start < value.start || node.end > value.end) return undefined;
    found.push({ address, start: node.start, end: node.end });
  }
  return found;
}

function addressOf(node: Node): number | undefined {
  return node.kind === 'scalar' && typeof node.value === 'string' ? parseAddress(node.value) : undefined;
}

function replaced(source: string, { start, end }: Span, parts: readonly Replacement[]): string {
  let text = '';
  let at = start;
  for (const part of [...parts].sort((a, b) => a.start - b.start || a.end - b.end)) {
    text += source.slice(at, part.start) + part.text;
    at = part.end;
  }
  return text + source.slice(at, end);
}

function joined(source: string, { start }: PortEntry, flow: boolean, copies: readonly string[]): string {
  if (flow) {
    const lineStart = source.lastIndexOf('\n', start - 1) + 1;
    const before = source.slice(lineStart, start);
    const lineBreak = source.charAt(lineStart - 2) === '\r' ? '\r\n' : '\n';
    return copies.join(lineStart > 0 && /^ +$/.test(before) ? `,${lineBreak}${before}` : ', ');
  }
  const lineBreak = lineBreakOf(source);
  return copies
    .map((text, index) => (text.endsWith('\n') || index === copies.length - 1 ? text : text + lineBreak))
    .join('');
}
