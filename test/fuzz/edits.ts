/** Sequences of edits as people and programs make them. */

import type { Texts } from '../site.ts';
import { blockAt, putIn } from './mutate.ts';
import type { Random } from './random.ts';

/** Sites before and after each edit, from files that are there at first; the first is as it began. */
export function* editing(begin: Texts, random: Random, count: number, others: readonly string[]): Iterable<Texts> {
  const history: Texts[] = [begin];
  let now = begin;
  yield now;
  for (let left = count; left > 0;) {
    const some = [...edit(now, random, others, history)].slice(0, left);
    if (some.length === 0) some.push(now);
    for (const next of some) {
      now = next;
      history.push(now);
      yield now;
    }
    left -= some.length;
  }
}

/** The states that one edit goes through: a word is typed a character at a time. */
function* edit(now: Texts, random: Random, others: readonly string[], history: readonly Texts[]): Iterable<Texts> {
  const name = random.pick(Object.keys(now));
  if (name === undefined || random.chance(0.05)) {
    yield { ...now, [random.pick(['zz.site.yaml', 'aa.site.yaml', 'mm.site.yaml'])]: random.pick(others) ?? '' };
    return;
  }
  const { [name]: text = '', ...rest } = now;
  const changed = (to: string): Texts => ({ ...rest, [name]: to });
  const roll = random.below(16);
  if (roll === 0) yield rest;
  else if (roll === 1)
    yield history[history.length - 1 - random.below(Math.min(12, history.length))] ?? now; // Undo.
  else if (roll === 2)
    yield changed(random.chance(0.5) ? text.replaceAll(/\r?\n/g, '\r\n') : text.replaceAll('\r\n', '\n'));
  else if (roll === 3) {
    const item = itemIn(text, random);
    yield changed(without(text, item)); // Cut …
    const home = random.pick(Object.keys(rest)) ?? name;
    const target = home === name ? without(text, item) : (rest[home] ?? '');
    yield { ...changed(without(text, item)), [home]: putAtLine(target, item.text, random) }; // … and paste.
  } else if (roll === 4) yield changed(putAtLine(text, itemIn(text, random).text, random));
  else if (roll === 5) yield changed(without(text, itemIn(text, random)));
  else if (roll === 6) {
    const start = random.below(text.length);
    yield changed(text.slice(0, start) + text.slice(start + random.below(200)));
  } else if (roll === 7) yield changed(putAtLine(text, itemIn(random.pick(others) ?? '', random).text, random));
  else if (roll >= 13) yield changed(elementChanged(text, random));
  else if (roll === 8) {
    const one = itemIn(text, random);
    yield changed(commented(text, one));
    yield changed(text);
  } else {
    const at = wordAt(text, random);
    const typed = random.pick(TYPED);
    let result = random.chance(0.3) ? text.slice(0, at) + text.slice(at).replace(/^[\w.-]+/, '') : text;
    let end = at;
    for (const character of typed) {
      result = putIn(result, end, character);
      end += character.length;
      yield changed(result);
    }
    if (random.chance(0.5)) {
      for (const character of [...typed].reverse()) {
        end -= character.length;
        result = result.slice(0, end) + result.slice(end + character.length);
        yield changed(result);
      }
    }
  }
}

const TYPED = [
  'x',
  '2',
  '-cam',
  ' ',
  '\n',
  '\n  ',
  '\n    ',
  ': ',
  '{',
  '}',
  '[',
  ']',
  ', ',
  '"',
  "'",
  '# ',
  '- ',
  '🐎',
  'é',
  '\t',
  '\r',
  '&a ',
  '*a',
  '<<: *a',
  '|',
  '---\n',
  '...\n',
  '\ufeff',
  'poe: at, ',
  'id: 20',
  '239.192.20.31',
  '6 Mb/s',
  '\n  gate-cam: {kind: camera}',
  '\ndevices:\n  x: {kind: switch}\n',
  '\nlint:\n  rules: {no-receivers: off}\n',
  '\nstreams:',
  '\n- ',
  'devices: {',
  '{devices: ',
  '\nlint:\n  accept:\n    - {rule: duplicate-address, at: gate-cam, because: spare}\n',
  '\npolicies: {link-load: {warn: 1 %}}\n',
  'core',
  'router',
  'video',
] as const;

/** The start or end of a word, where cursors mostly are. */
function wordAt(text: string, random: Random): number {
  const at = random.below(text.length + 1);
  const next = text.slice(at).search(/\b/);
  return next === -1 || random.chance(0.2) ? at : at + next;
}

interface Block {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

function itemIn(text: string, random: Random): Block {
  const lines = text.split('\n');
  const { from, to } = blockAt(lines, random.below(lines.length));
  return { from, to, text: lines.slice(from, to).join('\n') };
}

function without(text: string, { from, to }: Block): string {
  const lines = text.split('\n');
  return [...lines.slice(0, from), ...lines.slice(to)].join('\n');
}

function commented(text: string, { from, to }: Block): string {
  return text
    .split('\n')
    .map((line, index) => (index >= from && index < to ? `# ${line}` : line))
    .join('\n');
}

/** One element of a list or mapping, in brackets or on lines of its own, taken out, put in again or moved. */
function elementChanged(text: string, random: Random): string {
  return random.chance(0.5) ? flowElementChanged(text, random) : lineElementChanged(text, random);
}

function flowElementChanged(text: string, random: Random): string {
  const opening = [...text.matchAll(/[[{]/g)].map(({ index }) => index);
  const open = random.pick(opening);
  if (open === undefined) return text;
  const commas: number[] = [];
  let depth = 0;
  let close = open;
  for (; close < text.length; close++) {
    const character = text.charAt(close);
    if (character === '[' || character === '{') depth++;
    else if (character === ']' || character === '}') depth--;
    else if (character === ',' && depth === 1) commas.push(close);
    if (depth === 0) break;
  }
  const cuts = [open, ...commas, close];
  const elements = cuts.slice(1).map((end, at) => text.slice((cuts[at] ?? 0) + 1, end).trim());
  return text.slice(0, open + 1) + shuffled(elements, random).join(', ') + text.slice(close);
}

function lineElementChanged(text: string, random: Random): string {
  const lines = text.split('\n');
  const starts = lines.flatMap((line, at) => (/^ *- /.test(line) ? [at] : []));
  const chosen = random.pick(starts);
  if (chosen === undefined) return text;
  const indent = lines[chosen]?.search(/-/) ?? 0;
  const siblings = starts.filter((at) => lines[at]?.search(/-/) === indent);
  const from = siblings.filter((at) => at <= chosen).slice(-3);
  const first = from[0] ?? chosen;
  const last = siblings.find((at) => at > chosen) ?? lines.length;
  const cuts = [...from, last];
  const elements = cuts.slice(1).map((end, at) => lines.slice(cuts[at], end).join('\n'));
  return [...lines.slice(0, first), ...shuffled(elements, random), ...lines.slice(last)].join('\n');
}

function shuffled(elements: readonly string[], random: Random): string[] {
  const at = random.below(elements.length);
  const one = elements[at];
  if (one === undefined) return [...elements];
  const others = elements.filter((_, index) => index !== at);
  const roll = random.below(3);
  if (roll === 0) return others;
  const to = random.below(elements.length + 1);
  const kept = roll === 1 ? elements : others;
  return [...kept.slice(0, to), one, ...kept.slice(to)];
}

function putAtLine(text: string, block: string, random: Random): string {
  const lines = text.split('\n');
  const at = random.below(lines.length + 1);
  return [...lines.slice(0, at), block, ...lines.slice(at)].join('\n');
}
