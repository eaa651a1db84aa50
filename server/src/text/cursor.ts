/** Where a cursor stands in text that is being typed, told by lines, indentation and brackets: it need not parse. */

import type { Route } from './syntax.ts';

export interface Cursor {
  /**
   * key: where a key of the mapping at `path` stands ·
   * value: behind the colon, or in brackets, where the value at `path` stands ·
   * start: on a line of its own, or behind a dash, where the value at `path` begins, be it a scalar, the first key of
   * a mapping or the first dash of a list ·
   * element: where another dash would stand of the list that `path` without its last step leads to.
   */
  readonly at: 'key' | 'value' | 'start' | 'element';
  readonly path: Route;
  /** The keys of the mapping that it is in, behind the cursor too, without the one that the cursor is in. */
  readonly keys: readonly string[];
  /** What is there already, from offset to offset of the text; the cursor is in it or at its end. */
  readonly start: number;
  readonly end: number;
  readonly inFlow: boolean;
  /** The cursor follows a colon or a dash without the space that is due. */
  readonly needsSpace: boolean;
  /** The key that the cursor is in has its colon. */
  readonly hasColon: boolean;
  /** Column in which what stands there begins, for lines that follow below it. */
  readonly column: number;
}

/** `root` leads to what the text is the inside of; empty for a whole file. */
export function cursorIn(text: string, offset: number, root: Route): Cursor | undefined {
  return new Scan(text, offset, root).run();
}

interface Frame {
  readonly kind: 'mapping' | 'list';
  readonly flow: boolean;
  /** Column of its keys or dashes; in flow style that of the line it was opened in. */
  readonly indent: number;
  readonly keys: string[];
  key: string | undefined;
  index: number;
  /** Whether the key or dash has a value yet. */
  given: boolean;
  /** In flow style, what is due next. */
  due: 'key' | 'value' | 'comma';
}

const BLOCK_KEY = /(?:"([^"\n]*)"|'([^'\n]*)'|([^\s"'#[\]{},:][^:#\n]*?))[ \t]*:(?=[ \t\r\n]|$)/y;
const FLOW_KEY = /(?:"([^"\n]*)"|'([^'\n]*)'|([^\s"'#[\]{},:][^:#[\]{},\n]*?))[ \t]*:(?=[ \t\r\n,}\]]|$)/y;
const QUOTED = /"(?:[^"\\\n]|\\.)*"?|'(?:[^'\n]|'')*'?/y;
const FLOW_PLAIN = /[^,{}[\]\n\r]+/y;
/** A key in a plain value: the comma before it is not typed yet. */
const NEXT_KEY = /\s+[A-Za-z0-9_-]+:(\s|$)/;
const COMMENT = /(?:^|\s)#/;

class Scan {
  private readonly text: string;
  private readonly cursor: number;
  private readonly stack: Frame[] = [];
  private found: (Cursor & { keys: readonly string[]; at: Cursor['at'] }) | undefined;
  private own: string | undefined;
  /** A mapping that begins at this depth and column is the one the cursor stands in, on a line before its first key. */
  private expected: { readonly depth: number; readonly indent: number } | undefined;
  /** Lines deeper than that are text. */
  private textBelow: number | undefined;
  private line = 0;

  constructor(text: string, cursor: number, root: Route) {
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
    const { own, found } = this;
    return { ...found, keys: own === undefined ? [...found.keys] : without(found.keys, own) };
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
      while (this.top?.flow === true) this.pop();
    }
    if (isBlank || text.charAt(at) === '#') {
      if (this.holds(line, end) && (isBlank || this.cursor <= at))
        this.onBlankLine(isBlank ? this.cursor - line : indent);
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
    else if (!top.given) {
      this.mark('start', frames.map(step), place);
      this.expected = { depth: frames.length, indent: column };
    }
  }

  /** A line with something on it, outside of brackets. */
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
    const key = match(BLOCK_KEY, text, at, end);
    if (key !== undefined) {
      const mapping = this.mapping(column);
      this.setKey(mapping, key.name);
      if (this.holds(at, key.end)) {
        this.own = key.name;
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
    const wordEnd = plainEnd(text, at, end);
    const top = this.top;
    if (this.holds(at, wordEnd)) {
      const place = { start: at, end: Math.max(this.cursor, trimmedEnd(text, at, wordEnd)), column };
      if (top?.kind === 'mapping' && top.indent === column && !dashed)
        this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
      else if (top === undefined) this.mark('key', [], place, []);
      else if (!top.given) {
        this.mark('start', this.stack.map(step), place);
        this.expected = { depth: this.stack.length, indent: column };
      }
    }
    if (top !== undefined && (top.indent < column || dashed)) top.given = true;
  }

  private dash(column: number): void {
    const { top } = this;
    if (top?.kind === 'list' && top.indent === column) {
      top.index++;
      top.given = false;
      return;
    }
    if (top !== undefined) top.given = true;
    this.stack.push(frame('list', false, column));
  }

  private mapping(column: number): Frame {
    const { top } = this;
    if (top?.kind === 'mapping' && top.indent === column) return top;
    if (top !== undefined) top.given = true;
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
    mapping.given = false;
  }

  /** What follows the colon of a key in block style. */
  private readValue(from: number, end: number, column: number): void {
    const { text } = this;
    let at = from;
    while (at < end && (text.charAt(at) === ' ' || text.charAt(at) === '\t')) at++;
    const isEmpty = at >= end || (text.charAt(at) === '#' && at > from);
    if (this.holds(from, isEmpty ? at : at - 1)) {
      this.mark('value', this.stack.map(step), {
        start: this.cursor,
        end: this.cursor,
        needsSpace: this.cursor === from,
        column,
      });
    }
    if (isEmpty || this.top === undefined) return;
    this.top.given = true;
    const first = text.charAt(at);
    if (first === '{' || first === '[') {
      this.readFlow(at, end, column);
      return;
    }
    if (first === '|' || first === '>') {
      this.textBelow = column;
      return;
    }
    const valueEnd = plainEnd(text, at, end);
    if (this.holds(at, valueEnd)) {
      this.mark('value', this.stack.map(step), {
        start: at,
        end: Math.max(this.cursor, trimmedEnd(text, at, valueEnd)),
        column,
      });
    }
  }

  /** Goes on in brackets to the end of a line, or of the brackets. */
  private readFlow(from: number, end: number, column = this.top?.indent ?? 0): void {
    const { text } = this;
    let at = from;
    for (;;) {
      const before = at;
      while (at < end && (text.charAt(at) === ' ' || text.charAt(at) === '\t')) at++;
      const c = at < end ? text.charAt(at) : '';
      const isComment = c === '#' && (at === this.line || /\s/.test(text.charAt(at - 1)));
      if (this.top?.flow === true && this.holds(before, at) && (this.cursor < at || c === '' || /[,}\]#]/.test(c)))
        this.inSpace(column);
      if (c === '' || isComment) return;
      if (c === '{' || c === '[') {
        if (this.top !== undefined) {
          this.top.given = true;
          this.top.due = 'comma';
        }
        this.stack.push(frame(c === '{' ? 'mapping' : 'list', true, this.indentOf()));
        at++;
      } else if (c === '}' || c === ']') {
        this.pop();
        at++;
        if (this.top?.flow !== true) return;
        this.top.due = 'comma';
      } else if (c === ',') {
        const { top } = this;
        if (top === undefined) return;
        top.due = top.kind === 'mapping' ? 'key' : 'value';
        top.given = false;
        top.index++;
        top.key = undefined;
        at++;
      } else at = this.readInFlow(at, end, column);
    }
  }

  /** A key or a scalar in brackets; returns where it ends. */
  private readInFlow(at: number, end: number, column: number): number {
    const { text, top } = this;
    if (top === undefined) return end;
    if (top.kind === 'mapping' && top.due !== 'value') {
      const key = match(FLOW_KEY, text, at, end);
      if (key !== undefined) {
        this.setKey(top, key.name);
        top.due = 'value';
        if (this.holds(at, key.end)) {
          this.own = key.name;
          this.mark(
            'key',
            this.stack.slice(0, -1).map(step),
            { start: at, end: key.end, hasColon: true, column },
            top.keys,
          );
        }
        if (this.cursor === key.after) this.inSpace(column);
        return key.after;
      }
    }
    const rawEnd = this.scalarEnd(at, end);
    const tokenEnd = trimmedEnd(text, at, rawEnd);
    if (this.holds(at, rawEnd)) {
      const place = { start: at, end: Math.max(this.cursor, tokenEnd), column };
      if (top.kind === 'mapping' && top.due !== 'value')
        this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
      else this.mark('value', this.stack.map(step), place);
    }
    top.due = 'comma';
    top.given = true;
    return Math.max(rawEnd, at + 1);
  }

  private scalarEnd(at: number, end: number): number {
    const { text } = this;
    QUOTED.lastIndex = at;
    const quoted = QUOTED.exec(text);
    if (quoted !== null) return Math.min(end, at + quoted[0].length);
    FLOW_PLAIN.lastIndex = at;
    const plain = (FLOW_PLAIN.exec(text)?.[0] ?? '').slice(0, end - at);
    const comment = plain.search(/\s#/);
    const next = NEXT_KEY.exec(plain);
    const cuts = [comment, next === null ? -1 : next.index].filter((index) => index >= 0);
    return at + Math.min(plain.length, ...cuts);
  }

  /** The cursor stands in brackets where nothing is typed. */
  private inSpace(column: number): void {
    const { top } = this;
    if (top === undefined) return;
    const place = {
      start: this.cursor,
      end: this.cursor,
      needsSpace: /[:,]/.test(this.text.charAt(this.cursor - 1)),
      column,
    };
    if (top.kind === 'mapping' && top.due === 'key')
      this.mark('key', this.stack.slice(0, -1).map(step), place, top.keys);
    else if (top.due === 'value') this.mark('value', this.stack.map(step), place);
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
    // What was expected below the cursor did not come.
    if (this.expected !== undefined && this.stack.length < this.expected.depth) this.expected = undefined;
  }

  private mark(
    at: Cursor['at'],
    path: Route,
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
    given: false,
    due: kind === 'mapping' ? 'key' : 'value',
  };
}

function step({ kind, key, index }: Frame): string | number {
  return kind === 'list' ? index : (key ?? '');
}

function match(
  pattern: RegExp,
  text: string,
  at: number,
  end: number,
): { name: string; end: number; after: number } | undefined {
  pattern.lastIndex = at;
  const found = pattern.exec(text);
  if (found === null || at + found[0].length > end) return undefined;
  const after = at + found[0].length;
  const key = found[0].replace(/[ \t]*:$/, '');
  return { name: found[1] ?? found[2] ?? found[3] ?? '', end: at + key.length, after };
}

/** Where a plain or quoted value ends at the latest: at a comment, or at the end of the line. */
function plainEnd(text: string, at: number, end: number): number {
  QUOTED.lastIndex = at;
  const quoted = QUOTED.exec(text);
  if (quoted !== null) return Math.min(end, at + quoted[0].length);
  const comment = COMMENT.exec(text.slice(at, end));
  return comment === null ? end : at + comment.index;
}

function trimmedEnd(text: string, at: number, end: number): number {
  return at + text.slice(at, end).trimEnd().length;
}

function without(keys: readonly string[], own: string): string[] {
  const index = keys.indexOf(own);
  return keys.filter((_, i) => i !== index);
}
