/** Where results may go, and the renaming that makes them results. */

import { type Stats, lstatSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { CONTAINERS } from '../../footage/outputs.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import type { WorkFolder } from './work-folder.ts';

/** The container that the name asks for. */
export function containerOf(out: string): string {
  const container = CONTAINERS[/\.([^./\\]+)$/.exec(out)?.[1]?.toLowerCase() ?? ''];
  if (container !== undefined && basename(out).lastIndexOf('.') > 0) return container;
  throw new CannotDo(
    `--out ${out} does not say which container to write: let it end in ${Object.keys(CONTAINERS)
      .map((name) => `.${name}`)
      .join(', ')}.`,
  );
}

/**
 * @param root where the recordings lie, into which nothing is ever written
 * @throws CannotDo where the file cannot or must not be written
 */
export function mayWrite(out: string, root: string, overwrite: boolean): void {
  const folder = dirname(out);
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new CannotDo(`${folder} is no folder: make it first, or let --out lie in another.`);
  if (isWithin(realpathSync(folder), realpathSync(root)))
    throw new CannotDo(
      `${out} lies among the recordings, in ${root}, which are left as they are. Let --out lie elsewhere.`,
    );
  for (const path of [out, sidecarPath(out)]) {
    const there = lstatSync(path, { throwIfNoEntry: false });
    if (there === undefined) continue;
    if (there.isDirectory()) throw new CannotDo(`${path} is a folder: name a file.`);
    if (!overwrite)
      throw new CannotDo(`${path} is there already and is left as it is. Name another, or say --overwrite.`);
  }
}

/** @throws CannotDo where the file is one of the recordings by another name */
export function isNoSource(out: string, sources: readonly string[]): void {
  const there = statSync(out, { throwIfNoEntry: false });
  const same = (source: Stats | undefined): boolean => source?.ino === there?.ino && source?.dev === there?.dev;
  const source =
    there === undefined ? undefined : sources.find((path) => same(statSync(path, { throwIfNoEntry: false })));
  if (source !== undefined)
    throw new CannotDo(`${out} is ${source} by another name, which is left as it is. Name another file.`);
}

export function sidecarPath(out: string): string {
  return `${out}.json`;
}

/** Gives the finished files their names; the sidecar last. */
export function save(
  files: readonly { readonly file: string; readonly out: string }[],
  sidecar: string,
  text: string,
  work: WorkFolder,
): void {
  const written = work.file('sidecar');
  writeFileSync(written, text, { flush: true });
  // One of an earlier result would tell of another file.
  rmSync(sidecar, { force: true });
  for (const { file, out } of files) renameSync(file, out);
  renameSync(written, sidecar);
}

function isWithin(path: string, folder: string): boolean {
  const way = relative(resolve(folder), resolve(path));
  return way === '' || !(way === '..' || way.startsWith(`..${sep}`) || join(way) === resolve(path));
}
