// The language client: one server for all sites of the window, over Node's own channel between processes.
import * as vscode from 'vscode';
import { CloseAction, ErrorAction, LanguageClient, RevealOutputChannelOn, TransportKind } from 'vscode-languageclient/node';
import type { ErrorHandler } from 'vscode-languageclient/node';
import { answerSettings, serverSettings } from './settings.ts';

const sitePattern = '**/*.site.yaml';

/** What the server is asked about; documents of any scheme, so that those of a virtual workspace are too. */
export const siteDocuments = [{ language: 'yaml', pattern: sitePattern }] as const;

/** A client that writes to its channel where the stock one would pop up a message. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

/**
 * A client, not started yet.
 *
 * @param serverModule path of the bundled server
 * @param log takes what client and server have to say, the server's standard error included
 */
export function createClient(serverModule: string, log: vscode.LogOutputChannel): LanguageClient {
  const watcher = vscode.workspace.createFileSystemWatcher(sitePattern);
  const client: LanguageClient = new QuietClient('plumbline', 'Plumbline', {
    module: serverModule,
    transport: TransportKind.ipc,
  }, {
    documentSelector: siteDocuments.map((filter) => ({ ...filter })),
    diagnosticCollectionName: 'plumbline',
    outputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    synchronize: { fileEvents: watcher },
    initializationOptions: serverSettings,
    initializationFailedHandler: (error) => {
      log.error('The language server could not start.', error);
      return false;
    },
    errorHandler: restartAfterCrash(log),
    middleware: { workspace: { configuration: answerSettings } },
  });
  return client;
}

/** Starts the server; a failure is in the output channel and in the status item, and nowhere else. */
export async function startQuietly(client: LanguageClient): Promise<void> {
  await client.start().catch((error: unknown) => client.error('The language server did not start.', error));
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
      log.error(`The language server ended ${most} times in three minutes and is left alone. ` +
        'The command "Plumbline: Restart Language Server" starts it again.');
      crashes = [];
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}
