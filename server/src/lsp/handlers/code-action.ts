/** Quick fixes, fixes of a whole file, and acceptance of a finding. */

import {
  type CodeAction,
  CodeActionKind,
  type Range,
  SnippetTextEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { REASON, acceptance } from '../../features/actions/accept.ts';
import { type Wanted, countFixes, fixFile } from '../../features/actions/fix-file.ts';
import { literally } from '../../features/completion/offer.ts';
import { fileOf } from '../../site/item.ts';
import type { Diagnostic } from '../../rules/rule.ts';
import type { Asked, Handler, Session } from '../session.ts';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.plumbline`;

/** What of an action is worked out when it is chosen. */
interface Later {
  readonly uri: string;
  readonly wanted: Wanted;
}

export const codeActionHandler: Handler = {
  capabilities: { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL], resolveProvider: true } },
  register(session) {
    session.connection.onCodeAction(async ({ textDocument, range, context }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const isWanted = (kind: string): boolean =>
        context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
      return [
        ...(isWanted(CodeActionKind.QuickFix) ? quickFixes(session, asked, range, textDocument.uri) : []),
        ...(isWanted(FIX_ALL) ? fixAll(session, asked, textDocument.uri) : []),
      ];
    });
    session.connection.onCodeActionResolve(async (action) => {
      const later = action.data as Later | undefined;
      const asked = later === undefined ? undefined : await session.asked(later.uri);
      return asked === undefined || later === undefined ? action : { ...action, edit: editOf(asked, later.wanted) };
    });
  },
};

function quickFixes(session: Session, asked: Asked, range: Range, uri: string): CodeAction[] {
  const { checked, file, convert } = asked;
  const touched = checked.diagnostics.filter(
    ({ at }) => fileOf(at).uri === file.uri && touches(convert.range(at), range),
  );
  const fixes = touched.flatMap((diagnostic) => {
    const told = convert.diagnostic(diagnostic);
    return (diagnostic.fixes?.() ?? []).map((fix, index) => convert.codeAction(fix, told, index === 0));
  });
  const alike = [...new Map(touched.map((diagnostic) => [diagnostic.rule.id, diagnostic])).values()].flatMap(
    (diagnostic) => {
      const wanted: Wanted = { rule: diagnostic.rule.id };
      const count = countFixes(checked, file, wanted);
      return count < 2
        ? []
        : [
            later(session, asked, uri, wanted, {
              title: `Fix all ${count} of ${diagnostic.rule.id} in this file`,
              kind: CodeActionKind.QuickFix,
              diagnostics: [convert.diagnostic(diagnostic)],
            }),
          ];
    },
  );
  return [...fixes, ...alike, ...touched.flatMap((diagnostic) => accept(session, asked, diagnostic, uri))];
}

function touches(own: Range, range: Range): boolean {
  return (
    (own.start.line < range.end.line ||
      (own.start.line === range.end.line && own.start.character <= range.end.character)) &&
    (own.end.line > range.start.line ||
      (own.end.line === range.start.line && own.end.character >= range.start.character))
  );
}

function fixAll(session: Session, asked: Asked, uri: string): CodeAction[] {
  if (countFixes(asked.checked, asked.file, 'safe') === 0) return [];
  return [later(session, asked, uri, 'safe', { title: 'Fix all that is safe to fix', kind: FIX_ALL })];
}

/** With its edit at once where the client cannot ask for it. */
function later({ client }: Session, asked: Asked, uri: string, wanted: Wanted, action: CodeAction): CodeAction {
  const canResolve =
    client.textDocument?.codeAction?.resolveSupport?.properties.includes('edit') === true &&
    client.textDocument.codeAction.dataSupport === true;
  return canResolve ? { ...action, data: { uri, wanted } satisfies Later } : { ...action, edit: editOf(asked, wanted) };
}

function editOf({ checked, file, convert }: Asked, wanted: Wanted): WorkspaceEdit {
  return convert.workspaceEdit(fixFile(checked, file, wanted));
}

function accept(
  session: Session,
  { checked, file, convert }: Asked,
  diagnostic: Diagnostic,
  uri: string,
): CodeAction[] {
  const found = acceptance(checked, file, diagnostic);
  if (found === undefined) return [];
  const edit = convert.edit(found.edit);
  return [
    {
      title: found.title,
      kind: CodeActionKind.QuickFix,
      diagnostics: [convert.diagnostic(diagnostic)],
      edit: withReason(session, edit, uri),
    },
  ];
}

/** The reason is selected where the client can do that, so that it is typed over. */
function withReason({ client }: Session, edit: TextEdit, uri: string): WorkspaceEdit {
  const able = client.workspace?.workspaceEdit;
  if (able?.snippetEditSupport !== true || able.documentChanges !== true) return { changes: { [uri]: [edit] } };
  const value = literally(edit.newText).replace(REASON, `\${1:${REASON}}`);
  const snippet: SnippetTextEdit = { range: edit.range, snippet: { kind: 'snippet', value } };
  return { documentChanges: [{ textDocument: { uri, version: null }, edits: [snippet] }] };
}
