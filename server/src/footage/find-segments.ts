/** Finds the files that may hold the requested time. */

import { fileNames } from '../recordings/file-names.ts';
import type { Recording } from '../site/model.ts';
import { DAY, HOUR } from '../standards/time-units.ts';
import { candidatesOf, nearestCandidate } from './candidates.ts';
import { type Shown, clockOf } from './clock.ts';
import { type SegmentFile, lookInto } from './look-into.ts';
import { Refused } from './refused.ts';
import type { Asked } from './segment.ts';
import type { LeftOut } from './sidecar.ts';
import type { FootageTools } from './tools.ts';
import type { WantedFootage } from './wanted.ts';

/**
 * Files are searched for so long before the requested time, in milliseconds, where the site does not declare their
 * length.
 */
const SEARCHED_BEFORE = HOUR;

/** The files that overlap the requested time, and those that cannot be used, with the reason. */
export async function segmentsFor(
  { recording, names, asked, root, pass, zone }: WantedFootage,
  tools: FootageTools,
): Promise<{ segments: readonly SegmentFile[]; leftOut: readonly LeftOut[] }> {
  tools.progress('looking for files');
  const { found, skipped } = tools.find(root, names);
  const candidates = candidatesOf(
    found,
    asked,
    recording.segment === undefined ? SEARCHED_BEFORE : 3 * recording.segment + (names.roundedTo ?? 0),
  );
  const [first] = candidates;
  if (first === undefined)
    throw new Refused(
      nothing(found.length === 0 ? undefined : nearestCandidate(found, asked), recording, asked, root, clockOf(zone)),
    );
  const newest = found.reduce(
    (latest, one) => ((one.instants.at(-1) ?? 0) > (latest.instants.at(-1) ?? 0) ? one : latest),
    first,
  );
  const looked = await lookInto(candidates, { root, pass, newest: newest.path }, tools);
  const neverShown = `no clock in ${zone ?? ''} showed the time of its name, which they skipped`;
  // Read as UTC, their times are within a day of the real ones.
  const byUtc = fileNames(names.pattern, 'UTC');
  const near = skipped.filter((path) =>
    byUtc.read(path)?.instants.some((instant) => instant > asked.from - DAY && instant < asked.to + DAY),
  );
  return {
    segments: looked.segments,
    leftOut: [...looked.leftOut, ...near.map((path) => ({ path, reason: neverShown }))],
  };
}

function nothing(
  near: ReturnType<typeof nearestCandidate> | undefined,
  { name, file = '' }: Recording,
  asked: Asked,
  root: string,
  shown: Shown,
): string {
  if (near === undefined) return `No file in ${root} is named like those of ${name}, ${file}.`;
  const known = [
    near.before === undefined ? '' : `the last file before is of ${shown(near.before)}`,
    near.after === undefined ? '' : `the first after is of ${shown(near.after)}`,
  ];
  return `${name} has nothing from ${spanWords(asked, shown)}: ${known.filter((part) => part !== '').join(', ')}.`;
}

/** The requested time, as a clock of its zone shows it. */
export function spanWords({ from, to }: Asked, shown: Shown): string {
  return `${shown(from)} to ${shown(to)}`;
}
