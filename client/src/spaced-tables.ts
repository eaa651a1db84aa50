/** @returns Markdown with an em space after each cell of a table but the last, and figures that keep their unit */
export function spacedTables(markdown: string): string {
  return markdown.replace(/^\|.*\|$/gm, (row) =>
    /^\|(?: :?-+:? \|)+$/.test(row)
      ? row
      : row.replace(/(?<=[^|\s]) \| /g, '&emsp; | ').replace(/(?<=\d) (?=[\p{L}%])/gu, '\u00a0'),
  );
}
