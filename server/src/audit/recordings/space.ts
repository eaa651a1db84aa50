/** Compares a volume's free space with the plan and the bytes still to be written. */

import type { Plan } from '../../plan.ts';
import { usableBytesOf } from '../../storage/storage.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Volume } from '../../site/model.ts';
import { bytes, days, threshold, asName } from '../../text/words.ts';
import type { Found } from '../../lint/rule.ts';
import { recordingRules as rules } from './rules.ts';
import type { Looked } from './looked.ts';
import { DAY } from '../../standards/time-units.ts';

/** The file system at the volume's path; bytes. */
export interface Space {
  readonly total: number;
  readonly free: number;
}

/** The largest part that a file system needs for itself (common practice, no source). */
const OVERHEAD = 0.1;

export function ofSpace(
  plan: Plan,
  volume: Volume,
  looked: readonly Looked[],
  { total, free }: Space,
  now: number,
): Found[] {
  const { item, name, capacity, reserve } = volume;
  const acceptAt = [name];
  const found: Found[] = [];
  const planned = capacity === undefined ? undefined : usableBytesOf({ ...volume, reserve: 0 });
  if (planned !== undefined && total < planned * (1 - OVERHEAD))
    found.push({
      rule: rules.smaller,
      at: placeOf(item, ['capacity']),
      message:
        `The file system at ${volume.path} has ${bytes(total)}, and ${asName(name)} is planned with ` +
        `${bytes(planned)}. Is its disk mounted?`,
      acceptAt,
    });
  const kept = Math.round((total * reserve) / 10_000);
  if (free < kept) {
    found.push({
      rule: rules.reserve,
      at: placeOf(item, ['reserve']),
      message:
        `${asName(name)} has ${bytes(free)} free of ${bytes(total)}, less than its reserve of ${threshold(reserve)} ` +
        `(${bytes(kept)}).`,
      acceptAt,
    });
    return found;
  }
  const growing = looked.map((one) => growthOf(plan, one));
  const full = fullAfter(free - kept, growing);
  const wanted = growing.reduce((sum, { left }) => sum + left, 0);
  if (full === undefined || wanted === Infinity) return found;
  const [first] = looked;
  found.push({
    rule: rules.fills,
    at: namePlace(item),
    message:
      `${asName(name)} has ${bytes(free - kept)} free above its reserve, and until all of its recordings reach their ` +
      `\`keep\` ${bytes(wanted)} are to be written: at the measured rates it is full in ${days(full)}` +
      `${first === undefined ? '' : `, about ${first.time(now + full * DAY).slice(0, 10)}`}.`,
    acceptAt,
  });
  return found;
}

interface Growth {
  /** Bytes. */
  readonly perDay: number;
  /** Bytes until as much is deleted as is written; infinite where nothing is. */
  readonly left: number;
}

function growthOf({ storage }: Plan, { recording, course: { rate, bytes: there } }: Looked): Growth {
  const perDay = ((rate?.mean ?? storage.of(recording).rate.nominal) * DAY) / 8000;
  const { keep } = recording;
  return { perDay, left: keep === undefined ? Infinity : Math.max(0, (perDay * keep) / DAY - there) };
}

/** Days until `room` bytes are written; `undefined` where they never are. */
export function fullAfter(room: number, growing: readonly Growth[]): number | undefined {
  const sorted = growing
    .filter(({ perDay, left }) => perDay > 0 && left > 0)
    .sort((a, b) => a.left / a.perDay - b.left / b.perDay);
  let perDay = sorted.reduce((sum, growth) => sum + growth.perDay, 0);
  let [day, free] = [0, room];
  for (const growth of sorted) {
    const until = growth.left / growth.perDay;
    if (free < (until - day) * perDay) return day + free / perDay;
    free -= until === Infinity ? Infinity : (until - day) * perDay;
    [day, perDay] = [until, perDay - growth.perDay];
  }
  return undefined;
}
