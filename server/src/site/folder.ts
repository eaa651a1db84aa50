/** The files of one site, cut and parsed; keeps from one edit to the next what the edit did not touch. */

import { perObject } from '../memo.ts';
import { type Cut, type Piece, type SourceFile, cut, uncut } from '../text/cut.ts';
import type { Span } from '../text/syntax.ts';
import { assemble } from './assemble.ts';
import { type Item, MOST_ENTRIES, type Place, contentOf, ordinaryContentOf } from './item.ts';
import type { Site } from './model.ts';

export interface SiteText extends SourceFile {
  /** The same object as long as the file exists; pieces refer to it. */
  readonly source: SourceFile;
  readonly text: string;
  readonly cut: Cut;
  readonly items: readonly Item[];
  /** Pieces that are no sound items: with a fault, or of another role. */
  readonly unusual: readonly Piece[];
  readonly unread: readonly Unread[];
  /** Why the file could not be read; its text is then empty. */
  readonly unreadable?: string;
}

/** What is left out of a file. */
export interface Unread {
  readonly at: Place;
  /** As slow to read as too many before it, or behind too many entries of its brackets or of the file. */
  readonly why: 'slow' | 'brackets' | 'entries';
}

/** How the names of site files end. */
export const SUFFIX = '.site.yaml';

/** UTF-16 units of a file that is read; a site of a thousand devices has half a million. */
export const LARGEST_TEXT = 4_000_000;

export const TOO_LARGE = 'it has more than four million characters, which no site needs';

/** Pieces of a file that are not ordinary: each takes a hundred times as long as one that is. */
export const MOST_SLOW = 10_000;

export class SiteFolder {
  private readonly texts = new Map<string, SiteText>();

  /** Takes the text of a file, new or changed. One that is too large counts as one that cannot be read. */
  set(uri: string, given: string): void {
    if (given.length > LARGEST_TEXT) {
      this.setUnreadable(uri, TOO_LARGE);
      return;
    }
    const text = withLineFeeds(given);
    const before = this.texts.get(uri);
    if (before !== undefined && before.text === text && before.unreadable === undefined) return;
    const source = before?.source ?? { uri };
    let pieces = cut(source, text, before?.cut);
    let read = readAll(pieces.pieces);
    if (read.sharesAnchors) {
      pieces = uncut(source, text);
      read = readAll(pieces.pieces);
    }
    const { items, unusual, unread } = read;
    this.texts.set(uri, { uri, source, text, cut: pieces, items, unusual, unread });
  }

  setUnreadable(uri: string, reason: string): void {
    const source = { uri };
    const nothing = { items: [], unusual: [], unread: [] };
    this.texts.set(uri, { uri, source, text: '', cut: cut(source, ''), ...nothing, unreadable: reason });
  }

  delete(uri: string): void {
    this.texts.delete(uri);
  }

  get(uri: string): SiteText | undefined {
    return this.texts.get(uri);
  }

  /** In the order of their names, so that a site does not depend on the order in which its files were opened. */
  get files(): SiteText[] {
    return [...this.texts.values()].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0));
  }

  get size(): number {
    return this.texts.size;
  }

  /** The items of all files. */
  get items(): readonly Item[] {
    const [first = [], ...others] = this.files.map(({ items }) => items);
    return others.length === 0 ? first : [...first, ...others.flat()];
  }

  /** The site as the files have it now. */
  site(): Site {
    return assemble(this.items);
  }
}

/**
 * A carriage return alone ends a line (YAML 1.2.2 §5.4, and so the Language Server Protocol), but neither parser takes
 * it so. A line feed in its place moves nothing.
 */
function withLineFeeds(text: string): string {
  return text.includes('\r') ? text.replace(/\r(?!\n)/g, '\n') : text;
}

interface Read {
  readonly items: readonly Item[];
  readonly unusual: readonly Piece[];
  readonly unread: readonly Unread[];
  /** Whether an alias needs an anchor in another piece of the file. */
  readonly sharesAnchors: boolean;
}

/** What all pieces hold, in one pass over them: there are thousands, and it is done at every edit. */
function readAll(pieces: readonly Piece[]): Read {
  const items: Item[] = [];
  const unusual: Piece[] = [];
  const unread: Unread[] = [];
  const missing = new Set<string>();
  const anchors: string[] = [];
  let slow = 0;
  let passed = 0;
  for (const piece of pieces) {
    if (passed++ >= MOST_ENTRIES || items.length >= MOST_ENTRIES) {
      unread.push({ at: { piece, start: 0, end: piece.text.length }, why: 'entries' });
      break;
    }
    const ordinary = ordinaryContentOf(piece);
    if (ordinary === undefined && ++slow > MOST_SLOW) {
      unread.push({ at: { piece, start: 0, end: piece.text.length }, why: 'slow' });
      continue;
    }
    const content = ordinary ?? contentOf(piece);
    for (const item of content.items) items.push(item);
    if (piece.role !== 'item' || content.problems.length > 0) unusual.push(piece);
    if (content.tree.missingAnchors.length > 0) for (const name of content.tree.missingAnchors) missing.add(name);
    for (const name of content.tree.anchors) anchors.push(name);
    if (content.unread !== undefined) {
      const { start, end } = content.unread;
      unread.push({ at: { piece, start, end }, why: 'brackets' });
    }
  }
  return { items, unusual, unread, sharesAnchors: anchors.some((name) => missing.has(name)) };
}

const startsOf = perObject(({ pieces, starts }: Cut) => new Map(pieces.map((piece, index) => [piece, starts[index]])));

const wholeOf = perObject((file: SiteText): Piece => ({
  file,
  text: file.text,
  role: 'stray',
  section: '',
  indent: 0,
  list: false,
}));

/** The offset of a piece in its file. Throws if the file no longer has the piece. */
export function startOf(file: SiteText, piece: Piece): number {
  const start = startsOf(file.cut).get(piece) ?? (piece === wholeOf(file) ? 0 : undefined);
  if (start === undefined) throw new Error(`a place in a text that ${file.uri} no longer has`);
  return start;
}

/** A place as offsets in its file. */
export function spanOf(file: SiteText, { piece, start, end }: Place): Span {
  const from = startOf(file, piece);
  return { start: from + start, end: from + end };
}

/**
 * A place that belongs to none of the file's pieces, such as the key of a section: from offset to offset of the file.
 */
export function placeInFile(file: SiteText, { start, end }: Span): Place {
  return { piece: wholeOf(file), start, end };
}
