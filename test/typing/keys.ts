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

/** A whole file from its last section to its first, each above the others. */
export function upwards(text: string, editor?: Editor): Script {
  const sections = text.trimEnd().split(/\n(?=[a-z])/);
  const keys = sections
    .reverse()
    .flatMap((section) => [{ at: 0, without: 0, text: '\n' }, ...typed(section.trimEnd(), 0, editor)]);
  return { before: '', keys };
}

/** Each item of a file, into the text without it. */
export function itemByItem(text: string, editor?: Editor): Script[] {
  return itemsOf(text).map(({ start, end, gap }) => ({
    before: text.slice(0, start) + gap + text.slice(end + gap.length),
    keys: typed(text.slice(start, end), start, editor),
  }));
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
