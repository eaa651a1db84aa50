/** The files in the folder of a volume, stored as figures while it is read: the recording and the time of each. */

import { passOf } from '../../footage/candidates.ts';
import { type FileNames, fileNames } from '../../recordings/file-names.ts';
import { keyframeIntervalOf } from '../../recordings/keyframes.ts';
import type { Recording, Site } from '../../site/model.ts';
import { isTimeZone } from '../../standards/time-zone.ts';
import { type Expected, expectedOf, roundingOf } from './expected.ts';
import { PASS, Rows } from './rows.ts';
import { Examples, type FolderVisitor, type Visitor } from './visitor.ts';
import { HOUR } from '../../standards/time-units.ts';

/** FAT keeps times to 2 s; other file systems are more exact. */
const COARSEST = 2000;
/** The world's clocks differ by at most 26 h; a time further off, such as zero, is no time of writing. */
const FURTHEST = 26 * HOUR;
/** Beyond this number, folders with unplanned files are counted as one. */
const MAX_FOLDERS = 1000;

/** One recording's files. */
export interface Surveyed {
  readonly recording: Recording;
  readonly names: FileNames;
  readonly expected: Expected | undefined;
  /** Milliseconds by which the time between two names may be off; `undefined` where names have no time of day. */
  readonly rounding: number | undefined;
  readonly rows: Rows;
  /** Files with planned names that give no instant, as the pattern has none. */
  readonly untold: Examples;
  readonly untoldEmpty: Examples;
  /** Files named with a time that the zone skipped, or a day that does not exist. */
  readonly impossible: Examples;
  /** Files that were last written to before the time of their name. */
  readonly early: Examples;
  /** The earliest time of an empty folder, whose files are all gone: milliseconds since 1970. */
  emptyFolder: number | undefined;
  /** The names of the files' folders, where these have a day. */
  readonly folders: FileNames | undefined;
}

/** The readings of a folder. */
export type Holding = Pick<
  Survey,
  'zone' | 'recordings' | 'unplanned' | 'notRead' | 'notReadCount' | 'notFollowed' | 'files'
>;

export class Survey implements Visitor {
  readonly zone: string | undefined;
  readonly recordings: readonly Surveyed[];
  /** Unplanned files by folder; the folder `undefined` stands for all beyond `MAX_FOLDERS`. */
  readonly unplanned = new Map<string | undefined, Examples>();
  readonly notRead: { readonly path: string; readonly why: string }[] = [];
  files = 0;
  notReadCount = 0;
  notFollowed = 0;

  constructor(site: Site, recordings: readonly Recording[]) {
    this.zone = zoneOf(site);
    this.recordings = recordings.flatMap((recording) => surveyed(site, recording, this.zone));
  }

  enter(path: string): FolderVisitor {
    const depth = path.split('/').length - 1;
    const here = this.recordings.filter(({ names }) => names.depth === depth && path.startsWith(names.folder));
    return {
      file: (name, size, modified) => this.file(here, path, name, size, modified),
      other: (name) => {
        this.notFollowed++;
        this.nobody(path, name, 0);
      },
      leave: (isEmptied) => {
        if (isEmptied) for (const recording of here) emptied(recording, path);
      },
    };
  }

  unreadable(path: string, why: string): void {
    this.notReadCount++;
    if (this.notRead.length < 20) this.notRead.push({ path, why });
  }

  private file(here: readonly Surveyed[], folder: string, name: string, size: number, modified: number): void {
    this.files++;
    const path = folder + name;
    if (!here.some((recording) => taken(recording, path, size, modified))) this.nobody(folder, name, size);
  }

  private nobody(folder: string, name: string, size: number): void {
    const key = this.unplanned.size < MAX_FOLDERS || this.unplanned.has(folder) ? folder : undefined;
    const known = this.unplanned.get(key) ?? new Examples();
    known.add(folder + name, size);
    this.unplanned.set(key, known);
  }
}

/**
 * The readings from before an edit of the site, for comparison with the new plan. A recording that is new, or whose
 * files now have other names, was not searched for and is left out.
 */
export function afterEdit(before: Holding, site: Site): Holding {
  const zone = zoneOf(site);
  const { unplanned, notRead, notReadCount, notFollowed, files } = before;
  const recordings = site.recordings.flatMap((recording) => {
    const was = before.recordings.find(({ recording: { name } }) => name === recording.name);
    if (was === undefined || was.recording.file !== recording.file || zone !== before.zone) return [];
    return surveyed(site, recording, zone).map(({ expected }) => ({ ...was, recording, expected }));
  });
  return { zone, recordings, unplanned, notRead, notReadCount, notFollowed, files };
}

function zoneOf({ timezone }: Site): string | undefined {
  return timezone !== undefined && isTimeZone(timezone) ? timezone : undefined;
}

function surveyed(site: Site, recording: Recording, zone: string | undefined): Surveyed[] {
  const { file } = recording;
  if (file === undefined) return [];
  const names = fileNames(file, zone);
  const [, folder = ''] = /^(.*)\/[^/]*$/s.exec(file) ?? [];
  const folders = fileNames(folder, zone);
  return [
    {
      recording,
      names,
      expected: expectedOf(recording, keyframeIntervalOf(site, recording)),
      rounding: roundingOf(names),
      rows: new Rows(),
      untold: new Examples(),
      untoldEmpty: new Examples(),
      impossible: new Examples(),
      early: new Examples(),
      emptyFolder: undefined,
      folders: folders.noInstant === undefined ? folders : undefined,
    },
  ];
}

/** Adds the file to the recording, and returns whether it is one of its files. */
function taken(
  { names, expected, rounding, rows, untold, untoldEmpty, impossible, early }: Surveyed,
  path: string,
  size: number,
  modified: number,
): boolean {
  const read = names.read(path);
  if (read === undefined && !names.matches(path)) return false;
  if (names.noInstant !== undefined || rounding === undefined) {
    untold.add(path, size);
    if (size === 0) untoldEmpty.add(path);
    return true;
  }
  const [first, second] = read?.instants ?? [];
  if (first === undefined) {
    impossible.add(path, size);
    return true;
  }
  if (second === undefined) {
    rows.add(first, size, read?.offset, PASS.only);
    if (first - modified > COARSEST && first - modified < FURTHEST) early.add(path);
    return true;
  }
  const meant = passOf([first, second], expected?.usual ?? 0, modified, undefined);
  rows.add(
    meant ?? first,
    size,
    read?.offset,
    meant === undefined ? PASS.undecided : meant === first ? PASS.first : PASS.second,
  );
  return true;
}

/** Notes an empty folder: there were files of its day. */
function emptied(recording: Surveyed, path: string): void {
  const [instant] = recording.folders?.read(path.slice(0, -1))?.instants ?? [];
  if (instant !== undefined) recording.emptyFolder = Math.min(recording.emptyFolder ?? Infinity, instant);
}
