/** Where results may go. */

import { CONTAINERS } from './outputs.ts';
import { Refused } from './refused.ts';
import type { Places } from './tools.ts';

/**
 * The container that the name of a result asks for, by FFmpeg's name of it.
 *
 * @throws Refused where it asks for none
 */
export function containerOf(name: string): string {
  const container = CONTAINERS[/[^]\.([^.]+)$/.exec(name)?.[1]?.toLowerCase() ?? ''];
  if (container !== undefined) return container;
  const endings = Object.keys(CONTAINERS).map((ending) => `.${ending}`);
  throw new Refused(`--out ${name} does not say which container to write: let it end in ${endings.join(', ')}.`);
}

/**
 * @param root folder of the recordings, which is never written to
 * @throws Refused where the file cannot or must not be written
 */
export function mayWrite(out: string, root: string, overwrite: boolean, places: Places): void {
  const folder = places.folderOf(out);
  if (!places.isFolder(folder))
    throw new Refused(`${folder} is no folder: make it first, or let --out lie in another.`);
  if (places.isWithin(folder, root))
    throw new Refused(
      `${out} lies among the recordings, in ${root}, which are left as they are. Let --out lie elsewhere.`,
    );
  for (const path of [out, sidecarPath(out)]) {
    const there = places.kindOf(path);
    if (there === undefined) continue;
    if (there === 'folder') throw new Refused(`${path} is a folder: name a file.`);
    if (!overwrite)
      throw new Refused(`${path} is there already and is left as it is. Name another, or say --overwrite.`);
  }
}

/** @throws Refused where the file is one of the recordings by another name */
export function isNoSource(out: string, sources: readonly string[], places: Places): void {
  const source = sources.find((path) => places.isSame(path, out));
  if (source !== undefined)
    throw new Refused(`${out} is ${source} by another name, which is left as it is. Name another file.`);
}

export function sidecarPath(out: string): string {
  return `${out}.json`;
}
