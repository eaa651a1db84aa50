/** Makes other texts of a site's texts: by bytes, by tokens and by structure. */

import type { Texts } from '../site.ts';
import type { Random } from './random.ts';

/** Another text; `text` itself where there is nothing to change. `others` are texts to take parts from. */
type Mutation = (text: string, random: Random, others: readonly string[]) => string;

const MARKS = [
  ':',
  ': ',
  '-',
  '- ',
  ',',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  ' #',
  '|',
  '>-',
  '?',
  '? ',
  '&a ',
  '*a',
  '<<: *a',
  '!!str ',
  '!x ',
  '%YAML 1.1\n',
  '---\n',
  '...\n',
  '\n',
  '\r\n',
  '\r',
  '\t',
  ' ',
  '  ',
  '\n  ',
  '\n\n',
  '\u0000',
  '\u0007',
  '\u00a0',
  '\u0085',
  '\u2028',
  '\ufeff',
  '\ud83d',
  '\udc0e',
  '🐎',
  'é',
  '\u202e',
  '\\',
  '/',
  '~',
  '0',
  '00',
  '-1',
] as const;

const VALUES = [
  '',
  '~',
  'null',
  'true',
  'no',
  '0',
  '-1',
  '1.5',
  '1e400',
  '-0',
  '.nan',
  '.inf',
  '0x7fffffff',
  '0o17',
  '9007199254740993',
  '99999999999999999999',
  '1_000',
  '[]',
  '{}',
  '[[]]',
  '[~]',
  '[a, a]',
  '{a: b}',
  '{core: {}}',
  '""',
  "''",
  '" "',
  '"\\ud83d"',
  '|\n      x',
  '2024-01-01',
  '<<',
  '=',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'length',
  '"16"',
  '1-8',
  '1-100000',
  '8-1',
] as const;

const ADDRESSES = [
  '0.0.0.0',
  '255.255.255.255',
  '127.0.0.1',
  '169.254.0.1',
  '192.168.20.0',
  '192.168.20.255',
  '192.168.20.1',
  '224.0.0.1',
  '224.0.0.251',
  '232.1.1.1',
  '239.192.20.31',
  '239.255.255.255',
  '240.0.0.0',
  '192.168.020.1',
  '192.168.20.256',
  '192.168.20',
  '1.2.3.4.5',
  '::1',
  '192.168.20.0/24',
  '0.0.0.0/0',
  '192.168.20.31/32',
  '192.168.20.0/33',
  '192.168.20.10-192.168.20.5',
  '0.0.0.0-255.255.255.255',
] as const;

const UNITS = [
  '',
  'b/s',
  'kb/s',
  'Mb/s',
  'Gb/s',
  'MB/s',
  'Mbps',
  'mbit',
  'B',
  'kB',
  'TB',
  'TiB',
  'GB',
  '%',
  'ms',
  's',
  'min',
  'h',
  'd',
  'days',
  'W',
  'mW',
  'm',
  'cm',
  'Hz',
  'kHz',
  'x',
  '__proto__',
  'constructor',
] as const;

const AMOUNTS = [
  '0',
  '1',
  '-1',
  '0.1',
  '.5',
  '1e3',
  '1e308',
  '1,5',
  '1 000',
  '9007199254740993',
  '0.0000000001',
  '٣',
  '',
] as const;

const bytes: readonly Mutation[] = [
  (text, random) => {
    const buffer = Buffer.from(text, 'utf8');
    for (let left = 1 + random.below(3); left > 0; left--) buffer[random.below(buffer.length)] = random.below(256);
    return buffer.toString('utf8');
  },
  (text, random) => cutOut(text, random, random.below(40)),
  (text, random) => putIn(text, random.below(text.length + 1), random.pick(MARKS)),
  (text, random) => {
    const start = random.below(text.length);
    return putIn(text, random.below(text.length + 1), text.slice(start, start + random.below(60)));
  },
  (text, random) => text.slice(0, random.below(text.length + 1)),
  (text, random) => text.slice(random.below(text.length + 1)),
  (text, random) => text.replaceAll('\n', random.pick(['\r\n', '\r', '\n\n'])),
  (text) => `\ufeff${text}`,
  // Separates the surrogates of a character.
  (text, random) => replaceOne(text, /[\ud800-\udbff][\udc00-\udfff]/g, random, (pair) => pair.charAt(random.below(2))),
];

const TOKEN = /[\w.%/+-]+|[ \t]+|\r?\n|[^\s\w]/g;

const tokens: readonly Mutation[] = [
  (text, random) => replaceOne(text, TOKEN, random, () => ''),
  (text, random) => replaceOne(text, TOKEN, random, (token) => token + token),
  (text, random) => replaceOne(text, TOKEN, random, () => random.pick(MARKS)),
  (text, random, others) =>
    replaceOne(text, TOKEN, random, () => random.pick((random.pick(others) ?? '').match(TOKEN) ?? []) ?? ''),
  (text, random) => replaceOne(text, TOKEN, random, (token) => `${random.pick(MARKS)}${token}`),
  (text, random) => {
    const found = [...text.matchAll(TOKEN)];
    const [one, two] = random.some(found, 2);
    return one === undefined || two === undefined ? text : exchanged(text, spanOf(one), spanOf(two));
  },
  (text, random) => {
    const found = text.match(TOKEN) ?? [];
    const start = random.below(found.length);
    return [...found.slice(0, start), ...found.slice(start + 1 + random.below(8))].join('');
  },
];

const VALUE = /(?<=[\w"'] *: )[^\n,{}[\]#]+|(?<=[[,] *)[^\n,{}[\]#:]+(?=[,\]])/g;
const NAME = /(?<=^|[\s{[,/"'])[A-Za-z_][\w-]*(?=$|[\s:,\]}/"'])/gm;
const ADDRESS = /\d+\.\d+\.\d+\.\d+(\/\d+)?(-\d+\.\d+\.\d+\.\d+)?/g;
const QUANTITY = /\d+(\.\d+)? (?:[kMGT]?i?[bB](?:\/s)?|%|ms|s|min|h|d|W|m|k?Hz)(?![\w])/g;

const structure: readonly Mutation[] = [
  (text, random) => changedBlock(text, random, () => []),
  (text, random) => changedBlock(text, random, (lines) => [...lines, ...lines]),
  (text, random) =>
    changedBlock(text, random, (lines) => lines.map((line) => `${' '.repeat(1 + random.below(4))}${line}`)),
  (text, random) => changedBlock(text, random, (lines) => lines.map((line) => line.replace(/^ {1,2}/, ''))),
  (text, random) => changedBlock(text, random, ([first = '', ...rest]) => [first.replace(/:.*$/, ': &a'), ...rest]),
  (text, random) => changedBlock(text, random, (lines) => lines.slice(0, 1 + random.below(lines.length))),
  (text, random) => moved(text, random, text),
  (text, random, others) => moved(text, random, random.pick(others) ?? text),
  (text, random) => {
    const lines = text.split('\n');
    const one = blockAt(lines, random.below(lines.length));
    const two = blockAt(lines, random.below(lines.length));
    const [first, second] = one.from < two.from ? [one, two] : [two, one];
    if (first.to > second.from) return text;
    return [
      ...lines.slice(0, first.from),
      ...lines.slice(second.from, second.to),
      ...lines.slice(first.to, second.from),
      ...lines.slice(first.from, first.to),
      ...lines.slice(second.to),
    ].join('\n');
  },
  (text, random) => replaceOne(text, VALUE, random, () => random.pick(VALUES)),
  (text, random, others) =>
    replaceOne(text, VALUE, random, () => random.pick((random.pick(others) ?? '').match(VALUE) ?? []) ?? ''),
  (text, random) =>
    replaceOne(text, VALUE, random, (value) =>
      random.pick([
        `[${value}]`,
        `{a: ${value}}`,
        `"${value}"`,
        `'${value}'`,
        `[${value}, ${value}]`,
        `&a ${value}`,
        `!!int ${value}`,
      ]),
    ),
  (text, random) => {
    const [one, two] = random.some([...text.matchAll(VALUE)], 2);
    return one === undefined || two === undefined ? text : exchanged(text, spanOf(one), spanOf(two));
  },
  (text, random) => replaceOne(text, NAME, random, () => random.pick(text.match(NAME) ?? []) ?? ''),
  (text, random) =>
    replaceOne(text, NAME, random, (name) =>
      random.pick([
        `${name}x`,
        name.slice(1),
        name.toUpperCase(),
        `${name}${name}`,
        '__proto__',
        'constructor',
        `${name}-2`,
        `"${name}"`,
        '🐎',
      ]),
    ),
  // Everywhere, so that references still match.
  (text, random) => {
    const from = random.pick(text.match(NAME) ?? []) ?? '';
    const to = random.pick([
      '__proto__',
      'constructor',
      'toString',
      'x'.repeat(300),
      '"a/b"',
      '"[x](y)"',
      random.pick(text.match(NAME) ?? []) ?? 'x',
    ]);
    return from === '' ? text : text.replaceAll(new RegExp(`(?<![\\w-])${from}(?![\\w-])`, 'g'), to);
  },
  (text, random) => replaceOne(text, ADDRESS, random, () => random.pick(ADDRESSES)),
  (text, random) => replaceOne(text, ADDRESS, random, () => random.pick(text.match(ADDRESS) ?? []) ?? ''),
  (text, random) =>
    replaceOne(text, ADDRESS, random, (address) => address.replace(/\d+(?=\D*$)/, String(random.below(256)))),
  (text, random) => replaceOne(text, QUANTITY, random, (quantity) => quantity.replace(/ .*/, ` ${random.pick(UNITS)}`)),
  (text, random) => replaceOne(text, QUANTITY, random, (quantity) => quantity.replace(/^\S+/, random.pick(AMOUNTS))),
  (text, random) => replaceOne(text, QUANTITY, random, (quantity) => quantity.replace(' ', '')),
];

/** Kinds with equal chances, regardless of the number of their mutations. */
const KINDS = [bytes, tokens, structure, structure] as const;

/** One to four changes of one of the files, which may also be removed or doubled. */
export function mutated(texts: Texts, random: Random, others: readonly string[]): Texts {
  let result = texts;
  for (let left = 1 + random.below(4); left > 0; left--) {
    const name = random.pick(Object.keys(result));
    if (name === undefined) return texts;
    const { [name]: text = '', ...rest } = result;
    const roll = random.next();
    if (roll < 0.02) result = rest;
    else if (roll < 0.04) result = { ...result, [`copy-of-${name}`]: text };
    else result = { ...result, [name]: (random.pick(random.pick(KINDS)) ?? same)(text, random, others) };
  }
  return result;
}

const same: Mutation = (text) => text;

interface Span {
  readonly start: number;
  readonly end: number;
}

function spanOf(match: RegExpExecArray): Span {
  return { start: match.index, end: match.index + match[0].length };
}

export function putIn(text: string, at: number, what: string): string {
  return text.slice(0, at) + what + text.slice(at);
}

function cutOut(text: string, random: Random, length: number): string {
  const start = random.below(text.length);
  return text.slice(0, start) + text.slice(start + length);
}

function exchanged(text: string, one: Span, two: Span): string {
  return (
    text.slice(0, one.start) +
    text.slice(two.start, two.end) +
    text.slice(one.end, two.start) +
    text.slice(one.start, one.end) +
    text.slice(two.end)
  );
}

function replaceOne(text: string, pattern: RegExp, random: Random, by: (found: string) => string): string {
  const match = random.pick([...text.matchAll(pattern)]);
  if (match === undefined) return text;
  return text.slice(0, match.index) + by(match[0]) + text.slice(match.index + match[0].length);
}

/** A line with all deeper lines below it. */
export function blockAt(lines: readonly string[], from: number): { readonly from: number; readonly to: number } {
  const indent = indentOf(lines[from] ?? '');
  let to = from + 1;
  while (to < lines.length && (lines[to]?.trim() === '' || indentOf(lines[to] ?? '') > indent)) to++;
  return { from, to: Math.min(to, lines.length) };
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}

function changedBlock(text: string, random: Random, change: (lines: readonly string[]) => readonly string[]): string {
  const lines = text.split('\n');
  const { from, to } = blockAt(lines, random.below(lines.length));
  return [...lines.slice(0, from), ...change(lines.slice(from, to)), ...lines.slice(to)].join('\n');
}

/** A block of `source`, put before a line of `text` with that line's indentation or its own. */
function moved(text: string, random: Random, source: string): string {
  const from = source.split('\n');
  const block = blockAt(from, random.below(from.length));
  const taken = from.slice(block.from, block.to);
  const lines = text.split('\n');
  if (source === text) lines.splice(block.from, block.to - block.from);
  const at = random.below(lines.length + 1);
  const shift = random.chance(0.5) ? indentOf(lines[at] ?? '') - indentOf(taken[0] ?? '') : 0;
  const fitted = taken.map((line) =>
    shift > 0 ? ' '.repeat(shift) + line : line.slice(Math.min(-shift, indentOf(line))),
  );
  return [...lines.slice(0, at), ...fitted, ...lines.slice(at)].join('\n');
}
