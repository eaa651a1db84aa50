/** Checks a request against the site and the machine before anything is made. */

import { distance } from 'fastest-levenshtein';
import { type FileNames, fileNames } from '../recordings/file-names.ts';
import type { Recording, Site } from '../site/model.ts';
import { isTimeZone } from '../standards/time-zone.ts';
import type { Pass } from './candidates.ts';
import { clockOf, readTime } from './clock.ts';
import { Refused } from './refused.ts';
import type { Asked } from './segment.ts';
import { containerOf, mayWrite } from './targets.ts';
import type { Places } from './tools.ts';

/** The request as it was typed. */
export interface Request {
  readonly recording: string;
  readonly from: string;
  readonly to: string;
  readonly out: string;
  /** The folder of the files on this machine; the path of the volume where absent. */
  readonly recordings?: string;
  readonly exact?: boolean;
  readonly overwrite?: boolean;
  readonly repeatedHour?: Pass;
}

export interface WantedFootage {
  readonly site: Site;
  readonly recording: Recording;
  readonly names: FileNames;
  readonly zone: string | undefined;
  readonly asked: Asked;
  /** The folder of the recordings. */
  readonly root: string;
  /** FFmpeg's name of the container to write. */
  readonly container: string;
  readonly out: string;
  readonly pass: Pass | undefined;
  readonly overwrite: boolean;
}

/** @throws Refused where the request cannot be met */
export function wantedFootage(site: Site, request: Request, places: Places): WantedFootage {
  const { out, overwrite = false, repeatedHour: pass } = request;
  const recording = recordingOf(site, request.recording);
  const zone = site.timezone !== undefined && isTimeZone(site.timezone) ? site.timezone : undefined;
  const names = namesOf(recording, zone);
  const asked = askedOf(request, zone);
  const root = rootOf(site, recording, request.recordings, places);
  const container = containerOf(places.baseName(out));
  mayWrite(out, root, overwrite, places);
  return { site, recording, names, zone, asked, root, container, out, pass, overwrite };
}

function namesOf({ name, file }: Recording, zone: string | undefined): FileNames {
  if (file === undefined) throw new Refused(`${name} does not say how its files are named: give it a \`file\`.`);
  const names = fileNames(file, zone);
  if (names.noInstant !== undefined)
    throw new Refused(`The file names of ${name} do not tell when they are of: ${names.noInstant}.`);
  if (names.roundedTo === undefined)
    throw new Refused(
      `The file names of ${name} tell no more than the ${names.finest}, so nothing in them can be found.`,
    );
  return names;
}

function recordingOf({ recordings, recordingByName }: Site, name: string): Recording {
  const found = recordingByName.get(name);
  if (found !== undefined) return found;
  const nearest = [...recordings].sort((a, b) => distance(name, a.name) - distance(name, b.name))[0];
  throw new Refused(
    `The site has no recording ${name}.${nearest === undefined ? '' : ` The nearest is ${nearest.name}.`}`,
  );
}

function askedOf({ from, to, exact }: Request, zone: string | undefined): Asked {
  const [start, end] = [from, to].map((text) => {
    const read = readTime(text, zone);
    if (typeof read === 'number') return read;
    throw new Refused(read.refused);
  });
  if (start === undefined || end === undefined || start >= end) {
    const shown = clockOf(zone);
    throw new Refused(`Nothing lies between ${shown(start ?? 0)} and ${shown(end ?? 0)}: --to comes after --from.`);
  }
  return { from: start, to: end, exact: exact === true };
}

function rootOf(site: Site, { name, volume }: Recording, given: string | undefined, places: Places): string {
  const path = given ?? (volume === undefined ? undefined : site.volumeByName.get(volume)?.path);
  if (path === undefined)
    throw new Refused(
      `The site does not say where the files of ${name} lie: give its volume a \`path\`, or name the folder with --recordings.`,
    );
  if (!places.isFolder(path))
    throw new Refused(
      `${path} is no folder on this machine: name the one that the recordings lie in with --recordings.`,
    );
  return places.absolute(path);
}
