/** Headroom in words, for hovers, lenses and the command line. */

import type { Headroom, Limit } from './headroom.ts';

/** `3 more like gate-cam at core, then archive reaches 90 % of 7.6 TB.` */
export function headroomWords({ camera, at, more, stop }: Headroom): string {
  const like = `like ${camera.name} at ${at.name}`;
  return more === 0 ? `No more ${like}: ${ended(stop)}` : `${more} more ${like}, then ${ended(stop)}`;
}

function ended(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}

/** The first limit of each kind, in the order in which they bind: `volume archive 3`. */
export function firstOfEachKind(limits: readonly Limit[]): readonly Limit[] {
  return limits.filter(({ limit }, index) => limits.findIndex((other) => other.limit === limit) === index);
}

/** What stops growth once the first limit is out of the way: `With that solved, 4: then core feeds 130 W at most.` */
export function nextWords({ more, limits }: Headroom): string {
  const next = firstOfEachKind(limits).find((limit) => limit.limit !== 'decoders' && (limit.more ?? 0) > more);
  return next === undefined ? '' : `With that solved, ${next.more}: then ${ended(next.words)}`;
}

/** `Each limit alone: volume archive 3, power core 4, ports core 18.` */
export function limitsWords({ limits }: Headroom): string {
  const known = firstOfEachKind(limits).filter(({ more }) => more !== undefined);
  return `Each limit alone: ${known.map(({ limit, at, more }) => `${limit} ${at} ${more}`).join(', ')}.`;
}
