/** How a figure comes about, line by line; shown by hovers and printed by `plumbline explain`. */

import { escaped, table } from '../../text/markdown.ts';
import { visible } from '../../text/visible.ts';
import { columns } from '../columns.ts';
import { type Figure, exact, short } from './figure.ts';

export interface ExplanationLine {
  readonly label: string;
  /** Belongs to the line above. */
  readonly part?: boolean;
  /** One for each column; text where it is not a figure. */
  readonly cells: readonly (Figure | string)[];
  /** How the figure follows from others, or what is to be said of it. */
  readonly formula?: string;
  /** The standard that says so, with its section. */
  readonly source?: string;
}

/** All text is as in the site; whoever shows it escapes it. */
export interface Explanation {
  readonly title: string;
  /** Whole sentences. */
  readonly says?: readonly string[];
  /** Headings of the cells; none where there is one column that needs no name. */
  readonly columns: readonly string[];
  readonly lines: readonly ExplanationLine[];
  readonly total?: ExplanationLine;
  /** What follows from the total. */
  readonly then?: readonly ExplanationLine[];
}

/** Nominal and peak rates side by side. */
export const RATES: readonly string[] = ['nominal', 'peak'];

/** The explanation with one of its columns alone; as it is where there is no such column. */
export function onlyColumn(explanation: Explanation, name: string): Explanation {
  const index = explanation.columns.indexOf(name);
  if (index === -1) return explanation;
  const line = (full: ExplanationLine): ExplanationLine => ({ ...full, cells: full.cells.slice(index, index + 1) });
  return {
    ...explanation,
    columns: [name],
    lines: explanation.lines.map(line),
    ...(explanation.total !== undefined && { total: line(explanation.total) }),
    ...(explanation.then !== undefined && { then: explanation.then.map(line) }),
  };
}

/** For a hover: short figures. */
export function explanationMarkdown(explanation: Explanation): string {
  const { title, says = [], lines, total, then = [] } = explanation;
  const width = cellCount(explanation);
  const all = [...lines, ...(total === undefined ? [] : [total]), ...then];
  const withFormula = all.some(({ formula = '' }) => formula !== '');
  const row = (line: ExplanationLine): string[] => {
    const bold = (text: string): string => (line === total && text !== '' ? `**${text}**` : text);
    const cells = Array.from({ length: width }, (_, index) => bold(cellText(line.cells[index], short, escaped)));
    return [bold(escaped(line.label)), ...cells, ...(withFormula ? [escaped(line.formula ?? '')] : [])];
  };
  const head = [
    '',
    ...Array.from({ length: width }, (_, index) => escaped(explanation.columns[index] ?? '')),
    ...(withFormula ? [''] : []),
  ];
  const right = [
    false,
    ...Array.from({ length: width }, (_, index) => all.some(({ cells }) => typeof cells[index] === 'object')),
    false,
  ];
  const sources = sourcesOf(all);
  return [
    `**${escaped(title)}**`,
    ...says.map(escaped),
    // Of a total of nothing the sentences have told.
    ...(all.length === 0 || (lines.length === 0 && says.length > 0) ? [] : [table(head, all.map(row), right)]),
    ...(sources.length === 0 ? [] : [`*${sources.map(escaped).join('; ')}*`]),
  ].join('\n\n');
}

/** For the command line: exact figures, and the total also as it is shown elsewhere. */
export function explanationText(explanation: Explanation): string {
  const { title, says = [], lines, total, then = [] } = explanation;
  const width = cellCount(explanation);
  const row = (line: ExplanationLine, text: (figure: Figure) => string): string[] => [
    `${line.part === true ? '  ' : ''}${visible(line.label)}`,
    ...Array.from({ length: width }, (_, index) => cellText(line.cells[index], text, visible)),
    visible(line.formula ?? ''),
    line.source === undefined ? '' : `[${visible(line.source)}]`,
  ];
  const both = (figure: Figure): string =>
    exact(figure) === short(figure) ? exact(figure) : `${exact(figure)} = ${short(figure)}`;
  const rows = [
    ...lines.map((line) => row(line, exact)),
    ...(total === undefined ? [] : [row(total, both)]),
    ...then.map((line) => row(line, exact)),
  ];
  const named = explanation.columns.some((name) => name !== '');
  const head = named
    ? [['', ...Array.from({ length: width }, (_, index) => visible(explanation.columns[index] ?? '')), '', '']]
    : [];
  const numbers = Array.from({ length: width }, (_, index) =>
    [...lines, ...(total === undefined ? [] : [total])].some(({ cells }) => typeof cells[index] === 'object'),
  );
  const table = columns(
    [...head, ...rows],
    ['left', ...numbers.map((number) => (number ? ('right' as const) : ('left' as const))), 'left', 'left'],
  );
  if (total !== undefined && lines.length > 0) table.splice(head.length + lines.length, 0, '-'.repeat(8));
  return `${[visible(title), ...says.map((sentence) => visible(sentence, 1000)), ...table.map((line) => `  ${line}`)].join('\n')}\n`;
}

function cellText(
  cell: Figure | string | undefined,
  figure: (figure: Figure) => string,
  text: (text: string) => string,
): string {
  if (cell === undefined) return '';
  return typeof cell === 'string' ? text(cell) : figure(cell);
}

function cellCount({ lines, total, columns: names }: Explanation): number {
  return Math.max(names.length, total?.cells.length ?? 0, ...lines.map(({ cells }) => cells.length));
}

function sourcesOf(lines: readonly ExplanationLine[]): string[] {
  return [...new Set(lines.flatMap(({ source }) => (source === undefined ? [] : [source])))];
}
