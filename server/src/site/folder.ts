/** The files of one site, cut and parsed; keeps from one edit to the next what the edit did not touch. */

import { lastResult, perObject } from '../memo.ts';
import { type Cut, type Piece, type SourceFile, cut, uncut } from '../text/cut.ts';
import { Lines } from '../text/lines.ts';
import type { Span } from '../text/syntax.ts';
import { assemble } from './assemble.ts';
import { type Item, MOST_ENTRIES, type Place, contentOf, ordinaryContentOf } from './item.ts';
import type { Site } from './model.ts';

export interface SiteText extends SourceFile {
  /** The same object as long as the file exists; pieces refer to it. */
  readonly source: SourceFile;
  readonly text: string;
  readonly cut: Cut;
  /** Where its lines begin. */
  readonly lines: () => Lines;
  readonly items: readonly Item[];
  /** The pieces that are read: all but those beyond the limits. */
  readonly read: readonly Piece[];
  /** Pieces with a fault, and those that are not items. */
  readonly unusual: readonly Piece[];
  readonly unread: readonly Unread[];
  /** Why the file could not be read; its text is then empty. */
  readonly unreadable?: string;
}

/** What is left out of a file. */
export interface Unread {
  readonly at: Place;
  /**
   * slow: too much before it was slow to read, as it is · brackets, entries: too many entries come before it, in its
   * brackets or in the site.
   */
  readonly why: 'slow' | 'brackets' | 'entries';
}

/** How the names of site files end. */
export const SUFFIX = '.site.yaml';

/** UTF-16 units of a file that is read; a site of a thousand devices has half a million. */
export const LARGEST_TEXT = 4_000_000;

export const TOO_LARGE = 'it has more than four million characters, which no site needs';

/** The same limit for all files of a site together. */
export const TOO_LARGE_WITH_OTHERS =
  'with its shorter files the site has more than four million characters, which no site needs';

/**
 * The most tokens of a site that are read in pieces with a fault, an anchor, a tag or a block scalar: each takes some
 * 5 µs, a hundred times as long as in an ordinary piece.
 */
export const MOST_SLOW = 200_000;

/** How much more of a site may be read. The shortest file is read first, and each leaves the rest to the next. */
interface Room {
  readonly characters: number;
  readonly entries: number;
  readonly slow: number;
}

const WHOLE_ROOM: Room = { characters: LARGEST_TEXT, entries: MOST_ENTRIES, slow: MOST_SLOW };

/** The text of a file as it was set. */
interface Given {
  /** The same object as long as the file can be read. */
  readonly source: SourceFile;
  readonly text: string;
  readonly unreadable?: string;
}

/** A file as it was read, the room that it had, and how much it takes of that. */
interface Reading {
  readonly given: Given;
  readonly room: Room;
  readonly taken: Room;
  readonly file: SiteText;
}

export class SiteFolder {
  private readonly given = new Map<string, Given>();
  private readonly readings = new Map<string, Reading>();
  /** All files as they are now, once they have been asked for. */
  private current: ReadonlyMap<string, SiteText> | undefined;

  /** Takes the text of a file, new or changed. One that is too large counts as one that cannot be read. */
  set(uri: string, given: string): void {
    if (given.length > LARGEST_TEXT) {
      this.setUnreadable(uri, TOO_LARGE);
      return;
    }
    const text = withLineFeeds(given);
    const before = this.given.get(uri);
    if (before !== undefined && before.text === text && before.unreadable === undefined) return;
    this.put(uri, { source: before?.source ?? { uri }, text });
  }

  setUnreadable(uri: string, reason: string): void {
    this.put(uri, { source: { uri }, text: '', unreadable: reason });
  }

  delete(uri: string): void {
    this.given.delete(uri);
    this.readings.delete(uri);
    this.current = undefined;
  }

  get(uri: string): SiteText | undefined {
    return this.all().get(uri);
  }

  /** In the order of their names, so that a site does not depend on the order in which its files were opened. */
  get files(): SiteText[] {
    return [...this.all().values()];
  }

  get size(): number {
    return this.given.size;
  }

  /** The items of all files. */
  get items(): readonly Item[] {
    const [first = [], ...others] = this.files.map(({ items }) => items);
    return others.length === 0 ? first : [...first, ...others.flat()];
  }

  /** The site that the files describe now. */
  site(): Site {
    return assemble(this.items);
  }

  private put(uri: string, given: Given): void {
    this.given.set(uri, given);
    this.current = undefined;
  }

  private all(): ReadonlyMap<string, SiteText> {
    if (this.current !== undefined) return this.current;
    let room = WHOLE_ROOM;
    const byName = [...this.given].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    // A file that is far too long takes nothing from the others.
    for (const [uri, given] of [...byName].sort(([, a], [, b]) => a.text.length - b.text.length)) {
      const before = this.readings.get(uri);
      const reading = before !== undefined && holds(before, given, room) ? before : readingOf(given, room, before);
      this.readings.set(uri, reading);
      room = without(room, reading.taken);
    }
    return (this.current = new Map(
      byName.flatMap(([uri]) => {
        const reading = this.readings.get(uri);
        return reading === undefined ? [] : [[uri, reading.file]];
      }),
    ));
  }
}

/** Whether a file would be read the same: nothing was left out, and nothing would be. */
function holds(before: Reading, given: Given, room: Room): boolean {
  if (before.given !== given) return false;
  const { taken, file } = before;
  if (isSame(before.room, room)) return true;
  return (
    file.unread.length === 0 &&
    file.unreadable === given.unreadable &&
    taken.characters <= room.characters &&
    taken.entries < room.entries &&
    taken.slow < room.slow
  );
}

function isSame(a: Room, b: Room): boolean {
  return a.characters === b.characters && a.entries === b.entries && a.slow === b.slow;
}

function without(room: Room, taken: Room): Room {
  return {
    characters: room.characters - taken.characters,
    entries: Math.max(0, room.entries - taken.entries),
    slow: Math.max(0, room.slow - taken.slow),
  };
}

function readingOf(given: Given, room: Room, before: Reading | undefined): Reading {
  const { source, text } = given;
  const { uri } = source;
  const unreadable = given.unreadable ?? (text.length > room.characters ? TOO_LARGE_WITH_OTHERS : undefined);
  if (unreadable !== undefined) {
    const nothing = { items: [], read: [], unusual: [], unread: [] };
    const file: SiteText = { uri, source, text: '', cut: cut(source, ''), lines: linesOf(''), unreadable, ...nothing };
    return { given, room, taken: { characters: 0, entries: 0, slow: 0 }, file };
  }
  let pieces = cut(source, text, before?.given.source === source ? before.file.cut : undefined);
  let { sharesAnchors, entries, slow, ...parts } = readAll(pieces.pieces, room);
  if (sharesAnchors) {
    pieces = uncut(source, text);
    ({ sharesAnchors, entries, slow, ...parts } = readAll(pieces.pieces, room));
  }
  const file: SiteText = { uri, source, text, cut: pieces, lines: linesOf(text), ...parts };
  return { given, room, taken: { characters: text.length, entries, slow }, file };
}

/** Found once somebody asks. */
function linesOf(text: string): SiteText['lines'] {
  return lastResult(() => new Lines(text));
}

/**
 * A carriage return alone ends a line in YAML (1.2.2 §5.4) and in the Language Server Protocol, but not for the two
 * parsers. A line feed in its place moves no offset.
 */
function withLineFeeds(text: string): string {
  return text.includes('\r') ? text.replace(/\r(?!\n)/g, '\n') : text;
}

interface Read extends Pick<SiteText, 'items' | 'read' | 'unusual' | 'unread'> {
  readonly entries: number;
  readonly slow: number;
  /** Whether an alias needs an anchor in another piece of the file. */
  readonly sharesAnchors: boolean;
}

/** What all pieces hold, in one pass: there are thousands of them, and every edit does it anew. */
function readAll(pieces: readonly Piece[], room: Room): Read {
  const items: Item[] = [];
  const unusual: Piece[] = [];
  const unread: Unread[] = [];
  const read: Piece[] = [];
  const missing = new Set<string>();
  const anchors: string[] = [];
  let slow = 0;
  let passed = 0;
  for (const piece of pieces) {
    if (passed >= room.entries || items.length >= room.entries) {
      unread.push({ at: { piece, start: 0, end: piece.text.length }, why: 'entries' });
      break;
    }
    passed++;
    const ordinary = ordinaryContentOf(piece);
    if (ordinary === undefined && slow >= room.slow) {
      unread.push({ at: { piece, start: 0, end: piece.text.length }, why: 'slow' });
      continue;
    }
    read.push(piece);
    const content = ordinary ?? contentOf(piece);
    slow += content.tree.effort;
    for (const item of content.items) items.push(item);
    if (piece.role !== 'item' || content.problems.length > 0) unusual.push(piece);
    if (content.tree.missingAnchors.length > 0) for (const name of content.tree.missingAnchors) missing.add(name);
    for (const name of content.tree.anchors) anchors.push(name);
    if (content.unread !== undefined) {
      const { start, end } = content.unread;
      unread.push({ at: { piece, start, end }, why: 'brackets' });
    }
  }
  return {
    items,
    read: read.length === pieces.length ? pieces : read,
    unusual,
    unread,
    entries: Math.max(passed, items.length),
    slow,
    sharesAnchors: anchors.some((name) => missing.has(name)),
  };
}

const wholeOf = perObject((file: SiteText): Piece => ({
  file,
  text: file.text,
  role: 'stray',
  section: '',
  indent: 0,
  list: false,
}));

/** The offset of a piece in its file. Throws if the file no longer has the piece. */
export function pieceStart(file: SiteText, piece: Piece): number {
  const start = file.cut.startOf(piece) ?? (piece === wholeOf(file) ? 0 : undefined);
  if (start === undefined) throw new Error(`a place in a text that ${file.uri} no longer has`);
  return start;
}

/** A place as offsets in its file. */
export function spanOf(file: SiteText, { piece, start, end }: Place): Span {
  const from = pieceStart(file, piece);
  return { start: from + start, end: from + end };
}

/**
 * A place that belongs to none of the file's pieces, such as the key of a section: from offset to offset of the file.
 */
export function placeInFile(file: SiteText, { start, end }: Span): Place {
  return { piece: wholeOf(file), start, end };
}
