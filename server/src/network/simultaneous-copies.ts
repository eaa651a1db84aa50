/**
 * The most that crosses a link at one time, where screens show only some of their streams at a time: the largest
 * streams that they can choose together.
 *
 * Each screen behind the link shows as many streams as it has decoders, and a group that several screens show crosses
 * once. Taking the largest stream first, and moving screens to other streams where that makes room, gives the greatest
 * sum (a transversal matroid; Edmonds and Fulkerson 1965, from memory).
 */

import type { Device, Port, Stream } from '../site/model.ts';
import type { Link } from './link.ts';
import { linePeakOf } from './loads.ts';
import type { StreamRates } from './rates.ts';
import type { ChosenCopies, Routes, StreamCopies } from './routes.ts';

export interface SimultaneousCopies {
  /** The streams that cross together at the worst moment, in their order. */
  readonly copies: (link: Link, out: Port) => readonly StreamCopies[];
  /** Those that cross only at other moments, in their order. */
  readonly waiting: (link: Link, out: Port) => readonly StreamCopies[];
}

/** @param decoders the screens that choose, and how many streams each shows at a time */
export function simultaneousCopies(
  links: readonly Link[],
  routes: Pick<Routes, 'copies' | 'chosen'>,
  decoders: ReadonlyMap<Device, number>,
  rates: (stream: Stream) => StreamRates,
): SimultaneousCopies {
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
        copies: merged([...routes.copies(link, out), ...chosen.filter((copies) => shown.has(copies))]),
        waiting: merged(chosen.filter((copies) => !shown.has(copies))),
      });
    }
  }
  return {
    copies: (link, out) => byPort.get(out)?.copies ?? routes.copies(link, out),
    waiting: (_, out) => byPort.get(out)?.waiting ?? NONE,
  };
}

const NONE: readonly StreamCopies[] = [];

/** Copies that are shown together or not at all: all that is sent to a group, or one receiver's copy. */
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
  for (const copies of all) {
    const key = copies.stream.group ?? copies;
    let choice = byGroup.get(key);
    if (choice === undefined) byGroup.set(key, (choice = { copies: [], screens: new Set(), peak: 0 }));
    choice.copies.push(copies);
    choice.peak += linePeakOf(copies, rates(copies.stream));
    for (const screen of copies.shownBy) choice.screens.add(screen);
  }
  const shown = new Map<Device, Choice[]>();
  /** Finds the choice a screen, moving others to further screens where that makes room. */
  const place = (choice: Choice, tried: Set<Device>): boolean => {
    for (const screen of choice.screens) {
      if (tried.has(screen)) continue;
      tried.add(screen);
      const onScreen = shown.get(screen) ?? [];
      shown.set(screen, onScreen);
      if (onScreen.length < (decoders.get(screen) ?? 0)) {
        onScreen.push(choice);
        return true;
      }
      const moved = onScreen.findIndex((placed) => place(placed, tried));
      if (moved !== -1) {
        onScreen[moved] = choice;
        return true;
      }
    }
    return false;
  };
  const bySize = [...byGroup.values()].sort((a, b) => b.peak - a.peak);
  return new Set(bySize.filter((choice) => place(choice, new Set())).flatMap(({ copies }) => copies));
}

/** One entry for each stream, in the order of first appearance. */
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
