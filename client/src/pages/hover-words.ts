// The Markdown of a hover as words that a page shows as text: no markup gets into it, whatever a site is called.

export interface Words {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'source';
}

/** A paragraph, or a table, of which the first row is its head. */
export type Block = Words | { readonly rows: readonly (readonly Words[])[]; readonly right: readonly boolean[] };

/** Of what hovers consist of (`report/explain/explanation.ts`): paragraphs and tables, each part in one look. */
export function blocksOf(markdown: string): Block[] {
  return markdown.split(/\n{2,}/).map((part) => (part.startsWith('| ') ? tableOf(part.split('\n')) : wordsOf(part)));
}

function tableOf([head = '', bounds = '', ...rows]: readonly string[]): Block {
  return {
    rows: [head, ...rows].map((row) => cellsOf(row).map(wordsOf)),
    right: cellsOf(bounds).map((bound) => bound.endsWith(':') && !bound.startsWith(':')),
  };
}

/** What is between the bars, but for those that are escaped. */
function cellsOf(row: string): string[] {
  return [...row.slice(1).matchAll(/((?:\\.|[^|\\])*)\|/g)].map(([, cell = '']) => cell.trim());
}

function wordsOf(markdown: string): Words {
  const [, strong] = /^\*\*(.+)\*\*$/s.exec(markdown) ?? [];
  const [, source] = strong === undefined ? (/^\*(.+)\*$/s.exec(markdown) ?? []) : [];
  const text = (strong ?? source ?? markdown).replace(/\\([!-/:-@[-`{-~])/g, '$1');
  return { text, look: strong !== undefined ? 'strong' : source !== undefined ? 'source' : 'plain' };
}
