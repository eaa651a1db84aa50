/** A new entry or element of a section, after another and in its style. */

import { entryOf } from '../text/syntax.ts';
import { type Edit, columnOf, lineBreakOf } from './edit.ts';
import { type Item, contentOf } from './item.ts';

/** Keys and the text after their colon, in order. */
export type Values = readonly (readonly [key: string, text: string])[];

export function entryBehind(item: Item, name: string, values: Values): Edit {
  const { piece, node, key } = item;
  const source = piece.text;
  const start = key?.start ?? 0;
  const end = Math.max(node.end, key?.end ?? 0);
  const inBraces = `${name}: ${braced(values)}`;
  if (isInFlow(item)) return behindInFlow(item, start, end, inBraces);
  const indent = source.slice(source.lastIndexOf('\n', start - 1) + 1, start);
  const column = blockColumn(item);
  const lines =
    column === undefined
      ? [inBraces]
      : [`${name}:`, ...values.map(([of, text]) => ' '.repeat(column - indent.length) + entryText(of, text))];
  return linesBehind(
    item,
    end,
    lines.map((line) => indent + line),
  );
}

/** As `entryBehind`, for an element of a list. */
export function elementBehind(item: Item, values: Values): Edit {
  const { piece, node } = item;
  if (isInFlow(item)) return behindInFlow(item, node.start, node.end, braced(values));
  const lineStart = piece.text.lastIndexOf('\n', node.start - 1) + 1;
  // The hyphen, and what is between it and the element.
  const hyphen = /^ *-[ \t]+/.exec(piece.text.slice(lineStart, node.start))?.[0] ?? '- ';
  const column = blockColumn(item);
  const [first, ...others] =
    column === undefined ? [braced(values)] : values.map(([key, text]) => entryText(key, text));
  return linesBehind(item, node.end, [hyphen + (first ?? ''), ...others.map((line) => ' '.repeat(column ?? 0) + line)]);
}

function braced(values: Values): string {
  return `{${values.map(([key, text]) => `${key}: ${text}`).join(', ')}}`;
}

/** `text` may begin on a line of its own. */
function entryText(key: string, text: string): string {
  return `${key}:${/^\r?\n/.test(text) ? '' : ' '}${text}`;
}

/** The column of the keys of an item in block style; `undefined` for one in braces. */
function blockColumn({ node, piece }: Item): number | undefined {
  const [first] = node.kind === 'mapping' && !node.flow ? node.entries : [];
  return first === undefined ? undefined : columnOf(piece.text, first.start);
}

function behindInFlow({ piece }: Item, start: number, end: number, text: string): Edit {
  const lineStart = piece.text.lastIndexOf('\n', start - 1) + 1;
  const before = piece.text.slice(lineStart, start);
  const startsLine = lineStart > 0 && /^ *$/.test(before);
  return {
    at: { piece, start: end, end },
    text: startsLine ? `,${lineBreakOf(piece.text)}${before}${text}` : `, ${text}`,
  };
}

function linesBehind({ piece }: Item, end: number, lines: readonly string[]): Edit {
  const lineBreak = lineBreakOf(piece.text);
  const newline = piece.text.indexOf('\n', end);
  const at = newline === -1 ? piece.text.length : newline + 1;
  const text = lines.map((line) => line + lineBreak).join('');
  return { at: { piece, start: at, end: at }, text: (newline === -1 ? lineBreak : '') + text };
}

/** Whether the section's items stand in braces or brackets. */
function isInFlow({ piece, section }: Item): boolean {
  if (piece.role === 'item') return false;
  const holder = entryOf(contentOf(piece).tree.root, section)?.value;
  return holder !== undefined && holder.kind !== 'scalar' && holder.flow;
}
