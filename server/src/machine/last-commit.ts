/** The sites of folders in their last commit, read once for each commit. */

import { lastResult } from '../memo.ts';
import type { SiteFolder } from '../site/folder.ts';
import { commitOf, siteAtCommit } from './git.ts';

const REVISION = 'HEAD';

/** @returns a function that gives the same object as long as the folder's last commit stays; it throws `CannotDo` */
export function lastCommits(): (folder: string) => SiteFolder {
  const kept = lastResult((folder: string, commit: string) => siteAtCommit(folder, commit, REVISION));
  return (folder) => kept(folder, commitOf(folder, REVISION));
}
