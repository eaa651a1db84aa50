/** Compares folders of recordings with the plan. */

import type { Plan } from '../../plan.ts';
import type { Volume } from '../../site/model.ts';
import { bytes, count, asName } from '../../text/words.ts';
import type { Audited } from '../audited.ts';
import { diagnose } from '../../lint/diagnose.ts';
import type { Found } from '../../lint/rule.ts';
import { ofBitRate } from './bit-rate.ts';
import type { Lengths } from './course.ts';
import { ofKept } from './kept.ts';
import { type Looked, lookedAt } from './looked.ts';
import { ofNobody } from './nobody.ts';
import { ofTime } from './of-time.ts';
import { type Space, ofSpace } from './space.ts';
import type { Holding } from './survey.ts';
import { tableOf } from './table.ts';

/** A volume whose folder was read. */
export interface ReadVolume {
  readonly volume: Volume;
  readonly survey: Holding;
  /** `undefined` where the folder is a copy. */
  readonly space: Space | undefined;
}

export interface Circumstances {
  /** Milliseconds since 1970: the time of the folder's state. */
  readonly now: number;
  /** When the recordings began, where the user gives it. */
  readonly since?: number | undefined;
  /** True lengths of files, by recording. */
  readonly lengths?: ReadonlyMap<string, Lengths>;
}

export function auditRecordings(
  plan: Plan,
  volumes: readonly ReadVolume[],
  { now, since, lengths }: Circumstances,
): Audited {
  const all: Looked[] = [];
  const found: Found[] = [];
  const notes: string[] = [];
  for (const { volume, survey, space } of volumes) {
    const looked = lookedAt(survey, now, lengths);
    all.push(...looked);
    found.push(
      ...looked.flatMap((one) => [...ofTime(one), ...ofKept(plan.site, one, now, since)]),
      ...ofNobody(volume, survey),
    );
    if (space !== undefined) found.push(...ofSpace(plan, volume, looked, space, now));
    notes.push(
      ...notesOf(plan, volume, survey, looked),
      ...(space === undefined
        ? []
        : [`${asName(volume.name)} has ${bytes(space.free)} free of ${bytes(space.total)}.`]),
    );
  }
  found.push(...ofBitRate(plan, all));
  const files = volumes.reduce((sum, { survey }) => sum + survey.files, 0);
  return {
    found: diagnose(plan.site.lint, found),
    summary: [...tableOf(plan, all, now), `${count(files, 'file')} looked at.`, ...notes],
  };
}

/** Notes on parts that could not be audited, and why. */
function notesOf({ site }: Plan, volume: Volume, { notFollowed }: Holding, looked: readonly Looked[]): string[] {
  const notes = looked.flatMap(({ recording: { name }, names, rounding, expected }) => {
    if (names.noInstant !== undefined)
      return [`${asName(name)}: its names do not tell when files are of, since ${names.noInstant}.`];
    if (rounding === undefined)
      return [`${asName(name)}: its names tell no more than the ${names.finest}, so gaps were not looked for.`];
    return expected === undefined
      ? [`${asName(name)} has no \`segment\` in the site, so gaps were not looked for.`]
      : [];
  });
  const unnamed = site.recordings.filter(
    (recording) => recording.volume === volume.name && recording.file === undefined,
  );
  notes.push(...unnamed.map(({ name }) => `${asName(name)} does not say how its files are named: give it a \`file\`.`));
  if (notFollowed > 0)
    notes.push(
      `${count(notFollowed, 'link or special file', 'links and special files')} of ${asName(volume.name)} were not followed ` +
        'or opened.',
    );
  return notes;
}
