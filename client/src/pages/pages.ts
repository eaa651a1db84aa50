// Pages beside the text, each in a panel of its own: they follow the site, and names in them lead to their places.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { hoverOfName, placeOfName } from '../../../server/src/lsp/page-request.ts';
import { isSameFolder } from '../site-of.ts';
import { type Look, frame } from './frame.ts';
import { type Chosen, isOfSite, messageOf } from './from-page.ts';
import { blocksOf } from './hover-words.ts';
import { keyIn } from './kept-key.ts';

/** What a page shows. */
export interface PageSource {
  /** Identifies the page: one that is already open comes to the front. */
  readonly key: string;
  /** The view type of the panel in `when` clauses. */
  readonly viewType: string;
  readonly title: string;
  /** Address of the folder of the site. */
  readonly folder: string;
  readonly look: Look;
  /** The current document and its title. Called only while the page is in sight. */
  readonly content: () => Promise<{ readonly title: string; readonly html: string }>;
}

/** Pause after an edit: at least so many ms, and so many times the last answer, as typing needs the server. */
const REST = 250;
const RESTS = 5;

export class Pages implements vscode.Disposable {
  private readonly client: BaseLanguageClient;
  private readonly open = new Map<string, Page>();

  constructor(client: BaseLanguageClient) {
    this.client = client;
  }

  /** Shows a page beside the active editor. */
  show(source: PageSource): void {
    const known = this.open.get(source.key);
    if (known !== undefined) {
      known.panel.reveal(undefined, true);
      // Something other than the site may have changed, such as the last commit.
      known.refreshSoon();
      return;
    }
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.add(
      vscode.window.createWebviewPanel(source.viewType, source.title, place, { enableFindWidget: true }),
      source,
    );
  }

  /**
   * Restores pages of a kind that were open when the window was closed or reloaded.
   *
   * @param sourceOf gives `undefined` for a key that is of no page
   */
  bringBack(viewType: string, sourceOf: (key: string) => PageSource | undefined): vscode.Disposable {
    return vscode.window.registerWebviewPanelSerializer(viewType, {
      deserializeWebviewPanel: async (panel, state: unknown) => {
        const key = keyIn(state);
        const source = key === undefined || this.open.has(key) ? undefined : sourceOf(key);
        if (source === undefined) panel.dispose();
        else this.add(panel, source);
        return Promise.resolve();
      },
    });
  }

  private add(panel: vscode.WebviewPanel, source: PageSource): void {
    this.open.set(source.key, new Page(this.client, panel, source));
    panel.onDidDispose(() => {
      this.open.delete(source.key);
      this.noteSight();
    });
    panel.onDidChangeViewState(() => this.noteSight());
    this.noteSight();
  }

  /** For commands about a page: it is often beside the text that has the keyboard. */
  private noteSight(): void {
    void vscode.commands.executeCommand('setContext', 'plumbline.pageInSight', this.inSight !== undefined);
  }

  /** The active page. */
  get active(): Page | undefined {
    return [...this.open.values()].find(({ panel }) => panel.active);
  }

  /** The active page, else the one that was opened last of those in sight. */
  get inSight(): Page | undefined {
    return this.active ?? [...this.open.values()].filter(({ panel }) => panel.visible).at(-1);
  }

  /** Notes that the site of a folder has changed and has been checked. */
  siteChanged(folder: string): void {
    for (const page of this.open.values()) if (isSameFolder(page.source.folder, folder)) page.refreshSoon();
  }

  /** Marks the things at the cursor in a site's text, the nearest first, by the names that drawings use. */
  mark(folder: string, names: readonly string[]): void {
    for (const page of this.open.values()) if (isSameFolder(page.source.folder, folder)) page.mark(names);
  }

  /** Whether a page of a kind is in sight. */
  isShown(viewType: string): boolean {
    return [...this.open.values()].some(({ panel, source }) => panel.visible && source.viewType === viewType);
  }

  dispose(): void {
    for (const { panel } of this.open.values()) panel.dispose();
  }
}

export class Page {
  readonly panel: vscode.WebviewPanel;
  readonly source: PageSource;
  private readonly client: BaseLanguageClient;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private state: 'fresh' | 'stale' | 'asked' | 'asked and stale' = 'stale';
  private shown = '';
  private marked: readonly string[] = [];
  private took = 0;
  private isClosed = false;

  constructor(client: BaseLanguageClient, panel: vscode.WebviewPanel, source: PageSource) {
    this.client = client;
    this.panel = panel;
    this.source = source;
    this.panel.webview.options = { enableScripts: true, localResourceRoots: [] };
    this.panel.webview.onDidReceiveMessage((sent: unknown) => {
      const { isReady, chosen, hover } = messageOf(sent);
      // A page is empty each time it comes into sight.
      if (isReady) {
        void this.panel.webview.postMessage({ of: source.key, marked: this.marked });
        void this.refresh();
      }
      if (chosen !== undefined) this.logged(this.leadTo(chosen));
      if (hover !== undefined) this.logged(this.say(hover.names, hover.name));
    });
    this.panel.webview.html = frame(source.look);
    this.panel.onDidChangeViewState(() => this.panel.visible && this.state === 'stale' && this.refreshSoon());
    this.panel.onDidDispose(() => {
      this.isClosed = true;
      clearTimeout(this.timer);
    });
  }

  /** Requests of a page may fail, or be answered after it was closed: nobody waits for them. */
  private logged(answer: Promise<void>): void {
    answer.catch((error: unknown) => this.client.info(`${this.source.title}: ${String(error)}`));
  }

  /** The document as it is shown. */
  get html(): string {
    return this.shown;
  }

  refreshSoon(): void {
    if (this.state === 'asked') this.state = 'asked and stale';
    if (this.state === 'fresh') this.state = 'stale';
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.refresh(), Math.max(REST, this.took * RESTS));
  }

  /** Refreshes one document at a time, and only while the page is in sight. */
  private async refresh(): Promise<void> {
    if (this.isClosed || !this.panel.visible || this.state === 'asked' || this.state === 'asked and stale') return;
    this.state = 'asked';
    const start = performance.now();
    try {
      const { title, html } = await this.source.content();
      if (this.isClosed) return;
      this.shown = html;
      this.panel.title = title;
      void this.panel.webview.postMessage({ html: this.shown });
    } catch (error) {
      this.client.info(`${this.source.title} cannot be shown: ${String(error)}`);
    }
    if (this.isClosed) return;
    this.took = performance.now() - start;
    const isStale = (this.state as string) === 'asked and stale';
    this.state = isStale ? 'stale' : 'fresh';
    if (isStale) this.refreshSoon();
  }

  mark(names: readonly string[]): void {
    this.marked = names;
    void this.panel.webview.postMessage({ marked: names });
  }

  /** Has the browser that shows the editor save the document. */
  download(name: string): void {
    void this.panel.webview.postMessage({ download: { name, html: this.shown } });
  }

  /** Sends the hover of a thing as words, from which the page makes no markup. */
  private async say(names: string, name: string): Promise<void> {
    const markdown = await this.client.sendRequest(hoverOfName, { folder: this.source.folder, names, name });
    if (this.isClosed) return;
    const blocks = markdown === null ? [] : blocksOf(markdown);
    void this.panel.webview.postMessage({ hovered: { names, name, blocks } });
  }

  private async leadTo(chosen: Chosen): Promise<void> {
    const { asUri, asLocation } = this.client.protocol2CodeConverter;
    if ('uri' in chosen) {
      const file = asUri(chosen.uri);
      if (!isOfSite(file, asUri(this.source.folder))) return;
      const start = new vscode.Position(chosen.line, chosen.character);
      await showAt(file, new vscode.Range(start, start));
      return;
    }
    const { names, name } = chosen;
    const place = await this.client.sendRequest(placeOfName, { folder: this.source.folder, names, name });
    if (place === null) return;
    const { uri: file, range } = asLocation(place);
    await showAt(file, range);
  }
}

/** Shows a place in the column where the file is already open, or else in the first. */
async function showAt(file: vscode.Uri, selection: vscode.Range): Promise<void> {
  const open = vscode.window.tabGroups.all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof vscode.TabInputText && input.uri.toString() === file.toString()),
  );
  await vscode.window.showTextDocument(file, { viewColumn: open?.viewColumn ?? vscode.ViewColumn.One, selection });
}
