// The commands that compare the running system with the site, by a file or folder that the user chooses.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State, WorkDoneProgress } from 'vscode-languageclient';
import type { AuditKind } from '../../server/src/audit/audited.ts';
import { AUDITS, type AuditAnswer, type AuditWanted, audit, clearAudits } from '../../server/src/lsp/audit-request.ts';
import { AuditFigures } from './audit-figures.ts';
import { plain } from './plain.ts';
import { folderOf, siteFile } from './site-of.ts';

export const auditCommands = {
  audit: 'plumbline.audit',
  show: 'plumbline.showAudit',
  clear: 'plumbline.clearAudits',
} as const;

interface Kind extends vscode.QuickPickItem {
  readonly audit: AuditKind;
  /** The thing of the site that it may belong to. */
  readonly of: string;
}

const kinds: readonly Kind[] = [
  {
    audit: 'recordings',
    label: 'Recordings…',
    detail: 'A folder of recordings: gaps, short and duplicate files, days kept, bit rates, free space.',
    of: 'Which volume is it?',
  },
  {
    audit: 'counters',
    label: 'Counters…',
    detail: 'Interface counters, as JSON from Linux or CSV of IF-MIB, against the load of each port.',
    of: 'Which device do they belong to?',
  },
  {
    audit: 'announcements',
    label: 'Announcements…',
    detail: 'A capture of announcements (SAP), pcap or pcapng, against the multicast streams.',
    of: 'What do they announce?',
  },
  {
    audit: 'probe',
    label: 'Probed stream…',
    detail: 'What ffprobe says of a stream, as JSON, against the site.',
    of: 'Which stream is it?',
  },
];

const inBrowser = {
  cannot:
    'In a browser Plumbline cannot read files for an audit. Open the site in VS Code on a desktop, or use ' +
    '`plumbline audit` on the command line.',
} satisfies AuditAnswer;

export function registerAudits(client: BaseLanguageClient): vscode.Disposable {
  const figures = new AuditFigures();
  return vscode.Disposable.from(
    figures,
    vscode.commands.registerCommand(auditCommands.audit, async (chosen: unknown, said: unknown = chosen) => {
      const file = siteFile(chosen);
      if (file === undefined) return undefined;
      // What the server can do is known once it has started.
      if (client.state === State.Starting) await client.start();
      if (!canAudit(client)) {
        void vscode.window.showWarningMessage(plain(inBrowser.cannot));
        return inBrowser;
      }
      const audited = await ask(client, file, isSaid(said) ? said : {});
      if (audited === undefined) return undefined;
      const { kind, answer } = audited;
      const folder = folderOf(client, file);
      if (!('cannot' in answer)) figures.take(folder, kind, answer.summary);
      void tell(client, answer, () => figures.show(folder, kind));
      return answer;
    }),
    vscode.commands.registerCommand(auditCommands.show, async (chosen: unknown) => {
      const file = siteFile(chosen);
      if (file !== undefined) await figures.show(folderOf(client, file));
    }),
    vscode.commands.registerCommand(auditCommands.clear, async (chosen: unknown) => {
      const file = siteFile(chosen);
      if (file === undefined) return;
      await client.sendRequest(clearAudits, { folder: folderOf(client, file) });
      figures.clear(folderOf(client, file));
    }),
  );
}

/** Whether the server reads files for audits. */
function canAudit(client: BaseLanguageClient): boolean {
  const able = client.initializeResult?.capabilities.experimental as { readonly [AUDITS]?: boolean } | undefined;
  return able?.[AUDITS] === true;
}

type Said = Omit<AuditWanted, 'folder'>;

/** The argument of a key binding, which comes first; the rest is asked for. */
function isSaid(value: unknown): value is Partial<Said> {
  return typeof value === 'object' && value !== null && 'kind' in value;
}

interface Audited {
  readonly kind: AuditKind;
  readonly answer: AuditAnswer;
}

/** @returns `undefined` where the user cancels */
async function ask(client: BaseLanguageClient, file: vscode.Uri, said: Partial<Said>): Promise<Audited | undefined> {
  const choice = await choose(said);
  if (choice === undefined) return undefined;
  // Findings show in files of the site, and the server keeps a site only while one of its files is open.
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file));
  const folder = folderOf(client, file);
  const { kind } = choice;
  const answer = await send(client, { ...choice, folder });
  if (answer === undefined) return undefined;
  if (!('cannot' in answer) || answer.choices === undefined || choice.of !== undefined) return { kind, answer };
  const title = kinds.find((one) => one.audit === kind)?.of ?? '';
  const of = await vscode.window.showQuickPick(answer.choices, { title, placeHolder: 'The file does not say' });
  const second = of === undefined ? undefined : await send(client, { ...choice, folder, of });
  return second === undefined ? undefined : { kind, answer: second };
}

async function choose({ kind, uri: known, ...said }: Partial<Said>): Promise<Said | undefined> {
  if (kind !== undefined && known !== undefined) return { ...said, kind, uri: known };
  const title = 'Compare the running system with the plan';
  const picked =
    kinds.find(({ audit: own }) => own === kind) ??
    (await vscode.window.showQuickPick(kinds, { title, matchOnDetail: true }));
  if (picked === undefined) return undefined;
  const isFolder = picked.audit === 'recordings';
  const files = await vscode.window.showOpenDialog({
    title: picked.label,
    openLabel: 'Compare',
    canSelectFolders: isFolder,
    canSelectFiles: !isFolder,
    canSelectMany: false,
  });
  const uri = files?.[0]?.toString();
  if (uri === undefined) return undefined;
  if (!isFolder) return { ...said, kind: picked.audit, uri };
  const now = { label: 'It is being recorded to', description: 'compared as of now', isCopy: false };
  const copy = { label: 'It is a copy', description: 'compared as of its newest file', isCopy: true };
  const state = await vscode.window.showQuickPick([now, copy], { title: picked.label });
  return state === undefined ? undefined : { ...said, kind: picked.audit, uri, isCopy: state.isCopy };
}

/** @returns `undefined` where the user stops it */
function send(client: BaseLanguageClient, wanted: AuditWanted): Thenable<AuditAnswer | undefined> {
  const title = 'Comparing with the site…';
  const options = { location: vscode.ProgressLocation.Notification, title, cancellable: true };
  return vscode.window.withProgress(options, async (progress, token) => {
    const workDoneToken = `audit-${++asked}`;
    const reports = client.onProgress(WorkDoneProgress.type, workDoneToken, (work) => {
      if (work.kind === 'report') progress.report({ message: work.message ?? '' });
    });
    try {
      return await client.sendRequest(audit, { ...wanted, workDoneToken }, token);
    } catch (error) {
      if (token.isCancellationRequested) return undefined;
      throw error;
    } finally {
      reports.dispose();
    }
  });
}

let asked = 0;

async function tell(client: BaseLanguageClient, answer: AuditAnswer, showFigures: () => Promise<void>): Promise<void> {
  if ('cannot' in answer) {
    await vscode.window.showWarningMessage(plain(answer.cannot));
    return;
  }
  const { found } = answer;
  const [first] = found;
  const words =
    first === undefined
      ? 'The audit agrees with the site.'
      : `${found.length === 1 ? '1 thing differs' : `${found.length} things differ`} from the site.`;
  const actions = [...(first === undefined ? [] : ['Go to first']), 'Show figures'];
  const chosen = await vscode.window.showInformationMessage(words, ...actions);
  if (chosen === 'Show figures') await showFigures();
  if (chosen !== 'Go to first' || first === undefined) return;
  const { uri, range } = client.protocol2CodeConverter.asLocation(first);
  await vscode.window.showTextDocument(uri, { selection: range });
}
