/**
 * What Plumbline computes, held against what real switches count: each site is built of Open vSwitch bridges and
 * network namespaces, its hosts send and join, and every port is counted in both directions.
 */

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import { unavailable } from '../availability.ts';
import { Ahead } from './ahead.ts';
import { FAMILY } from './family.ts';
import { Lab, type Window } from './lab.ts';
import { scaleOf } from './pace.ts';
import { whyNoLab } from './probe.ts';
import { type Row, rowsOf, tableOf, worst } from './table.ts';

const SECONDS = 3;
/** A machine that does other work at the same time may lose a frame. It does not lose the same one again. */
const TRIES = 3;
/** Seconds: where a packet is sent later than that, TCP puts several into one, and fewer are acknowledged. */
const LATE = 0.02;
/** Of windows in which a sender was late there may be more, as they say nothing. */
const MOST_TRIES = 20;

/** Sites that are built at the same time; each takes a fifth of a processor, and waits for most of its time. */
const AT_ONCE = 2;

describe('the lab', function () {
  const seen = { sites: 0, ports: 0, loaded: 0, idle: 0 };
  const outcomes = new Ahead(
    FAMILY.map(
      ({ plan }) =>
        () =>
          measure(plan()),
    ),
    AT_ONCE,
  );

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  FAMILY.forEach(({ title }, index) => {
    it(title, async () => {
      const { rows, wrong, tries, scale, latest, loaded, idle } = await outcomes.get(index);
      const scaled = `${scale === 1 ? '' : `, at 1/${Math.round(1 / scale)} of the rates`}, at most ${Math.round(latest * 1000)} ms late`;
      const again = tries === 1 ? '' : `, after ${tries} windows`;
      console.log(`      bytes in ${SECONDS} s without FCS${scaled}${again}; ${offBy({ loaded, idle })}`);
      console.log(tableOf(rows));
      seen.sites++;
      seen.ports += rows.length;
      seen.loaded = Math.max(seen.loaded, loaded);
      seen.idle = Math.max(seen.idle, idle);
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

interface Outcome {
  readonly rows: readonly Row[];
  readonly wrong: readonly string[];
  readonly tries: number;
  readonly scale: number;
  /** Seconds by which the latest packet of the last window missed its time. */
  readonly latest: number;
  /** See `worst`. */
  readonly loaded: number;
  readonly idle: number;
}

/** Builds a site and runs it. Where something disagrees it is run again: what the machine lost is not lost again. */
async function measure(plan: Plan): Promise<Outcome> {
  const lab = new Lab(plan);
  try {
    await lab.build();
    const scale = scaleOf(plan);
    let inTime = 0;
    for (let tries = 1; ; tries++) {
      const window = await lab.measure(SECONDS, scale);
      const rows = rowsOf(plan, window.counted, SECONDS, scale);
      const wrong = [...disagreements(rows), ...wrongReceptions(lab, window)];
      if (window.latest <= LATE) inTime++;
      if (wrong.length === 0 || inTime === TRIES || tries === MOST_TRIES)
        return { rows, wrong, tries, scale, latest: window.latest, ...worst(plan, rows) };
    }
  } finally {
    lab.end();
  }
}

function disagreements(rows: readonly Row[]): string[] {
  return rows.filter(({ agrees }) => !agrees).map((row) => tableOf([row]).split('\n')[1]?.trim() ?? '');
}

/** A receiver that is reached gets everything that was sent, one that is not gets nothing. */
function wrongReceptions({ traffic }: Lab, { sent, got }: Window): string[] {
  return traffic.receptions.flatMap(({ stream, receiver, expected, sender }, index) => {
    const received = got[index] ?? 0;
    const all = expected ? (sent[sender] ?? 0) : 0;
    return received === all ? [] : [`${receiver.name} got ${received} of ${stream.name}, not ${all}`];
  });
}
