/** The language server, the same for every host: puts its parts together. */

import {
  type Connection,
  DidChangeWorkspaceFoldersNotification,
  type FileOperationRegistrationOptions,
  type InitializeParams,
  type InitializeResult,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import type { Findings } from '../lint/held-back.ts';
import { AUDITS } from './audit-request.ts';
import { AuditResults, type Audits } from './audit-results.ts';
import { CheckScheduler } from './check-scheduler.ts';
import { Addresses } from './addresses.ts';
import { type Documents, followDocuments } from './documents.ts';
import { followSettings } from './follow-settings.ts';
import { auditHandler } from './handlers/audit.ts';
import { besideTextHandler } from './handlers/beside-text.ts';
import { codeActionHandler } from './handlers/code-action.ts';
import { completionHandler } from './handlers/completion.ts';
import { fillInHandler } from './handlers/fill-in.ts';
import { hoverHandler } from './handlers/hover.ts';
import { makeHandler } from './handlers/make.ts';
import { pageHandler } from './handlers/page.ts';
import { namesHandler } from './handlers/names.ts';
import { structureHandler } from './handlers/structure.ts';
import { symbolsHandler } from './handlers/symbols.ts';
import { tokensHandler } from './handlers/tokens.ts';
import { Publisher } from './publisher.ts';
import { RulePages } from './rule-pages.ts';
import { isOfTheSchema } from './schema-rules.ts';
import { type Handler, type LastCommit, Session } from './session.ts';
import { readSettings, readStartOptions } from './settings.ts';
import { type FileSource, type OpenSite, Sites } from './sites.ts';
import { Typing } from './typing.ts';
import { Workspace, addressesOf } from './workspace.ts';
import { WorkspaceSites } from './workspace-sites.ts';

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
  pageHandler,
  auditHandler,
];

/** When a folder is deleted, watchers do not always report the files in it. */
const FOLDERS: FileOperationRegistrationOptions = { filters: [{ pattern: { glob: '**', matches: 'folder' } }] };

/** Optional parts of a host. */
export interface HostParts {
  /** Address of the folder with the pages of the rules. */
  readonly rulePages?: string | undefined;
  /** Reads files for audits. */
  readonly audits?: () => Promise<Audits>;
  /** Reads sites as they are in the last commit of git. */
  readonly lastCommit?: LastCommit;
}

export function serve(connection: Connection, source: FileSource, parts: HostParts = {}): void {
  const { rulePages, audits, lastCommit } = parts;
  const workspace = new Workspace();
  const sites = new Sites(source, {
    keeps: (folder) => workspace.holds(folder),
    forget: (site) => forget(site),
    late: (site) => checkSoon(site),
    failed: (error) => connection.console.error(String(error)),
  });
  const documents: Documents = new Map();
  const addresses = new Addresses();
  const pages = new RulePages(rulePages);
  const publisher = new Publisher(connection, addresses, (uri) => documents.get(uri)?.version);
  const checks = new CheckScheduler<OpenSite>((site, isEnough) => checkAndPublish(site, isEnough), isClosed);
  // A check may end after its site has been released.
  const checkSoon = (site: OpenSite): void => {
    if (sites.has(site)) checks.schedule(site);
  };
  const typing = new Typing(checkSoon);
  const forget = (site: OpenSite): void => {
    checks.forget(site);
    typing.forget(site);
    auditResults.clear(site.folder);
    publisher.retract(site.folder);
    for (const uri of site.uris) addresses.forget(uri);
  };
  const recheck = (folder: string): void => {
    const site = sites.in(folder);
    if (site !== undefined) checkSoon(site);
  };
  const unopened = new WorkspaceSites({
    source,
    sites,
    workspace,
    checkSoon,
    idle: () => checks.idle(),
    log: (message) => connection.console.error(message),
  });
  const auditResults = new AuditResults((folder) => sites.in(folder)?.now().plan, recheck);
  const shown = (folder: string): Findings | undefined => {
    const site = sites.in(folder);
    return site === undefined ? undefined : typing.last(site);
  };
  const session = new Session({
    connection,
    sites,
    addresses,
    pages,
    auditResults,
    audits,
    lastCommit,
    recheck,
    shown,
  });

  const checkAndPublish = (site: OpenSite, isEnough: () => boolean): boolean => {
    const checked = site.now();
    if (isEnough() || !checked.proceed(isEnough)) return false;
    const diagnostics = typing.diagnosticsToShow(site, checked);
    publisher.publish({
      folder: site.folder,
      checked,
      diagnostics: session.settings.schemaFeatures ? diagnostics : diagnostics.filter((one) => !isOfTheSchema(one)),
      audited: auditResults.of(site.folder, checked),
      convert: session.converter(checked.files),
    });
    return true;
  };

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    const { capabilities, initializationOptions } = params;
    session.client = capabilities;
    workspace.begin(params);
    // Not before: the library installs its own handler at the start, which this one replaces.
    connection.onNotification(DidChangeWorkspaceFoldersNotification.type, ({ event: { added, removed } }) => {
      workspace.change(added, removed);
      sites.tidy();
      for (const folder of addressesOf(added)) unopened.look(folder);
    });
    session.options = readStartOptions(initializationOptions);
    session.settings = readSettings(initializationOptions);
    if (session.options.rulePages !== undefined) pages.moveTo(session.options.rulePages);
    const own: ServerCapabilities = {
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
      workspace: {
        workspaceFolders: { supported: true, changeNotifications: true },
        fileOperations: { didDelete: FOLDERS, didRename: FOLDERS },
      },
    };
    if (audits !== undefined) own.experimental = { [AUDITS]: true };
    return {
      capabilities: Object.assign(own, ...handlers.map((handler) => handler.capabilities)),
      serverInfo: { name: 'plumbline' },
    };
  });

  const takeSettings = followSettings(session, () => {
    for (const site of sites.all()) checkSoon(site);
  });
  connection.onInitialized(async () => {
    for (const folder of workspace.all) unopened.look(folder);
    await takeSettings();
  });
  followDocuments(documents, session, { checkSoon, typing, look: (folder) => unopened.look(folder) });
  for (const handler of handlers) handler.register(session);
  connection.listen();
}

function isClosed({ open }: OpenSite): boolean {
  return open.size === 0;
}
