/** The folders of the client's workspace, whose findings are shown without an open file too. */

import type { InitializeParams, WorkspaceFolder } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
import { isAtOrBelow } from './sites.ts';

export class Workspace {
  private readonly folders = new Set<string>();

  /** Takes the folders that a client sends at its start; before LSP 3.6 there was only one. */
  begin({ workspaceFolders, rootUri }: InitializeParams): void {
    const folders = workspaceFolders ?? (rootUri === null ? [] : [{ uri: rootUri, name: '' }]);
    this.change(folders, []);
  }

  change(added: readonly WorkspaceFolder[], removed: readonly WorkspaceFolder[]): void {
    for (const { uri } of removed) this.folders.delete(plain(uri));
    for (const { uri } of added) this.folders.add(plain(uri));
  }

  get all(): Iterable<string> {
    return this.folders;
  }

  holds(folder: string): boolean {
    return [...this.folders].some((own) => isAtOrBelow(folder, own));
  }
}

/** The one form of a folder's address, without a slash at its end. */
export function plain(uri: string): string {
  return URI.parse(uri).toString().replace(/\/$/, '');
}
