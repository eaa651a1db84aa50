/** Cells and tables of a page. */

import { visible } from '../../text/visible.ts';
import { percent } from '../../text/words.ts';
import { shareWords } from '../answer/words.ts';
import type { Bounds } from '../bounds.ts';

/** `text` escaped for elements and quoted attributes. */
export function html(text: string): string {
  return visible(text, 1000).replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}

/** A name in the site, and its kind. */
export interface Name {
  readonly names:
    | 'devices'
    | 'ports'
    | 'vlans'
    | 'streams'
    | 'traffic'
    | 'volumes'
    | 'racks'
    | 'recordings'
    | 'multiplexes'
    | 'occasions';
  readonly name: string;
}

/** How a page shows a name: as text, or as a link to its place. */
export type Naming = (name: Name) => string;

export const asText: Naming = ({ name }) => html(name);

/** A button, as a link would need an address. */
export const asButton: Naming = ({ names, name }) =>
  `<button type="button" class="name" data-names="${names}" data-name="${html(name)}">${html(name)}</button>`;

/** The HTML of a cell; numbers are aligned right. */
export interface Cell {
  readonly html: string;
  readonly number?: boolean;
}

export const text = (value: string): Cell => ({ html: html(value) });
/** A cell whose text does not break. */
export const word = (value: string): Cell => ({ html: `<span class="w">${html(value)}</span>` });
export const figure = (value: string): Cell => ({ html: html(value), number: true });

/** Names with commas between them. */
export function namesCell(naming: Naming, names: Name['names'], all: readonly string[]): Cell {
  return { html: all.map((name) => naming({ names, name })).join(', ') };
}

/** A share of a whole: with a bar, and marked by a sign and weight where it is over a bound. */
export function shareCell(share: number | undefined, bounds: Bounds, isKnown = true): Cell {
  if (share === undefined || (share === 0 && !isKnown)) return figure('?');
  // The colour shows the range that the value is in: good below `low`, bad from `high`.
  const [low, high] = share > bounds.limit ? [0.001, 0.002] : share > bounds.warn ? [0.001, 1] : [1, 1];
  const bar = `<meter min="0" max="1" low="${low}" high="${high}" optimum="0" value="${Math.min(1, share).toFixed(3)}"></meter>`;
  const words = html(shareWords(share, 1, isKnown));
  if (share > bounds.limit) return { html: `${bar}<strong>▲ ${words}</strong>`, number: true };
  return { html: `${bar}${share > bounds.warn ? `<b>△ ${words}</b>` : words}`, number: true };
}

/** The legend for the signs of `shareCell`. */
export function signWords({ warn, limit }: Bounds): string {
  const over = `▲ over the limit of ${percent(limit, 1)}`;
  return warn < limit ? `${over}, △ over ${percent(warn, 1)}.` : `${over}.`;
}

export interface Row {
  readonly cells: readonly Cell[];
  /** The id for links within the page. */
  readonly id?: string;
  /** Belongs to the row above. */
  readonly part?: boolean;
}

export interface Table {
  readonly title: string;
  readonly note?: string;
  readonly head: readonly string[];
  readonly rows: readonly Row[];
  /** HTML that follows the table. */
  readonly after?: string;
}

/** Empty where it has no rows. On a narrow page each row is a block, in which each cell shows its heading. */
export function table({ title, note = '', head, rows, after = '' }: Table): string {
  if (rows.length === 0) return '';
  const isNumber = head.map((_, index) => rows.some(({ cells }) => cells[index]?.number === true));
  const number = (index: number): string => (isNumber[index] === true ? ' class="n"' : '');
  const starts = head.map((name, index) => `<td${number(index)} data-head="${html(name)}">`);
  const row = ({ cells, id, part }: Row): string =>
    `<tr${id === undefined ? '' : ` id="${html(id)}"`}${part === true ? ' class="part"' : ''}>${cells
      .map((cell, index) => `${starts[index] ?? '<td data-head="">'}${cell.html}</td>`)
      .join('')}</tr>`;
  return [
    '<section>',
    `<h2>${html(title)}</h2>`,
    ...(note === '' ? [] : [`<p class="note">${html(note)}</p>`]),
    '<table>',
    `<thead><tr>${head.map((name, index) => `<th scope="col"${number(index)}>${html(name)}</th>`).join('')}</tr></thead>`,
    '<tbody>',
    ...rows.map(row),
    '</tbody>',
    '</table>',
    `${after}</section>\n`,
  ].join('\n');
}
