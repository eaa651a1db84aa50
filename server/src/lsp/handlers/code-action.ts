/** Quick fixes, fixes of a whole file, acceptance of a finding, and refactorings. */

import {
  type CodeAction,
  CodeActionKind,
  type Position,
  type Range,
  SnippetTextEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { acceptance } from '../../features/actions/accept.ts';
import { type WantedFixes, countFixes, fixFile, fixesIn } from '../../features/actions/fix-file.ts';
import { literally } from '../../features/completion/offer.ts';
import { fileOf } from '../../site/item.ts';
import { REASON } from '../../lint/reason.ts';
import type { Diagnostic } from '../../lint/rule.ts';
import type { Asked, Handler, Session } from '../session.ts';
import { type OfferedAction, REFACTORING_KINDS, refactorings } from './refactorings.ts';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.plumbline`;

/** An action whose edit is computed when it is chosen: fixes of a kind, or a refactoring by its title and place. */
type Deferred = { readonly uri: string } & (
  { readonly wanted: WantedFixes } | { readonly title: string; readonly at: Position }
);

export const codeActionHandler: Handler = {
  capabilities: {
    codeActionProvider: {
      codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL, ...REFACTORING_KINDS],
      resolveProvider: true,
    },
  },
  register(session) {
    session.connection.onCodeAction(async ({ textDocument, range, context }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const isWanted = (kind: string): boolean =>
        context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
      return [
        ...(isWanted(CodeActionKind.QuickFix) ? quickFixes(session, asked, range, textDocument.uri) : []),
        ...(isWanted(FIX_ALL) ? fixAll(session, asked, textDocument.uri) : []),
        ...(REFACTORING_KINDS.some(isWanted) ? refactorings(session, asked, range.start) : [])
          .filter(({ action }) => isWanted(action.kind ?? ''))
          .map((offered) => refactoring(session, offered, textDocument.uri, range.start)),
      ];
    });
    session.connection.onCodeActionResolve(async (action) => {
      const deferred = action.data as Deferred | undefined;
      const asked = deferred === undefined ? undefined : await session.asked(deferred.uri);
      if (asked === undefined || deferred === undefined) return action;
      if ('wanted' in deferred) return { ...action, edit: editOf(asked, deferred.wanted) };
      const chosen = refactorings(session, asked, deferred.at).find(
        ({ action: { title } }) => title === deferred.title,
      );
      return chosen === undefined ? action : { ...action, edit: chosen.edit() };
    });
  },
};

/** The most findings of a range that actions are offered for: nobody chooses from more than a hundred. */
const MAX_FINDINGS = 100;

function quickFixes(session: Session, asked: Asked, range: Range, uri: string): CodeAction[] {
  const { checked, audited, file, convert } = asked;
  const touched = [...checked.diagnostics, ...audited]
    .filter(({ at }) => fileOf(at).uri === file.uri && touches(convert.range(at), range))
    .slice(0, MAX_FINDINGS);
  const fixes = touched.flatMap((diagnostic) => {
    const shown = convert.diagnostic(diagnostic);
    return fixesIn(checked)(diagnostic).map((fix, index) => convert.codeAction(fix, shown, index === 0));
  });
  const alike = [...new Map(touched.map((diagnostic) => [diagnostic.rule.id, diagnostic])).values()].flatMap(
    (diagnostic) => {
      const wanted: WantedFixes = { rule: diagnostic.rule.id };
      const count = countFixes(checked, file, wanted);
      return count < 2
        ? []
        : withEdit(session, asked, uri, wanted, {
            title: `Fix all ${count} of ${diagnostic.rule.id} in this file`,
            kind: CodeActionKind.QuickFix,
            diagnostics: [convert.diagnostic(diagnostic)],
          });
    },
  );
  return distinct([...fixes, ...alike, ...touched.flatMap((diagnostic) => accept(session, asked, diagnostic, uri))]);
}

/** Makes titles unique: actions that do the same are offered once, others get their rule in brackets. */
function distinct(actions: readonly CodeAction[]): CodeAction[] {
  const byTitle = new Map<string, CodeAction>();
  for (const action of actions) {
    const known = byTitle.get(action.title);
    if (known === undefined) byTitle.set(action.title, action);
    else if (JSON.stringify(known.edit) !== JSON.stringify(action.edit)) {
      const title = `${action.title} (${String(action.diagnostics?.[0]?.code)})`;
      if (!byTitle.has(title)) byTitle.set(title, { ...action, title });
    }
  }
  return [...byTitle.values()];
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
  return withEdit(session, asked, uri, 'safe', { title: 'Fix all that is safe to fix', kind: FIX_ALL });
}

/** In sites of up to so many items the edits are computed before one is chosen: that takes at most a second. */
const MAX_AT_ONCE = 5000;

/** The action with its edit, or without one where the client can resolve it later; in a large site none otherwise. */
function withEdit(session: Session, asked: Asked, uri: string, wanted: WantedFixes, action: CodeAction): CodeAction[] {
  if (canResolve(session)) return [{ ...action, data: { uri, wanted } satisfies Deferred }];
  if (asked.checked.plan.site.items.length > MAX_AT_ONCE) return [];
  return [{ ...action, edit: editOf(asked, wanted) }];
}

function refactoring(session: Session, { action, edit }: OfferedAction, uri: string, at: Position): CodeAction {
  if (!canResolve(session)) return { ...action, edit: edit() };
  return { ...action, data: { uri, title: action.title, at } satisfies Deferred };
}

function canResolve({ client }: Session): boolean {
  const able = client.textDocument?.codeAction;
  return able?.resolveSupport?.properties.includes('edit') === true && able.dataSupport === true;
}

function editOf({ checked, file, convert }: Asked, wanted: WantedFixes): WorkspaceEdit {
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

/** The edit with the reason as a snippet's tab stop, where the client has snippets, so that it is typed over. */
function withReason({ client }: Session, edit: TextEdit, uri: string): WorkspaceEdit {
  const able = client.workspace?.workspaceEdit;
  if (able?.snippetEditSupport !== true || able.documentChanges !== true) return { changes: { [uri]: [edit] } };
  const value = literally(edit.newText).replace(REASON, `\${1:${REASON}}`);
  const snippet: SnippetTextEdit = { range: edit.range, snippet: { kind: 'snippet', value } };
  return { documentChanges: [{ textDocument: { uri, version: null }, edits: [snippet] }] };
}
