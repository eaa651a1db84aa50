// A drawing of a site beside its text.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import {
  type DrawingOffer,
  type DrawingWanted,
  drawings,
  page,
  thingsAt,
} from '../../../server/src/lsp/page-request.ts';
import type { AuditAnswer } from '../../../server/src/lsp/audit-request.ts';
import { auditCommands } from '../audit.ts';
import { auditOf } from '../audit-figures.ts';
import { siteDocuments } from '../site-documents.ts';
import { folderOf } from '../site-of.ts';
import { chooseFolder } from './choose-folder.ts';
import { isDrawing, parsed } from './untrusted-json.ts';
import type { PageSource, Pages } from './pages.ts';

export const drawCommand = 'plumbline.draw';
export const drawingView = 'plumbline.drawing';

export function registerDrawings(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  const drawingOf = (folder: string, drawing: DrawingWanted): PageSource => ({
    key: `${drawingView} ${folder} ${JSON.stringify(drawing)}`,
    viewType: drawingView,
    title: 'Drawing',
    folder,
    look: 'editor',
    content: () => client.sendRequest(page, { folder, page: 'drawing', drawing }),
  });
  return vscode.Disposable.from(
    followedByMarks(client, pages),
    pages.bringBack(drawingView, (key) => {
      const [, folder = ''] = key.split(' ', 2);
      const drawing = parsed(key.slice(`${drawingView} ${folder} `.length));
      return isDrawing(drawing) ? drawingOf(folder, drawing) : undefined;
    }),
    vscode.commands.registerCommand(drawCommand, async (chosen: unknown, said: unknown = chosen) => {
      const figures = auditOf(chosen instanceof vscode.Uri ? chosen : vscode.window.activeTextEditor?.document.uri);
      const folder = figures?.folder ?? (await chooseFolder(client, chosen, 'Draw'));
      if (folder === undefined) return;
      const offers = await client.sendRequest(drawings, { folder });
      const wanted = isDrawing(said)
        ? said
        : await choose(figures === undefined ? offers : readBy(offers, figures.by), await atCursor(client));
      if (wanted === undefined) return;
      const measured = offers.find(({ kind }) => kind === wanted.kind)?.measured;
      const isRead = measured?.needed !== true || measured.read.includes(wanted.subject);
      if (isRead || (await read(client, folder, measured.by))) pages.show(drawingOf(folder, wanted));
    }),
  );
}

/** The drawings that show the readings of an audit. */
function readBy(offers: readonly DrawingOffer[], by: string): DrawingOffer[] {
  return offers.flatMap((offer) =>
    offer.measured?.by === by ? [{ ...offer, subjects: offer.measured.read }].filter(hasSubjects) : [],
  );
}

function hasSubjects({ subjects }: DrawingOffer): boolean {
  return subjects.length > 0;
}

/** Lets the user choose what an audit reads. @returns whether it was read */
async function read(client: BaseLanguageClient, folder: string, kind: string): Promise<boolean> {
  const inFolder = new vscode.RelativePattern(client.protocol2CodeConverter.asUri(folder), '*.site.yaml');
  const [file] = await vscode.workspace.findFiles(inFolder, undefined, 1);
  const answer = await vscode.commands.executeCommand<AuditAnswer | undefined>(auditCommands.audit, file, { kind });
  return answer !== undefined && !('cannot' in answer);
}

/** The things at the cursor of the active site file. */
async function atCursor(client: BaseLanguageClient): Promise<readonly { readonly name: string }[]> {
  const editor = vscode.window.activeTextEditor;
  if (editor === undefined || vscode.languages.match(siteDocuments, editor.document) === 0) return [];
  const { line, character } = editor.selection.active;
  const uri = client.code2ProtocolConverter.asUri(editor.document.uri);
  return client.sendRequest(thingsAt, { uri, position: { line, character } });
}

/** Pause before a request, ms: a cursor that moves on at once, as with a held arrow key, asks for nothing. */
const REST = 120;

/** Marks the things at the cursor in drawings that are in sight. */
function followedByMarks(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const mark = async ({ document, selection }: vscode.TextEditor): Promise<void> => {
    if (client.state !== State.Running || !pages.isShown(drawingView)) return;
    const uri = client.code2ProtocolConverter.asUri(document.uri);
    const { line, character } = selection.active;
    const names = await client.sendRequest(thingsAt, { uri, position: { line, character } });
    pages.mark(
      folderOf(client, document.uri),
      names.map((one) => `${one.names} ${one.name}`),
    );
  };
  const soon = (editor: vscode.TextEditor | undefined): void => {
    if (editor === undefined || vscode.languages.match(siteDocuments, editor.document) === 0) return;
    clearTimeout(timer);
    timer = setTimeout(() => {
      mark(editor).catch((error: unknown) => client.info(`What the cursor is at cannot be marked: ${String(error)}`));
    }, REST);
  };
  return vscode.Disposable.from(
    new vscode.Disposable(() => clearTimeout(timer)),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => soon(textEditor)),
    vscode.window.onDidChangeActiveTextEditor(soon),
  );
}

/** @param at things at the cursor, the nearest first: their drawings come first */
async function choose(
  offers: readonly DrawingOffer[],
  at: readonly { readonly name: string }[],
): Promise<DrawingWanted | undefined> {
  const title = 'Draw';
  const here = at.flatMap(({ name }) =>
    offers
      .filter(({ subjects }) => subjects.includes(name))
      .map((offer) => ({ label: `${offer.title}: ${name}`, description: offer.kind, offer, subject: name })),
  );
  const all = offers.map((offer) => ({
    label: offer.title,
    description: offer.kind,
    detail: offer.summary,
    offer,
    subject: undefined,
  }));
  const picked = await vscode.window.showQuickPick([...here, ...all], {
    title,
    placeHolder: 'Which picture?',
    matchOnDescription: true,
  });
  if (picked === undefined) return undefined;
  const { kind, subjects } = picked.offer;
  if (picked.subject !== undefined) return { kind, subject: picked.subject };
  if (picked.offer.vlans.length + picked.offer.streams.length > 0) return narrowed(picked.offer);
  const [only = '', another] = subjects;
  if (another === undefined) return { kind, subject: only };
  const subject = await vscode.window.showQuickPick(subjects, {
    title: `${title}: ${picked.label}`,
    placeHolder: 'Of which?',
  });
  return subject === undefined ? undefined : { kind, subject };
}

/** The whole drawing, or one that highlights a VLAN or a stream. */
async function narrowed({ kind, title, vlans, streams }: DrawingOffer): Promise<DrawingWanted | undefined> {
  const items = [
    { label: 'All', description: '', only: {} },
    ...vlans.map((vlan) => ({ label: vlan, description: 'VLAN', only: { vlan } })),
    ...streams.map((stream) => ({ label: stream, description: 'stream', only: { stream } })),
  ];
  const picked = await vscode.window.showQuickPick(items, {
    title: `Draw: ${title}`,
    placeHolder: 'All, or one VLAN or stream',
  });
  return picked === undefined ? undefined : { kind, subject: '', ...picked.only };
}
