// Whatever is made costs no more than the site grows, so that neither a preview nor the server waits for it.
import assert from 'node:assert/strict';
import { OUTPUTS } from '../../server/src/make/outputs.ts';
import type { Output } from '../../server/src/make/output.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { generatedSite } from '../bench/generated-site.ts';
import { siteOf } from '../site-of.ts';

const [SMALL, LARGE] = [2000, 16_000];

/** Half as much again is the memory's; the square of the growth would be 64. */
const MOST = 24;

const RUNS = 8;

/**
 * Processor time in ms, the least of some runs: the engine compiles what is hot in the first, and clears memory in any.
 * @param enough there are no more runs once this is met
 */
function cost(output: Output, plan: Plan, enough = 0): number {
  let least = Infinity;
  for (let run = 0; run < RUNS && least > enough; run++) {
    const before = process.cpuUsage();
    output.make(plan);
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

describe('what is made', function () {
  this.timeout(120_000);
  let small: Plan;
  let large: Plan;

  before(() => {
    small = planOf(siteOf(generatedSite(SMALL)));
    large = planOf(siteOf(generatedSite(LARGE)));
  });

  for (const output of OUTPUTS)
    it(`of ${output.kind} costs as the site grows`, () => {
      const few = cost(output, small);
      // What takes next to nothing is not told from nothing.
      const most = MOST * Math.max(few, 1);
      const many = cost(output, large, most);
      assert.ok(many <= most, `${many.toFixed(1)} ms, where an eighth of it takes ${few.toFixed(1)} ms`);
    });
});
