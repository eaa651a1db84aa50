/** The language server: thin, and the same for every host. */

import {
  type Connection,
  DidChangeConfigurationNotification,
  FileChangeType,
  type InitializeParams,
  type InitializeResult,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { fileOf } from '../site/item.ts';
import type { Diagnostic } from '../lint/rule.ts';
import { AUDITS } from './audit-request.ts';
import { AuditResults, type Audits } from './audit-results.ts';
import { Addresses } from './convert.ts';
import { auditHandler } from './handlers/audit.ts';
import { besideTextHandler } from './handlers/beside-text.ts';
import { codeActionHandler } from './handlers/code-action.ts';
import { completionHandler } from './handlers/completion.ts';
import { fillInHandler } from './handlers/fill-in.ts';
import { hoverHandler } from './handlers/hover.ts';
import { makeHandler } from './handlers/make.ts';
import { namesHandler } from './handlers/names.ts';
import { structureHandler } from './handlers/structure.ts';
import { symbolsHandler } from './handlers/symbols.ts';
import { tokensHandler } from './handlers/tokens.ts';
import { RulePages } from './rule-pages.ts';
import { type Handler, Session } from './session.ts';
import { readSettings, readStartOptions } from './settings.ts';
import { isOfTheSchema } from './schema-rules.ts';
import { type FileSource, type OpenSite, Sites } from './sites.ts';
import { Soon } from './soon.ts';

const handlers: readonly Handler[] = [
  hoverHandler,
  completionHandler,
  namesHandler,
  symbolsHandler,
  structureHandler,
  tokensHandler,
  besideTextHandler,
  codeActionHandler,
  fillInHandler,
  makeHandler,
  auditHandler,
];

/** What a host has besides. */
export interface HostParts {
  /** Address of the folder with the pages of the rules. */
  readonly rulePages?: string | undefined;
  /** Reads files for audits. */
  readonly audits?: () => Promise<Audits>;
}

export function serve(connection: Connection, source: FileSource, { rulePages, audits }: HostParts = {}): void {
  const sites = new Sites(source);
  const documents = new Map<string, TextDocument>();
  /** What was published last, so that a file whose problems stay the same is left alone. */
  const published = new Map<string, string>();
  const checks = new Map<OpenSite, Soon>();
  const addresses = new Addresses();
  const pages = new RulePages(rulePages);
  const recheck = (folder: string): void => {
    const site = sites.in(folder);
    if (site !== undefined) checkSoon(site);
  };
  const auditResults = new AuditResults((folder) => sites.in(folder)?.now().plan, recheck);
  const session = new Session({ connection, sites, addresses, pages, auditResults, audits, recheck });

  connection.onInitialize(({ capabilities, initializationOptions }: InitializeParams): InitializeResult => {
    session.client = capabilities;
    session.options = readStartOptions(initializationOptions);
    session.settings = readSettings(initializationOptions);
    pages.folder = session.options.rulePages ?? pages.folder;
    const own: ServerCapabilities = { textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental } };
    if (audits !== undefined) own.experimental = { [AUDITS]: true };
    return {
      capabilities: Object.assign(own, ...handlers.map((handler) => handler.capabilities)),
      serverInfo: { name: 'plumbline' },
    };
  });

  connection.onInitialized(async () => {
    if (session.client.workspace?.didChangeConfiguration?.dynamicRegistration === true) {
      await connection.client.register(DidChangeConfigurationNotification.type, { section: 'plumbline' });
    }
    if (session.client.workspace?.configuration === true) await takeSettings();
  });

  connection.onDidChangeConfiguration(({ settings }) => takeSettings(settings?.plumbline ?? settings));

  /** Those of the client where it can be asked, else what it has `sent`. */
  const takeSettings = async (sent?: unknown): Promise<void> => {
    const before = session.settings;
    const asked: unknown =
      session.client.workspace?.configuration === true
        ? await connection.workspace.getConfiguration('plumbline')
        : sent;
    session.settings = readSettings(asked, before);
    const able = session.client.workspace;
    if (able?.inlayHint?.refreshSupport === true) connection.languages.inlayHint.refresh();
    if (able?.codeLens?.refreshSupport === true) void connection.sendRequest('workspace/codeLens/refresh');
    if (before.schemaFeatures !== session.settings.schemaFeatures) for (const site of sites.all()) checkSoon(site);
  };

  const checkSoon = (site: OpenSite): void => {
    let soon = checks.get(site);
    if (soon === undefined) checks.set(site, (soon = new Soon((enough) => publish(site, enough))));
    soon.arm();
  };

  /** Whether it came to publish: where it is `enough` before all rules have run, it goes on when it is called again. */
  const publish = (site: OpenSite, enough: () => boolean): boolean => {
    const checked = site.now();
    if (enough() || !checked.proceed(enough)) return false;
    const { diagnostics, files, plan } = checked;
    const told = session.settings.schemaFeatures
      ? diagnostics
      : diagnostics.filter((diagnostic) => !isOfTheSchema(diagnostic));
    const convert = session.converter(files);
    const byUri = new Map<string, Diagnostic[]>(files.map((file) => [file.uri, []]));
    for (const diagnostic of [...told, ...auditResults.of(site.folder, checked)])
      byUri.get(fileOf(diagnostic.at).uri)?.push(diagnostic);
    for (const [uri, own] of byUri) {
      const version = documents.get(uri)?.version;
      const converted = own.map((diagnostic) => convert.diagnostic(diagnostic));
      const text = JSON.stringify([version, converted]);
      if (published.get(uri) === text) continue;
      published.set(uri, text);
      void connection.sendDiagnostics({
        uri: addresses.shown(uri),
        diagnostics: converted,
        ...(version !== undefined && { version }),
      });
    }
    void connection.sendNotification('plumbline/status', {
      site: plan.site.name ?? '',
      folder: site.folder,
      devices: plan.site.devices.length,
      streams: plan.site.streams.length,
      errors: told.filter(({ severity }) => severity === 'error').length,
      warnings: told.filter(({ severity }) => severity === 'warning').length,
    });
    return true;
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
    void site.loaded.then(
      () => checkSoon(site),
      (error: unknown) => connection.console.error(String(error)),
    );
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri: written, version }, contentChanges }) => {
    const uri = addresses.take(written);
    const document = documents.get(uri);
    const site = sites.of(uri);
    if (document === undefined || site === undefined) return;
    TextDocument.update(document, contentChanges, version);
    site.change(uri, () => document.getText());
    checkSoon(site);
  });

  connection.onDidCloseTextDocument(async ({ textDocument }) => {
    const uri = addresses.take(textDocument.uri);
    documents.delete(uri);
    session.closed(uri);
    const closed = await sites.closed(uri);
    if (closed === undefined) return;
    if (closed.gone) {
      checks.delete(closed.site);
      for (const file of closed.site.texts.files) clear(file.uri);
    } else {
      if (!closed.site.has(uri)) clear(uri);
      checkSoon(closed.site);
    }
  });

  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri: written, type } of changes) {
      const uri = addresses.take(written);
      const site = await sites.changedOnDisk(uri, type === FileChangeType.Deleted);
      if (site === undefined) continue;
      if (!site.has(uri)) clear(uri);
      checkSoon(site);
    }
  });

  for (const handler of handlers) handler.register(session);
  connection.listen();
}
