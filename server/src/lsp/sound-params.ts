/**
 * Whether parameters have the types of the protocol: those of notifications, which cannot be answered with an error,
 * and those of requests, its own and ours.
 */

import {
  type DeleteFilesParams,
  type DidChangeTextDocumentParams,
  type DidChangeWatchedFilesParams,
  type DidCloseTextDocumentParams,
  type DidOpenTextDocumentParams,
  ErrorCodes,
  Position,
  Range,
  type RenameFilesParams,
  ResponseError,
  type TextDocumentContentChangeEvent,
  TextDocumentIdentifier,
  TextDocumentItem,
  VersionedTextDocumentIdentifier,
} from 'vscode-languageserver';

type Test = (value: unknown) => boolean;
type Values = Readonly<Record<string, unknown>>;

/** For tests of the library, which throw for null. */
const object =
  (isOne: (value: Values) => boolean): Test =>
  (value) =>
    isObject(value) && isOne(value);
const isText: Test = (value) => typeof value === 'string';
const isDocument = object(TextDocumentIdentifier.is);
const isPosition = object(Position.is);
const isOptional =
  (isOne: Test): Test =>
  (value) =>
    value === undefined || isOne(value);

/** The parameters of a request, each by its name. */
const at = { textDocument: isDocument, position: isPosition };
const within = { textDocument: isDocument, range: object(Range.is) };
const whole = { textDocument: isDocument };
/** What we gave with an action or a lens comes back with it. */
const data = isOptional(object(({ uri }) => isText(uri)));

/** LSP 3.17, Language Features and Workspace Features. */
const REQUESTS: ReadonlyMap<string, Readonly<Record<string, Test>>> = new Map(
  Object.entries<Readonly<Record<string, Test>>>({
    'textDocument/hover': at,
    'textDocument/completion': at,
    'textDocument/definition': at,
    'textDocument/documentHighlight': at,
    'textDocument/prepareRename': at,
    'textDocument/references': { ...at, context: isObject },
    'textDocument/rename': { ...at, newName: isText },
    'textDocument/documentSymbol': whole,
    'textDocument/foldingRange': whole,
    'textDocument/documentLink': whole,
    'textDocument/codeLens': whole,
    'textDocument/semanticTokens/full': whole,
    'textDocument/semanticTokens/full/delta': { ...whole, previousResultId: isText },
    'textDocument/semanticTokens/range': within,
    'textDocument/inlayHint': within,
    'textDocument/codeAction': { ...within, context: object(isContext) },
    'textDocument/selectionRange': { ...whole, positions: (value) => Array.isArray(value) && value.every(isPosition) },
    'codeAction/resolve': { title: isText, data },
    'codeLens/resolve': { range: object(Range.is), data },
    'workspace/symbol': { query: isText },
    'workspace/executeCommand': { command: isText, arguments: isOptional(Array.isArray) },
  }),
);

/** The first parameter of a request that is not of its type; `undefined` where all are, or the request is not known. */
export function unsound(method: string, params: unknown): string | undefined {
  const given = isObject(params) ? params : {};
  return Object.entries(REQUESTS.get(method) ?? {}).find(([name, isSound]) => !isSound(given[name]))?.[0];
}

export function isObject(value: unknown): value is Values {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isContext({ only }: Values): boolean {
  return only === undefined || (Array.isArray(only) && only.every(isText));
}

export const isOpened = ({ textDocument }: DidOpenTextDocumentParams): boolean =>
  isObject(textDocument) && TextDocumentItem.is(textDocument);

export const isChanged = ({ textDocument, contentChanges }: DidChangeTextDocumentParams): boolean =>
  isObject(textDocument) && VersionedTextDocumentIdentifier.is(textDocument) && isListOf(contentChanges, isChange);

export const isClosed = ({ textDocument }: DidCloseTextDocumentParams): boolean => isDocument(textDocument);

export const isWatched = ({ changes }: DidChangeWatchedFilesParams): boolean =>
  isListOf(changes, ({ uri, type }) => typeof uri === 'string' && typeof type === 'number');

export const isPlaced = ({ uri, position }: { readonly uri: string; readonly position: Position }): boolean =>
  typeof uri === 'string' && Position.is(position);

export const isDeleted = ({ files }: DeleteFilesParams): boolean =>
  isListOf(files, ({ uri }) => typeof uri === 'string');

export const isRenamed = ({ files }: RenameFilesParams): boolean =>
  isListOf(files, ({ oldUri }) => typeof oldUri === 'string');

/** The parameters of a request whose needed values are all text. @throws ResponseError */
export function withTexts<T extends object>(params: T, ...needed: readonly (keyof T & string)[]): T {
  const given: unknown = params;
  for (const key of needed)
    if (!(given instanceof Object) || typeof params[key] !== 'string')
      throw new ResponseError(ErrorCodes.InvalidParams, `It needs a text as ${key}.`);
  return params;
}

function isChange(change: TextDocumentContentChangeEvent): boolean {
  return typeof change.text === 'string' && (!('range' in change) || Range.is(change.range));
}

function isListOf<T>(list: readonly T[], isOne: (one: T) => boolean): boolean {
  return Array.isArray(list) && list.every((one: unknown) => one instanceof Object && isOne(one as T));
}
