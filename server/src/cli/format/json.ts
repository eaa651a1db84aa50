import type { Findings } from '../placed.ts';

export function jsonFormat({ found }: Findings): string {
  // JSON has no key for what is undefined.
  const diagnostics = found.map((diagnostic) => ({ ...diagnostic, source: undefined }));
  return `${JSON.stringify({ diagnostics }, null, 2)}\n`;
}
