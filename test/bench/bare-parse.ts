/** The reference for latencies: the time that the YAML library alone takes to parse the same text. */

import { performance } from 'node:perf_hooks';
import { parseDocument } from 'yaml';
import { type Spread, spread } from './spread.ts';

/** Until the engine has compiled what is hot, ms; and at least so many times. */
const WARM_UP = 1000;
const WARM_UP_RUNS = 2;
const SAMPLES = 7;

/** The library's parse without any check, ms. */
export function bareParse(text: string): Spread {
  const once = (): number => {
    const begun = performance.now();
    parseDocument(text, { uniqueKeys: false });
    return performance.now() - begun;
  };
  const begun = performance.now();
  for (let runs = 0; runs < WARM_UP_RUNS || performance.now() - begun < WARM_UP; runs++) once();
  return spread(Array.from({ length: SAMPLES }, once));
}
