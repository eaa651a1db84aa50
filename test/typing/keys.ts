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

/** Each item of a file, into the text without it. */
export function itemByItem(text: string, editor?: Editor): Script[] {
  const { pieces, starts } = cut({ uri: '' }, text);
  return pieces.flatMap((piece, index) => {
    const start = starts[index] ?? 0;
    const written = piece.text.trimEnd();
    if (piece.role !== 'item') return [];
    const before = text.slice(0, start) + text.slice(start + piece.text.length);
    const gap = piece.text.slice(written.length);
    return [{ before: before.slice(0, start) + gap + before.slice(start), keys: typed(written, start, editor) }];
  });
}

/** Each value of a file that `from` matches, taken out from its end and typed anew. */
export function retyped(text: string, from: RegExp): Script[] {
  return [...text.matchAll(from)].map((match) => {
    const [whole, value = whole] = match;
    const start = match.index + whole.lastIndexOf(value);
    const back = [...value].map((_, i) => ({ at: start + value.length - 1 - i, without: 1, text: '' }));
    return { before: text, keys: [...back, ...typed(value, start)] };
  });
}

export function after(text: string, { at, without, text: by }: Key): string {
  return text.slice(0, at) + by + text.slice(at + without);
}
