/** Refactorings at the cursor, as code actions whose edits are computed when one is chosen. */

import {
  type CodeAction,
  CodeActionKind,
  CreateFile,
  type Position,
  ResourceOperationKind,
  TextDocumentEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import type { Change } from '../../features/actions/refactorings/refactoring.ts';
import { refactoringsAt } from '../../features/actions/refactorings/refactorings.ts';
import type { Asked, Session } from '../session.ts';

const KINDS = { move: CodeActionKind.RefactorMove, rewrite: CodeActionKind.RefactorRewrite } as const;

export const REFACTORING_KINDS: readonly CodeActionKind[] = Object.values(KINDS);

/** A refactoring that is offered, and what it does. */
export interface OfferedAction {
  readonly action: CodeAction;
  readonly edit: () => WorkspaceEdit;
}

/** The refactorings at a position, without those that make files where the client cannot make any. */
export function refactorings({ client, addresses }: Session, asked: Asked, at: Position): OfferedAction[] {
  const folder = addresses.shown(asked.file.uri).replace(/[^/]*$/, '');
  const able = client.workspace?.workspaceEdit;
  const makesFiles =
    able?.documentChanges === true && able.resourceOperations?.includes(ResourceOperationKind.Create) === true;
  return refactoringsAt({ checked: asked.checked, file: asked.file, offset: asked.offset(at) })
    .filter((offered) => makesFiles || !offered.makesFiles)
    .map(({ title, kind, change }) => ({
      action: { title, kind: KINDS[kind] },
      edit: () => workspaceEdit(asked, folder, change()),
    }));
}

/** Each new file is created empty, which fails where it exists by then; its text is an edit like any other. */
function workspaceEdit({ convert }: Asked, folder: string, change: Change): WorkspaceEdit {
  const { changes = {} } = convert.workspaceEdit(change.edits);
  if (change.made.size === 0) return { changes };
  const start = { line: 0, character: 0 };
  // New files have the address of the folder in the client's form.
  const made = new Map([...change.made].map(([uri, text]) => [folder + uri.slice(uri.lastIndexOf('/') + 1), text]));
  return {
    documentChanges: [
      ...[...made.keys()].map((uri) => CreateFile.create(uri, { overwrite: false, ignoreIfExists: false })),
      ...[...made].map(([uri, newText]) =>
        TextDocumentEdit.create({ uri, version: null }, [{ range: { start, end: start }, newText }]),
      ),
      ...Object.entries(changes).map(([uri, own]) => TextDocumentEdit.create({ uri, version: null }, own)),
    ],
  };
}
