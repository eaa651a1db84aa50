/** Reads the volumes that are on this machine. */

import { realpathSync, statSync, statfsSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import type { ReadVolume } from '../audit/recordings/audit.ts';
import { diagnose } from '../lint/diagnose.ts';
import { recordingRules } from '../audit/recordings/rules.ts';
import type { Space } from '../audit/recordings/space.ts';
import { Survey } from '../audit/recordings/survey.ts';
import type { Diagnostic } from '../lint/rule.ts';
import { placeOf } from '../site/item.ts';
import type { Site, Volume } from '../site/model.ts';
import { count } from '../text/words.ts';
import { CannotDo, Stopped } from './cannot-do.ts';
import { codeOf, reasonOf } from './failures.ts';
import type { Waiting } from './input.ts';
import { readTree, treeInSteps } from './tree.ts';

export interface ReadVolumes {
  readonly volumes: readonly (ReadVolume & { readonly root: string })[];
  /** Findings about volumes that are missing. */
  readonly found: readonly Diagnostic[];
  /** Volumes that were left out, and why. */
  readonly notes: readonly string[];
}

/**
 * @param folder where the files of the only volume are; `undefined` for the paths that the site declares
 * @param progress takes the progress now and then, in words
 * @throws CannotDo where none of them is on this machine
 */
export function readVolumes(
  site: Site,
  wanted: readonly Volume[],
  folder: string | undefined,
  progress: (words: string) => void,
): ReadVolumes {
  const there = new Map<string, Volume[]>();
  const absent: Volume[] = [];
  const notes: string[] = [];
  for (const volume of wanted) {
    const root = folderAt(folder ?? volume.path);
    if (root === undefined) absent.push(volume);
    else there.set(root, [...(there.get(root) ?? []), volume]);
  }
  if (there.size === 0) throw new CannotDo(nothing(absent, folder, notes));
  const hosts = new Set([...there.values()].flat().map(({ host }) => host));
  const missing = absent.filter(({ host }) => host !== undefined && hosts.has(host));
  notes.push(
    ...absent
      .filter((volume) => !missing.includes(volume))
      .map(
        ({ name, path, host }) =>
          `${name} was left out: ${path} is not on this machine` +
          `${host === undefined ? '' : `, but may be on ${host}`}.`,
      ),
  );
  const found = diagnose(
    site.lint,
    missing.map((volume) => ({
      rule: recordingRules.volumeAbsent,
      at: placeOf(volume.item, ['path']),
      message:
        `There is no folder ${volume.path} on this machine, which has other volumes of ${volume.host ?? ''}. ` +
        `Is the disk of ${volume.name} mounted?`,
      acceptAt: [volume.name],
    })),
  );
  const volumes = [...there].flatMap(([root, own]) => readOne(site, root, own, [...there.keys()], progress));
  return { volumes, found, notes };
}

/** Volumes in one folder are read together, and reported at the first. */
function readOne(
  site: Site,
  root: string,
  own: readonly Volume[],
  roots: readonly string[],
  progress: (words: string) => void,
): (ReadVolume & { readonly root: string })[] {
  const [volume] = own;
  if (volume === undefined) return [];
  const names = new Set(own.map(({ name }) => name));
  const survey = new Survey(
    site,
    site.recordings.filter((recording) => recording.volume !== undefined && names.has(recording.volume)),
  );
  // Volumes that are mounted within this one.
  const apart = new Set(
    roots.filter((other) => other !== root).map((other) => `${relative(root, other).split(sep).join('/')}/`),
  );
  readTree(root, survey, {
    reasonOf,
    apart,
    progress: (entries) => progress(`${root}: ${count(entries, 'entry', 'entries')}`),
  });
  const isOwn = folderAt(volume.path) === root;
  return [{ volume, survey, root, space: isOwn ? spaceAt(root) : undefined }];
}

/** Other work gets a turn after so long, ms. */
const TURN = 10;

/**
 * Reads a folder that the user chose for a volume, with a turn for other work now and then. Nothing else is read, so
 * only its path shows whether it is the volume's own folder.
 *
 * @throws CannotDo where it is no folder; Stopped
 */
export async function readChosen(
  site: Site,
  volume: Volume,
  folder: string,
  { signal, progress }: Waiting = {},
): Promise<ReadVolume> {
  const root = folderAt(folder);
  if (root === undefined) throw new CannotDo(`${folder} is no folder on this machine.`);
  const survey = new Survey(
    site,
    site.recordings.filter((recording) => recording.volume === volume.name),
  );
  const steps = treeInSteps(root, survey, { reasonOf });
  let turn = performance.now();
  for (const entries of steps) {
    if (performance.now() - turn < TURN) continue;
    progress?.(count(entries, 'entry', 'entries'));
    await new Promise((then) => setImmediate(then));
    if (signal?.aborted === true) throw new Stopped('It was stopped.');
    turn = performance.now();
  }
  const isOwn = [folder, root].includes(resolve(volume.path));
  return { volume, survey, space: isOwn ? spaceAt(root) : undefined };
}

/** The real path of the folder; `undefined` where there is none. */
function folderAt(path: string): string | undefined {
  try {
    const real = realpathSync(path);
    return statSync(real).isDirectory() ? real : undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined;
    if (code === undefined) throw error;
    throw new CannotDo(`${path} cannot be read: ${reasonOf(code)}.`);
  }
}

/** The space that users other than root may still write. */
function spaceAt(root: string): Space {
  const { bsize, blocks, bavail } = statfsSync(root);
  return { total: bsize * blocks, free: bsize * bavail };
}

function nothing(absent: readonly Volume[], folder: string | undefined, notes: readonly string[]): string {
  if (folder !== undefined) return `${folder} is no folder on this machine.`;
  const paths = absent.map(({ name, path }) => `${path}, the path of ${name}, is no folder on this machine.`);
  return [...paths, ...notes, 'Name the FOLDER that the files lie in.'].join(' ');
}

/** When the newest file was opened; now, where there is none. */
export function newestOf(volumes: readonly ReadVolume[]): number {
  const newest = volumes.flatMap(({ survey }) =>
    survey.recordings.map(({ rows }) => (rows.length === 0 ? -Infinity : rows.start(rows.length - 1))),
  );
  const latest = newest.reduce((a, b) => Math.max(a, b), -Infinity);
  return latest === -Infinity ? Date.now() : latest;
}
