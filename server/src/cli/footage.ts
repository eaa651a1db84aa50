/** Gets footage out: finds the files of a recording, joins them and says what they are. */

import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { Command, Option } from 'commander';
import { distance } from 'fastest-levenshtein';
import type { Pass } from '../footage/candidates.ts';
import { clockOf, readTime } from '../footage/clock.ts';
import { CAUTION } from '../footage/sidecar.ts';
import type { Asked } from '../footage/segment.ts';
import type { Recording, Site } from '../site/model.ts';
import { fileNames } from '../recordings/file-names.ts';
import { isTimeZone } from '../standards/time-zone.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { getFootage } from './footage/get.ts';
import { containerOf, mayWrite } from './footage/save.ts';
import { readSite } from './sites.ts';

interface Options {
  readonly recording: string;
  readonly from: string;
  readonly to: string;
  readonly out: string;
  readonly recordings?: string;
  readonly exact?: boolean;
  readonly overwrite?: boolean;
  readonly repeatedHour?: Pass;
}

export function footageCommand(): Command {
  return new Command('footage')
    .description(
      'Join what a recording has of a span of time into one file. Needs FFmpeg; the originals are left as they are.',
    )
    .argument('[FOLDER]', 'the folder of the site', '.')
    .requiredOption('--recording <name>', 'which recording')
    .requiredOption('--from <time>', 'ISO 8601, with an offset from UTC or by the clock of the site')
    .requiredOption('--to <time>', 'the same; footage ends before it')
    .requiredOption(
      '--out <file>',
      'what to write: .mp4, .mov, .mkv or .ts; beside it, FILE.json says what it is made of',
    )
    .option('--recordings <folder>', 'where the files lie on this machine (default: the path of the volume)')
    .option('--exact', 'cut to the frame, and encode anew what lies between the cut and a keyframe')
    .option('--overwrite', 'replace FILE where it is there')
    .addOption(
      new Option(
        '--repeated-hour <pass>',
        'which is meant by names without an offset, where the clocks went back',
      ).choices(['first', 'second']),
    )
    .addHelpText(
      'after',
      `
Without --exact nothing is encoded: footage begins at the keyframe before and ends at the keyframe after what was asked
for. Where sizes or codecs change, there is a file for each: FILE-1, FILE-2 … Names bear whole seconds, so all times are
those of the recorder's clock, to a second; ask for some more on either side.

${CAUTION}

Examples:
  plumbline footage --recording gate --from 2026-11-25T13:00 --to 2026-11-25T13:10 --out gate.mp4
  plumbline footage --recording gate --from 2026-10-25T01:30+01:00 --to 2026-10-25T01:31+01:00 --exact --out gate.mkv home

Exit status: 0, all of it is there; 1, what there is of it is written, and what is missing is told; 2, nothing is written.`,
    )
    .action(async (folder: string, options: Options) => {
      process.exitCode = await footage(readSite(folder).folder.site(), options);
    });
}

async function footage(site: Site, options: Options): Promise<number> {
  const recording = recordingOf(site, options.recording);
  const zone = site.timezone !== undefined && isTimeZone(site.timezone) ? site.timezone : undefined;
  if (recording.file === undefined)
    throw new CannotDo(`${recording.name} does not say how its files are named: give it a \`file\`.`);
  const names = fileNames(recording.file, zone);
  if (names.noInstant !== undefined)
    throw new CannotDo(`The file names of ${recording.name} do not tell when they are of: ${names.noInstant}.`);
  if (names.roundedTo === undefined)
    throw new CannotDo(
      `The file names of ${recording.name} tell no more than the ${names.finest}, so nothing in them can be found.`,
    );
  const asked = askedOf(options, zone);
  const root = rootOf(site, recording, options.recordings);
  const container = containerOf(options.out);
  mayWrite(options.out, root, options.overwrite === true);
  return getFootage({
    site,
    recording,
    names,
    zone,
    asked,
    root,
    container,
    out: options.out,
    pass: options.repeatedHour,
    overwrite: options.overwrite === true,
  });
}

function recordingOf({ recordings, recordingByName }: Site, name: string): Recording {
  const found = recordingByName.get(name);
  if (found !== undefined) return found;
  const nearest = [...recordings].sort((a, b) => distance(name, a.name) - distance(name, b.name))[0];
  throw new CannotDo(
    `The site has no recording ${name}.${nearest === undefined ? '' : ` The nearest is ${nearest.name}.`}`,
  );
}

function askedOf({ from, to, exact }: Options, zone: string | undefined): Asked {
  const [start, end] = [from, to].map((text) => {
    const read = readTime(text, zone);
    if (typeof read === 'number') return read;
    throw new CannotDo(read.refused);
  });
  if (start === undefined || end === undefined || start >= end) {
    const shown = clockOf(zone);
    throw new CannotDo(`Nothing lies between ${shown(start ?? 0)} and ${shown(end ?? 0)}: --to comes after --from.`);
  }
  return { from: start, to: end, exact: exact === true };
}

function rootOf(site: Site, { name, volume }: Recording, given: string | undefined): string {
  const path = given ?? (volume === undefined ? undefined : site.volumeByName.get(volume)?.path);
  if (path === undefined)
    throw new CannotDo(
      `The site does not say where the files of ${name} lie: give its volume a \`path\`, or name the folder with --recordings.`,
    );
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new CannotDo(
      `${path} is no folder on this machine: name the one that the recordings lie in with --recordings.`,
    );
  return resolve(path);
}
