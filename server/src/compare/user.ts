/** Changes for the users of the site: how long footage is kept, what screens show, how long cameras go on. */

import type { Plan } from '../plan.ts';
import { DAY } from '../standards/time-units.ts';
import { bytes, days } from '../text/words.ts';
import { lastsWords } from '../report/supply/words.ts';
import { type Match, type Pair, matchedByName } from './match.ts';

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
    ...recordings(before, after),
    ...volumes(before, after),
    ...received(before, after, match),
    ...lives(before, after, match),
  ];
}

function recordings(before: Plan, after: Plan): UserChange[] {
  const words = (recording: Plan['site']['recordings'][number] | undefined): string | null =>
    recording === undefined ? null : recording.keep === undefined ? 'never deleted' : days(recording.keep / DAY);
  return matchedByName(before.site.recordings, after.site.recordings).flatMap(({ before: old, after: current }) =>
    changed({ before: old?.name ?? null, after: current?.name ?? null }, 'kept', words(old), words(current)),
  );
}

function volumes(before: Plan, after: Plan): UserChange[] {
  return matchedByName(before.site.volumes, after.site.volumes).flatMap(({ before: old, after: current }) => {
    const of = { before: old?.name ?? null, after: current?.name ?? null };
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
function received(before: Plan, after: Plan, { devices }: Match): UserChange[] {
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
    return [
      ...[...has].filter((name) => !had.has(name)).map((name) => ({ of, what: 'receives', before: null, after: name })),
      ...[...had].filter((name) => !has.has(name)).map((name) => ({ of, what: 'receives', before: name, after: null })),
    ];
  });
}

function lives(before: Plan, after: Plan, { devices }: Match): UserChange[] {
  const by = (plan: Plan): Map<string, string> =>
    new Map(
      plan.supply().upses.length === 0
        ? []
        : plan.cameraLives().map(({ camera, lasts }) => [camera.name, lastsWords(lasts)]),
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

export function changed(of: Pair, what: string, before: string | null, after: string | null): UserChange[] {
  return before === after ? [] : [{ of, what, before, after }];
}
