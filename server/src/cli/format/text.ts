import { count, list } from '../../text/words.ts';
import { visiblePath } from '../../text/visible.ts';
import { colour } from '../colour.ts';
import type { PlacedFindings, Placed } from '../placed.ts';

const COLOUR = { error: colour.red, warning: colour.yellow, information: colour.blue, hint: colour.dim } as const;

/** Each finding with its line and a mark under the words; at the end their number. */
export function textFormat({ found }: PlacedFindings): string {
  if (found.length === 0) return '';
  return `${found.map(one).join('\n')}\n${summary(found)}\n`;
}

function one(finding: Placed): string {
  const { line, column, severity, rule, message, related, fixes } = finding;
  const file = visiblePath(finding.file);
  const lines = [
    `${colour.bold(`${file}:${line}:${column}`)} ${COLOUR[severity](severity)} ${message} ${colour.dim(`[${rule}]`)}`,
    ...marked(finding),
    ...related.map((other) =>
      colour.dim(`    ${visiblePath(other.file)}:${other.line}:${other.column} ${other.message}`),
    ),
    ...fixes.slice(0, 1).map(({ title }) => colour.dim(`    fix: ${title}`)),
  ];
  return `${lines.join('\n')}\n`;
}

/** The line with a mark under the finding's place; long lines are cut around it. */
function marked({ source, column, endColumn, line, endLine, severity }: Placed): string[] {
  const width = 110;
  const from = Math.max(0, column - 1 - width / 2);
  const shown = source.slice(from, from + width).replaceAll('\t', ' ');
  if (shown.trim() === '') return [];
  const end = endLine === line ? endColumn : source.length + 1;
  const length = Math.max(1, Math.min(end - column, shown.length - (column - 1 - from)));
  return [`    ${shown}`, `    ${' '.repeat(column - 1 - from)}${COLOUR[severity]('^'.repeat(length))}`];
}

function summary(found: readonly Placed[]): string {
  const number = (severity: Placed['severity']): number =>
    found.filter((finding) => finding.severity === severity).length;
  const parts = [
    [number('error'), 'error', 'errors'],
    [number('warning'), 'warning', 'warnings'],
    [number('information'), 'note', 'notes'],
    [number('hint'), 'hint', 'hints'],
  ] as const;
  return list(parts.filter(([amount]) => amount > 0).map(([amount, noun, plural]) => count(amount, noun, plural)));
}
