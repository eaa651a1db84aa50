// Opens the person's own VS Code with the extension loaded from this repository.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * The `code` on the PATH, or where macOS keeps it; undefined where there is none that can load an extension
 * from a folder (the `code` in a terminal of a remote VS Code can't).
 */
export function desktopCode(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  if (environment['VSCODE_IPC_HOOK_CLI']) return undefined;
  const name = process.platform === 'win32' ? 'code.cmd' : 'code';
  const onPath = (environment['PATH'] ?? '')
    .split(delimiter)
    .filter(Boolean)
    .map((folder) => join(folder, name));
  const application = '/Applications/Visual Studio Code.app/Contents/Resources/app/bin/code';
  return [...onPath, ...(process.platform === 'darwin' ? [application] : [])].find((path) => existsSync(path));
}

/**
 * Opens a window on a folder and a file in it, if one is given.
 *
 * @param extensions folders of extensions to load in that window only
 * @returns the exit code of `code`, which ends once the window is asked for
 */
export function openDesktop(
  code: string,
  folder: string,
  file: string | undefined,
  extensions: readonly string[],
): Promise<number | null> {
  const words = [
    '--new-window',
    ...extensions.map((path) => `--extensionDevelopmentPath=${path}`),
    folder,
    ...(file === undefined ? [] : [file]),
  ];
  // On Windows `code` is a .cmd, which only a shell runs; its words are then quoted for it.
  const shell = process.platform === 'win32';
  const quoted = (word: string): string => (shell ? `"${word}"` : word);
  const child = spawn(quoted(code), words.map(quoted), { stdio: 'inherit', shell });
  return new Promise((resolve, reject) => child.on('error', reject).on('exit', resolve));
}
