// The Markdown of a hover as words that a page shows as text, so that no name in a site becomes markup.

export interface Words {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'source';
}

/** A paragraph, or a table whose first row is its head. */
export type Block = Words | { readonly rows: readonly (readonly Words[])[]; readonly right: readonly boolean[] };

/** The paragraphs and tables of a hover (`report/explain/explanation.ts`), each part in one look. */
export function blocksOf(markdown: string): Block[] {
  return markdown.split(/\n{2,}/).map((part) => (part.startsWith('| ') ? tableOf(part.split('\n')) : wordsOf(part)));
}

function tableOf([head = '', bounds = '', ...rows]: readonly string[]): Block {
  return {
    rows: [head, ...rows].map((row) => cellsOf(row).map(wordsOf)),
    right: cellsOf(bounds).map((bound) => bound.endsWith(':') && !bound.startsWith(':')),
  };
}

/** The texts between bars that are not escaped. */
function cellsOf(row: string): string[] {
  return [...row.slice(1).matchAll(/((?:\\.|[^|\\])*)\|/g)].map(([, cell = '']) => cell.trim());
}

function wordsOf(markdown: string): Words {
  const [, strong] = /^\*\*(.+)\*\*$/s.exec(markdown) ?? [];
  const [, source] = strong === undefined ? (/^\*(.+)\*$/s.exec(markdown) ?? []) : [];
  const text = (strong ?? source ?? markdown).replace(/\\([!-/:-@[-`{-~])/g, '$1');
  return { text, look: strong !== undefined ? 'strong' : source !== undefined ? 'source' : 'plain' };
}
