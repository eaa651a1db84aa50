/** Lines above a stream: who gets it, and which of the links on its way is nearest to its limit. */

import { bitRate, count, few, percent } from '../text/words.ts';
import type { Checked } from '../rules/check.ts';
import type { SiteText } from '../site/folder.ts';
import { type Place, contentOf, headOf } from '../site/item.ts';
import { type Port, type Stream, portName } from '../site/model.ts';

export interface Lens {
  readonly at: Place;
  readonly title: string;
}

export function lenses(checked: Checked, file: SiteText): Lens[] {
  const { site } = checked.plan;
  const fullest = fullestLinks(checked);
  return file.cut.pieces
    .flatMap((piece) => contentOf(piece).items)
    .flatMap((item) => {
      if (item.section !== 'streams') return [];
      const stream = site.streamByName.get(item.name);
      if (stream?.item !== item) return [];
      const limit = fullest.get(stream);
      return [
        { at: headOf(item), title: receivers(checked, stream) },
        ...(limit === undefined ? [] : [{ at: headOf(item), title: limit.words }]),
      ];
    });
}

function receivers({ plan }: Checked, { index }: Stream): string {
  const { reaches, unreached } = plan.network.deliveries[index] ?? { reaches: [], unreached: [] };
  const without =
    unreached.length === 0
      ? ''
      : `; ${few(unreached.map(({ receiver }) => receiver))} ${unreached.length === 1 ? 'gets' : 'get'} nothing`;
  return reaches.length === 0
    ? `reaches nobody${without}`
    : `${count(reaches.length, 'receiver')}: ${few(reaches)}${without}`;
}

/** By stream, the link on its way with the highest load at peak, against its speed. */
function fullestLinks({ plan: { network } }: Checked): Map<Stream, { share: number; words: string }> {
  const found = new Map<Stream, { share: number; words: string }>();
  for (const link of network.topology.links) {
    const { capacity, a, b, index } = link;
    if (capacity === undefined) continue;
    const directions: readonly (readonly [number, Port, Port])[] = [
      [2 * index, a, b],
      [2 * index + 1, b, a],
    ];
    for (const [direction, from, to] of directions) {
      const peak = network.loads[direction]?.line.peak ?? 0;
      const share = peak / capacity;
      const way = `${portName(from)} → ${portName(to)}`;
      for (const { stream } of network.crossings.at(direction)) {
        if (share <= (found.get(stream)?.share ?? 0)) continue;
        found.set(stream, {
          share,
          words: `first limit: ${way}, ${percent(peak, capacity)} of ${bitRate(capacity)} at peak`,
        });
      }
    }
  }
  return found;
}
