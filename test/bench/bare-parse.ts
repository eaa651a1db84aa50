/** The floor that latencies are held against: what the YAML library alone takes for the same text. */

import { performance } from 'node:perf_hooks';
import { parseDocument } from 'yaml';
import { type Spread, spread } from './measure.ts';

const WARM_UP = 2;
const SAMPLES = 5;

/** The library's parse without any check, ms. */
export function bareParse(text: string): Spread {
  const samples: number[] = [];
  for (let i = 0; i < WARM_UP + SAMPLES; i++) {
    const begun = performance.now();
    parseDocument(text, { uniqueKeys: false });
    samples.push(performance.now() - begun);
  }
  return spread(samples.slice(WARM_UP));
}
