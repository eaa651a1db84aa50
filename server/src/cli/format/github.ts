/** Workflow commands that show as annotations on a change: `::error file=…,line=…::message`. */

import type { PlacedFindings } from '../placed.ts';

const COMMAND = { error: 'error', warning: 'warning', information: 'notice', hint: 'notice' } as const;

export function githubFormat({ found }: PlacedFindings): string {
  return found
    .map(({ severity, file, line, column, endLine, endColumn, rule, message }) => {
      const properties = { file, line, endLine, col: column, endColumn, title: rule };
      const list = Object.entries(properties).map(([key, value]) => `${key}=${property(String(value))}`);
      return `::${COMMAND[severity]} ${list.join(',')}::${data(message)}\n`;
    })
    .join('');
}

function data(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function property(text: string): string {
  return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
