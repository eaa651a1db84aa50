/** Changes for the users of the site: how long footage is kept, what screens show, how long cameras go on. */

import type { Plan } from '../plan.ts';
import { DAY } from '../standards/time-units.ts';
import { bytes, days } from '../text/words.ts';
import { lastsWords } from '../report/supply/words.ts';
import type { Match, Pair } from './match.ts';
import type { MatchedPairs } from './pairing.ts';

export interface UserChange {
  readonly of: Pair;
  /** `kept`, `full after`, `receives` … */
  readonly what: string;
  /** In words; null where the plan lacks the thing. */
  readonly before: string | null;
  readonly after: string | null;
}

export function userChanges(before: Plan, after: Plan, match: Match): UserChange[] {
  return [
    ...recordings(before, after, match),
    ...volumes(before, after, match),
    ...received(before, after, match),
    ...lives(before, after, match),
  ];
}

function recordings(before: Plan, after: Plan, { entries }: Match): UserChange[] {
  const words = (recording: Plan['site']['recordings'][number] | undefined): string | null =>
    recording === undefined ? null : recording.keep === undefined ? 'never deleted' : days(recording.keep / DAY);
  return entries.recordings.flatMap((pair) => {
    const of = namesOf(pair);
    const then = before.site.recordingByName.get(of.before ?? '');
    return changed(of, 'kept', words(then), words(after.site.recordingByName.get(of.after ?? '')));
  });
}

function volumes(before: Plan, after: Plan, { entries }: Match): UserChange[] {
  return entries.volumes.flatMap((pair) => {
    const of = namesOf(pair);
    const old = before.site.volumeByName.get(of.before ?? '');
    const current = after.site.volumeByName.get(of.after ?? '');
    const [then, now] = [
      old === undefined ? undefined : before.storage.on(old),
      current === undefined ? undefined : after.storage.on(current),
    ];
    type Figures = NonNullable<typeof then>;
    const said = (figures: Figures | undefined, words: (one: Figures) => string): string | null =>
      figures === undefined ? null : words(figures);
    const full = ({ daysUntilFull }: Figures): string => (daysUntilFull === undefined ? '?' : days(daysUntilFull));
    return [
      ...changed(
        of,
        'a day',
        said(then, (one) => bytes(one.bytesPerDay)),
        said(now, (one) => bytes(one.bytesPerDay)),
      ),
      ...changed(
        of,
        'needed',
        said(then, (one) => bytes(one.bytesKept)),
        said(now, (one) => bytes(one.bytesKept)),
      ),
      ...changed(of, 'full after', said(then, full), said(now, full)),
    ];
  });
}

/** Each stream that a receiver gets in only one of the plans. */
function received(before: Plan, after: Plan, { devices, entries }: Match): UserChange[] {
  const [newName, oldName] = [new Map<string, string>(), new Map<string, string>()];
  for (const pair of entries.streams) {
    if (pair.before === undefined || pair.after === undefined) continue;
    newName.set(pair.before.name, pair.after.name);
    oldName.set(pair.after.name, pair.before.name);
  }
  const by = (plan: Plan): Map<string, Set<string>> => {
    const found = new Map<string, Set<string>>();
    for (const { stream, reaches } of plan.network.deliveries)
      for (const receiver of reaches) found.set(receiver, (found.get(receiver) ?? new Set()).add(stream.name));
    return found;
  };
  const [then, now] = [by(before), by(after)];
  return devices.flatMap(({ before: old, after: current }) => {
    const had = then.get(old?.name ?? '') ?? new Set<string>();
    const has = now.get(current?.name ?? '') ?? new Set<string>();
    const of = { before: old?.name ?? null, after: current?.name ?? null };
    const added = [...has].filter((name) => !had.has(oldName.get(name) ?? ''));
    const gone = [...had].filter((name) => !has.has(newName.get(name) ?? ''));
    return [
      ...added.map((name) => ({ of, what: 'receives', before: null, after: name })),
      ...gone.map((name) => ({ of, what: 'receives', before: name, after: null })),
    ];
  });
}

function lives(before: Plan, after: Plan, { devices }: Match): UserChange[] {
  const by = (plan: Plan): Map<string, string> =>
    new Map(
      plan.supply().upses.length === 0
        ? []
        : plan.cameraRuntimes().map(({ camera, lasts }) => [camera.name, lastsWords(lasts)]),
    );
  const [then, now] = [by(before), by(after)];
  return devices.flatMap(({ before: old, after: current }) =>
    old === undefined || current === undefined
      ? []
      : changed(
          { before: old.name, after: current.name },
          'without mains',
          then.get(old.name) ?? null,
          now.get(current.name) ?? null,
        ),
  );
}

function namesOf({ before, after }: MatchedPairs<{ readonly name: string }>): Pair {
  return { before: before?.name ?? null, after: after?.name ?? null };
}

export function changed(of: Pair, what: string, before: string | null, after: string | null): UserChange[] {
  return before === after ? [] : [{ of, what, before, after }];
}
