/** Writes a range of ports as an entry for each, with its comments. */

import { parseAddress, formatAddress } from '../../../standards/ipv4.ts';
import { type Node, type Span, entryOf } from '../../../text/syntax.ts';
import { type PortEntry, keyAs, portEntriesAt } from './port-entries.ts';
import { type Cursor, type Offered, type Refactoring, hasAnchor } from './refactoring.ts';

/** The most ports that are written out. */
const MOST = 256;

export const expandPorts: Refactoring = ({ file, offset }: Cursor): Offered[] => {
  const found = portEntriesAt(file, offset);
  if (found?.at.numbers === undefined) return [];
  const { item, mapping, at } = found;
  const { first, last } = found.at.numbers;
  const source = item.piece.text;
  const addresses = addressesOf(at);
  if (first === last || last - first >= MOST || addresses === undefined || hasAnchor(source.slice(at.start, at.end)))
    return [];
  const copies = Array.from({ length: last - first + 1 }, (_, above) => copy(source, at, first, above, addresses));
  return [
    {
      title: `Write ${first}-${last} as an entry for each port`,
      kind: 'rewrite',
      makesFiles: false,
      change: () => ({
        edits: [
          { at: { piece: item.piece, start: at.start, end: at.end }, text: joined(source, at, mapping.flow, copies) },
        ],
        made: new Map(),
      }),
    },
  ];
};

interface AddressText extends Span {
  readonly address: number;
}

/** The addresses in the entry's own text; `undefined` where one stands elsewhere, and all ports would get the same. */
function addressesOf({ entry: { key, value } }: PortEntry): AddressText[] | undefined {
  const several = entryOf(value, 'addresses')?.value;
  const nodes = [
    entryOf(value, 'address')?.value,
    ...(several?.kind === 'mapping' ? several.entries.map((own) => own.value) : []),
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

/** The entry for one port, with the addresses that the range gives it. */
function copy(
  source: string,
  { entry, start, end }: PortEntry,
  first: number,
  above: number,
  addresses: readonly AddressText[],
): string {
  let text = source.slice(start, entry.key.start) + keyAs(entry, source, String(first + above));
  let at = entry.key.end;
  for (const { address, ...span } of [...addresses].sort((a, b) => a.start - b.start)) {
    const written = source.slice(span.start, span.end);
    text += source.slice(at, span.start) + written.replace(/[\d.]+/, formatAddress(address + above));
    at = span.end;
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
  const lineBreak = source.includes('\r\n') ? '\r\n' : '\n';
  return copies
    .map((text, index) => (text.endsWith('\n') || index === copies.length - 1 ? text : text + lineBreak))
    .join('');
}
