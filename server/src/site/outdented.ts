/** Items that stand in the first column, where sections begin, and the lines to indent. */

import { perObject } from '../memo.ts';
import { leastWhere } from '../text/bisect.ts';
import type { Piece } from '../text/cut.ts';
import { parse } from '../text/parse.ts';
import type { SiteText } from './folder.ts';
import { type SectionName, SECTIONS, SECTION_NAMES, itemSchema, keysOf } from './shape.ts';
import { type Node, type Span, keyText } from '../text/syntax.ts';

export interface Outdented {
  readonly section: SectionName;
  /**
   * The item's lines as offsets in the file, and the indentation of the section's items; `undefined` where another
   * section is above.
   */
  readonly lines: (Span & { readonly indent: number }) | undefined;
}

/** The section whose required keys all stand below an unknown section. */
export function outdented(file: SiteText, name: string, start: number): Outdented | undefined {
  const { pieces, starts } = file.cut;
  const first = leastWhere(0, starts.length, (index) => (starts[index] ?? 0) >= start);
  const keys: { readonly key: string; readonly end: number }[] = [];
  for (let index = first; index < pieces.length; index++) {
    const piece = pieces[index];
    const from = starts[index] ?? 0;
    if (piece?.section !== name) break;
    if (piece.role === 'section') {
      const { root } = treeOf(piece);
      const value = root?.kind === 'mapping' ? root.entries[0]?.value : undefined;
      for (const key of keysIn(value)) keys.push({ key, end: from + (value?.end ?? 0) });
      break;
    }
    const key = /^\s*([\w-]+):/.exec(piece.text)?.[1];
    if (key === undefined) break;
    keys.push({ key, end: from + piece.text.trimEnd().length });
  }
  const section = SECTION_NAMES.find((candidate) =>
    isItemOf(
      candidate,
      keys.map(({ key }) => key),
    ),
  );
  if (section === undefined) return undefined;
  const allowed = keysOf(itemSchema(section, '') ?? {});
  // Items of the section that come next are indented as they should be.
  const next = keys.findIndex(({ key }) => !allowed.includes(key));
  const end = keys[(next === -1 ? keys.length : next) - 1]?.end;
  const { headers } = file.cut;
  const head = headers[leastWhere(0, headers.length, (index) => (headers[index]?.start ?? 0) >= start) - 1];
  const above = pieces[first - 1];
  const indent = above?.section === section && above.role === 'item' ? above.indent : USUAL_INDENT;
  // Anything in between must be mended first.
  const isNext = head?.section === section && (above === undefined || above.section === section);
  return { section, lines: isNext && end !== undefined ? { start, end, indent } : undefined };
}

/** An unknown section is not read with the site, so it is parsed here. */
const treeOf = perObject(({ text }: Piece) => parse(text));

/** Spaces, where no item of the section shows another indentation. */
const USUAL_INDENT = 2;

function keysIn(node: Node | undefined): string[] {
  return node?.kind === 'mapping' ? node.entries.map(({ key }) => keyText(key)) : [];
}

function isItemOf(section: SectionName, keys: readonly string[]): boolean {
  const required = SECTIONS[section] === 'map' ? (itemSchema(section, '')?.required ?? []) : [];
  return required.length > 0 && required.every((key) => keys.includes(key));
}
