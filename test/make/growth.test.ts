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

/** Processor time in ms, the least of some runs: the engine compiles what is hot in the first. */
function cost(output: Output, plan: Plan, runs: number): number {
  const once = (): number => {
    const before = process.cpuUsage();
    output.make(plan);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
  return Math.min(...Array.from({ length: runs }, once));
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
      const few = cost(output, small, 8);
      const many = cost(output, large, 2);
      // What takes next to nothing is not told from nothing.
      assert.ok(many <= MOST * Math.max(few, 1), `${many.toFixed(1)} ms, where an eighth of it takes ${few.toFixed(1)} ms`);
    });
});
