// The commands of the palette.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { registerFillIn } from './fill-in.ts';
import { newSite } from './new-site.ts';
import { startQuietly } from './start-quietly.ts';
import type { WriteTexts } from './write-whole.ts';

export const commands = {
  newSite: 'plumbline.newSite',
  restartServer: 'plumbline.restartServer',
  showOutput: 'plumbline.showOutput',
} as const;

export function registerCommands(
  client: BaseLanguageClient,
  log: vscode.LogOutputChannel,
  write: WriteTexts,
): vscode.Disposable {
  return vscode.Disposable.from(
    registerFillIn(client),
    vscode.commands.registerCommand(commands.newSite, () => newSite(write)),
    vscode.commands.registerCommand(commands.restartServer, async () => {
      log.info('The language server is restarted, as asked.');
      if (client.isRunning()) await client.stop().catch((error: unknown) => client.error('It did not stop.', error));
      await startQuietly(client);
    }),
    vscode.commands.registerCommand(commands.showOutput, () => log.show()),
  );
}
