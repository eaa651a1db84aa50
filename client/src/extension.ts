// The extension where there is Node: the server is a process, over Node's own channel between processes.
import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientParts, run } from './client.ts';
import { writeOnDisk } from './write-on-disk.ts';

/** Writes to its channel where the stock client would pop up a message. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

export function activate(context: vscode.ExtensionContext): void {
  const { log, options } = clientParts(context);
  const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
  run(context, new QuietClient('plumbline', 'Plumbline', server, options), log, writeOnDisk);
}
