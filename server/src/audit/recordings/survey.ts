/** What lies in the folder of a volume, file by file as it is read, kept as figures: of whom each is, and of when. */

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
/** Clocks of the world differ by 26 h at most; what is further off is no time of writing, such as all zeros. */
const FURTHEST = 26 * HOUR;
/** More folders than that with files that nobody plans are counted as one. */
const MOST_FOLDERS = 1000;

/** One recording's files. */
export interface Surveyed {
  readonly recording: Recording;
  readonly names: FileNames;
  readonly expected: Expected | undefined;
  /** Milliseconds by which the time between two names may be off; `undefined` where names tell no time of day. */
  readonly rounding: number | undefined;
  readonly rows: Rows;
  /** Planned names that tell no instant, because the pattern does not. */
  readonly untold: Examples;
  readonly untoldEmpty: Examples;
  /** Times that no clock of the zone showed, or days that no calendar has. */
  readonly impossible: Examples;
  /** Last written to before the time of the name. */
  readonly early: Examples;
  /** When something was recorded of which no file is left, by an empty folder: milliseconds since 1970. */
  emptyFolder: number | undefined;
  /** The folders that files are in, where their names tell a day. */
  readonly folders: FileNames | undefined;
}

/** What was read of a folder. */
export type Holding = Pick<
  Survey,
  'zone' | 'recordings' | 'unplanned' | 'notRead' | 'notReadCount' | 'notFollowed' | 'files'
>;

export class Survey implements Visitor {
  readonly zone: string | undefined;
  readonly recordings: readonly Surveyed[];
  /** Files that nobody plans, by folder; the folder `undefined` stands for all beyond a number. */
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
    const key = this.unplanned.size < MOST_FOLDERS || this.unplanned.has(folder) ? folder : undefined;
    const known = this.unplanned.get(key) ?? new Examples();
    known.add(folder + name, size);
    this.unplanned.set(key, known);
  }
}

/**
 * What was read before an edit of the site, to be held against what is planned now. A recording that is new, or whose
 * files are named otherwise now, was not looked for and is left out.
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

/** Whether the file is one of the recording. */
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

/** There were files of that day. */
function emptied(recording: Surveyed, path: string): void {
  const [instant] = recording.folders?.read(path.slice(0, -1))?.instants ?? [];
  if (instant !== undefined) recording.emptyFolder = Math.min(recording.emptyFolder ?? Infinity, instant);
}
