/** A page for paper: one file, no script, nothing fetched. Rows are not split, and every page repeats the heads. */

import { html } from '../../report/page/cells.ts';
import type { Site } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { header } from '../header.ts';

export interface Sheet {
  readonly title: string;
  /** How to make it again: `make port-table core`. */
  readonly command: string;
  /** Shown in the box above everything else. */
  readonly cautions: readonly Caution[];
  /** HTML. */
  readonly body: string;
  readonly upright?: boolean;
}

export interface Caution {
  readonly about: string;
  readonly text: string;
}

export function sheet(site: Site, { title, command, cautions, body, upright }: Sheet): string {
  const name = visible(site.name ?? 'Site without a name', 200);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>${html(`${title} – ${name}`)}</title>
<style>
@page { size: ${upright === true ? 'portrait' : 'landscape'}; margin: 12mm 12mm 14mm; @bottom-right { content: counter(page) " of " counter(pages); font: 8pt sans-serif; } }
${STYLE}</style>
</head>
<body>
<header>
<h1>${html(title)} <span>${html(name)}</span></h1>
<p>${header(site, command).map(html).join('<br>\n')}</p>
</header>
${cautionBox(cautions)}${body}</body>
</html>
`;
}

const STYLE = `:root { color-scheme: only light; font: 9.5pt/1.35 system-ui, sans-serif; color: #000; background: #fff; }
body { max-width: 277mm; margin: 8mm auto; padding: 0 4mm; }
@media print { body { max-width: none; margin: 0; padding: 0; } }
header { display: flex; justify-content: space-between; align-items: end; gap: 8mm; border-bottom: 1.5pt solid; padding-bottom: 1.5mm; margin-bottom: 4mm; }
header p { margin: 0; font-size: 7.5pt; text-align: right; color: #333; overflow-wrap: anywhere; }
h1 { font-size: 16pt; line-height: 1.15; margin: 0; overflow-wrap: anywhere; } h1 span { font-weight: 400; }
h2 { font-size: 12pt; margin: 6mm 0 1mm; break-after: avoid; overflow-wrap: anywhere; }
p { margin: 0 0 1.5mm; } .facts { color: #333; break-after: avoid; overflow-wrap: anywhere; }
section.page + section.page { break-before: page; }
.caution { border: 1.5pt solid; border-left-width: 6pt; padding: 2mm 3mm; margin: 0 0 4mm; break-inside: avoid; }
.caution h2 { margin: 0 0 1mm; font-size: 10pt; } .caution ul { margin: 0; padding-left: 4mm; } .caution p { margin: 1mm 0 0; font-weight: 600; }
table { border-collapse: collapse; width: 100%; }
thead { display: table-header-group; }
th { font-size: 8pt; text-align: left; vertical-align: bottom; border-bottom: 1pt solid; padding: .8mm 1.6mm; line-height: 1.15; }
td { vertical-align: top; border-bottom: .4pt solid #888; padding: .8mm 1.6mm; }
tr { break-inside: avoid; }
th:first-child, td:first-child { padding-left: 0; } th:last-child, td:last-child { padding-right: 0; }
.n { text-align: right; font-variant-numeric: tabular-nums; } .w { white-space: nowrap; } .s { font-size: 8pt; color: #333; }
b { font-weight: 600; } tr.free td { color: #555; font-style: italic; }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: .8pt solid; vertical-align: -0.4mm; }
`;

function cautionBox(cautions: readonly Caution[]): string {
  if (cautions.length === 0) return '';
  const items = cautions.map(({ about, text }) => `<li><b>${html(about)}:</b> ${html(text)}</li>\n`);
  return (
    `<aside class="caution">\n<h2>Before you begin</h2>\n<ul>\n${items.join('')}</ul>\n<p>Local codes and licensed ` +
    'practice decide. Where they say otherwise than this sheet, they are right.</p>\n</aside>\n'
  );
}

/** How a column is set: numbers to the right, words unbroken, small print. */
export type Set = 'n' | 'w' | 's';

export interface Column {
  readonly head: string;
  readonly set?: Set;
}

/** Text, or HTML as it is. */
export type SheetCell = string | { readonly html: string };

export function sheetTable(
  columns: readonly Column[],
  rows: readonly (readonly SheetCell[])[],
  classOf: (row: number) => string = () => '',
): string {
  const head = columns
    .map(({ head: text, set }) => `<th${set === 'n' ? ' class="n"' : ''}>${html(text)}</th>`)
    .join('');
  const body = rows.map((row, index) => {
    const own = classOf(index);
    const cells = row.map((cell, at) => tableCell(cell, columns[at]?.set));
    return `<tr${own === '' ? '' : ` class="${own}"`}>${cells.join('')}</tr>\n`;
  });
  return `<table>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join('')}</tbody>\n</table>\n`;
}

/** Characters of the longest word, and of the longest cell, that stay unbroken. */
const LONG = 24;
const UNBROKEN = 34;

function tableCell(cell: SheetCell, set: Set | undefined): string {
  const unbroken = typeof cell === 'string' && (set === 'w' || set === 'n') && cell.length <= UNBROKEN;
  const classes = [set === 'n' || set === 's' ? set : '', unbroken ? 'w' : ''].filter((name) => name !== '').join(' ');
  const attribute = classes === '' ? '' : ` class="${classes}"`;
  return `<td${attribute}>${typeof cell === 'string' ? breakable(cell) : cell.html}</td>`;
}

/** A cell that breaks only between its parts. */
export function parted(...parts: readonly string[]): SheetCell {
  const part = (text: string): string =>
    text.length <= UNBROKEN ? `<span class="w">${html(text)}</span>` : breakable(text);
  return {
    html: parts
      .filter((text) => text !== '')
      .map(part)
      .join(' '),
  };
}

/** The text as HTML; a word that is too long for a column may break anywhere. */
export function breakable(text: string): string {
  if (text.length <= LONG) return html(text);
  const broken = (word: string): string =>
    word.length <= LONG ? html(word) : (word.match(/.{1,10}/gsu) ?? []).map(html).join('<wbr>');
  return visible(text, 1000).split(' ').map(broken).join(' ');
}

/** Facts in one line, without those that are missing. */
export function facts(...parts: readonly (string | undefined)[]): string {
  const known = parts.filter((part) => part !== undefined && part !== '');
  return known.length === 0 ? '' : `<p class="facts">${known.map((part) => html(part ?? '')).join(' · ')}</p>\n`;
}

/** A box to tick. */
export const TICK: SheetCell = { html: '<span class="box"></span>' };
