/** The rules by which a check finds what several kinds of files are refused for. */

import { perObject } from '../memo.ts';
import type { Plan } from '../plan.ts';
import { nodeAt } from '../site/edit.ts';
import type { Stream } from '../site/model.ts';

/** Of a stream whose port is not known. */
export function portRule({ item }: Stream): string {
  if (nodeAt(item, ['port']) === undefined) return 'port-missing';
  return item.blank ? 'unfilled' : 'out-of-range';
}

const circled = perObject((streams: readonly Stream[]): ReadonlySet<Stream> => new Set(streams));

export function isInCircle({ carriedInCircle }: Plan['site'], stream: Stream): boolean {
  return circled(carriedInCircle).has(stream);
}

/** Of a stream of which neither video nor audio is known. */
export function emptyRule({ site }: Pick<Plan, 'site'>, stream: Stream): string {
  if (isInCircle(site, stream)) return 'carries-itself';
  if (stream.carries === undefined) return 'rate-missing';
  const carried = site.streamByName.get(stream.carries);
  return carried === undefined ? 'unknown-name' : emptyRule({ site }, carried);
}
