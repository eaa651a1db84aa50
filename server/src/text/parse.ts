/**
 * Parses a piece with the `yaml` library into nodes with their ranges, and problems.
 *
 * One reader with its bounds against hostile text; its messages are in `parser-messages.ts`.
 */

import {
  type Alias,
  Composer,
  type CST,
  type Document,
  Lexer,
  type Node as YamlNode,
  Schema,
  type YAMLError,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Parser,
} from 'yaml';
import { NONE } from '../none.ts';
import { leavesOpen, parserMessage } from './parser-messages.ts';
import { quickParse } from './quick-parse.ts';
import { type Entry, type Mapping, type Node, type Scalar, type Span, keyText } from './syntax.ts';

export type SyntaxCode =
  /** Anything that the YAML parser refuses; `detail` says what. */
  | 'syntax'
  | 'tab'
  | 'duplicate-key'
  | 'key-not-plain'
  | 'unknown-alias'
  | 'cyclic-alias'
  | 'alias-too-large'
  | 'too-deep'
  | 'too-long';

export interface SyntaxProblem extends Span {
  readonly code: SyntaxCode;
  readonly detail: string;
  /** A bracket or a quote is not closed yet. */
  readonly isOpen?: boolean;
  /** A place that explains it, such as the first of two equal keys. */
  readonly related?: Span;
}

export interface Tree {
  readonly root: Node | undefined;
  readonly problems: readonly SyntaxProblem[];
  readonly anchors: readonly string[];
  /** Aliases whose anchor is not in this piece. */
  readonly missingAnchors: readonly string[];
  /** Tokens read by the parser that continues after an error, and nodes, those behind aliases too. */
  readonly effort: number;
}

/** Nodes that one piece may have once its aliases are expanded. */
const EXPANDED_NODES = 100_000;
/** Levels of nesting; the site language has six. */
const DEPTH = 64;
/**
 * The most tokens of one piece that the parser reads that continues after an error: each takes it some 10 µs and 1 kB.
 * Ten thousand devices in one pair of brackets have as many; a text without faults may have more.
 */
export const LEXEMES = 200_000;
const SET_UP = 10;

const schema = new Schema({ schema: 'core', merge: true });
const options = {
  schema,
  uniqueKeys: false,
  strict: true,
  logLevel: 'silent',
  prettyErrors: false,
  version: '1.2',
} as const;

/** Parses `text`; never throws. Offsets count from the start of `text`. */
export function parse(text: string): Tree {
  return parseOrdinary(text) ?? parseWithFaults(text);
}

/** As `parse`, much faster; `undefined` for a text with faults, anchors, tags or block scalars. */
export function parseOrdinary(text: string): Tree | undefined {
  const root = quickParse(text, DEPTH);
  return root === undefined ? undefined : { root, problems: NONE, anchors: NONE, missingAnchors: NONE, effort: 0 };
}

/** As `parse`, with the parser that continues after an error. */
export function parseWithFaults(text: string): Tree {
  const reader = new TreeReader(text);
  const source = new Tokens(text);
  let document: Document.Parsed | undefined;
  try {
    document = firstDocument(source.all());
  } catch (error) {
    if (!(error instanceof TooDeep)) throw error;
    const { start } = error;
    const problem = { code: 'too-deep', detail: `nested more than ${DEPTH} deep`, start, end: start + 1 } as const;
    return { ...NOTHING, problems: [problem], effort: source.effort };
  }
  if (document === undefined) return { ...NOTHING, effort: source.effort };
  const contents = document.contents as YamlNode | null;
  const root = contents === null ? undefined : reader.read(contents);
  const { stopped } = source;
  const problems = [...document.errors, ...document.warnings].flatMap((error) => reader.libraryProblem(error));
  return {
    root,
    problems: [...problems, ...reader.problems]
      .filter(({ start }) => start < (stopped?.start ?? Infinity)) // What is missing beyond comes from stopping.
      .concat(stopped ?? []),
    anchors: [...reader.anchors.keys()],
    missingAnchors: reader.missingAnchors,
    effort: source.effort + reader.size,
  };
}

const NOTHING: Tree = { root: undefined, problems: NONE, anchors: NONE, missingAnchors: NONE, effort: 0 };

/** Collections nest too deep at `start`: deeper than any site needs, and than a recursive parser can follow. */
class TooDeep extends Error {
  readonly start: number;

  constructor(start: number) {
    super('nested too deep');
    this.start = start;
  }
}

function firstDocument(tokens: Iterable<CST.Token>): Document.Parsed | undefined {
  for (const document of new Composer(options).compose(tokens)) return document;
  return undefined;
}

/**
 * The tokens of the library's parser, with bounds: that parser takes any length, and any depth until the stack of the
 * process overflows.
 */
class Tokens {
  /** Set where there are too many. */
  stopped: SyntaxProblem | undefined;
  private lexemes = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  /** Setting up the parser for a piece takes as long as reading some tokens. */
  get effort(): number {
    return this.lexemes + SET_UP;
  }

  *all(): Generator<CST.Token, void> {
    const parser = new Parser();
    const last = this.text.length - 1;
    for (const lexeme of new Lexer().lex(this.text)) {
      yield* parser.next(lexeme);
      if (parser.stack.length > DEPTH) throw new TooDeep(Math.min(parser.offset, last));
      if (++this.lexemes < LEXEMES) continue;
      const start = Math.min(parser.offset, last);
      this.stopped = { code: 'too-long', detail: '', start, end: start + 1 };
      break;
    }
    yield* parser.end();
  }
}

class TreeReader {
  readonly problems: SyntaxProblem[] = [];
  readonly anchors = new Map<string, { node: Node | undefined; size: number }>();
  readonly missingAnchors: string[] = [];
  private readonly text: string;
  /** Nodes, with those that aliases stand for. */
  size = 0;

  constructor(text: string) {
    this.text = text;
  }

  read(node: YamlNode): Node {
    if (isAlias(node)) return this.readAlias(node);
    const before = this.size++;
    const anchor = isScalar(node) || isMap(node) || isSeq(node) ? node.anchor : undefined;
    if (anchor !== undefined) this.anchors.set(anchor, { node: undefined, size: 0 });
    const result = this.readPlain(node);
    if (anchor !== undefined) this.anchors.set(anchor, { node: result, size: this.size - before });
    return result;
  }

  private readPlain(node: YamlNode): Node {
    const span = this.span(node);
    if (isScalar(node)) {
      const value = node.value;
      const style =
        node.type === 'PLAIN' || node.type === undefined
          ? 'plain'
          : node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE'
            ? 'quoted'
            : 'block';
      const isCore = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
      return { kind: 'scalar', value: isCore ? value : null, source: detach(node.source ?? ''), style, ...span };
    }
    if (isSeq(node)) {
      const items: Node[] = [];
      for (const item of node.items)
        items.push(placedAfter(this.read(item as YamlNode), items[items.length - 1]?.end ?? span.start + 1));
      const flow = node.flow === true;
      return { kind: 'sequence', items, flow, start: span.start, end: flow ? span.end : lastEnd(items, span) };
    }
    if (isMap(node)) return this.readMapping(node.items as readonly YamlPair[], node.flow === true, span);
    return { kind: 'scalar', value: null, source: '', style: 'plain', ...span };
  }

  private readMapping(pairs: readonly YamlPair[], flow: boolean, span: Span): Mapping {
    const entries: Entry[] = [];
    const places = new Map<string, Scalar>();
    const inherited: Entry[] = [];
    for (const pair of pairs) {
      const key = this.readKey(pair.key, span.start);
      if (key === undefined) {
        if (pair.value !== null) this.read(pair.value);
        continue;
      }
      const value: Node = pair.value === null ? nothing(key.end) : placedAfter(this.read(pair.value), key.end);
      if (keyText(key) === '<<' && key.style === 'plain') {
        for (const entry of mergedEntries(value)) inherited.push(entry);
        continue;
      }
      const name = keyText(key);
      const first = places.get(name);
      if (first === undefined) places.set(name, key);
      else {
        const related = { start: first.start, end: first.end };
        this.problems.push({ code: 'duplicate-key', detail: name, start: key.start, end: key.end, related });
      }
      entries.push({
        key,
        value,
        merged: false,
        start: key.start,
        end: Math.max(key.end, isEmpty(value) ? 0 : value.end),
      });
    }
    // A key of the mapping itself overrides a merged one, and the first of two merged mappings the second.
    for (const entry of inherited) {
      const name = keyText(entry.key);
      if (places.has(name)) continue;
      places.set(name, entry.key);
      entries.push({ ...entry, merged: true });
    }
    const written = entries.filter((entry) => !entry.merged);
    return { kind: 'mapping', entries, flow, start: span.start, end: flow ? span.end : lastEnd(written, span) };
  }

  private readKey(key: YamlNode | null, fallback: number): Scalar | undefined {
    const node = key === null ? undefined : this.read(key);
    if (node?.kind === 'scalar' && node.style !== 'block' && (node.source !== '' || node.style === 'quoted'))
      return node;
    const start = node?.start ?? fallback;
    this.problems.push({
      code: 'key-not-plain',
      detail: '',
      start,
      end: Math.min(Math.max(node?.end ?? start, start + 1), this.text.length),
    });
    return undefined;
  }

  private readAlias(alias: Alias): Node {
    const span = this.span(alias);
    const anchor = this.anchors.get(alias.source);
    if (anchor === undefined) {
      this.missingAnchors.push(alias.source);
      this.problems.push({ code: 'unknown-alias', detail: alias.source, ...span });
    } else if (anchor.node === undefined) {
      this.problems.push({ code: 'cyclic-alias', detail: alias.source, ...span });
    } else if (this.size + anchor.size > EXPANDED_NODES) {
      this.problems.push({ code: 'alias-too-large', detail: alias.source, ...span });
    } else {
      this.size += anchor.size;
      return anchor.node;
    }
    return { kind: 'scalar', value: null, source: '', style: 'plain', ...span };
  }

  private span(node: YamlNode): Span {
    const start = node.range?.[0] ?? 0;
    let end = Math.max(start, node.range?.[1] ?? start);
    // A range may include line ends after the node.
    while (end > start && isSpace(this.text.charCodeAt(end - 1))) end--;
    return { start, end };
  }

  libraryProblem(error: YAMLError): SyntaxProblem[] {
    if (error.code === 'BAD_ALIAS') return []; // readAlias reports it, with the name.
    const start = Math.min(error.pos[0], this.text.length);
    const end = Math.max(start, Math.min(error.pos[1], this.text.length));
    const code = error.code === 'TAB_AS_INDENT' ? 'tab' : 'syntax';
    return [{ code, detail: parserMessage(error), isOpen: leavesOpen(error), start, end }];
  }
}

interface YamlPair {
  readonly key: YamlNode | null;
  readonly value: YamlNode | null;
}

function mergedEntries(value: Node): readonly Entry[] {
  if (value.kind === 'mapping') return value.entries;
  if (value.kind === 'sequence') return value.items.flatMap(mergedEntries);
  return [];
}

/** A block collection ends with its last child: the library's range includes comments that follow. */
function lastEnd(children: readonly Span[], span: Span): number {
  return Math.max(span.start, children[children.length - 1]?.end ?? span.end);
}

function nothing(at: number): Scalar {
  return { kind: 'scalar', value: null, source: '', style: 'plain', start: at, end: at };
}

/** An absent value is placed right after what comes before it. */
function placedAfter(value: Node, after: number): Node {
  return isEmpty(value) ? nothing(after) : value;
}

export function isEmpty(node: Node): boolean {
  return node.kind === 'scalar' && node.style === 'plain' && node.source === '';
}

function isSpace(code: number): boolean {
  return code === 32 || code === 9 || code === 10 || code === 13;
}

/** A copy that does not keep the whole text of the file in memory. */
function detach(text: string): string {
  return text.length < 13 ? text : ` ${text}`.slice(1);
}
