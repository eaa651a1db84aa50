// Writes files whole: a reader, or a failure, finds all of the old text or all of the new.
import * as vscode from 'vscode';

export interface Text {
  readonly uri: vscode.Uri;
  readonly text: string;
}

/** Writes all of them, or none. Makes the folders that are missing. @throws NotWritten */
export type WriteTexts = (texts: readonly Text[]) => Promise<void>;

/** Its message says what could not be written, and why. */
export class NotWritten extends Error {}

/** Writes to any file system of the editor. All texts are written beside their targets before the first rename. */
export const writeByEditor: WriteTexts = async (texts) => {
  const { fs } = vscode.workspace;
  const own = Math.random().toString(36).slice(2, 10);
  const pairs = texts.map(({ uri, text }) => ({ uri, text, beside: uri.with({ path: `${uri.path}.${own}.new` }) }));
  const undo: (() => Thenable<void>)[] = [];
  try {
    const before = await Promise.all(texts.map(({ uri }) => present(uri)));
    for (const { beside, text } of pairs) {
      undo.push(() => fs.delete(beside));
      await fs.writeFile(beside, new TextEncoder().encode(text));
    }
    for (const [index, { uri, beside }] of pairs.entries()) {
      const old = before[index];
      await fs.rename(beside, uri, { overwrite: true });
      undo.push(() => (old === undefined ? fs.delete(uri) : fs.writeFile(uri, old)));
    }
  } catch (error) {
    for (const step of undo.reverse()) await tried(step);
    if (!(error instanceof vscode.FileSystemError)) throw error;
    throw new NotWritten(`Nothing was written: ${error.message}`);
  }
};

async function present(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(uri);
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === 'FileNotFound') return undefined;
    throw error;
  }
}

/** Tries to undo a step; a file that was not begun, or was renamed, is missing. */
async function tried(step: () => Thenable<void>): Promise<void> {
  try {
    await step();
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError)) throw error;
  }
}
