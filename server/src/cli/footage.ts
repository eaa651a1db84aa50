/** Exports footage: finds the files of a recording, joins them and describes them. */

import { Command, Option } from 'commander';
import { clockOf } from '../footage/clock.ts';
import { getFootage } from '../footage/get.ts';
import { DiskFull, Refused } from '../footage/refused.ts';
import { CAUTION } from '../footage/sidecar.ts';
import { isComplete, summary } from '../footage/summary.ts';
import { type Request, wantedFootage } from '../footage/wanted.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { versionOf } from '../machine/ffmpeg.ts';
import { footageTools, places } from '../machine/footage-tools.ts';
import { WorkFolder } from '../machine/work-folder.ts';
import type { Site } from '../site/model.ts';
import { sayAtFailure, print } from './print.ts';
import { progress, progressDone } from './progress.ts';
import { readSite } from './sites.ts';
import manifest from '../../../package.json' with { type: 'json' };

export function footageCommand(): Command {
  return new Command('footage')
    .description('Join a span of time of a recording into one file. Needs FFmpeg; the originals stay as they are.')
    .argument('[FOLDER]', 'the folder of the site', '.')
    .requiredOption('--recording <name>', 'which recording')
    .requiredOption('--from <time>', 'ISO 8601, with an offset from UTC or by the clock of the site')
    .requiredOption('--to <time>', 'the same; footage ends before it')
    .requiredOption(
      '--out <file>',
      'what to write: .mp4, .mov, .mkv or .ts; beside it, FILE.json says what it is made of',
    )
    .option('--recordings <folder>', 'where the files are on this machine (default: the path of the volume)')
    .option('--exact', 'cut to the frame; only the edges are encoded again')
    .option('--overwrite', 'replace FILE if it exists')
    .addOption(
      new Option(
        '--repeated-hour <pass>',
        'which pass is meant by names without an offset when the clocks go back',
      ).choices(['first', 'second']),
    )
    .addHelpText(
      'after',
      `
Without --exact nothing is encoded: footage begins at the keyframe before and ends at the keyframe after what was asked
for. Where sizes or codecs change, there is a file for each: FILE-1, FILE-2 … File names hold whole
seconds, so all times are those of the recorder's clock, to a second; ask for a little more on either side.

${CAUTION}

Examples:
  plumbline footage --recording gate --from 2026-11-25T13:00 --to 2026-11-25T13:10 --out gate.mp4
  plumbline footage --recording gate --from 2026-10-25T01:30+01:00 --to 2026-10-25T01:31+01:00 --exact --out gate.mkv home

Exit status: 0, complete; 1, written with gaps, which are named; 2, nothing is written.`,
    )
    .action(async (folder: string, options: Request) => {
      process.exitCode = await footage(readSite(folder).folder.site(), options);
    });
}

/** @returns the exit status */
async function footage(site: Site, request: Request): Promise<number> {
  let work: WorkFolder | undefined;
  try {
    const wanted = wantedFootage(site, request, places);
    const versions = { plumbline: manifest.version, ffmpeg: await versionOf() };
    work = new WorkFolder(wanted.out);
    const made = await getFootage(wanted, footageTools(work, versions, progress));
    progressDone();
    sayAtFailure('What is to be had is written.');
    print(summary(made, clockOf(wanted.zone)));
    return isComplete(made) ? 0 : 1;
  } catch (error) {
    progressDone();
    if (work?.stopped.signal.aborted === true) throw new CannotDo('Stopped. Nothing was written.');
    throw inWords(error, request.out);
  } finally {
    work?.remove();
  }
}

function inWords(error: unknown, out: string): unknown {
  if (error instanceof Refused) return new CannotDo(error.message, error.details);
  const code = codeOf(error);
  if (error instanceof DiskFull || code === 'ENOSPC' || code === 'EDQUOT' || code === 'EFBIG')
    return new CannotDo(
      `The disk of ${places.folderOf(out)} is full. Nothing was kept there; the originals are as they were.`,
    );
  return code === undefined || error instanceof CannotDo
    ? error
    : new CannotDo(`It could not be done: ${reasonOf(code)}.`);
}
