/** Texts as they are typed, key by key: what an editor sends of each. */

import { cut } from '../../server/src/text/cut.ts';

/** Replaces the characters from `at` on, `without` many. */
export interface Key {
  readonly at: number;
  readonly without: number;
  readonly text: string;
}

/** A text of one file, and the keys that come. */
export interface Script {
  readonly before: string;
  readonly keys: readonly Key[];
}

/** How an editor helps: it closes brackets and quotes, and indents a line as the one before. */
export type Editor = 'plain' | 'closing';

const CLOSING: Readonly<Record<string, string>> = { '{': '}', '[': ']', '"': '"' };

/** The keys that write `text` at an offset. */
export function typed(text: string, at: number, editor: Editor = 'plain'): Key[] {
  const keys: Key[] = [];
  const open: string[] = [];
  for (let i = 0; i < text.length; i++) {
    const c = text.charAt(i);
    if (editor === 'closing') {
      if (c === open[open.length - 1]) {
        open.pop(); // It is there already: the cursor goes over it.
        continue;
      }
      const closing = CLOSING[c];
      if (closing !== undefined && closes(text, i, c, closing)) {
        open.push(closing);
        keys.push({ at: at + i, without: 0, text: c + closing });
        continue;
      }
      const indent = /^\n +/.exec(text.slice(i))?.[0];
      if (indent !== undefined) {
        keys.push({ at: at + i, without: 0, text: indent });
        i += indent.length - 1;
        continue;
      }
    }
    keys.push({ at: at + i, without: 0, text: c });
  }
  return keys;
}

/** An editor closes nothing inside a comment, or an apostrophe in a word. */
function closes(text: string, at: number, opening: string, closing: string): boolean {
  const line = text.slice(text.lastIndexOf('\n', at) + 1, at);
  return !line.includes('#') && text.indexOf(closing, at + 1) !== -1 && opening !== "'";
}

/** A whole file, into an empty one. */
export function wholeFile(text: string, editor?: Editor): Script {
  return { before: '', keys: typed(text, 0, editor) };
}

/** Where an item belongs: the number of its section, and its own in there; the section's key comes with its first. */
export type Step = readonly [section: number, item: number];

/** In which order the items of a file are written. */
export type Order = (steps: readonly (readonly Step[])[]) => readonly Step[];

export const ORDERS = {
  'sections upwards': (sections) => [...sections].reverse().flat(),
  'all upwards': (sections) => sections.flat().reverse(),
  'items upwards': (sections) => sections.flatMap((items) => [...items].reverse()),
  'one of each section, in turn': (sections) =>
    sections.flat().sort(([section, item], [other, own]) => item - own || section - other),
  'the same upwards': (sections) =>
    sections.flat().sort(([section, item], [other, own]) => own - item || other - section),
  'one here, one there': (sections) =>
    sections
      .flat()
      .map((step, index) => ({ step, at: (index * 37) % 101 })) // primes: as at random, and each once
      .sort((a, b) => a.at - b.at)
      .map(({ step }) => step),
} satisfies Record<string, Order>;

/** A whole file in another order: each item comes on a new line at its place. */
export function inOrder(text: string, order: Order, editor?: Editor): Script {
  const sections = text
    .trimEnd()
    .split(/\n(?=[a-z])/)
    .map((section) => {
      const start = section.search(/\n(?= {2}[^ #])/);
      return { key: section.slice(0, start), items: section.slice(start + 1).split(/\n(?= {2}[^ #])/) };
    });
  const written = sections.map(({ items }) => items.map(() => ''));
  const lines = sections.map(() => '');
  const keys: Key[] = [];
  const put = (at: number, line: string): void => {
    keys.push({ at, without: 0, text: '\n' }, ...typed(line, at, editor));
  };
  const lengthOf = (section: number): number =>
    (lines[section] ?? '').length + (written[section] ?? []).join('').length;
  for (const [section, item] of order(sections.map(({ items }, at) => items.map((_, own): Step => [at, own])))) {
    let at = 0;
    for (let above = 0; above < section; above++) at += lengthOf(above);
    const { key = '', items = [] } = sections[section] ?? {};
    if (lines[section] === '') put(at, key);
    lines[section] = `${key}\n`;
    const own = written[section] ?? [];
    put(at + key.length + 1 + own.slice(0, item).join('').length, items[item] ?? '');
    own[item] = `${items[item] ?? ''}\n`;
  }
  return { before: '', keys };
}

/** Each item of a file, into the text without it. */
export function itemByItem(text: string, editor?: Editor): Script[] {
  return itemsOf(text).map(({ start, end, gap }) => ({
    before: text.slice(0, start) + gap + text.slice(end + gap.length),
    keys: typed(text.slice(start, end), start, editor),
  }));
}

/** Each item of a file made of a copy of the one above, word by word, where both have as many words. */
export function madeOfCopies(text: string): Script[] {
  const items = itemsOf(text);
  return items.flatMap(({ start, end, gap }, index) => {
    const above = items[index - 1];
    if (above === undefined || above.end + above.gap.length !== start) return [];
    const copy = text.slice(above.start, above.end);
    const [from, to] = [copy, text.slice(start, end)].map((one) => one.split(/\b/));
    if (from === undefined || to === undefined || from.length !== to.length) return [];
    const keys: Key[] = [{ at: start, without: 0, text: copy + gap }];
    let at = start;
    for (const [word, other] of to.entries()) {
      const had = from[word] ?? '';
      if (had !== other) keys.push(...backwards(at, at + had.length), ...typed(other, at));
      at += other.length;
    }
    return [{ before: text.slice(0, start) + text.slice(end + gap.length), keys }];
  });
}

/** Each item of a file at once, into the text without it. */
export function pasted(text: string): Script[] {
  return itemsOf(text).map(({ start, end, gap }) => ({
    before: text.slice(0, start) + text.slice(end + gap.length),
    keys: [{ at: start, without: 0, text: text.slice(start, end) + gap }],
  }));
}

/** Each item of a file taken out at once. */
export function takenOut(text: string): Script[] {
  return itemsOf(text).map(({ start, end, gap }) => ({
    before: text,
    keys: [{ at: start, without: end - start + gap.length, text: '' }],
  }));
}

/** Where the items are, and the white space below each. */
function itemsOf(text: string): { readonly start: number; readonly end: number; readonly gap: string }[] {
  const { pieces, starts } = cut({ uri: '' }, text);
  return pieces.flatMap((piece, index) => {
    const start = starts[index] ?? 0;
    const { length } = piece.text.trimEnd();
    return piece.role === 'item' ? [{ start, end: start + length, gap: piece.text.slice(length) }] : [];
  });
}

function backwards(start: number, end: number): Key[] {
  return Array.from({ length: end - start }, (_, index) => ({ at: end - 1 - index, without: 1, text: '' }));
}

/** Each value of a file that `from` matches, taken out from its end and typed anew. */
export function retyped(text: string, from: RegExp): Script[] {
  return [...text.matchAll(from)].map((match) => {
    const [whole, value = whole] = match;
    const start = match.index + whole.lastIndexOf(value);
    return { before: text, keys: [...backwards(start, start + value.length), ...typed(value, start)] };
  });
}

export function after(text: string, { at, without, text: by }: Key): string {
  return text.slice(0, at) + by + text.slice(at + without);
}
