import { resolve } from 'node:path';
import { Command } from 'commander';
import { auditRecordings } from '../../audit/recordings/audit.ts';
import { readTime } from '../../footage/clock.ts';
import { newestOf, readVolumes } from '../../machine/volumes.ts';
import { planOf } from '../../plan.ts';
import type { Site, Volume } from '../../site/model.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { progress, progressDone } from '../progress.ts';
import { readSite } from '../sites.ts';
import { type PrintOptions, failOnOption, formatOption, printAudit } from './print.ts';
import { lengthsOf } from './recordings/lengths.ts';
import { writeMeasured } from './recordings/write-measured.ts';

interface Given extends PrintOptions {
  readonly site: string;
  readonly volume?: string;
  readonly now?: string;
  readonly since?: string;
  readonly probe?: string | true;
  readonly fix?: boolean;
}

/** Files that are probed by default. */
const USUAL_PROBES = 100;

export function recordingsCommand(): Command {
  return new Command('recordings')
    .description(
      'Compare recorded files with the plan: gaps, short and duplicate files, days kept, bit rates, free space.',
    )
    .argument('[FOLDER]', 'where the files of a volume are, or a copy of them (default: the path of each volume)')
    .option('--site <folder>', 'the folder of the site', '.')
    .option('--volume <name>', 'only this volume')
    .option(
      '--now <time>',
      'for a copy, the time when it was made: ISO 8601, or `newest` for that of its newest file (default: now)',
    )
    .option(
      '--since <time>',
      'the time from which everything was recorded: a file missing since then was deleted too early',
    )
    .option(
      '--probe [count]',
      `let ffprobe read the true length of this many files, doubtful ones first (${USUAL_PROBES.toString()}), or of \`all\``,
    )
    .option('--fix', 'write the measured bit rates into the site')
    .addOption(formatOption())
    .addOption(failOnOption())
    .addHelpText(
      'after',
      `
Files are opened only with --probe; links are not followed. Lengths are taken from one name to the next, so what is
missing within a file is not seen, and a gap shows only if it is longer than a second and a half and what keyframes allow.

Footage of people falls under privacy law in most places: look only at what you may, and keep it no longer than local
law and the site's policies allow. For evidence, keep the originals.

Examples:
  plumbline audit recordings --site samples/harrow-lane
  plumbline audit recordings /mnt/copy --volume archive --now newest --probe all --site samples/harrow-lane`,
    )
    .action(async (folder: string | undefined, given: Given) => {
      process.exitCode = await audit(folder, given);
    });
}

async function audit(folder: string | undefined, given: Given): Promise<number> {
  const onDisk = readSite(given.site);
  const site = onDisk.folder.site();
  const plan = planOf(site);
  const probes = probesOf(given.probe);
  const [said, since] = [
    given.now === 'newest' ? undefined : timeOf(site, '--now', given.now),
    timeOf(site, '--since', given.since),
  ];
  const { volumes, found, notes } = readVolumes(
    site,
    volumesOf(site, given.volume, folder),
    folder === undefined ? undefined : resolve(folder),
    progress,
  );
  progressDone();
  const now = given.now === 'newest' ? newestOf(volumes) : (said ?? Date.now());
  const lengths = probes === 0 ? undefined : await lengthsOf(volumes, now, probes);
  const audited = auditRecordings(plan, volumes, { now, since, ...(lengths === undefined ? {} : { lengths }) });
  const all = { found: [...found, ...audited.found], summary: [...audited.summary, ...notes] };
  // Files are written before the findings are printed, which may block on a slow reader.
  if (given.fix === true) writeMeasured(onDisk, all.found);
  return printAudit(onDisk, all, given);
}

function volumesOf(site: Site, name: string | undefined, folder: string | undefined): readonly Volume[] {
  const used = site.volumes.filter((volume) => site.recordings.some((recording) => recording.volume === volume.name));
  const names = used.map((volume) => volume.name).join(', ');
  if (name !== undefined) {
    const volume = site.volumeByName.get(name);
    if (volume === undefined)
      throw new CannotDo(`The site has no volume ${name}. It records to ${names === '' ? 'none' : names}.`);
    return [volume];
  }
  if (used.length === 0) throw new CannotDo('The site records nothing to any volume.');
  if (folder !== undefined && used.length > 1)
    throw new CannotDo(`Say with --volume whose files lie in ${folder}: ${names}.`);
  return used;
}

function timeOf({ timezone }: Site, option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const read = readTime(text, timezone);
  if (typeof read === 'number') return read;
  throw new CannotDo(`${option}: ${read.refused}`);
}

function probesOf(given: string | true | undefined): number {
  if (given === undefined) return 0;
  if (given === true) return USUAL_PROBES;
  if (given === 'all') return Infinity;
  if (/^\d{1,9}$/.test(given)) return Number(given);
  throw new CannotDo(`--probe is ${given}: it is a number of files, or \`all\`.`);
}
