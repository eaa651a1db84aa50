// The language client: one server for all sites of the window, in a process or a worker of its own.
import * as vscode from 'vscode';
import { CloseAction, ErrorAction, RevealOutputChannelOn } from 'vscode-languageclient';
import type { BaseLanguageClient, ErrorHandler, LanguageClientOptions } from 'vscode-languageclient';
import { registerAudits } from './audit.ts';
import { registerCommands } from './commands.ts';
import { followCursor } from './cursor.ts';
import { serveFiles } from './files.ts';
import { spacedHovers } from './hovers.ts';
import { indentBelowKeys } from './indent-below-keys.ts';
import { registerMaking } from './made/commands.ts';
import { noEditorWords } from './no-editor-words.ts';
import { registerComparison } from './pages/comparison.ts';
import { registerDrawings } from './pages/drawing.ts';
import { Pages } from './pages/pages.ts';
import { print, printCommand } from './pages/print.ts';
import { registerReport } from './pages/report.ts';
import { colourReferences } from './reference-colour.ts';
import { registerRulePages, rulePageLink, rulePagesOf } from './rule-pages.ts';
import { answerSettings, serverSettings } from './settings.ts';
import type { WriteTexts } from './write-whole.ts';
import { siteDocuments, sitePattern } from './site-documents.ts';
import { startQuietly } from './start-quietly.ts';
import { showStatus } from './status.ts';

/** VS Code's own command for completions, run where a key was inserted and its value comes next. */
const suggestCommand = 'editor.action.triggerSuggest';

/** The parts of each kind of client beside its server. */
export interface ClientParts {
  readonly log: vscode.LogOutputChannel;
  readonly options: LanguageClientOptions;
}

/** Its log takes messages of client and server, and the server's standard error. */
export function clientParts(context: vscode.ExtensionContext): ClientParts {
  const log = vscode.window.createOutputChannel('Plumbline', { log: true });
  // When a folder is deleted, only the folder itself is reported.
  const watchers = [
    vscode.workspace.createFileSystemWatcher(sitePattern),
    vscode.workspace.createFileSystemWatcher('**', true, true),
  ];
  context.subscriptions.push(log, ...watchers);
  return {
    log,
    options: {
      documentSelector: siteDocuments.map((filter) => ({ ...filter })),
      diagnosticCollectionName: 'plumbline',
      outputChannel: log,
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      synchronize: { fileEvents: watchers },
      initializationOptions: () => ({ ...serverSettings(), rulePages: rulePageLink, suggestCommand }),
      initializationFailedHandler: (error) => {
        log.error('The language server could not start.', error);
        return false;
      },
      errorHandler: restartAfterCrash(log),
      middleware: { ...spacedHovers, ...noEditorWords, workspace: { configuration: answerSettings } },
    },
  };
}

/**
 * Starts the server and all that shows in the editor; ends with the extension.
 * Does not wait for the server, which would delay other extensions: earlier requests wait by themselves.
 */
export function run(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
  log: vscode.LogOutputChannel,
  write: WriteTexts,
): void {
  const changed = new vscode.EventEmitter<string>();
  const pages = new Pages(client);
  const watcher = vscode.workspace.createFileSystemWatcher(sitePattern);
  // The server reports nothing of a site without an open file.
  const onDisk = (uri: vscode.Uri): void => changed.fire(vscode.Uri.joinPath(uri, '..').toString());
  context.subscriptions.push(
    client,
    changed,
    watcher,
    watcher.onDidChange(onDisk),
    watcher.onDidCreate(onDisk),
    watcher.onDidDelete(onDisk),
    serveFiles(client),
    followCursor(client),
    indentBelowKeys(),
    showStatus(client, (folder) => changed.fire(folder)),
    registerCommands(client, log, write),
    // Before the pages: made files must be marked as stale before their page asks for them.
    registerMaking(client, pages, changed.event, write),
    pages,
    changed.event((folder) => pages.siteChanged(folder)),
    registerReport(client, pages),
    registerDrawings(client, pages),
    registerComparison(client, pages),
    colourReferences(changed.event),
    vscode.commands.registerCommand(printCommand, async () => {
      const page = pages.inSight;
      if (page !== undefined) await print(page, context.globalStorageUri, write);
    }),
    registerRulePages(rulePagesOf(context), log),
    registerAudits(client),
  );
  void startQuietly(client);
}

/** Restarts a server that ended by itself, but not after five times in three minutes. */
function restartAfterCrash(log: vscode.LogOutputChannel): ErrorHandler {
  const most = 5;
  const within = 3 * 60_000;
  let crashes: number[] = [];
  return {
    error: (_error, _message, count) => ({
      action: count !== undefined && count <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown,
      handled: true,
    }),
    closed: () => {
      const now = Date.now();
      crashes = [...crashes.filter((time) => now - time < within), now];
      if (crashes.length < most) return { action: CloseAction.Restart, handled: true };
      log.error(
        `The language server ended ${most} times in three minutes and is left alone. ` +
          'The command “Plumbline: Restart language server” starts it again.',
      );
      crashes = [];
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}
