import type { Findings } from '../placed.ts';

export function jsonFormat({ found }: Findings): string {
  const diagnostics = found.map(({ source: _, ...diagnostic }) => diagnostic);
  return `${JSON.stringify({ diagnostics }, null, 2)}\n`;
}
