/** Keys and values as they stand in one line of text, which need not parse. */

const BLOCK_KEY = /(?:"([^"\n]*)"|'([^'\n]*)'|([^\s"'#[\]{},:][^:#\n]*?))[ \t]*:(?=[ \t\r\n]|$)/y;
/** Behind a quoted key the value may follow at once (YAML 1.2.2 §7.4.2). */
const FLOW_KEY = /(?:"([^"\n]*)"|'([^'\n]*)')[ \t]*:|([^\s"'#[\]{},:][^:#[\]{},\n]*?)[ \t]*:(?=[ \t\r\n,}\]]|$)/y;
const QUOTED = /"(?:[^"\\\n]|\\.)*"?|'(?:[^'\n]|'')*'?/y;
const FLOW_PLAIN = /[^,{}[\]\n\r]+/y;
/** A key within a plain value: its comma is not typed yet. */
const NEXT_KEY = /\s+[A-Za-z0-9_-]+:(\s|$)/;
const COMMENT = /(?:^|\s)#/;

/** A key of a mapping, with the offsets at which its text and its colon end. */
export interface KeyToken {
  readonly name: string;
  readonly end: number;
  readonly after: number;
}

/** The key that starts at `at`, if one does. */
export function blockKey(text: string, at: number, end: number): KeyToken | undefined {
  return keyAt(BLOCK_KEY, text, at, end);
}

/** The same in brackets. */
export function flowKey(text: string, at: number, end: number): KeyToken | undefined {
  return keyAt(FLOW_KEY, text, at, end);
}

function keyAt(pattern: RegExp, text: string, at: number, end: number): KeyToken | undefined {
  pattern.lastIndex = at;
  const found = pattern.exec(text);
  if (found === null || at + found[0].length > end) return undefined;
  const after = at + found[0].length;
  const key = found[0].replace(/[ \t]*:$/, '');
  return { name: found[1] ?? found[2] ?? found[3] ?? '', end: at + key.length, after };
}

/** Where a plain or quoted value ends: before a comment, or with the line. */
export function scalarEnd(text: string, at: number, end: number): number {
  QUOTED.lastIndex = at;
  const quoted = QUOTED.exec(text);
  if (quoted !== null) return Math.min(end, at + quoted[0].length);
  const comment = COMMENT.exec(text.slice(at, end));
  return comment === null ? end : at + comment.index;
}

/** The same in brackets: before a comma, a bracket or the next key too. */
export function flowScalarEnd(text: string, at: number, end: number): number {
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

export function trimmedEnd(text: string, at: number, end: number): number {
  return at + text.slice(at, end).trimEnd().length;
}
