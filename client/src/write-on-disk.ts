// Writes files on the disk like the command line: all of them or none, and an existing file keeps its mode.
import { Uri, workspace } from 'vscode';
import { CannotDo } from '../../server/src/machine/cannot-do.ts';
import { writeFiles } from '../../server/src/machine/write-files.ts';
import { NotWritten, type WriteTexts, writeByEditor } from './write-whole.ts';

/** Files elsewhere, such as in a virtual workspace, are written by the editor. */
export const writeOnDisk: WriteTexts = async (texts) => {
  if (texts.some(({ uri }) => uri.scheme !== 'file')) return writeByEditor(texts);
  const folders = new Map(texts.map(({ uri }) => Uri.joinPath(uri, '..')).map((folder) => [folder.toString(), folder]));
  for (const folder of folders.values()) await workspace.fs.createDirectory(folder);
  try {
    writeFiles(texts.map(({ uri, text }) => ({ path: uri.fsPath, text })));
  } catch (error) {
    if (!(error instanceof CannotDo)) throw error;
    throw new NotWritten(error.message);
  }
};
