// The site of a command: that of the file chosen in the explorer, or else of the active file.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

const suffix = '.site.yaml';

/** A file of the site; `undefined` where there is none. */
export function siteFile(chosen: unknown): vscode.Uri | undefined {
  const uri = chosen instanceof vscode.Uri ? chosen : vscode.window.activeTextEditor?.document.uri;
  return uri?.path.endsWith(suffix) === true ? uri : undefined;
}

/** Address of a file's folder in the server's form: without a slash at its end. */
export function folderOf(client: BaseLanguageClient, file: vscode.Uri): string {
  const address = client.code2ProtocolConverter.asUri(file);
  return address.slice(0, address.lastIndexOf('/'));
}

/** Whether two addresses, in any form, are of the same folder. */
export function isSameFolder(one: string, other: string): boolean {
  return vscode.Uri.parse(one).toString() === vscode.Uri.parse(other).toString();
}
