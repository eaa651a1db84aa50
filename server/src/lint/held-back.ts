/**
 * Which findings are shown during typing. A mistake is shown at once; something that is only missing waits until the
 * cursor leaves the item; its effects in other items, also in those typed before, wait for a pause.
 */

import { perObject } from '../memo.ts';
import { type SiteText, spanOf, pieceStart } from '../site/folder.ts';
import { type Item, type Place, contentOf, fileOf } from '../site/item.ts';
import { pieceAt } from '../site/locate.ts';
import { type Change, type Piece, changeBetween } from '../text/cut.ts';
import { isEmpty } from '../text/parse.ts';
import type { Span } from '../text/syntax.ts';
import { type Copied, isOfCopy } from './copied.ts';
import type { Awaited, Diagnostic, ShowAfter } from './rule.ts';

/** The findings of a site, or those that were shown. */
export interface Findings {
  readonly files: readonly SiteText[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface TextCursor {
  readonly uri: string;
  readonly offset: number;
}

export interface TypingState {
  /** The cursor, or the end of the last edit. */
  readonly cursor: TextCursor;
  /** Before the edit. */
  readonly shown: Findings;
  /** Where the cursor was then; `undefined` where nobody had typed yet. */
  readonly last: TextCursor | undefined;
  /** The site before somebody began to type. */
  readonly before: readonly SiteText[];
  /** So far each item was typed below all others; see `isLowest`. */
  readonly isDownward: boolean;
  /** What is being made of a copy. */
  readonly copied: Copied | undefined;
}

/** The findings to show now, among them all that were shown before and are not touched. */
export function diagnosticsToShow(
  { cursor, shown, last, before, isDownward, copied }: TypingState,
  now: Findings,
): readonly Diagnostic[] {
  if (now.diagnostics.length === 0) return now.diagnostics;
  const stood = standing(shown, now);
  const file = now.files.find(({ uri }) => uri === cursor.uri);
  const typed = file === undefined ? undefined : typedAt(file, cursor.offset);
  const isNew = edited(before);
  const isJustTyped = leftBy(shown, last);
  const mayCome = growing(before, now.files, isDownward);
  /** Whether a finding at a place where somebody types is shown now; `undefined` for any other place. */
  const isShownHere = (showAfter: ShowAfter, at: Place): boolean | undefined => {
    if (file === undefined || typed === undefined || fileOf(at).uri !== file.uri) return undefined;
    const span = spanOf(file, at);
    if (span.start < typed.start || typed.end < span.start) return undefined;
    return typed.isLeft || isPast(showAfter, span, file.text, cursor.offset);
  };
  return now.diagnostics.filter((diagnostic) => {
    if (stood(diagnostic)) return true;
    const showAfter = showAfterOf(diagnostic);
    if (showAfter === 'pause' || (copied !== undefined && isOfCopy(copied, diagnostic))) return false;
    const { at, awaits, related = [] } = diagnostic;
    if (awaits !== undefined && mayCome(awaits, at.piece)) return false;
    const here = isShownHere(showAfter, at);
    if (here !== undefined) return here;
    // In a piece with many items it is unknown which of them were typed.
    const isTyped = (at.piece.role === 'item' || at.piece.role === 'stray') && isNew(at.piece);
    return isTyped && isJustTyped(at.piece) && related.every((one) => isShownHere(showAfter, one.at) !== false);
  });
}

/** Whether the cursor is somewhere that nobody has edited. */
export function isElsewhere(
  files: readonly SiteText[],
  before: readonly SiteText[],
  { uri, offset }: TextCursor,
): boolean {
  const file = files.find((candidate) => candidate.uri === uri);
  const piece = file === undefined ? undefined : pieceAt(file, offset);
  return piece !== undefined && !edited(before)(piece);
}

/** Whether, in the file of the cursor, nothing was typed below it, and nothing in other files. */
export function isLowest(files: readonly SiteText[], before: readonly SiteText[], cursor: TextCursor): boolean {
  const isNew = edited(before);
  const known = new Map(before.map((file) => [file.uri, file]));
  return files.every((file) => {
    if (file.cut === known.get(file.uri)?.cut) return true;
    if (file.uri !== cursor.uri) return !file.cut.pieces.some(isNew);
    const own = file.cut.starts.findLastIndex((start) => start <= cursor.offset);
    return !file.cut.pieces.slice(own + 1).some(isNew);
  });
}

/** Names of a section that make it likely that no more come, where the file is written from above. */
const SEVERAL = 3;

/**
 * Whether what is awaited may still come, as its section is being written: it has other names than before somebody began
 * to type. Where all is written from above, what should stand above and does not is wrong.
 */
function growing(
  before: readonly SiteText[],
  files: readonly SiteText[],
  isDownward: boolean,
): (awaited: Awaited, piece: Piece) => boolean {
  const names = (of: readonly SiteText[], section: string): Map<string, Piece> =>
    new Map(
      of.flatMap(({ items }) => items.flatMap((item) => (item.section === section ? [[item.name, item.piece]] : []))),
    );
  const known = new Map<string, { readonly then: Map<string, Piece>; readonly now: Map<string, Piece> }>();
  return ({ section, isSlip, isAbove }, piece) => {
    const { then, now } = known.get(section) ?? { then: names(before, section), now: names(files, section) };
    known.set(section, { then, now });
    const others = piece.role === 'item' ? [...now].filter(([, own]) => own !== piece) : [...now];
    if (others.length === 0) return true;
    const isSame =
      piece.role !== 'item' ||
      (others.every(([name]) => then.has(name)) && [...then.keys()].every((name) => now.has(name)));
    return !isSame && !(isDownward && (isSlip || (isAbove && others.length >= SEVERAL)));
  };
}

function showAfterOf({ showAfter, rule }: Diagnostic): ShowAfter {
  return showAfter ?? rule.showAfter ?? 'pause';
}

/** The item at the cursor, with the text up to the next item; or the line, where there is no item. */
interface Typed extends Span {
  /** Whether text typed here no longer belongs to the item. */
  readonly isLeft: boolean;
}

function typedAt(file: SiteText, offset: number): Typed {
  const piece = pieceAt(file, offset);
  if (piece === undefined)
    return { start: lineStart(file.text, offset), end: lineEnd(file.text, offset), isLeft: false };
  const from = pieceStart(file, piece);
  const cursor = offset - from;
  let item: Item | undefined;
  let next: Item | undefined;
  for (const one of contentOf(piece).items)
    if (startOfItem(one) <= cursor) item = one;
    else next ??= one;
  const isAlone = piece.role === 'item';
  return {
    start: from + (isAlone || item === undefined ? 0 : startOfItem(item)),
    end: from + (isAlone || next === undefined ? piece.text.length : startOfItem(next)) - 1,
    isLeft: item !== undefined && isBehind(piece, item, cursor),
  };
}

function startOfItem({ key, node }: Item): number {
  return (key ?? node).start;
}

/**
 * Whether the cursor is in an empty line below a complete item, such as one in braces, or two lines below any
 * other item.
 */
function isBehind({ text }: Piece, { key, node }: Item, cursor: number): boolean {
  const end = Math.max(node.end, key?.end ?? 0);
  if (cursor <= end || !/^\s*(?:#.*)?$/.test(text.slice(lineStart(text, cursor), lineEnd(text, cursor)))) return false;
  const lines = text.slice(end, cursor).split('\n').length - 1;
  const goesOn = isEmpty(node) || (node.kind !== 'scalar' && !node.flow);
  return lines > (goesOn ? 1 : 0);
}

function isPast(showAfter: ShowAfter, { start, end }: Span, text: string, cursor: number): boolean {
  switch (showAfter) {
    case 'keystroke':
      return true;
    case 'value':
      return !/^[ \t]*$/.test(cursor < start ? text.slice(cursor, start) : text.slice(end, Math.max(end, cursor)));
    case 'line':
      return cursor < lineStart(text, start) || cursor > lineEnd(text, end);
    default:
      return false;
  }
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

function lineEnd(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset);
  return newline === -1 ? text.length : newline;
}

/** Whether a piece is new or changed since the typing began. */
const edited = perObject((before: readonly SiteText[]): ((piece: Piece) => boolean) => {
  const pieces = new Set(before.flatMap(({ cut }) => cut.pieces));
  return (piece) => !pieces.has(piece);
});

/** Whether a piece has changed since the last edit, or the cursor was in it then. */
function leftBy({ files }: Findings, last: TextCursor | undefined): (piece: Piece) => boolean {
  const file = files.find(({ uri }) => uri === last?.uri);
  const left = file === undefined || last === undefined ? undefined : pieceAt(file, last.offset);
  return (piece) => piece === left || edited(files)(piece);
}

/** Whether a finding was shown before: the same rule at the same place, unless that has been edited since. */
function standing(shown: Findings, { files }: Findings): (diagnostic: Diagnostic) => boolean {
  const same = new Set(shown.diagnostics);
  let inPieces: ReadonlyMap<Piece, ReadonlyMap<number, readonly Diagnostic[]>> | undefined;
  let moved: ReadonlySet<string> | undefined;
  const now = new Map(files.map((file) => [file.uri, file]));
  // A rule that ran anew mostly finds the same in the same order, so that nothing has to be looked up.
  let next = 0;
  const isNext = (diagnostic: Diagnostic): boolean => {
    const shownNext = shown.diagnostics[next];
    if (shownNext === undefined || !isSamePlace(shownNext, diagnostic)) return false;
    next++;
    return true;
  };
  return (diagnostic) => {
    if (isNext(diagnostic) || same.has(diagnostic)) return true;
    if (same.size === 0) return false;
    const { at, rule } = diagnostic;
    inPieces ??= byPieceAndStart(shown.diagnostics);
    const there = inPieces.get(at.piece)?.get(at.start);
    if (there?.some((one) => isSamePlace(one, diagnostic)) === true) return true;
    const file = now.get(fileOf(at).uri);
    if (file === undefined) return false;
    moved ??= movedKeys(shown, now);
    return moved.has(`${file.uri} ${keyOf(rule.id, spanOf(file, at))}`);
  };
}

function isSamePlace(one: Diagnostic, other: Diagnostic): boolean {
  const [a, b] = [one.at, other.at];
  return a.piece === b.piece && a.start === b.start && a.end === b.end && one.rule.id === other.rule.id;
}

function byPieceAndStart(diagnostics: readonly Diagnostic[]): Map<Piece, Map<number, Diagnostic[]>> {
  const inPieces = new Map<Piece, Map<number, Diagnostic[]>>();
  for (const diagnostic of diagnostics) {
    const { piece, start } = diagnostic.at;
    const inPiece = inPieces.get(piece);
    if (inPiece === undefined) {
      inPieces.set(piece, new Map([[start, [diagnostic]]]));
      continue;
    }
    const there = inPiece.get(start);
    if (there === undefined) inPiece.set(start, [diagnostic]);
    else there.push(diagnostic);
  }
  return inPieces;
}

function keyOf(rule: string, { start, end }: Span): string {
  return `${rule} ${start}-${end}`;
}

/** The places, after the edit, of findings that were shown; without those that the edit has touched. */
function movedKeys({ files, diagnostics }: Findings, now: ReadonlyMap<string, SiteText>): ReadonlySet<string> {
  const changes = new Map<string, { readonly file: SiteText; readonly change: Change }>();
  for (const file of files) {
    const after = now.get(file.uri);
    if (after !== undefined && after.text !== file.text)
      changes.set(file.uri, { file, change: changeBetween(file.text, after.text) });
  }
  const keys = new Set<string>();
  for (const { at, rule } of diagnostics) {
    const { uri } = fileOf(at);
    const changed = changes.get(uri);
    if (changed === undefined) continue;
    const { start, end } = spanOf(changed.file, at);
    const { change } = changed;
    if (end < change.start) keys.add(`${uri} ${keyOf(rule.id, { start, end })}`);
    else if (start > change.end - change.shift)
      keys.add(`${uri} ${keyOf(rule.id, { start: start + change.shift, end: end + change.shift })}`);
  }
  return keys;
}
