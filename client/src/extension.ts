// The extension: starts the language server and shows how it is.
import * as vscode from 'vscode';
import { createClient, startQuietly } from './client.ts';
import { registerCommands } from './commands.ts';
import { showStatus } from './status.ts';

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const log = vscode.window.createOutputChannel('Plumbline', { log: true });
  const client = createClient(context.asAbsolutePath('dist/server.cjs'), log);
  context.subscriptions.push(log, client, showStatus(client), registerCommands(client, log));
  await startQuietly(client);
}
