/** The language server: thin, and the same for every host. */

import {
  type CodeAction, type CodeActionParams, CodeActionKind, type Connection, FileChangeType, type Hover, type HoverParams, type InitializeParams,
  type InitializeResult, TextDocumentSyncKind,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { hover } from '../features/hover/hover.ts';
import { type Diagnostic } from '../rules/rule.ts';
import { fileOf } from '../site/item.ts';
import { Addresses, Converter, linesOf } from './convert.ts';
import { type FileSource, type OpenSite, Sites } from './sites.ts';

export function serve(connection: Connection, source: FileSource): void {
  const sites = new Sites(source);
  const documents = new Map<string, TextDocument>();
  /** What was published last, so that a file whose problems stay the same is left alone. */
  const published = new Map<string, string>();
  const waiting = new Set<OpenSite>();
  const addresses = new Addresses();

  connection.onInitialize((_params: InitializeParams): InitializeResult => ({
    capabilities: {
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
      hoverProvider: true,
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
    },
    serverInfo: { name: 'plumbline' },
  }));

  /** Checks after whatever else has arrived by now: of a burst of edits only the last is checked. */
  const checkSoon = (site: OpenSite): void => {
    if (waiting.has(site)) return;
    waiting.add(site);
    setImmediate(() => {
      waiting.delete(site);
      publish(site);
    });
  };

  const publish = (site: OpenSite): void => {
    const { diagnostics, files, plan } = site.now();
    const convert = new Converter(files, addresses);
    const byUri = new Map<string, Diagnostic[]>(files.map((file) => [file.uri, []]));
    for (const diagnostic of diagnostics) byUri.get(fileOf(diagnostic.at).uri)?.push(diagnostic);
    for (const [uri, own] of byUri) {
      const version = documents.get(uri)?.version;
      const converted = own.map((diagnostic) => convert.diagnostic(diagnostic));
      const text = JSON.stringify([version, converted]);
      if (published.get(uri) === text) continue;
      published.set(uri, text);
      void connection.sendDiagnostics({ uri: addresses.shown(uri), diagnostics: converted, ...(version !== undefined && { version }) });
    }
    const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
    const warnings = diagnostics.filter(({ severity }) => severity === 'warning').length;
    void connection.sendNotification('plumbline/status', {
      site: plan.site.name ?? '',
      folder: site.folder,
      devices: plan.site.devices.length,
      streams: plan.site.streams.length,
      errors,
      warnings,
    });
  };

  const clear = (uri: string): void => {
    published.delete(uri);
    void connection.sendDiagnostics({ uri: addresses.shown(uri), diagnostics: [] });
  };

  connection.onDidOpenTextDocument(({ textDocument: { uri: written, languageId, version, text } }) => {
    const uri = addresses.take(written);
    if (!uri.endsWith('.site.yaml')) return;
    documents.set(uri, TextDocument.create(uri, languageId, version, text));
    const site = sites.opened(uri, text);
    void site.loaded.then(() => checkSoon(site), (error: unknown) => connection.console.error(String(error)));
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri: written, version }, contentChanges }) => {
    const uri = addresses.take(written);
    const document = documents.get(uri);
    const site = sites.of(uri);
    if (document === undefined || site === undefined) return;
    TextDocument.update(document, contentChanges, version);
    site.set(uri, document.getText());
    checkSoon(site);
  });

  connection.onDidCloseTextDocument(async ({ textDocument }) => {
    const uri = addresses.take(textDocument.uri);
    documents.delete(uri);
    const closed = await sites.closed(uri);
    if (closed === undefined) return;
    if (closed.gone) for (const file of closed.site.texts.files) clear(file.uri);
    else checkSoon(closed.site);
  });

  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri: written, type } of changes) {
      const uri = addresses.take(written);
      const site = await sites.changedOnDisk(uri, type === FileChangeType.Deleted);
      if (site === undefined) continue;
      if (type === FileChangeType.Deleted) clear(uri);
      checkSoon(site);
    }
  });

  connection.onHover(async ({ textDocument, position }: HoverParams): Promise<Hover | null> => {
    const uri = addresses.take(textDocument.uri);
    const site = sites.of(uri);
    await site?.loaded;
    const checked = site?.now();
    const file = checked?.files.find((candidate) => candidate.uri === uri);
    if (checked === undefined || file === undefined) return null;
    const found = hover(checked, file, linesOf(file).offset(position.line, position.character));
    if (found === undefined) return null;
    return { contents: { kind: 'markdown', value: found.markdown }, range: new Converter(checked.files, addresses).range(found.at) };
  });

  connection.onCodeAction(async ({ textDocument, range }: CodeActionParams): Promise<CodeAction[]> => {
    const uri = addresses.take(textDocument.uri);
    const site = sites.of(uri);
    await site?.loaded;
    const checked = site?.now();
    if (checked === undefined) return [];
    const convert = new Converter(checked.files, addresses);
    return checked.diagnostics
      .filter(({ at }) => fileOf(at).uri === uri)
      .flatMap((diagnostic) => {
        const told = convert.diagnostic(diagnostic);
        const { start, end } = told.range;
        const touches =
          (start.line < range.end.line || (start.line === range.end.line && start.character <= range.end.character)) &&
          (end.line > range.start.line || (end.line === range.start.line && end.character >= range.start.character));
        if (!touches) return [];
        return (diagnostic.fixes?.() ?? []).map((fix, index) => convert.codeAction(fix, told, index === 0));
      });
  });

  connection.listen();
}
