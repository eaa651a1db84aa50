/** The sections of a file as runs of lines, each with the comments that belong to it. */

import type { SiteText } from '../../../site/folder.ts';
import { type Item, type PieceProblem, contentOf } from '../../../site/item.ts';
import { type SectionName, sectionOf } from '../../../site/shape.ts';
import { type Cut, cut } from '../../../text/cut.ts';
import { parse } from '../../../text/parse.ts';
import type { Span } from '../../../text/syntax.ts';

export interface Section {
  readonly name: string;
  readonly known: SectionName | undefined;
  readonly key: Span;
  /** A section runs from the comment at its head to the head of the next section. */
  readonly start: number;
  readonly end: number;
  /** The line that its key is on. */
  readonly keyLine: number;
  /** The offset behind its last line that is not blank. */
  readonly textEnd: number;
  readonly items: readonly Item[];
  /** Whether its items stand on lines below its key. */
  readonly isBlock: boolean;
  readonly indent: number;
}

/** The line by which another extension finds the schema. */
const MODELINE = /^#\s*yaml-language-server:/;

interface Line {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** More sections, known and unknown, than any real file has. */
const MAX_SECTIONS = 100;

/**
 * The sections in their order. `undefined` where lines could belong anywhere: a line is in no section, there are two
 * documents, two sections of one name or too many, or an alias refers to an anchor of another section.
 */
export function sectionsOf(file: SiteText): Section[] | undefined {
  const [whole] = file.cut.pieces;
  // Text that was not read cannot be moved.
  if (file.unread.length > 0) return undefined;
  const isWhole = whole?.role === 'file';
  if (isWhole && contentOf(whole).problems.length > 0) return undefined;
  const pieces = isWhole ? cut(file.source, file.text) : file.cut;
  const heads = headsOf(pieces, isWhole);
  if (heads === undefined || heads.length > MAX_SECTIONS) return undefined;
  if (new Set(heads.map(({ name }) => name)).size < heads.length) return undefined;
  const lines = linesOf(file.text);
  const keyLines = heads.map(({ key }) => lines.findIndex(({ end }) => key.start < end));
  const starts = keyLines.map((line) => headLine(lines, line));
  if (lines.slice(keyLines[0]).some(({ text }) => /^(?:---|\.\.\.)(?:\s|$)/.test(text))) return undefined;
  const sections = heads.map(({ name, key }, index): Section => {
    const first = starts[index] ?? 0;
    const next = starts[index + 1] ?? lines.length;
    let last = next;
    while (last > first && lines[last - 1]?.text.trim() === '') last--;
    const end = lines[next]?.start ?? file.text.length;
    const own = pieces.pieces.filter((_, at) => {
      const start = pieces.starts[at] ?? -1;
      return start >= key.start && start < end;
    });
    const isBlock = own.every(({ role }) => role === 'item');
    return {
      name,
      known: sectionOf(name),
      key,
      start: lines[first]?.start ?? 0,
      end,
      keyLine: lines[keyLines[index] ?? 0]?.start ?? 0,
      textEnd: lines[last - 1]?.end ?? end,
      items: own.flatMap((piece) => contentOf(piece).items),
      isBlock,
      indent: own[0]?.indent ?? 0,
    };
  });
  if (isWhole && sections.some(({ start, end }) => refersOutside(file.text.slice(start, end)))) return undefined;
  return sections;
}

/** The section whose key is at an offset, and all sections of the file. */
export function sectionAtKey(
  file: SiteText,
  offset: number,
): { readonly sections: readonly Section[]; readonly at: Section } | undefined {
  // Most lines are indented, and need no look at the others.
  if (/^[\s#]?$/.test(file.text.charAt(file.text.lastIndexOf('\n', offset - 1) + 1))) return undefined;
  const sections = sectionsOf(file);
  const at = sections?.find(({ key }) => key.start <= offset && offset <= key.end);
  return sections === undefined || at === undefined ? undefined : { sections, at };
}

/** The modeline, where the file has one. */
export function modelineOf({ text }: SiteText): string | undefined {
  return linesOf(text).find((line) => MODELINE.test(line.text))?.text;
}

/** `sharesAnchors` says that an alias in one piece may refer to an anchor in another. */
function headsOf(
  { pieces, starts, headers }: Cut,
  sharesAnchors: boolean,
): { readonly name: string; readonly key: Span }[] | undefined {
  const heads = headers.map(({ section, start, end }) => ({ name: section, key: { start, end } }));
  for (const [index, piece] of pieces.entries()) {
    const start = starts[index];
    if (start === undefined || piece.role === 'stray' || piece.role === 'document' || piece.role === 'file')
      return undefined;
    const { problems, tree } = contentOf(piece);
    if (problems.some((found) => !isHarmless(found, sharesAnchors))) return undefined;
    if (piece.role !== 'section') continue;
    const entries = tree.root?.kind === 'mapping' ? tree.root.entries : [];
    const [only] = entries;
    if (piece.section === '' || only === undefined || entries.length > 1) return undefined;
    heads.push({ name: piece.section, key: { start: start + only.key.start, end: start + only.key.end } });
  }
  return heads.sort((a, b) => a.key.start - b.key.start);
}

function isHarmless(found: PieceProblem, sharesAnchors: boolean): boolean {
  if (found.problem === 'syntax') return sharesAnchors && found.at.code === 'unknown-alias';
  return found.problem === 'unknown-section';
}

function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  for (let start = 0; start < text.length;) {
    const newline = text.indexOf('\n', start);
    const end = newline === -1 ? text.length : newline + 1;
    lines.push({
      start,
      end,
      text: text
        .slice(start, end)
        .replace(/^\ufeff/, '')
        .replace(/\r?\n$/, ''),
    });
    start = end;
  }
  return lines;
}

/**
 * The line that a section begins with: the first comment above its key. A comment directly below other lines, with
 * a blank line before the key, belongs to those lines; so does one that is indented.
 */
function headLine(lines: readonly Line[], keyLine: number): number {
  let from = keyLine;
  while (from > 0 && isBlankOrComment(lines[from - 1]?.text ?? '')) from--;
  const between = lines.slice(from, keyLine);
  const blank = between.findIndex(({ text }) => text.trim() === '');
  const comment = between.findIndex(({ text }, index) => index >= blank && text.startsWith('#'));
  return comment === -1 ? keyLine : from + comment;
}

function isBlankOrComment(text: string): boolean {
  return text.trim() === '' || (text.startsWith('#') && !MODELINE.test(text));
}

function refersOutside(text: string): boolean {
  return parse(text).missingAnchors.length > 0;
}
