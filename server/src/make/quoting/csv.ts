/**
 * CSV (RFC 4180): records end in CR LF, the first one names the columns, and there are no comments.
 *
 * A spreadsheet reads a cell that starts with = + - @, a tab or a carriage return as a formula and may run it, even in
 * quotes. Such a text gets an apostrophe in front: to a spreadsheet that means text, and other readers have to drop it.
 * Numbers are written as they are, so that a negative one stays a number.
 */

import { visible } from '../../text/visible.ts';

export type Cell = string | number;

/** Includes the full-width forms, which some spreadsheets read as the same characters. */
const FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/** Each text becomes one line first, cut at a thousand characters. */
export function csv(head: readonly string[], records: readonly (readonly Cell[])[]): string {
  return [head, ...records].map((record) => `${record.map(cell).join(',')}\r\n`).join('');
}

function cell(value: Cell): string {
  if (typeof value === 'number') return String(value);
  const text = visible(value, 1000);
  const harmless = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) || harmless !== harmless.trim() ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
