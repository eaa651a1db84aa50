// The command that fills in all `auto` values of a site, and leads to those that were filled in or left.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type FillAnswer, type FillLine, fillIn } from '../../server/src/lsp/fill-in-request.ts';
import { plain } from './plain.ts';
import { siteFile } from './site-of.ts';

export const fillInCommand = 'plumbline.fillIn';

const show = 'Show';

export function registerFillIn(client: BaseLanguageClient): vscode.Disposable {
  return vscode.commands.registerCommand(fillInCommand, async (chosen: unknown) => {
    const file = siteFile(chosen);
    if (file === undefined) return undefined;
    const answer = await client.sendRequest(fillIn, { uri: client.code2ProtocolConverter.asUri(file) });
    if (answer !== null) void tell(client, answer);
    return answer;
  });
}

/** Shows the summary; a single value that is left is named with the reason. */
async function tell(client: BaseLanguageClient, answer: FillAnswer): Promise<void> {
  const { summary, filled, left } = answer;
  const [first] = left;
  const message = plain(left.length === 1 && first !== undefined ? `${summary} ${first.words}.` : summary);
  const actions = filled.length + left.length === 0 ? [] : [show];
  const chosen =
    first === undefined
      ? await vscode.window.showInformationMessage(message, ...actions)
      : await vscode.window.showWarningMessage(message, ...actions);
  if (chosen === show) await lead(client, answer);
}

/** Offers the values as a list, those that are left first. */
async function lead(client: BaseLanguageClient, { filled, left }: FillAnswer): Promise<void> {
  const picked = await vscode.window.showQuickPick([...section('Left', left), ...section('Filled in', filled)], {
    title: 'Fill in',
    placeHolder: 'Go to',
  });
  if (picked?.at === undefined) return;
  const { uri, range } = client.protocol2CodeConverter.asLocation(picked.at);
  await vscode.window.showTextDocument(uri, { selection: range });
}

type Entry = vscode.QuickPickItem & { readonly at?: FillLine['at'] };

function section(label: string, lines: readonly FillLine[]): Entry[] {
  if (lines.length === 0) return [];
  const entries = lines.map(({ words, at }): Entry => ({ label: words, at }));
  return [{ label, kind: vscode.QuickPickItemKind.Separator }, ...entries];
}
