// The commands that make files for the equipment: shown first, written only on request, run never.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type Offer, type Shown, type Wanted, outputs } from '../../../server/src/lsp/make-request.ts';
import { plain } from '../plain.ts';
import { folderOf, siteFile } from '../site-of.ts';
import { Previews, madeScheme, previewOf, showPreview, wantedOf } from './preview.ts';
import { saveMade } from './save.ts';

export const madeCommands = {
  make: 'plumbline.make',
  show: 'plumbline.showMade',
  save: 'plumbline.saveMade',
} as const;

const saveAs = 'Save to Folder…';
const otherFiles = 'Other Files…';
const read = 'I Have Read It';

/** Characters of a message; the editor cuts what is longer than a thousand. */
const longestMessage = 900;

/** @param siteChanged tells of folders whose site has changed */
export function registerMaking(client: BaseLanguageClient, siteChanged: vscode.Event<string>): vscode.Disposable {
  const previews = new Previews(client);
  return vscode.Disposable.from(
    previews,
    siteChanged((folder) => previews.siteChanged(folder)),
    vscode.workspace.registerTextDocumentContentProvider(madeScheme, previews),
    vscode.commands.registerCommand(madeCommands.make, (chosen: unknown, said: unknown) =>
      makeFiles(client, previews, siteFile(chosen), isSaid(said) ? said : undefined),
    ),
    vscode.commands.registerCommand(madeCommands.show, async (chosen: unknown) => {
      const wanted = inFront(chosen);
      if (wanted !== undefined) pickFile(previews, wanted, await previews.making(wanted));
    }),
    vscode.commands.registerCommand(madeCommands.save, async (chosen: unknown, into: unknown) => {
      const wanted = inFront(chosen);
      if (wanted === undefined) return undefined;
      return saveMade((await previews.making(wanted)).files, into instanceof vscode.Uri ? into : undefined);
    }),
  );
}

type Said = Pick<Wanted, 'kind' | 'subject'>;

/** A key binding may say what is to be made. */
function isSaid(value: unknown): value is Said {
  return typeof value === 'object' && value !== null && 'kind' in value;
}

function inFront(chosen: unknown): Wanted | undefined {
  const uri = chosen instanceof vscode.Uri ? chosen : vscode.window.activeTextEditor?.document.uri;
  return uri?.scheme === madeScheme ? wantedOf(uri) : undefined;
}

/** @returns where each file is shown; `undefined` where the person thinks better of it */
async function makeFiles(
  client: BaseLanguageClient,
  previews: Previews,
  file: vscode.Uri | undefined,
  said: Said | undefined,
): Promise<readonly vscode.Uri[] | undefined> {
  if (file === undefined) return undefined;
  const folder = folderOf(client, file);
  const chosen = said ?? (await choose(await client.sendRequest(outputs, { folder })));
  if (chosen === undefined) return undefined;
  const wanted: Wanted = { folder, kind: chosen.kind, subject: chosen.subject };
  const made = await previews.making(wanted);
  tellRefused(client, made);
  const uris = made.files.map(({ path }) => previewOf(wanted, path));
  const [first, ...others] = uris;
  if (first === undefined) {
    const words = made.refused.length === 0 ? [`The site has nothing to make ${wanted.kind} of.`] : [];
    for (const message of messagesOf([...words, ...made.notes]))
      void vscode.window.showInformationMessage(message, read);
    return uris;
  }
  await showPreview(first, false);
  void tellMade(previews, wanted, made);
  if (others.length > 0 && said === undefined) pickFile(previews, wanted, made);
  return uris;
}

async function choose(offers: readonly Offer[]): Promise<Said | undefined> {
  const title = 'Make Files for the Equipment';
  const picked = await vscode.window.showQuickPick(
    offers.map((offer) => ({ label: offer.title, description: offer.kind, detail: offer.summary, offer })),
    { title, placeHolder: 'Nothing is run, and nothing is written until you save it.', matchOnDescription: true },
  );
  if (picked === undefined) return undefined;
  const { kind, subjects } = picked.offer;
  if (subjects.length < 2) return { kind };
  const all = { label: 'All', description: `${subjects.length}`, subject: undefined };
  const one = await vscode.window.showQuickPick([all, ...subjects.map((subject) => ({ label: subject, subject }))], {
    title: `${title}: ${picked.label}`,
    placeHolder: 'Of all, or of one alone',
  });
  return one === undefined ? undefined : { kind, subject: one.subject };
}

/** Each file is shown as soon as it is pointed at. */
function pickFile(previews: Previews, wanted: Wanted, { files }: Shown): void {
  const pick = vscode.window.createQuickPick<vscode.QuickPickItem & { readonly uri: vscode.Uri }>();
  const save: vscode.QuickInputButton = { iconPath: new vscode.ThemeIcon('save-all'), tooltip: saveAs };
  pick.title = `${wanted.kind}: ${files.length} files`;
  pick.items = files.map(({ path }) => ({ label: path, uri: previewOf(wanted, path) }));
  pick.buttons = [save];
  const shown = pick.onDidChangeActive(([item]) => item !== undefined && void showPreview(item.uri, true));
  pick.onDidAccept(() => {
    const [item] = pick.selectedItems;
    pick.hide();
    if (item !== undefined) void showPreview(item.uri, false);
  });
  pick.onDidTriggerButton(() => {
    pick.hide();
    void previews.making(wanted).then((now) => saveMade(now.files));
  });
  pick.onDidHide(() => {
    shown.dispose();
    pick.dispose();
  });
  pick.show();
}

/** What is to be done and to be known besides is told too; a message with an answer stays until it has been read. */
async function tellMade(previews: Previews, wanted: Wanted, { files, notes }: Shown): Promise<void> {
  const is = files.length === 1 ? '1 file is' : `${files.length} files are`;
  const words = `${is} shown as made from the site. Nothing is written yet.`;
  const [message = '', ...others] = messagesOf([words, ...notes]);
  for (const other of others) void vscode.window.showInformationMessage(other, read);
  const answer = await vscode.window.showInformationMessage(message, saveAs, ...(files.length > 1 ? [otherFiles] : []));
  if (answer === saveAs) await saveMade((await previews.making(wanted)).files);
  if (answer === otherFiles) pickFile(previews, wanted, await previews.making(wanted));
}

/** Sentences put together to messages that the editor shows whole. */
function messagesOf(sentences: readonly string[]): string[] {
  const messages: string[] = [];
  for (const sentence of sentences.map(plain)) {
    const last = messages.at(-1);
    if (last !== undefined && last.length + sentence.length < longestMessage)
      messages[messages.length - 1] = `${last} ${sentence}`;
    else messages.push(sentence);
  }
  return messages;
}

function tellRefused(client: BaseLanguageClient, { refused }: Shown): void {
  const [first] = refused;
  if (first === undefined) return;
  const message = refused.length === 1 ? first.message : `${refused.length} could not be made. ${first.message}`;
  void vscode.window.showWarningMessage(plain(message), 'Show').then(async (answer) => {
    if (answer === undefined) return;
    const items = refused.map(({ message: label, at }) => ({ label, at }));
    const chosen = items.length === 1 ? items[0] : await vscode.window.showQuickPick(items, { title: 'Not Made' });
    if (chosen === undefined) return;
    const { uri, range } = client.protocol2CodeConverter.asLocation(chosen.at);
    await vscode.window.showTextDocument(uri, { selection: range });
  });
}
