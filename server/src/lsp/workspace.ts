/** The folders of the client's workspace, whose findings are shown without an open file too. */

import type { InitializeParams, WorkspaceFolder } from 'vscode-languageserver-protocol';
import { oneForm } from './addresses.ts';
import { isAtOrBelow } from './sites.ts';

export class Workspace {
  private readonly folders = new Set<string>();

  /** Takes the folders that a client sends at its start; before LSP 3.6 there was only one. */
  begin({ workspaceFolders, rootUri }: InitializeParams): void {
    const folders = workspaceFolders ?? (rootUri === null ? [] : [{ uri: rootUri, name: '' }]);
    this.change(folders, []);
  }

  change(added: readonly WorkspaceFolder[], removed: readonly WorkspaceFolder[]): void {
    for (const folder of addressesOf(removed)) this.folders.delete(folder);
    for (const folder of addressesOf(added)) this.folders.add(folder);
  }

  get all(): Iterable<string> {
    return this.folders;
  }

  holds(folder: string): boolean {
    return [...this.folders].some((own) => isAtOrBelow(folder, own));
  }
}

/** The one form of each folder's address, without a slash at its end; of those that have one. */
export function addressesOf(folders: readonly WorkspaceFolder[]): string[] {
  return folders.flatMap(({ uri }) => oneForm(uri)?.replace(/\/$/, '') ?? []);
}
