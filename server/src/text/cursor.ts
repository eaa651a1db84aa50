/**
 * Where a cursor is in text that is being typed and need not parse, by lines, indentation and brackets.
 *
 * One pass over the text in one file; its tokens are in `cursor-tokens.ts`.
 */

import { blockKey, flowKey, flowScalarEnd, scalarEnd, trimmedEnd } from './cursor-tokens.ts';
import type { KeyPath } from './syntax.ts';

export interface Cursor {
  /**
   * key: at a key of the mapping at `path` ·
   * value: at the value at `path`, after the colon or in brackets ·
   * start: on a line of its own or after a dash, where the value at `path` starts: a scalar, the first key of a mapping
   * or the first dash of a list ·
   * element: at another dash of the list at `path` without its last step.
   */
  readonly at: 'key' | 'value' | 'start' | 'element';
  readonly path: KeyPath;
  /** The other keys of the mapping, those after the cursor too. */
  readonly keys: readonly string[];
  /** Offsets of what is there already; the cursor is in it or at its end. */
  readonly start: number;
  readonly end: number;
  readonly inFlow: boolean;
  /** The cursor is right after a colon or a dash, where a space is missing. */
  readonly needsSpace: boolean;
  /** The key at the cursor has its colon. */
  readonly hasColon: boolean;
  /** The column where that text starts, for lines below it. */
  readonly column: number;
}

/** @param root the key path of the value that the text holds; empty for a whole file */
export function cursorIn(text: string, offset: number, root: KeyPath): Cursor | undefined {
  return new CursorSearch(text, offset, root).run();
}

interface Frame {
  readonly kind: 'mapping' | 'list';
  readonly flow: boolean;
  /** The column of its keys or dashes; in flow style, of the line that opens it. */
  readonly indent: number;
  readonly keys: string[];
  key: string | undefined;
  index: number;
  /** Whether the key or dash has its value. */
  hasValue: boolean;
  /** In flow style, what comes next. */
  next: 'key' | 'value' | 'comma';
}

/** Reads the text line by line up to the cursor and beyond; block and flow style share its state. */
class CursorSearch {
  private readonly text: string;
  private readonly cursor: number;
  private readonly stack: Frame[] = [];
  private found: (Cursor & { keys: readonly string[]; at: Cursor['at'] }) | undefined;
  private keyAtCursor: string | undefined;
  /** If a mapping starts at this depth and column, the cursor is in it, on a line before its first key. */
  private expected: { readonly depth: number; readonly indent: number } | undefined;
  /** Lines indented more than this are a block scalar. */
  private textBelow: number | undefined;
  private line = 0;

  constructor(text: string, cursor: number, root: KeyPath) {
    this.text = text;
    this.cursor = cursor;
    root.forEach((step, depth) => {
      this.stack.push({ ...frame('mapping', false, depth === 0 ? 0 : -1), key: String(step) });
    });
  }

  run(): Cursor | undefined {
    const { text } = this;
    while (this.line <= text.length) {
      const newline = text.indexOf('\n', this.line);
      const next = newline === -1 ? text.length + 1 : newline + 1;
      const end =
        newline === -1 ? text.length : text.charAt(newline - 1) === '\r' && newline > this.line ? newline - 1 : newline;
      this.readLine(end);
      this.line = next;
    }
    if (this.found === undefined) return undefined;
    const { keyAtCursor, found } = this;
    return { ...found, keys: keyAtCursor === undefined ? [...found.keys] : without(found.keys, keyAtCursor) };
  }

  private get top(): Frame | undefined {
    return this.stack[this.stack.length - 1];
  }

  private readLine(end: number): void {
    const { text, line } = this;
    let at = line;
    while (at < end && text.charAt(at) === ' ') at++;
    const indent = at - line;
    const isBlank = /^\s*$/.test(text.slice(at, end));
    if (this.textBelow !== undefined) {
      if (isBlank || indent > this.textBelow) return;
      this.textBelow = undefined;
    }
    if (this.top?.flow === true) {
      const opened = this.top.indent;
      const closes = /[}\],]/.test(text.charAt(at));
      if (isBlank || closes || indent > opened) {
        this.readFlow(line, end);
        return;
      }
      while (this.top?.flow) this.pop();
    }
    if (isBlank || text.charAt(at) === '#') {
      if (isBlank && this.holds(line, end)) this.onBlankLine(this.cursor - line);
      return;
    }
    this.readBlock(at, end, indent);
  }

  private onBlankLine(column: number): void {
    const frames = [...this.stack];
    const last = (): Frame | undefined => frames[frames.length - 1];
    while ((last()?.indent ?? -1) > column) frames.pop();
    const top = last();
    const place = { start: this.cursor, end: this.cursor, column };
    if (top === undefined) this.mark('key', [], place, []);
    else if (top.indent === column && top.kind === 'list')
      this.mark('element', [...frames.slice(0, -1).map(step), top.index + 1], place);
    else if (top.indent === column && !(top.kind === 'mapping' && frames.length === 1 && column === 0)) {
      this.mark('key', frames.slice(0, -1).map(step), place, top.keys);
    } else if (top.indent === column) this.mark('key', [], place, top.keys);
    else if (!top.hasValue) {
      this.mark('start', frames.map(step), place);
      this.expected = { depth: frames.length, indent: column };
    }
  }

  /** A line that is not blank, outside of brackets. */
  private readBlock(from: number, end: number, indent: number): void {
    const { text } = this;
    let at = from;
    let column = indent;
    while ((this.top?.indent ?? -1) > column) this.pop();
    let dashed = false;
    while (text.charAt(at) === '-' && (at + 1 >= end || text.charAt(at + 1) === ' ')) {
      this.dash(column);
      dashed = true;
      let after = at + 1;
      while (after < end && text.charAt(after) === ' ') after++;
      if (after >= end) {
        if (this.holds(at + 1, end)) {
          this.mark('start', this.stack.map(step), {
            start: this.cursor,
            end: this.cursor,
            needsSpace: this.cursor === at + 1,
            column: column + 2,
          });
          this.expected = { depth: this.stack.length, indent: column + 2 };
        }
        return;
      }
      column += after - at;
      at = after;
    }
    if (!dashed && this.top?.kind === 'list' && this.top.indent === column) this.pop();
    const key = blockKey(text, at, end);
    if (key !== undefined) {
      const mapping = this.mapping(column);
      this.setKey(mapping, key.name);
      if (this.holds(at, key.end)) {
        this.keyAtCursor = key.name;
        this.mark(
          'key',
          this.stack.slice(0, -1).map(step),
          { start: at, end: key.end, hasColon: true, column },
          mapping.keys,
        );
      }
      this.readValue(key.after, end, column);
      return;
    }
    const first = text.charAt(at);
    if (first === '{' || first === '[') {
      this.readFlow(at, end, column);
      return;
    }
    const wordEnd = scalarEnd(text, at, end);
    const top = this.top;
    if (this.holds(at, wordEnd)) {
      const place = { start: at, end: Math.max(this.cursor, trimmedEnd(text, at, wordEnd)), column };
      if (top?.kind === 'mapping' && top.indent === column && !dashed)
        this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
      else if (top === undefined) this.mark('key', [], place, []);
      else if (!top.hasValue) {
        this.mark('start', this.stack.map(step), place);
        this.expected = { depth: this.stack.length, indent: column };
      }
    }
    if (top !== undefined && (top.indent < column || dashed)) top.hasValue = true;
  }

  private dash(column: number): void {
    const { top } = this;
    if (top?.kind === 'list' && top.indent === column) {
      top.index++;
      top.hasValue = false;
      return;
    }
    if (top !== undefined) top.hasValue = true;
    this.stack.push(frame('list', false, column));
  }

  private mapping(column: number): Frame {
    const { top } = this;
    if (top?.kind === 'mapping' && top.indent === column) return top;
    if (top !== undefined) top.hasValue = true;
    const made = frame('mapping', false, column);
    if (this.expected !== undefined && this.stack.length === this.expected.depth && this.found !== undefined) {
      if (this.expected.indent === column) {
        this.found.at = this.found.at === 'start' ? 'key' : this.found.at;
        this.found.keys = made.keys;
      }
      this.expected = undefined;
    }
    this.stack.push(made);
    return made;
  }

  private setKey(mapping: Frame, name: string): void {
    mapping.key = name;
    mapping.keys.push(name);
    mapping.hasValue = false;
  }

  /** What follows the colon of a key, in block style. */
  private readValue(from: number, end: number, column: number): void {
    const { text } = this;
    let at = from;
    while (at < end && (text.charAt(at) === ' ' || text.charAt(at) === '\t')) at++;
    const isEmpty = at >= end || (text.charAt(at) === '#' && at > from);
    // Nothing more fits in front of a value, even if that is on the lines below.
    if (isEmpty && this.holds(from, at) && !this.hasBlockBelow(end, column)) {
      this.mark('value', this.stack.map(step), {
        start: this.cursor,
        end: this.cursor,
        needsSpace: this.cursor === from,
        column,
      });
    }
    if (isEmpty || this.top === undefined) return;
    this.top.hasValue = true;
    const first = text.charAt(at);
    if (first === '{' || first === '[') {
      this.readFlow(at, end, column);
      return;
    }
    if (first === '|' || first === '>') {
      this.textBelow = column;
      return;
    }
    const valueEnd = scalarEnd(text, at, end);
    if (this.holds(at, valueEnd)) {
      this.mark('value', this.stack.map(step), {
        start: at,
        end: Math.max(this.cursor, trimmedEnd(text, at, valueEnd)),
        column,
      });
    }
  }

  /** Reads on in brackets, to the end of the line or of the brackets. */
  private readFlow(from: number, end: number, column = this.top?.indent ?? 0): void {
    const { text } = this;
    let at = from;
    for (;;) {
      const before = at;
      while (at < end && (text.charAt(at) === ' ' || text.charAt(at) === '\t')) at++;
      const c = at < end ? text.charAt(at) : '';
      const isComment = c === '#' && (at === this.line || /\s/.test(text.charAt(at - 1)));
      const isFree = c === '' || /[,}\]#]/.test(c);
      if (this.top?.flow === true && this.holds(before, at) && (isFree || this.isBeforeKey(at, end)))
        this.inSpace(column);
      if (c === '' || isComment) return;
      if (c === '{' || c === '[') {
        if (this.top !== undefined) {
          this.top.hasValue = true;
          this.top.next = 'comma';
        }
        this.stack.push(frame(c === '{' ? 'mapping' : 'list', true, this.indentOf()));
        at++;
      } else if (c === '}' || c === ']') {
        this.pop();
        at++;
        if (this.top?.flow !== true) return;
        this.top.next = 'comma';
      } else if (c === ',') {
        const { top } = this;
        if (top === undefined) return;
        top.next = top.kind === 'mapping' ? 'key' : 'value';
        top.hasValue = false;
        top.index++;
        top.key = undefined;
        at++;
      } else at = this.readInFlow(at, end, column);
    }
  }

  /** Reads a key or a scalar in brackets, and returns its end. */
  private readInFlow(at: number, end: number, column: number): number {
    const { text, top } = this;
    if (top === undefined) return end;
    if (top.kind === 'mapping' && top.next !== 'value') {
      const key = flowKey(text, at, end);
      if (key !== undefined) {
        this.setKey(top, key.name);
        top.next = 'value';
        if (this.holds(at, key.end)) {
          this.keyAtCursor = key.name;
          this.mark(
            'key',
            this.stack.slice(0, -1).map(step),
            { start: at, end: key.end, hasColon: true, column },
            top.keys,
          );
        }
        return key.after;
      }
    }
    const rawEnd = flowScalarEnd(text, at, end);
    const tokenEnd = trimmedEnd(text, at, rawEnd);
    if (this.holds(at, rawEnd)) {
      const place = { start: at, end: Math.max(this.cursor, tokenEnd), column };
      if (top.kind === 'mapping' && top.next !== 'value')
        this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
      else this.mark('value', this.stack.map(step), place);
    }
    top.next = 'comma';
    top.hasValue = true;
    return Math.max(rawEnd, at + 1);
  }

  /** The cursor is in brackets, at a place where nothing is typed. */
  private inSpace(column: number): void {
    const { top } = this;
    if (top === undefined) return;
    const place = {
      start: this.cursor,
      end: this.cursor,
      needsSpace: /[:,]/.test(this.text.charAt(this.cursor - 1)),
      column,
    };
    if (top.kind === 'mapping' && top.next === 'key')
      this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
    else if (top.next === 'value') this.mark('value', this.stack.map(step), place);
  }

  /** Whether lines below, indented more or with a dash in the same column, are the value of a key in that column. */
  private hasBlockBelow(end: number, column: number): boolean {
    const below = /^(?:\r?\n[ \t]*(?=\r?\n)|\r?\n[ \t]*#.*)*\r?\n( *)([^ \r\n]?)/.exec(
      this.text.slice(end, end + 2000),
    );
    const [, indent = '', first = ''] = below ?? [];
    return first !== '' && (indent.length > column || (indent.length === column && first === '-'));
  }

  /**
   * Nothing more fits in front of a value; in front of a key another key does, or the value before it.
   */
  private isBeforeKey(at: number, end: number): boolean {
    return this.cursor < at && this.top?.kind === 'mapping' && flowKey(this.text, at, end) !== undefined;
  }

  private indentOf(): number {
    let at = this.line;
    while (this.text.charAt(at) === ' ') at++;
    return at - this.line;
  }

  private holds(start: number, end: number): boolean {
    return this.found === undefined && start <= this.cursor && this.cursor <= end;
  }

  private pop(): void {
    this.stack.pop();
    // The mapping that was expected below the cursor is missing.
    if (this.expected !== undefined && this.stack.length < this.expected.depth) this.expected = undefined;
  }

  private mark(
    at: Cursor['at'],
    path: KeyPath,
    place: { start: number; end: number; column: number; needsSpace?: boolean; hasColon?: boolean },
    keys: readonly string[] = [],
  ): void {
    if (this.found !== undefined) return;
    this.found = { at, path, keys, inFlow: this.top?.flow === true, needsSpace: false, hasColon: false, ...place };
  }
}

function frame(kind: Frame['kind'], flow: boolean, indent: number): Frame {
  return {
    kind,
    flow,
    indent,
    keys: [],
    key: undefined,
    index: 0,
    hasValue: false,
    next: kind === 'mapping' ? 'key' : 'value',
  };
}

function step({ kind, key, index }: Frame): string | number {
  return kind === 'list' ? index : (key ?? '');
}

function without(keys: readonly string[], left: string): string[] {
  const index = keys.indexOf(left);
  return keys.filter((_, i) => i !== index);
}
