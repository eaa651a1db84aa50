/** Edits of site files by range: what they do not touch keeps its comments and spacing. */

import { isEmpty } from '../text/parse.ts';
import { type Mapping, type Node, type KeyPath, type Sequence, entryOf, follow } from '../text/syntax.ts';
import { type SiteText, spanOf } from './folder.ts';
import { type Item, type Place, fileOf, placeOf } from './item.ts';

/** Replaces a range; an empty range is an insertion. */
export interface Edit {
  readonly at: Place;
  readonly text: string;
}

/** A change that mends a finding. */
export interface Fix {
  readonly title: string;
  /** Only one fix makes sense, and it keeps the meaning: it may be applied without a look at it. */
  readonly safe: boolean;
  readonly edits: readonly Edit[];
}

/** A fix for a person to choose; none where there is nothing to edit, or one of the edits is not possible. */
export function fixOf(title: string, ...edits: readonly (Edit | undefined)[]): Fix[] {
  const possible = edits.filter((edit) => edit !== undefined);
  return possible.length === 0 || possible.length < edits.length ? [] : [{ title, safe: false, edits: possible }];
}

/** Plain scalars that are not text in the core schema (YAML 1.2.2 §10.3.2). */
const NOT_TEXT =
  /^(?:true|false|null|~|[-+]?(?:\.\d+|\d+(?:\.\d*)?)(?:e[-+]?\d+)?|0x[\da-f]+|0o[0-7]+|[-+]?\.inf|\.nan)$/i;

/** Text that YAML reads back as that string: quoted only where it must be. */
export function scalarText(value: string | number | boolean, inFlow = false): string {
  if (typeof value !== 'string') return String(value);
  const plain =
    /^[A-Za-z0-9_./°µ][\w ./%°µ@+:-]*$/u.test(value) && !/:(\s|$)| #|\s$/.test(value) && !NOT_TEXT.test(value);
  if (plain && !(inFlow && /[,[\]{}]/.test(value))) return value;
  return `"${value.replace(/["\\]/g, '\\$&').replace(/[\u0000-\u001f\u007f]/g, (c) => `\\x${c.charCodeAt(0).toString(16).padStart(2, '0')}`)}"`;
}

/** A name as a value, a key or an element: a number, which is the name of many a port, stays bare. */
export function nameText(name: string): string {
  return /^\d+$/.test(name) ? name : scalarText(name, true);
}

/** Replaces the value at a key path. Where the key has none, it is written behind the colon. */
export function setValue(item: Item, keyPath: KeyPath, text: string): Edit {
  const found = follow(item.node, keyPath);
  const key = keyPath.length === 0 ? item.key : found?.entry?.key;
  if (key !== undefined && found !== undefined && isEmpty(found.node)) return insertAfterColon(item, key.end, text);
  return { at: placeOf(item, keyPath), text };
}

/** After an anchor or tag that is there already; with a colon where there is none yet. */
function insertAfterColon(item: Item, keyEnd: number, text: string): Edit {
  const colon = /^\s*:(?:[ \t]+[&!][^\s,[\]{}]*)*/.exec(item.piece.text.slice(keyEnd));
  const at = keyEnd + (colon?.[0].length ?? 0);
  return { at: { piece: item.piece, start: at, end: at }, text: colon === null ? `: ${text}` : ` ${text}` };
}

/** Replaces the key at a key path. */
export function setKey(item: Item, keyPath: KeyPath, text: string): Edit {
  return { at: placeOf(item, keyPath, 'key'), text };
}

/**
 * Adds `key: text` to the mapping at a key path, in the manner of the mapping: in braces, or on a line of its own.
 * `text` is a scalar or in flow style. `undefined` where there is no mapping to add to, or the key has a value already.
 */
export function addEntry(item: Item, keyPath: KeyPath, key: string, text: string): Edit | undefined {
  const node = follow(item.node, keyPath)?.node;
  if (node === undefined) return undefined;
  const there = entryOf(node, key);
  if (there !== undefined && !there.merged)
    return isEmpty(there.value) ? setValue(item, [...keyPath, key], text) : undefined;
  if (node.kind === 'mapping')
    return node.flow ? addToFlow(item, node, `${key}: ${text}`) : addLine(item, node, `${key}: ${text}`);
  return isEmpty(node) && keyPath.length > 0 ? setValue(item, keyPath, `{${key}: ${text}}`) : undefined;
}

/** Adds an element to the list under a key of an item, whether there is a list or not. */
export function putElement(item: Item, key: string, text: string): Edit | undefined {
  return nodeAt(item, [key]) === undefined ? addEntry(item, [], key, `[${text}]`) : addElement(item, [key], text);
}

/** Sets a key of an item, new or not. */
export function putValue(item: Item, key: string, text: string): Edit[] {
  const edit = nodeAt(item, [key]) === undefined ? addEntry(item, [], key, text) : setValue(item, [key], text);
  return edit === undefined ? [] : [edit];
}

/** Adds an element to the list at a key path, in the manner of the list. */
export function addElement(item: Item, keyPath: KeyPath, text: string): Edit | undefined {
  const node = follow(item.node, keyPath)?.node;
  if (node?.kind !== 'sequence') return undefined;
  return node.flow ? addToFlow(item, node, text) : addLine(item, node, `- ${text}`);
}

function addToFlow(item: Item, node: Mapping | Sequence, text: string): Edit {
  const source = item.piece.text;
  const children: readonly { readonly end: number }[] =
    node.kind === 'mapping' ? node.entries.filter((entry) => !entry.merged) : node.items;
  const last = children[children.length - 1];
  if (last === undefined) {
    const at = node.start + 1;
    return {
      at: {
        piece: item.piece,
        start: at,
        end: Math.max(at, source.lastIndexOf(node.kind === 'mapping' ? '}' : ']', node.end - 1)),
      },
      text,
    };
  }
  // A trailing comma stays the separator.
  const end = behindColon(source, last.end);
  const comma = /^\s*,/.exec(source.slice(end, node.end));
  const at = end + (comma?.[0].length ?? 0);
  return { at: { piece: item.piece, start: at, end: at }, text: comma === null ? `, ${text}` : ` ${text}` };
}

/** The end of an entry that ends with its key: behind the colon. */
function behindColon(source: string, end: number): number {
  return end + (/^\s*:(?=[\s,\]}]|$)/.exec(source.slice(end))?.[0].length ?? 0);
}

function addLine(item: Item, node: Mapping | Sequence, text: string): Edit {
  const source = item.piece.text;
  const column = columnOf(source, node.start);
  const children: readonly { readonly end: number }[] =
    node.kind === 'mapping' ? node.entries.filter((entry) => !entry.merged) : node.items;
  const end = children[children.length - 1]?.end ?? node.end;
  const newline = source.indexOf('\n', end);
  const lineEnd = newline === -1 ? source.length : source.charAt(newline - 1) === '\r' ? newline - 1 : newline;
  return {
    at: { piece: item.piece, start: lineEnd, end: lineEnd },
    text: `${lineBreakOf(source)}${' '.repeat(column)}${text}`,
  };
}

/** The line break of a text: that of its first line. */
export function lineBreakOf(text: string): string {
  return text[text.indexOf('\n') - 1] === '\r' ? '\r\n' : '\n';
}

export function columnOf(source: string, offset: number): number {
  return offset - (source.lastIndexOf('\n', offset - 1) + 1);
}

/** Removes the entry or element at a key path, with its comma or its line. */
export function remove(item: Item, keyPath: KeyPath): Edit | undefined {
  const last = keyPath[keyPath.length - 1];
  const parent = follow(item.node, keyPath.slice(0, -1))?.node;
  if (last === undefined || parent === undefined || parent.kind === 'scalar') return undefined;
  const source = item.piece.text;
  const entry = placeOf(item, keyPath, 'entry');
  const range = { ...entry, end: behindColon(source, entry.end) };
  if (parent.flow) {
    const after = /^\s*,\s*/.exec(source.slice(range.end));
    if (after !== null) return { at: { ...range, end: range.end + after[0].length }, text: '' };
    const before = source.slice(0, range.start).trimEnd();
    return { at: { ...range, start: before.endsWith(',') ? before.length - 1 : range.start }, text: '' };
  }
  const start = source.lastIndexOf('\n', range.start) + 1;
  const newline = source.indexOf('\n', range.end);
  return { at: { piece: item.piece, start, end: newline === -1 ? source.length : newline + 1 }, text: '' };
}

export function nodeAt(item: Item, keyPath: KeyPath): Node | undefined {
  return follow(item.node, keyPath)?.node;
}

/** An anchor somewhere in a text: an alias elsewhere may refer to it. */
export function hasAnchor(text: string): boolean {
  return /(?:^|[\s,[{])&[^\s,[\]{}]/.test(text);
}

/** The text of a file after edits of it that do not overlap. */
export function applyEdits(file: SiteText, edits: readonly Edit[]): string {
  const parts: string[] = [];
  let left = file.text.length;
  const ordered = edits.map(({ at, text: by }) => ({ ...spanOf(file, at), by }));
  for (const { start, end, by } of ordered.sort((a, b) => b.start - a.start || b.end - a.end)) {
    parts.push(file.text.slice(end, left), by);
    left = start;
  }
  return [file.text.slice(0, left), ...parts.reverse()].join('');
}

/** The texts of the files that edits change, by address. */
export function editedTexts(files: readonly SiteText[], edits: readonly Edit[]): Map<string, string> {
  const byUri = byFile(edits);
  return new Map(
    files.flatMap((file) => {
      const ofFile = byUri.get(file.uri);
      return ofFile === undefined ? [] : [[file.uri, applyEdits(file, ofFile)] as const];
    }),
  );
}

/** Edits by the file they are in. */
export function byFile(edits: readonly Edit[]): Map<string, Edit[]> {
  const found = new Map<string, Edit[]>();
  for (const edit of edits) {
    const { uri } = fileOf(edit.at);
    const list = found.get(uri);
    if (list === undefined) found.set(uri, [edit]);
    else list.push(edit);
  }
  return found;
}

/**
 * Removes a whole item, with its lines; in a list in brackets or a mapping in braces, with its comma. `undefined`
 * where it has an anchor that other items may refer to.
 */
export function removeItem(item: Item): Edit | undefined {
  const source = item.piece.text;
  const entry = placeOf(item, [], 'entry');
  const lineStart = source.lastIndexOf('\n', entry.start - 1) + 1;
  // An anchor or tag before it goes with it.
  const properties = /(?:[&!][^\s,[\]{}]*\s+)*$/.exec(source.slice(lineStart, entry.start))?.[0].length ?? 0;
  const range = { ...entry, start: entry.start - properties, end: behindColon(source, entry.end) };
  if (item.piece.role !== 'item' && /(?:^|[\s,[{])&/.test(source.slice(range.start, range.end))) return undefined;
  const newline = source.indexOf('\n', range.end);
  const lineEnd = newline === -1 ? source.length : newline + 1;
  const alone =
    /^\s*(- +)?$/.test(source.slice(lineStart, range.start)) &&
    /^\s*,?\s*(#.*)?\s*$/.test(source.slice(range.end, lineEnd));
  if (alone) return { at: { ...range, start: lineStart, end: lineEnd }, text: '' };
  const after = /^\s*,\s*/.exec(source.slice(range.end));
  if (after !== null) return { at: { ...range, end: range.end + after[0].length }, text: '' };
  const before = /,\s*$/.exec(source.slice(0, range.start));
  return { at: { ...range, start: range.start - (before?.[0].length ?? 0) }, text: '' };
}
