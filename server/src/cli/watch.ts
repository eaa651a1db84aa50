/** Checks again whenever a site file changes. */

import { type FSWatcher, watch } from 'node:fs';
import { SUFFIX } from '../site/folder.ts';
import { visiblePath } from '../text/visible.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { print as printText } from './print.ts';
import { type SiteOnDisk, readSites, siteFolders } from './sites.ts';

/** An editor that saves makes several changes in a row: writes another file, renames it, touches it. */
const QUIET_MS = 100;

/**
 * Runs `print` now and after every change, until Ctrl+C.
 *
 * @returns the exit status of the last run
 * @throws CannotDo where a folder is missing at the start; later that is reported, and it waits for the folder
 */
export async function checkAgain(
  paths: readonly string[],
  print: (sites: readonly SiteOnDisk[]) => number,
): Promise<number> {
  const folders = siteFolders(paths);
  let status = print(readSites(folders));
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;

  const again = (): void => {
    printText(
      `\n${new Date().toTimeString().slice(0, 8)} ${[...changed].sort().map(visiblePath).join(', ')} changed\n`,
    );
    changed.clear();
    status = tryTo(() => print(readSites(folders)));
    waiting();
  };
  const watchers = folders.map((folder): FSWatcher =>
    watch(folder, (_event, name) => {
      if (name?.endsWith(SUFFIX) !== true) return;
      changed.add(name);
      clearTimeout(timer);
      timer = setTimeout(again, QUIET_MS);
    }),
  );
  waiting();
  await new Promise<void>((resolve) => process.once('SIGINT', resolve));
  clearTimeout(timer);
  for (const watcher of watchers) watcher.close();
  return status;
}

function tryTo(run: () => number): number {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof CannotDo)) throw error;
    printText(`${error.message}\n`);
    return 2;
  }
}

function waiting(): void {
  printText('Waiting for changes; Ctrl+C ends.\n');
}
