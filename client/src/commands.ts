// The commands of the palette that concern the language server itself.
import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { startQuietly } from './client.ts';

export const commands = { restartServer: 'plumbline.restartServer', showOutput: 'plumbline.showOutput' } as const;

export function registerCommands(client: LanguageClient, log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand(commands.restartServer, async () => {
      log.info('The language server is restarted, as asked.');
      if (client.isRunning()) await client.stop().catch((error: unknown) => client.error('It did not stop.', error));
      await startQuietly(client);
    }),
    vscode.commands.registerCommand(commands.showOutput, () => log.show()),
  );
}
