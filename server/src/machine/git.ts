/**
 * The site files of a folder in a revision of git. The working tree is not touched: objects are read, nothing is
 * checked out, no hook, filter or shell runs, and nothing is fetched.
 */

import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { LARGEST_TEXT, SUFFIX, SiteFolder } from '../site/folder.ts';
import { CannotDo } from './cannot-do.ts';
import { decoded, uriOf } from './disk.ts';
import { codeOf } from './failures.ts';

/** The most bytes that git may print: a file of a site in UTF-8. */
const MAX_BYTES = 4 * LARGEST_TEXT;
/** ms until git is ended, should the disk not answer. */
const PATIENCE = 30_000;

/** @param revision in git's notation: `HEAD`, a tag, a branch, `HEAD~3` */
export function siteAtRevision(folder: string, revision: string): SiteFolder {
  return siteAtCommit(folder, commitOf(folder, revision), revision);
}

/** @param revision the user's name for the commit */
export function siteAtCommit(folder: string, commit: string, revision: string): SiteFolder {
  const listed = git(folder, ['ls-tree', '-z', commit, '--', './']);
  if (listed.status !== 0) throw new CannotDo(`git cannot list the files of ${revision}: ${firstLine(listed.error)}.`);
  const site = new SiteFolder();
  for (const entry of listed.output.toString('utf8').split('\0')) {
    const match = /^(\d+) blob ([0-9a-f]+)\t(.*)$/su.exec(entry);
    const [, mode = '', object = '', path = ''] = match ?? [];
    const name = path.slice(path.lastIndexOf('/') + 1);
    if (!name.endsWith(SUFFIX)) continue;
    const uri = uriOf(resolve(join(folder, name)));
    // A link may lead out of the revision.
    if (!mode.startsWith('100')) {
      site.setUnreadable(uri, 'it is a link, and none is followed in a revision');
      continue;
    }
    const read = git(folder, ['cat-file', 'blob', object]);
    if (read.status !== 0) {
      site.setUnreadable(uri, 'git cannot read it');
      continue;
    }
    const text = decoded(read.output);
    if ('text' in text) site.set(uri, text.text);
    else site.setUnreadable(uri, text.unreadable);
  }
  if (site.size === 0) throw new CannotDo(`${folder} holds no *${SUFFIX} file in ${revision}.`);
  return site;
}

/** The id of the commit that a revision names. */
export function commitOf(folder: string, revision: string): string {
  if (revision === '' || revision.startsWith('-') || /[\0-\x1f\x7f]/.test(revision))
    throw new CannotDo('That is no revision of git.');
  const found = git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
  const commit = found.output.toString('utf8').trim();
  if (found.status === 0 && /^[0-9a-f]{40,64}$/.test(commit)) return commit;
  const inside = git(folder, ['rev-parse', '--is-inside-work-tree']);
  if (inside.status !== 0) throw new CannotDo(`${folder} is in no repository of git: ${firstLine(inside.error)}.`);
  throw new CannotDo(`There is no revision ${revision} of ${folder}.`);
}

interface Ran {
  readonly status: number | null;
  readonly output: Buffer;
  readonly error: string;
}

function git(folder: string, words: readonly string[]): Ran {
  const { status, stdout, stderr, error } = spawnSync(
    'git',
    ['-c', 'core.fsmonitor=false', '--no-pager', '-C', folder, ...words],
    {
      shell: false,
      maxBuffer: MAX_BYTES,
      timeout: PATIENCE,
      windowsHide: true,
      // No transport, whatever the repository's settings allow: older versions of git have no option not to fetch.
      env: {
        ...process.env,
        GIT_NO_LAZY_FETCH: '1',
        GIT_ALLOW_PROTOCOL: 'none',
        GIT_OPTIONAL_LOCKS: '0',
        GIT_TERMINAL_PROMPT: '0',
        LC_ALL: 'C',
      },
    },
  );
  if (error !== undefined && codeOf(error) === 'ENOENT')
    throw new CannotDo('There is no git on this machine, or no such folder.');
  return { status, output: stdout, error: stderr.toString('utf8') };
}

function firstLine(text: string): string {
  return (
    text
      .split('\n')[0]
      ?.replace(/^fatal: /, '')
      .replace(/\.$/, '') ?? ''
  );
}
