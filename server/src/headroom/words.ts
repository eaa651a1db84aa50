/** Headroom in words, for hovers, lenses and the command line. */

import type { Headroom, Limit } from './headroom.ts';
import { asName, count } from '../text/words.ts';

/** `3 more like gate-cam at core, then archive reaches 90 % of 7.6 TB.` */
export function headroomWords({ camera, at, more, stop }: Headroom): string {
  const like = `like ${asName(camera.name)} at ${asName(at.name)}`;
  return more === 0 ? `No more ${like}: ${ended(stop)}` : `${more} more ${like}, then ${ended(stop)}`;
}

function ended(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}

/** The first limit of each kind, in the order in which they bind: `volume archive 3`. */
export function firstOfEachKind(limits: readonly Limit[]): readonly Limit[] {
  return limits.filter(({ limit }, index) => limits.findIndex((other) => other.limit === limit) === index);
}

/** What stops growth once the first limit is solved: `With that solved, 4: then core feeds 130 W at most.` */
export function nextWords(headroom: Headroom): string {
  const words = limitsAfter(headroom);
  return words === '' ? '' : `With that solved, ${words}`;
}

/** `4: then core feeds 130 W at most.`; empty where nothing else is known to stop it. */
export function limitsAfter({ more, limits, stop }: Headroom): string {
  const stopping = firstOfEachKind(limits).filter((limit) => limit.limit !== 'decoders' && limit.more !== undefined);
  // Another may bind at the same number.
  const [next] = stopping.filter((limit) => (limit.more ?? 0) >= more && limit.words !== stop);
  if (next === undefined) return '';
  return `${next.more === more ? `still ${more}` : next.more}: then ${ended(next.words)}`;
}

/** A remark on PoE, where a switch can feed more cameras. */
export const ALLOTTED = 'PoE is counted by class. A switch that allots by LLDP may feed more.';

/** `panel-a, which gate-cam is led through, has 4 free ports.` for each panel on its way. */
export function panelWords({ panels, camera }: Headroom): string[] {
  return panels.map(
    ({ panel, free }) =>
      `${asName(panel)}, which ${asName(camera.name)} is led through, has ${free === 0 ? 'no free port' : count(free, 'free port')}.`,
  );
}

/** `Each limit alone: volume archive 3, power core 4, ports core 18.` */
export function limitsWords({ limits }: Headroom): string {
  const known = firstOfEachKind(limits).filter(({ more }) => more !== undefined);
  return `Each limit alone: ${known.map(({ limit, at, more }) => `${limit} ${at} ${more}`).join(', ')}.`;
}
