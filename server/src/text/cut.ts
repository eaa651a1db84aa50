/**
 * Cuts a site file at the items of its sections, by indentation alone, so that an edit costs the item it touches
 * and a broken item leaves the rest readable.
 *
 * Cutting anew and cutting after an edit must agree, so they are in one file.
 */

import { lastResult } from '../memo.ts';
import { leastWhere } from './bisect.ts';

/** A file of the site. */
export interface SourceFile {
  readonly uri: string;
}

export type Role =
  /** One entry of a section's mapping, or one element of its list. */
  | 'item'
  /**
   * A whole section with its key, where its value starts on the key's own line; or all of them, where the file is in
   * braces.
   */
  | 'section'
  /** A whole file, where an alias refers to an anchor of another item. */
  | 'file'
  /** A line that belongs to no section. */
  | 'stray'
  /** A second document in the file, which is not read. */
  | 'document';

/** A run of lines that is parsed on its own. */
export interface Piece {
  readonly file: SourceFile;
  readonly text: string;
  readonly role: Role;
  /** The section of the item; empty above the first section. */
  readonly section: string;
  /** Indentation of the section's items. */
  readonly indent: number;
  /** Whether the section's items begin with hyphens. */
  readonly list: boolean;
}

/** The key of a section, on a line above its items. */
export interface Header {
  readonly section: string;
  readonly start: number;
  readonly end: number;
}

export interface Cut {
  readonly text: string;
  readonly pieces: readonly Piece[];
  /** Where each of the pieces starts, as an offset in the file. */
  readonly starts: readonly number[];
  /** The same of a piece; `undefined` if it is none of these. */
  readonly startOf: (piece: Piece) => number | undefined;
  readonly headers: readonly Header[];
}

/** The most pieces of a file: the last of them holds the rest. More than a site may have entries. */
const MOST_PIECES = 30_000;

/** Cuts `text`; a piece whose text is unchanged since `previous` stays the same object. */
export function cut(file: SourceFile, text: string, previous?: Cut): Cut {
  if (previous === undefined || previous.pieces.length >= MOST_PIECES) return cutAnew(file, text, previous);
  const { pieces, starts } = previous;
  const change = changeBetween(previous.text, text);
  const from = resumeAt(previous, change.start);
  const first = pieces[from];
  const start = starts[from];
  const scan =
    first === undefined || start === undefined ? new Scan(text, 0) : new Scan(text, start, first, from === 0);
  const { bounds, headers, joins } = scan.run({ first: from, after: change.end, shift: change.shift, ...previous });

  const kept = Math.max(from, 0);
  const keptHeaders = start === undefined ? [] : previous.headers.filter((header) => header.start < start);
  const tailStart = starts[joins] ?? Infinity;
  const tailHeaders = previous.headers.filter((header) => header.start >= tailStart);
  const adopted = adopt(file, text, bounds, pieces.slice(kept, joins));
  const nowPieces = [...pieces.slice(0, kept), ...adopted, ...pieces.slice(joins)];
  if (nowPieces.length >= MOST_PIECES) return cutAnew(file, text, previous);
  const nowStarts = [
    ...starts.slice(0, kept),
    ...bounds.map((b) => b.start),
    ...starts.slice(joins).map((tail) => tail + change.shift),
  ];
  return {
    text,
    pieces: nowPieces,
    starts: nowStarts,
    startOf: finder(nowPieces, nowStarts),
    headers: [...keptHeaders, ...headers, ...tailHeaders.map((header) => moved(header, change.shift))],
  };
}

/** Cuts all of `text`; a piece stays the same object if it is as it was and has as many before it. */
function cutAnew(file: SourceFile, text: string, previous?: Cut): Cut {
  const { bounds, headers } = new Scan(text, 0).run();
  const pieces = bounds.map((b, index) => {
    const before = previous?.pieces[index];
    return before !== undefined && isAsBefore(before, text, b) ? before : piece(file, text, b);
  });
  const starts = bounds.map(({ start }) => start);
  return { text, pieces, starts, startOf: finder(pieces, starts), headers };
}

function isAsBefore(before: Piece, text: string, { role, section, indent, list, start, end }: Bounds): boolean {
  return (
    before.text.length === end - start &&
    before.role === role &&
    before.section === section &&
    before.indent === indent &&
    before.list === list &&
    text.startsWith(before.text, start)
  );
}

/** Indexed once somebody asks; many edits come and go before. */
function finder(pieces: readonly Piece[], starts: readonly number[]): Cut['startOf'] {
  const index = lastResult(() => new Map(pieces.map((piece, i) => [piece, starts[i]])));
  return (piece) => index().get(piece);
}

/** The file as one piece, for a file whose items share anchors. */
export function uncut(file: SourceFile, text: string): Cut {
  const whole: Piece = { file, text, role: 'file', section: '', indent: NOT_YET, list: false };
  return { text, pieces: [whole], starts: [0], startOf: (piece) => (piece === whole ? 0 : undefined), headers: [] };
}

function moved(header: Header, shift: number): Header {
  return shift === 0 ? header : { section: header.section, start: header.start + shift, end: header.end + shift };
}

/** Where two texts differ: from `start` up to `end` in the new one; what comes after has moved by `shift`. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly shift: number;
}

export function changeBetween(before: string, after: string): Change {
  const shorter = Math.min(before.length, after.length);
  const start = longest(shorter, (low, high) => before.slice(low, high) === after.slice(low, high));
  const common = longest(
    shorter - start,
    (low, high) =>
      before.slice(before.length - high, before.length - low) === after.slice(after.length - high, after.length - low),
  );
  return { start, end: after.length - common, shift: after.length - before.length };
}

/** The greatest length up to which two texts are the same, by halving: comparing slices is faster than characters. */
function longest(limit: number, same: (low: number, high: number) => boolean): number {
  let low = 0;
  let high = limit;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (same(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The piece to cut from: the one before the change; -1 for the whole text. */
function resumeAt({ pieces, starts }: Cut, change: number): number {
  const changed = leastWhere(0, starts.length, (at) => (starts[at] ?? 0) > change) - 1;
  return pieces[0]?.role === 'file' ? -1 : Math.max(changed - 1, -1);
}

interface Bounds {
  readonly role: Role;
  readonly section: string;
  readonly indent: number;
  readonly list: boolean;
  readonly start: number;
  end: number;
}

/** The previous cut, and where its text goes on unchanged. */
interface Before {
  readonly pieces: readonly Piece[];
  readonly starts: readonly number[];
  /** The piece that the scan begins with; -1 for the start of the text. */
  readonly first: number;
  readonly after: number;
  readonly shift: number;
}

const SPACE = 32;
const TAB = 9;
const HASH = 35;
const PERCENT = 37;
const COMMA = 44;
const DASH = 45;
const NEWLINE = 10;
const RETURN = 13;
const CLOSING_BRACKET = 93;
const OPENING_BRACE = 123;
const CLOSING_BRACE = 125;

/** The indentation of a section's items, before its first. */
const NOT_YET = -1;

const SECTION_KEY = /(?:([A-Za-z0-9_-]+)|"([^"\\\r\n]*)"|'([^'\r\n]*)')[ \t]*:(?=[ \t\r\n]|$)/y;
const REST_IS_EMPTY = /[ \t]*(?:(?<=[ \t])#[^\r\n]*)?(?=\r?\n|\r|$)/y;

/** Goes over the lines of a text and finds where pieces begin. */
class Scan {
  private readonly text: string;
  private readonly bounds: Bounds[] = [];
  private readonly headers: Header[] = [];
  private open: Bounds | undefined;
  private section: string | undefined;
  private itemIndent: number;
  private list: boolean;
  private line: number;
  private readonly atStart: boolean;

  /** From the start of the text, or from a piece, in the section of that piece. */
  constructor(text: string, from: number, piece?: Piece, atStart = from === 0) {
    this.text = text;
    this.line = from === 0 && text.charCodeAt(0) === 0xfeff ? 1 : from;
    this.section = piece === undefined || piece.section === '' ? undefined : piece.section;
    this.itemIndent = piece?.indent ?? NOT_YET;
    this.list = piece?.list ?? false;
    this.atStart = atStart;
  }

  /** `joins` is the index of the first piece of the previous cut that is kept, with all after it. */
  run(before?: Before): { bounds: Bounds[]; headers: Header[]; joins: number } {
    const { text } = this;
    let old = Math.max(before?.first ?? 0, 0);
    while (this.line < text.length && this.bounds.length < MOST_PIECES) {
      if (before !== undefined && this.line >= before.after) {
        const was = this.line - before.shift;
        while ((before.starts[old] ?? Infinity) < was) old++;
        const piece = before.pieces[old];
        if (piece !== undefined && before.starts[old] === was && this.joins(piece)) {
          this.close(this.line);
          return { bounds: this.bounds, headers: this.headers, joins: old };
        }
      }
      const newline = text.indexOf('\n', this.line);
      const next = newline === -1 ? text.length : newline + 1;
      this.readLine(next);
      this.line = next;
    }
    return { bounds: this.bounds, headers: this.headers, joins: before?.pieces.length ?? 0 };
  }

  /** Whether a scan would begin the same piece here, and go on from it as before. */
  private joins(piece: Piece): boolean {
    if (this.open?.role === 'document') return false;
    if (piece.role === 'section') return piece.section !== '' || this.nothingYet();
    // Hyphens of a list continue the item before them, if there is one now.
    if (!piece.list && this.open?.role === 'item' && piece.text.charCodeAt(piece.indent) === DASH) return false;
    return (
      piece.role === 'item' &&
      this.open?.role !== 'section' &&
      piece.section === this.section &&
      piece.indent === this.itemIndent &&
      piece.list === this.list
    );
  }

  private readLine(next: number): void {
    const { text, line } = this;
    let at = line;
    while (text.charCodeAt(at) === SPACE) at++;
    const indent = at - line;
    const first = text.charCodeAt(at);
    if (at >= next || first === NEWLINE || first === RETURN || first === HASH) return;
    const closes = first === CLOSING_BRACE || first === CLOSING_BRACKET || first === COMMA;
    const dash = first === DASH && isBlank(text.charCodeAt(at + 1));
    if (indent > 0 || dash) this.readInner(indent, dash, closes);
    else if (this.open?.role === 'document') return;
    else if (isMarker(text, at, '---') || isMarker(text, at, '...')) this.readMarker(at);
    else if (first === PERCENT && this.section === undefined) return;
    else if (!closes && first !== TAB) this.readOuter(at);
    else if (this.open === undefined) this.begin('stray');
  }

  /** A line below a section's key. */
  private readInner(indent: number, dash: boolean, closes: boolean): void {
    if (this.section !== undefined && this.open?.role !== 'section' && this.open?.role !== 'document') {
      if (this.itemIndent === NOT_YET) {
        this.itemIndent = indent;
        this.list = dash;
      }
      // A closing bracket of an item may be below the item's key, and so may the hyphens of its list.
      const belongs = closes || (dash && !this.list && indent === this.itemIndent && this.open?.role === 'item');
      if (indent <= this.itemIndent && !belongs && (indent > 0 || this.itemIndent === 0)) this.begin('item');
      else if (this.open === undefined) this.begin('stray');
    } else if (this.open === undefined) this.begin('stray');
  }

  private nothingYet(): boolean {
    return this.atStart && this.section === undefined && this.bounds.length === 0;
  }

  private readMarker(at: number): void {
    if (!this.nothingYet() && isMarker(this.text, at, '---')) this.begin('document');
    else this.close(this.line);
  }

  /** A line that starts in the first column: a section's key, or nothing that belongs here. */
  private readOuter(at: number): void {
    SECTION_KEY.lastIndex = at;
    const key = SECTION_KEY.exec(this.text);
    if (key === null) {
      this.begin(this.nothingYet() && this.text.charCodeAt(at) === OPENING_BRACE ? 'section' : 'stray');
      return;
    }
    const name = key[1] ?? key[2] ?? key[3] ?? '';
    this.section = name;
    this.itemIndent = NOT_YET;
    this.list = false;
    REST_IS_EMPTY.lastIndex = SECTION_KEY.lastIndex;
    if (!REST_IS_EMPTY.test(this.text)) {
      this.begin('section');
      return;
    }
    this.close(this.line);
    this.headers.push({ section: name, start: at, end: at + name.length + (key[1] === undefined ? 2 : 0) });
  }

  private begin(role: Role): void {
    this.close(this.line);
    this.open = {
      role,
      section: this.section ?? '',
      indent: this.itemIndent,
      list: this.list,
      start: this.line,
      end: this.text.length,
    };
    this.bounds.push(this.open);
  }

  private close(end: number): void {
    if (this.open !== undefined) this.open.end = end;
    this.open = undefined;
  }
}

function isBlank(code: number): boolean {
  return Number.isNaN(code) || code === SPACE || code === TAB || code === NEWLINE || code === RETURN;
}

function isMarker(text: string, at: number, marker: string): boolean {
  return text.startsWith(marker, at) && isBlank(text.charCodeAt(at + marker.length));
}

/** Reuses pieces of the previous cut that have the same text. */
function adopt(file: SourceFile, text: string, bounds: readonly Bounds[], before: readonly Piece[]): Piece[] {
  const left = new Map<string, Piece[]>();
  for (const old of before) {
    const list = left.get(old.text);
    if (list === undefined) left.set(old.text, [old]);
    else list.push(old);
  }
  return bounds.map((b) => {
    const made = piece(file, text, b);
    const list = left.get(made.text);
    const found =
      list?.findIndex(
        (old) => old.section === b.section && old.role === b.role && old.indent === b.indent && old.list === b.list,
      ) ?? -1;
    return (found === -1 ? undefined : list?.splice(found, 1)[0]) ?? made;
  });
}

function piece(file: SourceFile, text: string, { role, section, indent, list, start, end }: Bounds): Piece {
  return { file, text: detached(text.slice(start, end)), role, section, indent, list };
}

/** A copy that does not keep the whole file's text alive, as a slice would. */
function detached(slice: string): string {
  return ` ${slice}`.slice(1);
}
