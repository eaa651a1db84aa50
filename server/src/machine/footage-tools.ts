/** The programs and files that `footage` needs on this machine. */

import { lstatSync, realpathSync, renameSync, statSync, statfsSync, writeFileSync } from 'node:fs';
import { copyFile, open, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { FootageTools, Places } from '../footage/tools.ts';
import { codeOf, reasonOf } from './failures.ts';
import { run } from './ffmpeg.ts';
import { findFiles } from './find-recorded.ts';
import { putInPlace } from './put-in-place.ts';
import { sha256Of } from './sha256.ts';
import type { WorkFolder } from './work-folder.ts';

export const places: Places = {
  kindOf: (path) => {
    const there = lstatSync(path, { throwIfNoEntry: false });
    return there === undefined ? undefined : there.isDirectory() ? 'folder' : 'other';
  },
  isFolder: (path) => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true,
  isWithin: (path, other) => {
    const way = relative(realpathSync(other), realpathSync(path));
    return way === '' || !(way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way));
  },
  isSame: (path, other) => {
    const [one, two] = [path, other].map((name) => statSync(name, { throwIfNoEntry: false }));
    return one !== undefined && two !== undefined && one.ino === two.ino && one.dev === two.dev;
  },
  folderOf: dirname,
  baseName: (path) => basename(path),
  absolute: (path) => resolve(path),
};

/** Everything is made in `work`, and stops when that is stopped. */
export function footageTools(
  work: WorkFolder,
  versions: FootageTools['versions'],
  progress: (text: string) => void,
): FootageTools {
  const { signal } = work.stopped;
  return {
    ...places,
    versions,
    progress,
    find: findFiles,
    recorded: (root, path) => join(root, path),
    workFile: (name) => work.file(name),
    now: () => Date.now(),
    stat: async (path) => {
      const there = await stat(path, { bigint: true });
      return {
        isFile: there.isFile(),
        size: Number(there.size),
        modified: Number(there.mtimeNs) / 1e6,
        // Unlike the time of writing, the time of change cannot be set (POSIX, 4.9 File Times Update).
        stamp: [there.dev, there.ino, there.size, there.ctimeNs].join(' '),
      };
    },
    head: async (path, length) => {
      const file = await open(path);
      try {
        const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, 0);
        return buffer.subarray(0, bytesRead);
      } finally {
        await file.close();
      }
    },
    copy: (from, to) => copyFile(from, to),
    write: (path, text) => writeFile(path, text),
    sync: async (path) => {
      const file = await open(path, 'r+');
      try {
        await file.sync();
      } finally {
        await file.close();
      }
    },
    hash: (path, read) => sha256Of(path, signal, read),
    run: (program, words, line) => run(program, words, { cwd: work.path, signal, ...(line && { line }) }),
    freeBeside: (path) => {
      const { bavail, bsize } = statfsSync(dirname(path));
      return bavail * bsize;
    },
    save: (files, sidecar) => {
      const written = work.file('sidecar');
      writeFileSync(written, sidecar.text, { flush: true });
      const results = files.map(({ file, out }) => ({ file, target: out }));
      // A sidecar of an earlier result must not stay beside the new file, should the power fail in between.
      const before = places.kindOf(sidecar.path) === undefined ? undefined : work.file('sidecar-before');
      if (before !== undefined) renameSync(sidecar.path, before);
      try {
        putInPlace([...results, { file: written, target: sidecar.path }]);
      } catch (error) {
        if (before !== undefined) renameSync(before, sidecar.path);
        throw error;
      }
    },
    reasonOf: (error) => {
      const code = codeOf(error);
      return code === undefined ? undefined : reasonOf(code);
    },
  };
}
