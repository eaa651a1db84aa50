/**
 * Cuts a site file at the items of its sections, by indentation alone, so that an edit costs the item it touches
 * and a broken item leaves the rest readable.
 */

/** A file of the site. */
export interface SourceFile {
  readonly uri: string;
}

export type Role =
  /** One entry of a section's mapping, or one element of its list. */
  | 'item'
  /** A whole section with its key, where its value starts on the key's own line. */
  | 'section'
  /** A whole file, where an alias refers to an anchor of another item. */
  | 'file'
  /** A line that belongs to no section. */
  | 'stray'
  /** A second document in the file, which is not read. */
  | 'document';

/** A run of lines that is parsed by itself. */
export interface Piece {
  readonly file: SourceFile;
  readonly text: string;
  readonly role: Role;
  /** The section that an item stands in. */
  readonly section: string;
  /** Offset in the file where the piece stands now; the only thing about it that changes. */
  start: number;
}

/** The key of a section whose items stand below it. */
export interface Header {
  readonly section: string;
  readonly start: number;
  readonly end: number;
}

export interface Cut {
  readonly pieces: readonly Piece[];
  readonly headers: readonly Header[];
}

interface Bounds {
  role: Role;
  section: string;
  start: number;
  end: number;
}

const SPACE = 32;
const TAB = 9;
const HASH = 35;
const DASH = 45;
const NEWLINE = 10;
const RETURN = 13;

const SECTION_KEY = /(?:([A-Za-z0-9_-]+)|"([^"\\\r\n]*)"|'([^'\r\n]*)')[ \t]*:(?=[ \t\r\n]|$)/y;
const REST_IS_EMPTY = /[ \t]*(?:(?<=[ \t])#[^\r\n]*)?(?=\r?\n|\r|$)/y;

/** Cuts `text`; pieces of `previous` whose text stands again are kept, with their new place. */
export function cut(file: SourceFile, text: string, previous?: Cut): Cut {
  const headers: Header[] = [];
  return { pieces: adopt(file, text, findBounds(text, headers), previous?.pieces ?? []), headers };
}

/** The file as one piece, for a file whose items share anchors. */
export function uncut(file: SourceFile, text: string): Cut {
  return { pieces: [{ file, text, role: 'file', section: '', start: 0 }], headers: [] };
}

function findBounds(text: string, headers: Header[]): Bounds[] {
  const bounds: Bounds[] = [];
  const current: { piece: Bounds | undefined } = { piece: undefined };
  let section: string | undefined;
  /** Indentation of the section's items; -1 until its first line. */
  let itemIndent = -1;

  const begin = (role: Role, start: number): void => {
    end(start);
    const piece = { role, section: section ?? '', start, end: text.length };
    current.piece = piece;
    bounds.push(piece);
  };
  const end = (at: number): void => {
    if (current.piece !== undefined) current.piece.end = at;
    current.piece = undefined;
  };

  let line = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (line < text.length) {
    const newline = text.indexOf('\n', line);
    const next = newline === -1 ? text.length : newline + 1;
    let at = line;
    while (text.charCodeAt(at) === SPACE) at++;
    const indent = at - line;
    const first = text.charCodeAt(at);
    if (at >= next || first === NEWLINE || first === RETURN || first === HASH) {
      line = next;
      continue;
    }
    const closes = first === 0x7d || first === 0x5d || first === 0x2c; // } ] ,
    const dash = first === DASH && isBlank(text.charCodeAt(at + 1));

    if (indent > 0 || dash) {
      if (section !== undefined && current.piece?.role !== 'section' && current.piece?.role !== 'document') {
        if (itemIndent === -1) itemIndent = indent;
        if (indent <= itemIndent && !closes && (indent > 0 || itemIndent === 0)) begin('item', line);
        else if (current.piece === undefined) begin('stray', line);
      } else if (current.piece === undefined) {
        begin('stray', line);
      }
    } else if (current.piece?.role === 'document') {
      // The rest of the file belongs to it.
    } else if (isMarker(text, at, '---') || isMarker(text, at, '...')) {
      const first = section === undefined && bounds.length === 0;
      if (!first && isMarker(text, at, '---')) begin('document', line);
      else end(line);
    } else if (first === 0x25 && section === undefined) {
      // A `%YAML` directive.
    } else if (!(closes || first === TAB)) {
      SECTION_KEY.lastIndex = at;
      const key = SECTION_KEY.exec(text);
      if (key === null) {
        begin('stray', line);
      } else {
        section = key[1] ?? key[2] ?? key[3] ?? '';
        itemIndent = -1;
        REST_IS_EMPTY.lastIndex = SECTION_KEY.lastIndex;
        if (REST_IS_EMPTY.test(text)) {
          end(line);
          const width = key[1] === undefined ? section.length + 2 : section.length;
          headers.push({ section, start: at, end: at + width });
        } else {
          begin('section', line);
        }
      }
    } else if (current.piece === undefined) {
      begin('stray', line);
    }
    line = next;
  }
  return bounds;
}

function isBlank(code: number): boolean {
  return Number.isNaN(code) || code === SPACE || code === TAB || code === NEWLINE || code === RETURN;
}

function isMarker(text: string, at: number, marker: string): boolean {
  return text.startsWith(marker, at) && isBlank(text.charCodeAt(at + marker.length));
}

/** Pairs new bounds with the pieces that stood before: from the front, from the back, then by text. */
function adopt(file: SourceFile, text: string, bounds: Bounds[], before: readonly Piece[]): Piece[] {
  const pieces = new Array<Piece>(bounds.length);
  const same = (piece: Piece | undefined, b: Bounds): piece is Piece =>
    piece !== undefined &&
    piece.text.length === b.end - b.start &&
    piece.section === b.section &&
    piece.role === b.role &&
    text.startsWith(piece.text, b.start);
  const place = (index: number, piece: Piece, b: Bounds): void => {
    piece.start = b.start;
    pieces[index] = piece;
  };

  let front = 0;
  for (; front < bounds.length; front++) {
    const b = bounds[front];
    const piece = before[front];
    if (b === undefined || !same(piece, b)) break;
    place(front, piece, b);
  }
  let back = 0;
  for (; back < Math.min(bounds.length, before.length) - front; back++) {
    const b = bounds[bounds.length - 1 - back];
    const piece = before[before.length - 1 - back];
    if (b === undefined || !same(piece, b)) break;
    place(bounds.length - 1 - back, piece, b);
  }
  const left = new Map<string, Piece[]>();
  for (const piece of before.slice(front, before.length - back)) {
    const list = left.get(piece.text);
    if (list === undefined) left.set(piece.text, [piece]);
    else list.push(piece);
  }
  for (let i = front; i < bounds.length - back; i++) {
    const b = bounds[i];
    if (b === undefined) continue;
    const source = detached(text.slice(b.start, b.end));
    const list = left.get(source);
    const found = list?.findIndex((piece) => same(piece, b)) ?? -1;
    const kept = found === -1 ? undefined : list?.splice(found, 1)[0];
    if (kept !== undefined) place(i, kept, b);
    else pieces[i] = { file, text: source, role: b.role, section: b.section, start: b.start };
  }
  return pieces;
}

/** A copy that does not keep the whole file's text alive, as a slice would. */
function detached(slice: string): string {
  return ` ${slice}`.slice(1);
}
