// The command that writes a small site to start from, as `plumbline new` does.
import * as vscode from 'vscode';
import { NEW_SITES, NEW_SITE_FILE } from '../../server/src/site/new-site/new-site.ts';
import { ownTimeZone } from '../../server/src/site/time-zone.ts';
import { plain } from './plain.ts';
import { NotWritten, type WriteTexts } from './write-whole.ts';

const suffix = '.site.yaml';

/** Asks what to start from and where, writes the site and opens it. Overwrites nothing. */
export async function newSite(write: WriteTexts): Promise<void> {
  const layout = await vscode.window.showQuickPick(
    Object.values(NEW_SITES).map(({ title, description, text }) => ({ label: title, detail: description, text })),
    { title: 'New site', placeHolder: 'What to start from', ignoreFocusOut: true },
  );
  const folder = layout === undefined ? undefined : await askForFolder();
  if (layout === undefined || folder === undefined) return;
  const file = vscode.Uri.joinPath(folder, NEW_SITE_FILE);
  try {
    await write([{ uri: file, text: layout.text(ownTimeZone()) }]);
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError || error instanceof NotWritten)) throw error;
    void vscode.window.showErrorMessage(plain(error.message));
    return;
  }
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file));
}

/** A folder without a site in it; `undefined` where the user cancels. */
async function askForFolder(): Promise<vscode.Uri | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length === 0) return askOnDisk();
  const within = folders.length === 1 ? folders[0] : await vscode.window.showWorkspaceFolderPick();
  if (within === undefined) return undefined;
  const path = await vscode.window.showInputBox({
    title: 'New site',
    prompt: `Folder for the new site, inside ‘${within.name}’. Leave it empty for that folder itself.`,
    value: (await siteIn(within.uri)) === undefined ? '' : 'home',
    validateInput: (written) => objection(within.uri, written.trim()),
    // Otherwise a page that takes the focus when it is redrawn, such as the walkthrough, would close this.
    ignoreFocusOut: true,
  });
  return path === undefined ? undefined : vscode.Uri.joinPath(within.uri, path.trim());
}

async function objection(within: vscode.Uri, path: string): Promise<string | undefined> {
  if (/^[/\\]|^[a-z]:/i.test(path) || path.split(/[/\\]/).includes('..'))
    return 'Choose a folder inside the one that is open.';
  const present = await siteIn(vscode.Uri.joinPath(within, path));
  return present === undefined ? undefined : `${present} is there already. A folder holds one site: choose another.`;
}

async function askOnDisk(): Promise<vscode.Uri | undefined> {
  const chosen = await vscode.window.showOpenDialog({
    title: 'New site',
    openLabel: 'Write it here',
    canSelectFolders: true,
    canSelectFiles: false,
    canSelectMany: false,
  });
  const folder = chosen?.[0];
  if (folder === undefined) return undefined;
  const present = await siteIn(folder);
  if (present === undefined) return folder;
  await vscode.window.showWarningMessage(`${present} is there already. A folder holds one site: choose another.`);
  return undefined;
}

/** The name of a site file in a folder, which may not exist. */
async function siteIn(folder: vscode.Uri): Promise<string | undefined> {
  try {
    return (await vscode.workspace.fs.readDirectory(folder))
      .map(([name]) => name)
      .find((name) => name.endsWith(suffix));
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === 'FileNotFound') return undefined;
    throw error;
  }
}
