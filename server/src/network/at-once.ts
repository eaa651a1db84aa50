/**
 * What crosses a link at the same time at most, where screens show some of their streams at a time: the largest that
 * they can choose together.
 *
 * Each screen behind the link shows as many streams as it has decoders, and a group that several show crosses once. Of
 * the streams that fit together so, taking the largest first and moving screens to others where that makes room gives
 * the greatest sum (a transversal matroid; Edmonds and Fulkerson 1965, from memory).
 */

import type { Device, Port, Stream } from '../site/model.ts';
import type { Link } from './link.ts';
import { linePeakOf } from './loads.ts';
import type { StreamRates } from './rates.ts';
import type { ChosenCopies, Routes, StreamCopies } from './routes.ts';

export interface AtOnce {
  /** The streams that cross together at the worst moment, in their order. */
  readonly copies: (link: Link, out: Port) => readonly StreamCopies[];
  /** Those that cross only at other moments, in their order. */
  readonly waiting: (link: Link, out: Port) => readonly StreamCopies[];
}

/** `decoders` has the screens that choose, and how many streams each shows at a time. */
export function atOnce(
  links: readonly Link[],
  routes: Pick<Routes, 'copies' | 'chosen'>,
  decoders: ReadonlyMap<Device, number>,
  rates: (stream: Stream) => StreamRates,
): AtOnce {
  const none = (): readonly StreamCopies[] => NONE;
  if (decoders.size === 0) return { copies: routes.copies, waiting: none };
  const byPort = new Map<
    Port,
    { readonly copies: readonly StreamCopies[]; readonly waiting: readonly StreamCopies[] }
  >();
  for (const link of links) {
    for (const out of [link.a, link.b]) {
      const chosen = routes.chosen(link, out);
      if (chosen.length === 0) continue;
      const shown = largest(chosen, decoders, rates);
      byPort.set(out, {
        copies: merged([...routes.copies(link, out), ...chosen.filter((one) => shown.has(one))]),
        waiting: merged(chosen.filter((one) => !shown.has(one))),
      });
    }
  }
  return {
    copies: (link, out) => byPort.get(out)?.copies ?? routes.copies(link, out),
    waiting: (_, out) => byPort.get(out)?.waiting ?? NONE,
  };
}

const NONE: readonly StreamCopies[] = [];

/** What is shown or not as one: all that is sent to a group, or one receiver's copy. */
interface Choice {
  readonly copies: ChosenCopies[];
  readonly screens: Set<Device>;
  peak: number;
}

function largest(
  all: readonly ChosenCopies[],
  decoders: ReadonlyMap<Device, number>,
  rates: (stream: Stream) => StreamRates,
): ReadonlySet<ChosenCopies> {
  const byGroup = new Map<number | ChosenCopies, Choice>();
  for (const one of all) {
    const key = one.stream.group ?? one;
    let choice = byGroup.get(key);
    if (choice === undefined) byGroup.set(key, (choice = { copies: [], screens: new Set(), peak: 0 }));
    choice.copies.push(one);
    choice.peak += linePeakOf(one, rates(one.stream));
    for (const screen of one.shownBy) choice.screens.add(screen);
  }
  const shown = new Map<Device, Choice[]>();
  /** Finds the choice a screen, moving others to further screens where that makes room. */
  const place = (choice: Choice, tried: Set<Device>): boolean => {
    for (const screen of choice.screens) {
      if (tried.has(screen)) continue;
      tried.add(screen);
      const own = shown.get(screen) ?? [];
      shown.set(screen, own);
      if (own.length < (decoders.get(screen) ?? 0)) {
        own.push(choice);
        return true;
      }
      const moved = own.findIndex((other) => place(other, tried));
      if (moved !== -1) {
        own[moved] = choice;
        return true;
      }
    }
    return false;
  };
  const bySize = [...byGroup.values()].sort((a, b) => b.peak - a.peak);
  return new Set(bySize.filter((choice) => place(choice, new Set())).flatMap(({ copies }) => copies));
}

/** One entry a stream, in the order of the first. */
function merged(all: readonly StreamCopies[]): readonly StreamCopies[] {
  const byStream = new Map<Stream, StreamCopies>();
  for (const { stream, untagged, tagged, repliesUntagged, repliesTagged } of all) {
    const before = byStream.get(stream);
    byStream.set(stream, {
      stream,
      untagged: untagged + (before?.untagged ?? 0),
      tagged: tagged + (before?.tagged ?? 0),
      repliesUntagged: repliesUntagged + (before?.repliesUntagged ?? 0),
      repliesTagged: repliesTagged + (before?.repliesTagged ?? 0),
    });
  }
  return [...byStream.values()];
}
