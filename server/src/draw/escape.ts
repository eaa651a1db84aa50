/** Text of a site on its way into SVG and HTML: all of it passes here. */

import { html } from '../report/page/cells.ts';

/** Escaped for elements and quoted attributes; what XML 1.0 (2.2, Char) has no place for becomes visible. */
export function svgEscaped(text: string): string {
  return html(text).replace(/[\ufffe\uffff]/g, '\ufffd');
}

/** A number as it stands in SVG: at most two decimals. */
export function number(value: number): string {
  return String(Math.round(value * 100) / 100 || 0);
}
