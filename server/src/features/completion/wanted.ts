/** What is wanted at the cursor: the part of the schema, and the text around it. */

import type { Checked } from '../../lint/check.ts';
import { type SiteText, pieceStart } from '../../site/folder.ts';
import { type Item, contentOf } from '../../site/item.ts';
import { pieceAt } from '../../site/locate.ts';
import type { Site } from '../../site/model.ts';
import { type Schema, type SectionName, rootSchema, sectionOf, under } from '../../site/shape.ts';
import { type Cursor, cursorIn } from '../../text/cursor.ts';
import { type Data, type KeyPath, dataAt, dataOf } from '../../text/syntax.ts';

export interface CompletionContext {
  readonly checked: Checked;
  readonly site: Site;
  readonly file: SiteText;
  readonly cursor: Cursor;
  /** Offsets in the file of what is there already. */
  readonly start: number;
  readonly end: number;
  /** The typed text before the cursor. */
  readonly typed: string;
  /** The schema of the value at the cursor's path; of the mapping where a key is wanted. */
  readonly schema: Schema;
  readonly section: SectionName | undefined;
  /** The item's name; empty in a list. */
  readonly name: string;
  readonly item: Item | undefined;
  /** The route inside the item. */
  readonly keyPath: KeyPath;
  /** The kind of the device around it, where it is typed. */
  readonly kind?: string | undefined;
}

/** @param column on an empty line, as if the cursor stood there */
export function wantedAt(
  checked: Checked,
  file: SiteText,
  offset: number,
  column?: number,
): CompletionContext | undefined {
  const { text, start: base, root } = around(file, offset);
  const cursor =
    column === undefined ? cursorIn(text, offset - base, root) : inColumn(text, offset - base, root, column);
  if (cursor === undefined) return undefined;
  const [first, second, ...rest] = cursor.path;
  const section = first === undefined ? undefined : sectionOf(String(first));
  if (first !== undefined && section === undefined) return undefined;
  const schema = cursor.path.reduce(
    (above: Schema | undefined, step) => (above === undefined ? undefined : under(above, step)),
    rootSchema,
  );
  if (schema === undefined) return undefined;
  const name = typeof second === 'string' ? second : '';
  return {
    checked,
    site: checked.plan.site,
    file,
    cursor,
    schema,
    section,
    name,
    // A new element of a list is not yet an item of the site.
    item:
      second === undefined || (cursor.at === 'element' && rest.length === 0)
        ? undefined
        : itemAt(file, offset, section, name),
    keyPath: rest,
    start: base + cursor.start,
    end: base + cursor.end,
    typed: column === undefined ? file.text.slice(base + cursor.start, offset) : '',
  };
}

/** The cursor moved to that column of its empty line; what is there already are the blanks of the line. */
function inColumn(text: string, offset: number, root: KeyPath, column: number): Cursor | undefined {
  const line = text.lastIndexOf('\n', offset - 1) + 1;
  const moved = `${text.slice(0, line)}${' '.repeat(column)}${text.slice(offset)}`;
  const cursor = cursorIn(moved, line + column, root);
  return cursor && { ...cursor, start: line, end: offset };
}

/** The text to look at: the item that the cursor is in, or the lines above the first item. */
function around(file: SiteText, offset: number): { text: string; start: number; root: KeyPath } {
  const piece = pieceAt(file, offset);
  const header = file.cut.headers.filter(({ start }) => start <= offset).pop();
  if (header !== undefined && (piece === undefined || header.start > pieceStart(file, piece))) {
    const next = file.cut.starts.find((start) => start > header.start) ?? file.text.length;
    return { text: file.text.slice(header.start, Math.max(next, offset)), start: header.start, root: [] };
  }
  if (piece !== undefined)
    return { text: piece.text, start: pieceStart(file, piece), root: piece.role === 'item' ? [piece.section] : [] };
  return { text: file.text.slice(0, offset), start: 0, root: [] };
}

function itemAt(file: SiteText, offset: number, section: SectionName | undefined, name: string): Item | undefined {
  const piece = pieceAt(file, offset);
  if (piece === undefined) return undefined;
  const items = contentOf(piece).items.filter((item) => item.section === section);
  const at = offset - pieceStart(file, piece);
  return (
    items.find(({ name: own, node }) => (name === '' ? node.start <= at && at <= node.end : own === name)) ??
    (name === '' ? items[0] : undefined)
  );
}

/** The value under keys and indices of the item in the text, whether it fits the schema or not. */
export function dataAtCursor({ item }: CompletionContext, keyPath: KeyPath): Data | undefined {
  return item === undefined ? undefined : dataAt(dataOf(item.node), keyPath);
}

export function textAtCursor(wanted: CompletionContext, keyPath: KeyPath): string | undefined {
  const data = dataAtCursor(wanted, keyPath);
  return typeof data === 'string' || typeof data === 'number' ? String(data) : undefined;
}

/** The other elements of the list that the cursor is in. */
export function othersInList(wanted: CompletionContext): readonly string[] {
  const index = wanted.keyPath[wanted.keyPath.length - 1];
  const list = dataAtCursor(wanted, wanted.keyPath.slice(0, -1));
  if (!Array.isArray(list)) return [];
  // Before a comma, where nothing is typed yet, the element at the index is the next one: `[, wall]`.
  const isTyped = wanted.end > wanted.start;
  return list
    .filter((other, i) => !(isTyped && i === index) && (typeof other === 'string' || typeof other === 'number'))
    .map(String);
}
