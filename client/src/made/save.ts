// Writes made files into a folder. Nothing is overwritten without asking.
import * as vscode from 'vscode';
import type { MadeFile } from '../../../server/src/make/output.ts';
import { plain } from '../plain.ts';
import { NotWritten, type WriteTexts } from '../write-whole.ts';

const overwrite = 'Overwrite';
const others = 'Write only the others';

/** @returns the written files; `undefined` where the user cancels */
export async function saveMade(
  files: readonly MadeFile[],
  folder: vscode.Uri,
  write: WriteTexts,
): Promise<readonly vscode.Uri[] | undefined> {
  const targets = files.map((file) => ({ ...file, uri: vscode.Uri.joinPath(folder, ...file.path.split('/')) }));
  let written: readonly vscode.Uri[];
  try {
    const present = await Promise.all(targets.map((target) => stateOf(target.uri, target.text)));
    const different = targets.filter((_, index) => present[index] === 'different');
    const answer = different.length === 0 ? overwrite : await askToOverwrite(different, files.length);
    if (answer === undefined) return undefined;
    const wanted = answer === others ? targets.filter((target) => !different.includes(target)) : targets;
    await write(wanted);
    written = wanted.map(({ uri }) => uri);
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError || error instanceof NotWritten)) throw error;
    void vscode.window.showErrorMessage(plain(error.message));
    return [];
  }
  const runnable = targets.filter(({ executable, uri }) => executable === true && written.includes(uri));
  const mode = runnable.length === 0 ? '' : ` Make ${namesOf(runnable)} executable before you run it: \`chmod +x\`.`;
  void vscode.window.showInformationMessage(plain(`Wrote ${counted(written.length)}. Nothing was run.${mode}`));
  return written;
}

/** @param usual the folder that is offered first */
export async function askForFolder(usual: vscode.Uri): Promise<vscode.Uri | undefined> {
  const here = {
    label: 'made',
    description: `in ${vscode.workspace.asRelativePath(vscode.Uri.joinPath(usual, '..'))}`,
  };
  const other = { label: 'Another folder…', description: '' };
  const picked = await vscode.window.showQuickPick([here, other], { title: 'Save to which folder?' });
  if (picked !== other) return picked === undefined ? undefined : usual;
  const chosen = await vscode.window.showOpenDialog({
    title: 'Save made files',
    openLabel: 'Save here',
    defaultUri: vscode.Uri.joinPath(usual, '..'),
    canSelectFolders: true,
    canSelectFiles: false,
    canSelectMany: false,
  });
  return chosen?.[0];
}

async function stateOf(uri: vscode.Uri, text: string): Promise<'absent' | 'same' | 'different'> {
  try {
    const there = await vscode.workspace.fs.readFile(uri);
    const bytes = new TextEncoder().encode(text);
    return there.length === bytes.length && there.every((byte, index) => byte === bytes[index]) ? 'same' : 'different';
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === 'FileNotFound') return 'absent';
    throw error;
  }
}

async function askToOverwrite(different: readonly MadeFile[], all: number): Promise<string | undefined> {
  return vscode.window.showWarningMessage(
    plain(
      `${different.length} of ${counted(all)} ${different.length === 1 ? 'exists' : 'exist'} with other content: ${namesOf(different)}.`,
    ),
    { modal: true },
    overwrite,
    ...(different.length < all ? [others] : []),
  );
}

function namesOf(files: readonly MadeFile[]): string {
  const names = files.slice(0, 5).map(({ path }) => path);
  return `${names.join(', ')}${files.length > names.length ? ' …' : ''}`;
}

function counted(files: number): string {
  return files === 1 ? '1 file' : `${files} files`;
}
