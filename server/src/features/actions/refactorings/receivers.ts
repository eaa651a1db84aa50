/** Splits the list of a stream's receivers: one device stays in it, the others move to another stream. */

import { type Edit, scalarText } from '../../../site/edit.ts';
import type { Item } from '../../../site/item.ts';
import { type Sequence, entryOf } from '../../../text/syntax.ts';
import { hasAnchor, lineBreakOf } from '../../../site/edit.ts';

export interface Receivers {
  /** Leaves the device alone in the list. */
  keepOnly(device: string): Edit;
  /** The value of `receivers` with all but the device: in brackets, or on lines of their own. */
  without(device: string): string;
}

/** `undefined` where they stand in the text of another item too, or have comments that could not move with them. */
export function receiversOf({ node, key, piece }: Item): Receivers | undefined {
  const source = piece.text;
  const entry = entryOf(node, 'receivers');
  const isOwn =
    key !== undefined &&
    entry !== undefined &&
    !entry.merged &&
    node.start >= key.end &&
    entry.value.start >= entry.key.end;
  if (!isOwn || entry.value.kind !== 'sequence' || hasAnchor(source.slice(key.end, node.end))) return undefined;
  const list = entry.value;
  if (list.items.some(({ kind, start, end }) => kind !== 'scalar' || start < list.start || end > list.end))
    return undefined;
  if (!list.flow) return onLines(source, piece, list);
  if (source.slice(list.start, list.end).includes('#')) return undefined;
  return {
    keepOnly: (device) => ({ at: { piece, start: list.start, end: list.end }, text: `[${scalarText(device, true)}]` }),
    without: (device) =>
      `[${named(list, (name) => name !== device)
        .map((item) => source.slice(item.start, item.end))
        .join(', ')}]`,
  };
}

function named({ items }: Sequence, wanted: (name: string) => boolean): Sequence['items'] {
  return items.filter((item) => item.kind === 'scalar' && wanted(String(item.value)));
}

/** The receivers of a block list, each with the comment beside it and those above. */
function onLines(source: string, piece: Item['piece'], list: Sequence): Receivers | undefined {
  const lineBreak = lineBreakOf(source);
  const lineEnd = (offset: number): number => {
    const newline = source.indexOf('\n', offset);
    return newline === -1 ? source.length : newline + 1;
  };
  const column = list.start - (source.lastIndexOf('\n', list.start - 1) + 1);
  const starts = list.items.map((_, index) =>
    index === 0 ? list.start - column : lineEnd(list.items[index - 1]?.end ?? 0),
  );
  const end = lineEnd(list.end);
  const lines = (wanted: (name: string) => boolean): string =>
    list.items
      .flatMap((item, index) =>
        item.kind === 'scalar' && wanted(String(item.value)) ? [source.slice(starts[index], lineEnd(item.end))] : [],
      )
      .map((line) => (line.endsWith('\n') ? line : line + lineBreak))
      .join('');
  return {
    keepOnly: (device) => {
      const kept = lines((name) => name === device);
      const text = kept === '' ? `${' '.repeat(column)}- ${scalarText(device)}${lineBreak}` : kept;
      const isEnded = source.charAt(end - 1) === '\n';
      return { at: { piece, start: list.start - column, end }, text: isEnded ? text : text.trimEnd() };
    },
    without: (device) => lineBreak + lines((name) => name !== device).replace(/\r?\n$/, ''),
  };
}
