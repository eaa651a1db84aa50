/** At how many switches of a site it is tried at once how many cameras fit. */

import type { Plan } from '../plan.ts';

/** Things of a site that are gone over in all, some 100 µs each: it is planned and judged some ten times for a switch. */
const MOST = 25_000;

export function triedAtOnce({ site }: Plan): number {
  const { devices, cables, streams, recordings } = site;
  const size = devices.length + cables.length + streams.length + recordings.length;
  return Math.max(1, Math.floor(MOST / Math.max(1, size)));
}
