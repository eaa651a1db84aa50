/** Run by growth.test.ts: prints, as JSON, how many operations each output takes on a small and on a large site. */

// First, so that the code of all others has counters.
import { operations } from '../operations.ts';
import { OUTPUTS } from '../../server/src/make/outputs.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { generatedSite } from '../bench/generated-site.ts';
import { siteOf } from '../site-of.ts';

const [small, large] = [2000, 16_000].map((lines): Plan => planOf(siteOf(generatedSite(lines))));
if (small === undefined || large === undefined) throw new Error('there are no sites');

const counts: Record<string, readonly [number, number]> = {};
for (const output of OUTPUTS)
  counts[output.kind] = [
    await operations(() => void output.make(small)),
    await operations(() => void output.make(large)),
  ];
console.log(JSON.stringify(counts));
