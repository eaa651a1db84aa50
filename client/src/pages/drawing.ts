// A drawing of a site beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type DrawingOffer, type DrawingWanted, drawings, page } from '../../../server/src/lsp/page-request.ts';
import { chooseFolder } from './choose-folder.ts';
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
    pages.bringBack(drawingView, (key) => {
      const [, folder = ''] = key.split(' ', 2);
      return drawingOf(folder, JSON.parse(key.slice(`${drawingView} ${folder} `.length)) as DrawingWanted);
    }),
    vscode.commands.registerCommand(drawCommand, async (chosen: unknown, said: unknown) => {
      const folder = await chooseFolder(client, chosen, 'Draw');
      if (folder === undefined) return;
      const wanted = isSaid(said) ? said : await choose(await client.sendRequest(drawings, { folder }));
      if (wanted !== undefined) pages.show(drawingOf(folder, wanted));
    }),
  );
}

/** A key binding may say what is to be drawn. */
function isSaid(value: unknown): value is DrawingWanted {
  return typeof value === 'object' && value !== null && 'kind' in value && 'subject' in value;
}

async function choose(offers: readonly DrawingOffer[]): Promise<DrawingWanted | undefined> {
  const title = 'Draw';
  const picked = await vscode.window.showQuickPick(
    offers.map((offer) => ({ label: offer.title, description: offer.kind, detail: offer.summary, offer })),
    { title, placeHolder: 'Which picture?', matchOnDescription: true },
  );
  if (picked === undefined) return undefined;
  const { kind, subjects } = picked.offer;
  const [only = '', another] = subjects;
  if (another === undefined) return { kind, subject: only };
  const subject = await vscode.window.showQuickPick(subjects, {
    title: `${title}: ${picked.label}`,
    placeHolder: 'Of which?',
  });
  return subject === undefined ? undefined : { kind, subject };
}
