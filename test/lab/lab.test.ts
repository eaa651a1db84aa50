/**
 * Compares Plumbline's figures with the counters of real switches: each site is built of Open vSwitch bridges and
 * network namespaces, its hosts send and join, and every port is counted in both directions.
 */

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import { unavailable } from '../availability.ts';
import { Ahead } from './ahead.ts';
import { FAMILY } from './family.ts';
import { measure } from './measure.ts';
import { whyNoLab } from './probe.ts';
import { tableOf } from './table.ts';

const SECONDS = 3;

/** Sites that are built at the same time; each takes a fifth of a processor, and waits for most of its time. */
const AT_ONCE = 3;

describe('the lab', function () {
  const seen = { sites: 0, ports: 0, loaded: 0, idle: 0 };
  const outcomes = new Ahead(
    FAMILY.map(
      ({ plan }) =>
        () =>
          measure(plan(), SECONDS),
    ),
    AT_ONCE,
  );

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  FAMILY.forEach(({ title }, index) => {
    it(title, async () => {
      const { rows, wrong, routes, tries, scale, latest, loaded, idle } = await outcomes.get(index);
      const scaled = `${scale === 1 ? '' : `, at 1/${Math.round(1 / scale)} of the rates`}, at most ${Math.round(latest * 1000)} ms late`;
      const again = tries === 1 ? '' : `, after ${tries} windows`;
      console.log(`      bytes in ${SECONDS} s without FCS${scaled}${again}; ${offBy({ loaded, idle })}`);
      console.log(tableOf(rows));
      seen.sites++;
      seen.ports += rows.length;
      seen.loaded = Math.max(seen.loaded, loaded);
      seen.idle = Math.max(seen.idle, idle);
      assert.deepEqual(
        routes.filter(({ predicted, kernel }) => predicted !== kernel),
        [],
      );
      assert.deepEqual(wrong, []);
    });
  });

  after(async () => {
    await outcomes.ended();
    if (seen.sites === 0) return;
    console.log(`    ${seen.sites} sites, ${seen.ports} ports and directions: ${offBy(seen)}`);
  });
});

function offBy({ loaded, idle }: { readonly loaded: number; readonly idle: number }): string {
  return `loaded ports off by ${(loaded * 100).toFixed(2)} % at most, idle ones carried ${idle} bytes at most`;
}
