/**
 * What Plumbline computes, held against what real switches count: each site is built of Open vSwitch bridges and
 * network namespaces, its hosts send and join, and every port is counted in both directions.
 */

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import { unavailable } from '../availability.ts';
import { FAMILY } from './family.ts';
import { Lab, type Window } from './lab.ts';
import { scaleOf } from './pace.ts';
import { whyNoLab } from './probe.ts';
import { type Row, rowsOf, tableOf, worst } from './table.ts';

const SECONDS = 3;
/** A machine that does other work at the same time may lose a frame. It does not lose the same one again. */
const TRIES = 3;

describe('the lab', function () {
  this.timeout(60_000);
  const seen = { ports: 0, loaded: 0, idle: 0 };

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  for (const { title, plan: read } of FAMILY) {
    it(title, async function () {
      const plan = read();
      const lab = new Lab(plan);
      try {
        await lab.build();
        const scale = scaleOf(plan);
        const { rows, wrong, tries } = await measure(plan, lab, scale);
        const { loaded, idle } = worst(plan, rows);
        const scaled = scale === 1 ? '' : `, at 1/${Math.round(1 / scale)} of the rates`;
        const again = tries === 1 ? '' : `, at the ${tries}nd try`.replace('3nd', '3rd');
        console.log(`      bytes in ${SECONDS} s without FCS${scaled}${again}; off by ${(loaded * 100).toFixed(2)} % at most, idle ports ${idle} bytes at most`);
        console.log(tableOf(rows));
        seen.ports += rows.length;
        seen.loaded = Math.max(seen.loaded, loaded);
        seen.idle = Math.max(seen.idle, idle);
        assert.deepEqual(wrong, []);
      } finally {
        lab.end();
      }
    });
  }

  after(() => {
    if (seen.ports > 0) {
      console.log(`    ${FAMILY.length} sites, ${seen.ports} ports and directions: ` +
        `off by ${(seen.loaded * 100).toFixed(2)} % at most, idle ones ${seen.idle} bytes at most`);
    }
  });
});

async function measure(plan: Plan, lab: Lab, scale: number): Promise<{ rows: Row[]; wrong: string[]; tries: number }> {
  for (let tries = 1; ; tries++) {
    const window = await lab.measure(SECONDS, scale);
    const rows = rowsOf(plan, window.counted, SECONDS, scale);
    const wrong = [...disagreements(rows), ...wrongReceptions(lab, window)];
    if (wrong.length === 0 || tries === TRIES) return { rows, wrong, tries };
  }
}

function disagreements(rows: readonly Row[]): string[] {
  return rows.filter(({ agrees }) => !agrees).map((row) => tableOf([row]).split('\n')[1]?.trim() ?? '');
}

/** Whoever is reached has everything that was sent, whoever is not has nothing. */
function wrongReceptions({ traffic }: Lab, { sent, got }: Window): string[] {
  return traffic.receptions.flatMap(({ stream, receiver, expected, sender }, index) => {
    const received = got[index] ?? 0;
    const all = expected ? (sent[sender] ?? 0) : 0;
    return received === all ? [] : [`${receiver.name} got ${received} of ${stream.name}, not ${all}`];
  });
}
