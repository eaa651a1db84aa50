// The language client: one server for all sites of the window, in a process or a worker of its own.
import * as vscode from 'vscode';
import { CloseAction, ErrorAction, RevealOutputChannelOn } from 'vscode-languageclient';
import type { BaseLanguageClient, ErrorHandler, LanguageClientOptions } from 'vscode-languageclient';
import { registerAudits } from './audit.ts';
import { registerCommands } from './commands.ts';
import { followCursor } from './cursor.ts';
import { serveFiles } from './files.ts';
import { spacedHovers } from './hovers.ts';
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

/** VS Code's own command: asks for completions again where a key has been put in and its value is due. */
const suggestCommand = 'editor.action.triggerSuggest';

/** What each kind of client is made with, beside its server. */
export interface ClientParts {
  readonly log: vscode.LogOutputChannel;
  readonly options: LanguageClientOptions;
}

/** Its log takes what client and server have to say, the server's standard error included. */
export function clientParts(context: vscode.ExtensionContext): ClientParts {
  const log = vscode.window.createOutputChannel('Plumbline', { log: true });
  // Of a folder that is deleted only the folder itself is told.
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
 * Starts the server, with all that shows in the editor; ends with the extension.
 * Other extensions are not kept waiting until the server is there: what is asked of the client before waits by itself.
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
  // Of a site that no file was opened of the server does not tell.
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
    showStatus(client, (folder) => changed.fire(folder)),
    registerCommands(client, log, write),
    // Before the pages: what is made must be known to be old when its page asks for it.
    registerMaking(client, pages, changed.event, write),
    pages,
    changed.event((folder) => pages.siteChanged(folder)),
    registerReport(client, pages),
    registerDrawings(client, pages),
    registerComparison(client, pages),
    colourReferences(changed.event),
    vscode.commands.registerCommand(printCommand, async () => {
      if (pages.active !== undefined) await print(pages.active, context.globalStorageUri, write);
    }),
    registerRulePages(rulePagesOf(context), log),
    registerAudits(client),
  );
  void startQuietly(client);
}

/** Restarts a server that ended by itself, but not one that has done so five times in three minutes. */
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
