// Files that can be made from a site, as read-only documents that are not on a disk.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ShownOutput, type WantedOutput, make } from '../../../server/src/lsp/make-request.ts';
import type { WriteTexts } from '../write-whole.ts';
import type { PageSource, Pages } from '../pages/pages.ts';
import { hasTexts, parsed } from '../pages/untrusted-json.ts';
import { isSameFolder } from '../site-of.ts';

export const madeScheme = 'plumbline-made';

const gone = 'This file is not made of the site any more.\n';

/** Suffixes of files with sections of keys and values; the editor knows only some of them by itself. */
const sections = /\.(?:network|netdev|link|service|timer|socket|conf)$/;

/** How made files are shown and written. */
export interface Shelf {
  readonly previews: Previews;
  readonly pages: Pages;
  readonly write: WriteTexts;
}

/** Pause after an edit before shown files are made again, ms, as typing needs the server. */
const rest = 300;

/** The request that a preview belongs to; `undefined` for an address that is of no preview. */
export function wantedOf(uri: vscode.Uri): WantedOutput | undefined {
  const wanted = parsed(uri.query);
  return isWanted(wanted) ? wanted : undefined;
}

function isWanted(value: unknown): value is WantedOutput {
  return hasTexts(value, ['folder', 'kind'], ['subject']);
}

function isOf(wanted: WantedOutput | undefined, folder: string): boolean {
  return wanted !== undefined && isSameFolder(wanted.folder, folder);
}

/** The address of the preview of a made file. */
export function previewOf(wanted: WantedOutput, path: string): vscode.Uri {
  return vscode.Uri.from({ scheme: madeScheme, path: `/${wanted.kind}/${path}`, query: JSON.stringify(wanted) });
}

/** Makes shown files again when their site changes. */
export class Previews implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly client: BaseLanguageClient;
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;
  /** Made files for the current site, by request. */
  private readonly makings = new Map<string, { readonly wanted: WantedOutput; readonly shown: Promise<ShownOutput> }>();
  /** Timers, by folder, for making files again. */
  private readonly waiting = new Map<string, ReturnType<typeof setTimeout>>();

  constructor(client: BaseLanguageClient) {
    this.client = client;
  }

  /** @throws where the server cannot make them, such as for a subject that is gone */
  making(wanted: WantedOutput): Promise<ShownOutput> {
    const key = JSON.stringify(wanted);
    const known = this.makings.get(key);
    if (known !== undefined) return known.shown;
    const shown = this.client.sendRequest(make, wanted);
    this.makings.set(key, { wanted, shown });
    shown.catch(() => this.makings.delete(key));
    return shown;
  }

  async provideTextDocumentContent(uri: vscode.Uri): Promise<string> {
    const wanted = wantedOf(uri);
    if (wanted === undefined) return gone;
    const { files } = await this.making(wanted).catch((error: unknown) => {
      this.client.info(`${uri.path} cannot be made: ${String(error)}`);
      return { files: [] };
    });
    return files.find(({ path }) => previewOf(wanted, path).path === uri.path)?.text ?? gone;
  }

  /** Notes that the site of a folder has changed. */
  siteChanged(folder: string): void {
    for (const [key, { wanted }] of Array.from(this.makings)) if (isOf(wanted, folder)) this.makings.delete(key);
    clearTimeout(this.waiting.get(folder));
    this.waiting.set(
      folder,
      setTimeout(() => this.makeAnew(folder), rest),
    );
  }

  private makeAnew(folder: string): void {
    this.waiting.delete(folder);
    for (const { uri } of vscode.workspace.textDocuments)
      if (uri.scheme === madeScheme && isOf(wantedOf(uri), folder)) this.changed.fire(uri);
  }

  dispose(): void {
    for (const timer of this.waiting.values()) clearTimeout(timer);
    this.changed.dispose();
  }
}

/** Whether a made file is a page for printing, which is shown as a page. */
export function isPage(uri: vscode.Uri): boolean {
  return uri.path.endsWith('.html');
}

/** The view type of such pages in `when` clauses. */
export const madePageView = 'plumbline.madePage';

/** The source of a made page; `undefined` for an address that is of none. */
export function madePage(previews: Previews, uri: vscode.Uri): PageSource | undefined {
  const wanted = wantedOf(uri);
  if (wanted === undefined) return undefined;
  const title = uri.path.slice(uri.path.lastIndexOf('/') + 1).replace(/\.html$/, '');
  return {
    key: uri.toString(),
    viewType: madePageView,
    title,
    folder: wanted.folder,
    look: 'paper',
    content: async () => ({ title, html: await previews.provideTextDocumentContent(uri) }),
  };
}

/** Shows a page in a panel, and any other file in the one tab that previews share. */
export async function showPreview({ previews, pages }: Shelf, uri: vscode.Uri, preserveFocus: boolean): Promise<void> {
  if (isPage(uri)) {
    const page = madePage(previews, uri);
    if (page !== undefined) pages.show(page);
    return;
  }
  const document = await vscode.workspace.openTextDocument(uri);
  const isKnown = sections.test(uri.path) && (await vscode.languages.getLanguages()).includes('ini');
  const shown = isKnown ? await vscode.languages.setTextDocumentLanguage(document, 'ini') : document;
  await vscode.window.showTextDocument(shown, { preview: true, preserveFocus });
}
