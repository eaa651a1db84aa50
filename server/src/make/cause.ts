/** The rules whose findings explain refusals of several kinds of files. */

import { perObject } from '../memo.ts';
import type { Plan } from '../plan.ts';
import { nodeAt } from '../site/edit.ts';
import type { Stream } from '../site/model.ts';

/** The rule for a stream whose port is not known. */
export function portRule({ item }: Stream): string {
  if (nodeAt(item, ['port']) === undefined) return 'port-missing';
  return item.blank ? 'unfilled' : 'out-of-range';
}

const circled = perObject((streams: readonly Stream[]): ReadonlySet<Stream> => new Set(streams));

export function isInCircle({ carriedInCircle }: Plan['site'], stream: Stream): boolean {
  return circled(carriedInCircle).has(stream);
}

/** The rule for a stream with neither known video nor audio. */
export function emptyRule({ site }: Pick<Plan, 'site'>, stream: Stream): string {
  if (isInCircle(site, stream)) return 'carries-itself';
  if (stream.carries === undefined) return 'rate-missing';
  const carried = site.streamByName.get(stream.carries);
  return carried === undefined ? 'unknown-name' : emptyRule({ site }, carried);
}
