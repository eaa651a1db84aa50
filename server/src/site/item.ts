/** Items: the entries and list elements of the sections, each checked against the schema. */

import { perObject } from '../memo.ts';
import { NONE } from '../none.ts';
import { leastWhere } from '../text/bisect.ts';
import type { Piece, SourceFile } from '../text/cut.ts';
import { type SyntaxProblem, type Tree, isEmpty, parseOrdinary, parseWithFaults } from '../text/parse.ts';
import { isQuantity } from '../text/quantity.ts';
import {
  type Data,
  type Entry,
  type Node,
  type KeyPath,
  type Scalar,
  type Span,
  dataAt,
  dataOf,
  follow,
  keyText,
} from '../text/syntax.ts';
import { SECTIONS, type SectionName, sectionOf } from './shape.ts';
import { type Mention, type NameMention, mentionsIn } from './mentions.ts';
import { type ShapeProblem, validate } from './validate.ts';

export interface Item {
  readonly section: SectionName;
  /** The item's key; empty for an element of a list. */
  readonly name: string;
  readonly key: Scalar | undefined;
  readonly node: Node;
  readonly piece: Piece;
  /** What fits the schema; the rest is left out and listed in `problems`. */
  readonly data: Data;
  readonly problems: readonly ShapeProblem[];
  /** The names, addresses and quantities in it. */
  readonly mentions: readonly Mention[];
  /** The names among them. */
  readonly names: readonly NameMention[];
  /** Something in it does not fit the schema, or cannot be read. */
  readonly faulty: boolean;
  /** Something in it is written as `auto`: a free address, group or port is to be filled in. */
  readonly blank: boolean;
  /** What the item declares, read once; see `assemble`. */
  fact: object | undefined;
}

/** A fault of a piece that comes before the meaning of its items. */
export type PieceProblem =
  | { readonly problem: 'syntax'; readonly at: SyntaxProblem }
  | { readonly problem: 'unknown-section'; readonly name: string; readonly at: Span }
  | { readonly problem: 'not-a-section'; readonly at: Span }
  | { readonly problem: 'second-document'; readonly at: Span }
  | { readonly problem: 'not-an-entry'; readonly section: SectionName; readonly found: string; readonly at: Span };

export interface PieceContent {
  readonly tree: Tree;
  readonly items: readonly Item[];
  readonly problems: readonly PieceProblem[];
  /** The first of the entries that are left out, as too many come before it. */
  readonly unread: Span | undefined;
}

/** Entries of a site that are read; a site of a thousand devices has some four thousand. */
export const MOST_ENTRIES = 25_000;

/** The most entries of a section in brackets that are read, so that the other sections are read as well. */
export const MOST_IN_BRACKETS = 20_000;

/** A range in a piece of a file: it moves with the piece. */
export interface Place extends Span {
  readonly piece: Piece;
}

/** The items of a piece; each piece is parsed once. */
export function contentOf(piece: Piece): PieceContent {
  return ordinaryContentOf(piece) ?? contentWithFaults(piece);
}

/** As `contentOf`, but `undefined` for what only the slow parser can read. */
export const ordinaryContentOf = perObject((piece: Piece) => contentBy(parseOrdinary, piece));

const contentWithFaults = perObject((piece: Piece) => contentBy(parseWithFaults, piece));

/** As `contentOf`, and not kept: for a piece that is looked at once. */
export function contentOnce(piece: Piece): PieceContent {
  return contentBy(parseOrdinary, piece) ?? contentBy(parseWithFaults, piece);
}

function contentBy<T extends Tree | undefined>(
  parse: (text: string) => T,
  piece: Piece,
): PieceContent | Exclude<T, Tree> {
  const whole = { start: 0, end: lastCharacter(piece.text) };
  if (piece.role === 'document') {
    return nothing({ problem: 'second-document', at: { start: 0, end: 3 } });
  }
  if (piece.role === 'stray') return nothing({ problem: 'not-a-section', at: trimmed(piece.text, whole) });
  const section = piece.role === 'item' ? sectionOf(piece.section) : undefined;
  if (piece.role === 'item' && section === undefined) return nothing();
  if (piece.role === 'section' && piece.section !== '' && sectionOf(piece.section) === undefined)
    return nothing(unknownSection(piece));
  const tree = parse(piece.text);
  if (tree === undefined) return undefined as Exclude<T, Tree>;
  const items: Item[] = [];
  const problems: PieceProblem[] = tree.problems.map((at) => ({ problem: 'syntax', at }));
  let unread: Span | undefined;
  const add = (name: SectionName, node: Node): void => {
    unread ??= readItems(piece, name, node, items, problems);
  };
  if (section !== undefined) {
    if (tree.root !== undefined) add(section, tree.root);
  } else if (tree.root?.kind === 'mapping') {
    for (const entry of tree.root.entries) {
      const name = keyText(entry.key);
      const declared = sectionOf(name);
      if (declared === undefined) problems.push({ problem: 'unknown-section', name, at: entry.key });
      else if (!isEmpty(entry.value)) add(declared, entry.value);
    }
  } else if (tree.root !== undefined) {
    problems.push({ problem: 'not-a-section', at: tree.root });
  }
  // A copy takes only the memory it needs; a list that has grown keeps spare room.
  return { tree, items: items.slice(), problems: problems.length === 0 ? NONE : problems, unread };
}

function nothing(...problems: readonly PieceProblem[]): PieceContent {
  return { tree: NOTHING, items: NONE, problems, unread: undefined };
}

const NOTHING: Tree = { root: undefined, problems: NONE, anchors: NONE, missingAnchors: NONE, effort: 0 };

/** The fault of a piece that begins with the unknown key. */
function unknownSection({ section: name, text }: Piece): PieceProblem {
  const end = name.length + (text.startsWith(name) ? 0 : 2); // in quotes
  return { problem: 'unknown-section', name, at: { start: 0, end } };
}

/** @returns the first entry that is left out, where there are too many */
function readItems(
  piece: Piece,
  section: SectionName,
  node: Node,
  items: Item[],
  problems: PieceProblem[],
): Span | undefined {
  const isList = SECTIONS[section] === 'list';
  const room = MOST_IN_BRACKETS - items.length;
  if (isList && node.kind === 'sequence') {
    for (const element of node.items.slice(0, room)) items.push(readItem(piece, section, undefined, element));
    return node.items[room];
  }
  if (!isList && node.kind === 'mapping') {
    for (const entry of node.entries.slice(0, room)) items.push(readItem(piece, section, entry, entry.value));
    return node.entries[room];
  }
  const found = node.kind === 'sequence' ? 'a list' : node.kind === 'mapping' ? 'a mapping' : 'a single value';
  problems.push({ problem: 'not-an-entry', section, found, at: node });
  return undefined;
}

/** The longest host name (RFC 1035 §2.3.1, from memory): device names become host names. */
export const LONGEST_NAME = 63;

/** Whether the schema allows the text as a name; such a name needs no quotes. */
export function isName(text: string): boolean {
  return text.length <= LONGEST_NAME && /^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$/.test(text);
}

function readItem(piece: Piece, section: SectionName, entry: Entry | undefined, node: Node): Item {
  const name = entry === undefined ? '' : keyText(entry.key);
  const all = dataOf(node);
  const mentions = mentionsIn(section, name, all);
  const { data, problems } = validate(section, name, all);
  const names = mentions.filter((mention) => mention.mention === 'name').slice();
  const unread = mentions.some((mention) => mention.mention === 'quantity' && !isQuantity(mention.read));
  const faulty = problems.length > 0 || unread || (entry !== undefined && SECTIONS[section] === 'map' && !isName(name));
  const blank = mentions.some((mention) => mention.mention === 'form' && mention.text === AUTO) || hasBlankPort(data);
  return {
    section,
    name,
    key: entry?.key,
    node,
    piece,
    data,
    problems,
    mentions,
    names,
    faulty,
    blank,
    fact: undefined,
  };
}

/** Stands where a free address, group or port is to be filled in. */
export const AUTO = 'auto';

function hasBlankPort(data: Data): boolean {
  return dataAt(data, ['port']) === AUTO;
}

/** Where a key path leads in an item's text; if the text ends earlier, the nearest place on the key path. */
export function placeOf(item: Item, keyPath: KeyPath = [], part: 'key' | 'value' | 'entry' = 'value'): Place {
  for (let length = keyPath.length; length > 0; length--) {
    const found = follow(item.node, keyPath.slice(0, length));
    if (found === undefined) continue;
    const wanted = length < keyPath.length ? 'key' : part;
    const { entry, node } = found;
    if (entry !== undefined && (wanted === 'key' || isEmpty(node))) return span(item.piece, entry.key);
    if (entry !== undefined && wanted === 'entry') return span(item.piece, entry);
    return span(item.piece, node);
  }
  if (item.key !== undefined && (part === 'key' || keyPath.length > 0 || isEmpty(item.node)))
    return span(item.piece, item.key);
  if (part === 'entry' && item.key !== undefined)
    return span(item.piece, { start: item.key.start, end: Math.max(item.key.end, item.node.end) });
  return span(item.piece, item.node);
}

/** The item that a place is in. */
export function itemAt({ piece, start }: Place): Item | undefined {
  const items = itemsInOrder(piece);
  const item = items[leastWhere(0, items.length, (index) => itemStart(items[index]) > start) - 1];
  return item !== undefined && start <= item.node.end ? item : undefined;
}

/** The items of a piece in the order of their text. */
export const itemsInOrder = perObject((piece: Piece) =>
  [...contentOf(piece).items].sort((a, b) => itemStart(a) - itemStart(b)),
);

/** Where an item begins in its piece. */
export function itemStart(item: Item | undefined): number {
  return (item?.key ?? item?.node)?.start ?? 0;
}

/** The name of an item, or the whole item if it has none. */
export function namePlace(item: Item): Place {
  return span(item.piece, item.key ?? item.node);
}

function span(piece: Piece, { start, end }: Span): Place {
  return { piece, start, end };
}

export function fileOf(place: Place): SourceFile {
  return place.piece.file;
}

function lastCharacter(text: string): number {
  return text.trimEnd().length;
}

function trimmed(text: string, { start, end }: Span): Span {
  const first = text.slice(start).search(/\S/);
  const lineEnd = text.slice(Math.max(first, 0)).search(/[\r\n]/);
  return { start: Math.max(first, start), end: lineEnd === -1 ? end : Math.min(end, Math.max(first, 0) + lineEnd) };
}
