/** A drawing as a page: the picture, and below it the same as tables. */

import { type Naming, type Cell as PageCell, asText, figure, table, text } from '../report/page/cells.ts';
import { STYLE as PAGE_STYLE } from '../report/page/style.ts';
import type { Cell, Drawing, Name, Table } from './drawing.ts';
import { svgEscaped } from './escape.ts';
import { STYLE } from './style.ts';
import { svgPart } from './svg.ts';

/** A picture may be wider than the text; wider than the window it scrolls, and on paper it is as wide as that. */
export const FIGURE_STYLE = `
figure { margin: 1rem 0; overflow-x: auto; }
@media screen { figure { position: relative; left: 50%; transform: translateX(-50%); width: max-content; min-width: 100%; max-width: calc(100vw - 2rem); } }
@media print { figure { overflow: visible; } figure .drawing { max-width: 100%; } }
`;

/** A whole document, without scripts. @param naming how names are shown; where there is an editor, as what leads on */
export function drawingPage(drawing: Drawing, naming: Naming = asText): string {
  const description = `<p class="note">${svgEscaped(drawing.description)}</p>`;
  return page(drawing.title, `${description}\n${drawingPart(drawing, 'row', naming)}`);
}

function page(heading: string, body: string): string {
  const title = svgEscaped(heading);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${PAGE_STYLE}${STYLE}${FIGURE_STYLE}</style>
</head>
<body>
<h1>${title}</h1>
${body}</body>
</html>
`;
}

/** In place of a picture of what has not been read, or has been cleared since. */
export function notReadPage(title: string): string {
  return page(
    title,
    '<p class="verdict">Nothing has been read for this picture, or it has been cleared. Choose Draw… to read it again.</p>\n',
  );
}

/** The picture and its tables. @param prefix of the ids of rows, one to a drawing of a page */
export function drawingPart(drawing: Drawing, prefix: string, naming: Naming): string {
  const rows = new Map<string, string>();
  const tables = drawing.tables.map((one, index) => tableText(one, `${prefix}-${index + 1}`, naming, rows));
  // In an editor a thing leads to where it is declared instead.
  const leading = (at: Name): string | undefined => (naming === asText ? rows.get(key(at)) : undefined);
  return `<figure>\n${svgPart(drawing, leading)}</figure>\n${tables.join('')}`;
}

function key({ names, name }: Name): string {
  return `${names} ${name}`;
}

function tableText({ title, head, rows }: Table, prefix: string, naming: Naming, ids: Map<string, string>): string {
  return table({
    title,
    head,
    rows: rows.map(({ things, cells }, index) => {
      const id = `${prefix}-${index + 1}`;
      for (const one of things) if (!ids.has(key(one))) ids.set(key(one), `#${id}`);
      return { id, cells: cells.map((cell) => cellOf(cell, naming)) };
    }),
  });
}

function cellOf(cell: Cell, naming: Naming): PageCell {
  if (typeof cell === 'string') return text(cell);
  if ('figure' in cell) return figure(cell.figure);
  return { html: cell.names.map((name) => naming(name)).join(', ') };
}
