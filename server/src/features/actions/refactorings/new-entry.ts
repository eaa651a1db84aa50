/** A new entry of a section, after another and in its style. */

import type { Edit } from '../../../site/edit.ts';
import { type Item, contentOf } from '../../../site/item.ts';
import { entryOf } from '../../../text/syntax.ts';
import { lineBreakOf } from './refactoring.ts';

/** Keys and the text after their colon, in order. */
export type Values = readonly (readonly [key: string, text: string])[];

export function entryBehind(item: Item, name: string, values: Values): Edit {
  const { piece, node, key } = item;
  const source = piece.text;
  const lineBreak = lineBreakOf(source);
  const inBraces = `${name}: {${values.map(([own, text]) => `${own}: ${text}`).join(', ')}}`;
  const end = Math.max(node.end, key?.end ?? 0);
  const lineStart = source.lastIndexOf('\n', (key?.start ?? 0) - 1) + 1;
  const indent = source.slice(lineStart, key?.start ?? lineStart);
  const startsLine = /^ *$/.test(indent);
  if (isInBraces(item)) {
    const text = startsLine && lineStart > 0 ? `,${lineBreak}${indent}${inBraces}` : `, ${inBraces}`;
    return { at: { piece, start: end, end }, text };
  }
  const newline = source.indexOf('\n', end);
  const at = newline === -1 ? source.length : newline + 1;
  const before = newline === -1 ? lineBreak : '';
  const [first] = node.kind === 'mapping' && !node.flow ? node.entries : [];
  const column = first === undefined ? 0 : first.start - (source.lastIndexOf('\n', first.start - 1) + 1);
  const lines =
    first === undefined
      ? [inBraces]
      : [
          `${name}:`,
          ...values.map(
            ([own, text]) => `${' '.repeat(column - indent.length)}${own}:${/^\r?\n/.test(text) ? '' : ' '}${text}`,
          ),
        ];
  return { at: { piece, start: at, end: at }, text: before + lines.map((line) => indent + line + lineBreak).join('') };
}

/** Whether the section's items stand in braces. */
function isInBraces({ piece, section }: Item): boolean {
  if (piece.role === 'item') return false;
  const holder = entryOf(contentOf(piece).tree.root, section)?.value;
  return holder?.kind === 'mapping' && holder.flow;
}
