/** Rows of text with aligned columns. */

export type Align = 'left' | 'right';

/** Lines without trailing space; each column is as wide as its widest cell, with two spaces between columns. */
export function columns(rows: readonly (readonly string[])[], align: readonly Align[]): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, index) => (widths[index] = Math.max(widths[index] ?? 0, width(cell))));
  return rows.map((row) =>
    row
      .map((cell, index) => padded(cell, widths[index] ?? 0, align[index] ?? 'left'))
      .join('  ')
      .trimEnd(),
  );
}

function padded(cell: string, to: number, align: Align): string {
  const space = ' '.repeat(to - width(cell));
  return align === 'left' ? cell + space : space + cell;
}

/** The width in characters: names and figures have none that take two columns. */
function width(text: string): number {
  return [...text].length;
}
