/** On an empty line, the columns in which the text above could go on. */

import type { SiteText } from '../../site/folder.ts';

/** The nearest to the cursor first, without its own; none on a line that has text. */
export function columnsAbove({ text }: SiteText, offset: number): number[] {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const own = offset - start;
  if (!/^ *$/.test(text.slice(start, offset)) || !/^[ \t]*(?:\r?\n|$)/.test(text.slice(offset, offset + 200)))
    return [];
  const columns = new Set<number>();
  let least = Infinity;
  for (let end = start - 1; end > 0 && least > 0;) {
    const above = text.lastIndexOf('\n', end - 1) + 1;
    const [, indent = '', dash = '', first] = /^( *)(- +)?([^\s#])/.exec(text.slice(above, end)) ?? [];
    end = above - 1;
    if (first === undefined || indent.length >= least) continue;
    least = indent.length;
    columns.add(least);
    if (dash !== '') columns.add(least + dash.length);
  }
  columns.delete(own);
  return [...columns].sort((a, b) => Math.abs(a - own) - Math.abs(b - own) || b - a);
}
