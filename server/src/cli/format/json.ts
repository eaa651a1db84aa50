import type { Placed } from '../placed.ts';

export function jsonFormat(found: readonly Placed[]): string {
  const diagnostics = found.map(({ source: _, ...diagnostic }) => diagnostic);
  return `${JSON.stringify({ diagnostics }, null, 2)}\n`;
}
