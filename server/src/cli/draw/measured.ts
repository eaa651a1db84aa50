/** Reads folders of recordings and files of counters for a drawing, as audits read them. */

import { resolve } from 'node:path';
import type { Readings } from '../../audit/counters/sample.ts';
import { lookedAt } from '../../audit/recordings/looked.ts';
import type { DrawingKind, Measured } from '../../draw/drawing.ts';
import { readTime } from '../../footage/clock.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { countersIn } from '../../machine/counters.ts';
import { newestOf, readVolumes } from '../../machine/volumes.ts';
import type { Plan } from '../../plan.ts';
import { progress, progressDone } from '../progress.ts';

interface Given {
  readonly folder?: string;
  readonly now?: string;
  readonly counters?: readonly string[];
  readonly device?: string;
}

/** @throws CannotDo where an option that the drawing needs is missing, or one is given that it does not use */
export async function measuredFor(
  { kind, measured }: DrawingKind,
  plan: Plan,
  subject: string,
  given: Given,
): Promise<Measured | undefined> {
  if (given.folder !== undefined && measured?.from !== 'recordings')
    throw new CannotDo(`draw ${kind} shows nothing of a folder: leave --folder out.`);
  if (given.counters !== undefined && measured?.from !== 'counters')
    throw new CannotDo(`draw ${kind} shows no counters: leave --counters out.`);
  if (measured?.from === 'recordings' && (measured.needed || given.folder !== undefined))
    return { recordings: folder(plan, subject, given) };
  if (measured?.from !== 'counters' || given.counters === undefined) return undefined;
  return { counters: { readings: await counters(given.counters), device: given.device } };
}

/** Reads the given folder, or the path of the volume. */
function folder({ site }: Plan, subject: string, given: Given): NonNullable<Measured['recordings']> {
  const name = site.recordingByName.get(subject)?.volume ?? subject;
  const volume = site.volumeByName.get(name);
  if (volume === undefined) throw new CannotDo(`The site does not say on which volume ${subject} is.`);
  const { volumes } = readVolumes(
    site,
    [volume],
    given.folder === undefined ? undefined : resolve(given.folder),
    progress,
  );
  progressDone();
  const now = given.now === 'newest' ? newestOf(volumes) : timeOf(site.timezone, given.now);
  return { looked: volumes.flatMap(({ survey }) => lookedAt(survey, now)), now };
}

function timeOf(zone: string | undefined, text: string | undefined): number {
  if (text === undefined) return Date.now();
  const read = readTime(text, zone);
  if (typeof read === 'number') return read;
  throw new CannotDo(`--now: ${read.refused}`);
}

async function counters(files: readonly string[]): Promise<Readings> {
  const all: Readings[] = [];
  for (const file of files) all.push(await countersIn(file, { progress }));
  progressDone();
  return { samples: all.flatMap(({ samples }) => samples), notes: all.flatMap(({ notes }) => notes) };
}
