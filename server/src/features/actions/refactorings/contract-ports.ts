/** Writes neighbouring ports with the same settings as one range. */

import { formatAddress, parseAddress } from '../../../standards/ipv4.ts';
import { type Data, dataOf, keyText } from '../../../text/syntax.ts';
import { few } from '../../../text/words.ts';
import { RANGE_PORTS } from '../../../site/port-names.ts';
import { hasAnchor } from '../../../site/edit.ts';
import { type PortEntries, type PortEntry, keyAs, portEntriesAt } from '../../../site/port-entries.ts';
import type { RefactoringCursor, Offered, Refactoring } from './refactoring.ts';

export const contractPorts: Refactoring = ({ file, offset }: RefactoringCursor): Offered[] => {
  const found = portEntriesAt(file, offset);
  if (found === undefined) return [];
  const run = runAround(found);
  const [first, last] = [run[0], run[run.length - 1]];
  if (first?.numbers === undefined || last?.numbers === undefined || first === last) return [];
  const range = `${first.numbers.first}-${last.numbers.last}`;
  const { piece } = found.item;
  const { key } = first.entry;
  return [
    {
      title: `Write ${few(
        run.map(({ entry }) => keyText(entry.key)),
        3,
      )} as the range ${range}`,
      kind: 'rewrite',
      makesFiles: false,
      change: () => ({
        edits: [
          { at: { piece, start: key.start, end: key.end }, text: keyAs(first.entry, piece.text, range) },
          { at: { piece, start: first.end, end: last.end }, text: '' },
        ],
        made: new Map(),
      }),
    },
  ];
};

/** The consecutive entries around the cursor's that have the same settings. */
function runAround(found: PortEntries): PortEntry[] {
  const { entries, at } = found;
  let from = entries.indexOf(at);
  let to = from;
  const isOne = (a: number, b: number): boolean => {
    const [first, before, next] = [entries[a], entries[b - 1], entries[b]];
    return first !== undefined && before !== undefined && next !== undefined && goesOn(found, first, before, next);
  };
  while (isOne(from - 1, from)) from--;
  while (isOne(from, to + 1)) to++;
  return entries.slice(from, to + 1);
}

function goesOn({ item, mapping }: PortEntries, first: PortEntry, before: PortEntry, next: PortEntry): boolean {
  if (first.numbers === undefined || before.numbers === undefined || next.numbers === undefined) return false;
  if (next.numbers.first !== before.numbers.last + 1 || next.numbers.last - first.numbers.first >= RANGE_PORTS)
    return false;
  const source = item.piece.text;
  const between = source.slice(before.end, next.start);
  if (mapping.flow ? !/^\s*,\s*$/.test(between) : between !== '') return false;
  const [ours, theirs] = [first, next].map(({ entry, end }) => source.slice(entry.key.end, end).trimEnd());
  if (ours === undefined || theirs === undefined || hasAnchor(theirs)) return false;
  const above = next.numbers.first - first.numbers.first;
  if (canonical(dataOf(first.entry.value), 0) !== canonical(dataOf(next.entry.value), above)) return false;
  // A comment is kept only where both have it.
  return !(ours.includes('#') || theirs.includes('#')) || withoutAddresses(ours) === withoutAddresses(theirs);
}

function withoutAddresses(text: string): string {
  return text.replace(/\d+\.\d+\.\d+\.\d+/g, '');
}

/** The settings of a port in one order of keys, with the addresses that the first of the range would have. */
function canonical(data: Data, above: number): string {
  const own = (value: Data, isAddress: boolean): Data => {
    if (Array.isArray(value)) return value.map((each) => own(each, false));
    if (typeof value === 'object' && value !== null) {
      const keys = Object.keys(value).sort();
      return keys.map((key) => [key, own(value[key] ?? null, isAddress || key === 'address' || key === 'addresses')]);
    }
    const address = isAddress && typeof value === 'string' ? parseAddress(value) : undefined;
    return address === undefined || address < above ? value : formatAddress(address - above);
  };
  return JSON.stringify(own(data, false));
}
