/**
 * Whether parameters have the types of the protocol: those of notifications, which cannot be answered with an error,
 * and those of our own requests.
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

export const isOpened = (params: DidOpenTextDocumentParams): boolean => TextDocumentItem.is(params.textDocument);

export const isChanged = ({ textDocument, contentChanges }: DidChangeTextDocumentParams): boolean =>
  VersionedTextDocumentIdentifier.is(textDocument) && isListOf(contentChanges, isChange);

export const isClosed = (params: DidCloseTextDocumentParams): boolean => TextDocumentIdentifier.is(params.textDocument);

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
