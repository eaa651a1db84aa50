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
  /** How the figure follows from others, or a remark on it. */
  readonly formula?: string;
  /** The standard that it is from, with its section. */
  readonly source?: string;
}

/** All text is as in the site, and escaped where it is shown. */
export interface Explanation {
  /** The most important facts of the thing, in a line. */
  readonly answer?: string;
  readonly title: string;
  /** Whole sentences. */
  readonly sentences?: readonly string[];
  /** Headings of the cells; none where a single column needs no name. */
  readonly columns: readonly string[];
  readonly lines: readonly ExplanationLine[];
  readonly total?: ExplanationLine;
  /** Lines that follow from the total. */
  readonly after?: readonly ExplanationLine[];
}

/** Nominal and peak rates side by side. */
export const RATES: readonly string[] = ['nominal', 'peak'];

/** The explanation with only one of its columns; unchanged where it has no such column. */
export function onlyColumn(explanation: Explanation, name: string): Explanation {
  const index = explanation.columns.indexOf(name);
  if (index === -1) return explanation;
  const line = (full: ExplanationLine): ExplanationLine => ({ ...full, cells: full.cells.slice(index, index + 1) });
  return {
    ...explanation,
    columns: [name],
    lines: explanation.lines.map(line),
    ...(explanation.total !== undefined && { total: line(explanation.total) }),
    ...(explanation.after !== undefined && { after: explanation.after.map(line) }),
  };
}

/** For a hover: the answer first, then the lines `beside` it, and the sums with short figures. */
export function explanationsMarkdown(explanations: readonly Explanation[], beside: readonly string[] = []): string[] {
  const answers = explanations.flatMap(({ answer = '' }) => (answer === '' ? [] : [answer]));
  return [
    ...answers.slice(0, 1).map((answer) => `**${escaped(answer)}**`),
    ...beside,
    ...explanations.map(explanationMarkdown),
  ];
}

export function explanationMarkdown(explanation: Explanation): string {
  const { title, sentences = [], lines, total, after = [] } = explanation;
  const width = cellCount(explanation);
  const all = [...lines, ...(total === undefined ? [] : [total]), ...after];
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
    ...sentences.map(escaped),
    // Without lines, the sentences are enough.
    ...(all.length === 0 || (lines.length === 0 && sentences.length > 0) ? [] : [table(head, all.map(row), right)]),
    ...(sources.length === 0 ? [] : [`*${sources.map(escaped).join('; ')}*`]),
  ].join('\n\n');
}

/** For the command line: exact figures, and the total also in short as it is shown elsewhere. */
export function explanationText(explanation: Explanation): string {
  const { answer = '', title, sentences = [], lines, total, after = [] } = explanation;
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
    ...after.map((line) => row(line, exact)),
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
  const text = [
    visible(title),
    ...(answer === '' ? [] : [visible(answer)]),
    ...sentences.map((sentence) => visible(sentence, 1000)),
    ...table.map((line) => `  ${line}`),
  ];
  return `${text.join('\n')}\n`;
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
