// A general YAML extension: starts yaml-language-server, and gives it the schemas that other extensions contribute:
// `json/schemaAssociations` and `workspace/configuration`, of that server's own sources.
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';

interface Contributed {
  readonly fileMatch: string;
  readonly url: string;
}

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const module = process.env['PLUMBLINE_YAML_SERVER'];
  if (!module) throw new Error('PLUMBLINE_YAML_SERVER names no server');
  const client = new LanguageClient(
    'yaml',
    'YAML',
    { module, transport: TransportKind.ipc },
    {
      documentSelector: [{ language: 'yaml' }],
      synchronize: { configurationSection: ['yaml'] },
    },
  );
  context.subscriptions.push(client);
  await client.start();
  const associations = vscode.extensions.all.flatMap((extension) => {
    const contributed =
      (extension.packageJSON as { contributes?: { yamlValidation?: Contributed[] } }).contributes?.yamlValidation ?? [];
    return contributed.map(({ fileMatch, url }) => ({
      fileMatch: [fileMatch],
      uri: vscode.Uri.joinPath(extension.extensionUri, url).toString(),
    }));
  });
  await client.sendNotification('json/schemaAssociations', associations);
}
