/**
 * CSV as RFC 4180 has it: records end in CR LF, the first names the columns, there are no comments.
 *
 * A spreadsheet takes a cell that begins with = + - @, a tab or a carriage return for a formula and may run it; quotes
 * do not hinder it. Such a text gets an apostrophe in front, which a spreadsheet takes for "this is text" and any other
 * reader has to drop. Numbers are written as they are, so that a negative one stays a number.
 */

import { visible } from '../../text/visible.ts';

export type Cell = string | number;

/** Also in their full-width forms, which some spreadsheets take for the same. */
const FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/** Texts are brought into one line first; what is longer than a thousand characters is cut. */
export function csv(head: readonly string[], records: readonly (readonly Cell[])[]): string {
  return [head, ...records].map((record) => `${record.map(cell).join(',')}\r\n`).join('');
}

function cell(value: Cell): string {
  if (typeof value === 'number') return String(value);
  const text = visible(value, 1000);
  const harmless = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) || harmless !== harmless.trim() ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
