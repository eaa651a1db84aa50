// The commands that make files for the equipment: they are shown first, written only on request, and never run.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type OutputOffer,
  type ShownOutput,
  type WantedOutput,
  outputs,
} from '../../../server/src/lsp/make-request.ts';
import { plain } from '../plain.ts';
import { folderOf, siteFile } from '../site-of.ts';
import type { Pages } from '../pages/pages.ts';
import {
  Previews,
  type Shelf,
  isPage,
  madePage,
  madePageView,
  madeScheme,
  previewOf,
  showPreview,
  wantedOf,
} from './preview.ts';
import type { WriteTexts } from '../write-whole.ts';
import { askForFolder, saveMade } from './save.ts';

export const madeCommands = {
  make: 'plumbline.make',
  show: 'plumbline.showMade',
  save: 'plumbline.saveMade',
} as const;

const saveAs = 'Save…';
const otherFiles = 'Other files…';
const read = 'I have read it';

/** Characters of a message; the editor cuts messages of more than a thousand. */
const longestMessage = 900;

/** @param siteChanged fires with the folder of a site that has changed */
export function registerMaking(
  client: BaseLanguageClient,
  pages: Pages,
  siteChanged: vscode.Event<string>,
  write: WriteTexts,
): vscode.Disposable {
  const previews = new Previews(client);
  const shelf: Shelf = { previews, pages, write };
  return vscode.Disposable.from(
    previews,
    siteChanged((folder) => previews.siteChanged(folder)),
    vscode.workspace.registerTextDocumentContentProvider(madeScheme, previews),
    pages.bringBack(madePageView, (key) => madePage(previews, vscode.Uri.parse(key))),
    vscode.commands.registerCommand(madeCommands.make, (chosen: unknown, said: unknown = chosen) =>
      makeFiles(client, shelf, siteFile(chosen), isSaid(said) ? said : undefined),
    ),
    vscode.commands.registerCommand(madeCommands.show, async (chosen: unknown) => {
      const wanted = inFront(pages, chosen);
      if (wanted !== undefined) pickFile(shelf, wanted, await previews.making(wanted));
    }),
    vscode.commands.registerCommand(madeCommands.save, async (chosen: unknown, into: unknown) => {
      const wanted = inFront(pages, chosen);
      return wanted === undefined ? undefined : save(shelf, wanted, into instanceof vscode.Uri ? into : undefined);
    }),
  );
}

type Said = Pick<WantedOutput, 'kind' | 'subject'>;

/** The argument of a key binding, which comes first. */
function isSaid(value: unknown): value is Said {
  return typeof value === 'object' && value !== null && 'kind' in value;
}

function inFront(pages: Pages, chosen: unknown): WantedOutput | undefined {
  const page = pages.active?.source;
  if (page?.viewType === madePageView) return wantedOf(vscode.Uri.parse(page.key));
  const uri = chosen instanceof vscode.Uri ? chosen : vscode.window.activeTextEditor?.document.uri;
  return uri?.scheme === madeScheme ? wantedOf(uri) : undefined;
}

/** Writes into `made/` beside the site, unless the user chooses another folder. */
async function save(
  { previews, write }: Shelf,
  wanted: WantedOutput,
  into?: vscode.Uri,
): Promise<readonly vscode.Uri[] | undefined> {
  const folder = into ?? (await askForFolder(vscode.Uri.joinPath(vscode.Uri.parse(wanted.folder), 'made')));
  return folder === undefined ? undefined : saveMade((await previews.making(wanted)).files, folder, write);
}

/** @returns where each file is shown; `undefined` where the user cancels */
async function makeFiles(
  client: BaseLanguageClient,
  shelf: Shelf,
  file: vscode.Uri | undefined,
  said: Said | undefined,
): Promise<readonly vscode.Uri[] | undefined> {
  if (file === undefined) return undefined;
  const folder = folderOf(client, file);
  const chosen = said ?? (await choose(await client.sendRequest(outputs, { folder })));
  if (chosen === undefined) return undefined;
  const wanted: WantedOutput = { folder, kind: chosen.kind, subject: chosen.subject };
  const made = await shelf.previews.making(wanted);
  tellRefused(client, made);
  const uris = made.files.map(({ path }) => previewOf(wanted, path));
  const first = uris.find(isPage) ?? uris[0];
  if (first === undefined) {
    const words = made.refused.length === 0 ? [`The site has nothing to make ${wanted.kind} of.`] : [];
    for (const message of messagesOf([...words, ...made.notes]))
      void vscode.window.showInformationMessage(message, read);
    return uris;
  }
  await showPreview(shelf, first, false);
  void tellMade(shelf, wanted, made);
  if (uris.length > 1 && said === undefined) pickFile(shelf, wanted, made);
  return uris;
}

async function choose(offers: readonly OutputOffer[]): Promise<Said | undefined> {
  const title = 'Make files for the equipment';
  const picked = await vscode.window.showQuickPick(
    offers.map((offer) => ({ label: offer.title, description: offer.kind, detail: offer.summary, offer })),
    { title, placeHolder: 'Nothing is run, and nothing is written until you save.', matchOnDescription: true },
  );
  if (picked === undefined) return undefined;
  const { kind, subjects } = picked.offer;
  if (subjects.length < 2) return { kind };
  const all = { label: 'All', description: `${subjects.length}`, subject: undefined };
  const one = await vscode.window.showQuickPick([all, ...subjects.map((subject) => ({ label: subject, subject }))], {
    title: `${title}: ${picked.label}`,
    placeHolder: 'For all, or for one',
  });
  return one === undefined ? undefined : { kind, subject: one.subject };
}

/** Each file is shown as soon as it is pointed at. */
function pickFile(shelf: Shelf, wanted: WantedOutput, { files }: ShownOutput): void {
  const pick = vscode.window.createQuickPick<vscode.QuickPickItem & { readonly uri: vscode.Uri }>();
  const saveButton: vscode.QuickInputButton = { iconPath: new vscode.ThemeIcon('save-all'), tooltip: saveAs };
  pick.title = `${wanted.kind}: ${files.length} files`;
  const items = files.map(({ path }) => ({ label: path, uri: previewOf(wanted, path) }));
  // Pages first, as the first item is shown at once.
  pick.items = [...items.filter(({ uri }) => isPage(uri)), ...items.filter(({ uri }) => !isPage(uri))];
  pick.buttons = [saveButton];
  const shown = pick.onDidChangeActive(([item]) => item !== undefined && void showPreview(shelf, item.uri, true));
  pick.onDidAccept(() => {
    const [item] = pick.selectedItems;
    pick.hide();
    if (item !== undefined) void showPreview(shelf, item.uri, false);
  });
  pick.onDidTriggerButton(() => {
    pick.hide();
    void save(shelf, wanted);
  });
  pick.onDidHide(() => {
    shown.dispose();
    pick.dispose();
  });
  pick.show();
}

/** Shows the notes too, with a button each, so that a message stays until it has been read. */
async function tellMade(shelf: Shelf, wanted: WantedOutput, { files, notes }: ShownOutput): Promise<void> {
  const is = files.length === 1 ? '1 file is' : `${files.length} files are`;
  const words = `${is} made from the site and shown here. Nothing is written yet.`;
  const [message = '', ...others] = messagesOf([words, ...notes]);
  for (const other of others) void vscode.window.showInformationMessage(other, read);
  const answer = await vscode.window.showInformationMessage(message, saveAs, ...(files.length > 1 ? [otherFiles] : []));
  if (answer === saveAs) await save(shelf, wanted);
  if (answer === otherFiles) pickFile(shelf, wanted, await shelf.previews.making(wanted));
}

/** Sentences joined into messages that the editor shows whole. */
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

function tellRefused(client: BaseLanguageClient, { refused }: ShownOutput): void {
  const [first] = refused;
  if (first === undefined) return;
  const message = refused.length === 1 ? first.message : `${refused.length} could not be made. ${first.message}`;
  void vscode.window.showWarningMessage(plain(message), 'Show').then(async (answer) => {
    if (answer === undefined) return;
    const items = refused.map(({ message: label, at }) => ({ label, at }));
    const chosen = items.length === 1 ? items[0] : await vscode.window.showQuickPick(items, { title: 'Not made' });
    if (chosen === undefined) return;
    const { uri, range } = client.protocol2CodeConverter.asLocation(chosen.at);
    await vscode.window.showTextDocument(uri, { selection: range });
  });
}
