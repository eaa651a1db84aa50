/** Definition, references, highlights and rename. */

import {
  type Definition,
  DocumentHighlightKind,
  LSPErrorCodes,
  type LocationLink,
  ResponseError,
} from 'vscode-languageserver-protocol';
import { definition, highlights, references } from '../../features/names/definition.ts';
import { type RenameRefusal, rename, renameable } from '../../features/names/rename.ts';
import type { Handler, Session } from '../session.ts';

const START = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

export const namesHandler: Handler = {
  capabilities: {
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
  },
  register(session) {
    const { connection } = session;
    connection.onDefinition(async ({ textDocument, position }): Promise<Definition | LocationLink[] | null> => {
      const asked = await session.asked(textDocument.uri);
      const found = asked === undefined ? undefined : definition(asked.checked, asked.file, asked.offset(position));
      if (asked === undefined || found === undefined) return null;
      const page = found.named.kind === 'rules' ? session.pages.of(found.named.name) : undefined;
      const targets =
        page === undefined ? found.to.map((place) => asked.convert.location(place)) : [{ uri: page, range: START }];
      if (!hasLinks(session)) return targets;
      const originSelectionRange = asked.convert.range(found.from);
      return targets.map(({ uri, range }) => ({
        targetUri: uri,
        targetRange: range,
        targetSelectionRange: range,
        originSelectionRange,
      }));
    });
    connection.onReferences(async ({ textDocument, position, context }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      return references(asked.checked, asked.file, asked.offset(position), context.includeDeclaration).map((place) =>
        asked.convert.location(place),
      );
    });
    connection.onDocumentHighlight(async ({ textDocument, position }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      return highlights(asked.checked, asked.file, asked.offset(position)).map(({ at, isDeclaration }) => ({
        range: asked.convert.range(at),
        kind: isDeclaration ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
      }));
    });
    connection.onPrepareRename(async ({ textDocument, position }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const found = granted(renameable(asked.checked, asked.file, asked.offset(position)));
      return { range: asked.convert.range(found.at), placeholder: found.name };
    });
    connection.onRenameRequest(async ({ textDocument, position, newName }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      return asked.convert.workspaceEdit(
        granted(rename(asked.checked, asked.file, asked.offset(position), newName)).edits,
      );
    });
  },
};

function hasLinks({ client }: Session): boolean {
  return client.textDocument?.definition?.linkSupport === true;
}

/** A refusal is shown to the person as the error of the request. */
function granted<T extends object>(found: T | RenameRefusal): T {
  if ('refused' in found) throw new ResponseError(LSPErrorCodes.RequestFailed, found.refused);
  return found;
}
