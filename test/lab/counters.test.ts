/**
 * Compares counters of a real switch and of real hosts with the plan: a site that runs as planned has no findings;
 * where it is built differently, the right stream is named.
 */

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, describe, it } from 'mocha';
import { auditCounters } from '../../server/src/audit/counters/audit.ts';
import { USUAL_LIMITS } from '../../server/src/audit/counters/compare.ts';
import { IfMibTable } from '../../server/src/audit/counters/if-mib-table.ts';
import { LinkLines } from '../../server/src/audit/counters/ip-link.ts';
import type { Audited } from '../../server/src/audit/audited.ts';
import type { Readings } from '../../server/src/audit/counters/sample.ts';
import type { Plan } from '../../server/src/plan.ts';
import { readingsOf, told } from '../audit/counters/counted.ts';
import { unavailable } from '../availability.ts';
import { Ahead } from './ahead.ts';
import { planFrom } from './family.ts';
import { Lab } from './lab.ts';
import { whyNoLab } from './probe.ts';
import { lineOf, octetsOf, TABLE } from './readings.ts';
import { sleep } from './run.ts';

const SECONDS = 10;
const EVERY = 1.5;
/** As in measure.ts: windows in which the senders were late do not count. */
const [TRIES, MOST_TRIES, LATE] = [3, 20, 0.02];
/** Seconds: nor do windows in which a reading took longer, as its exact time is unknown. */
const SLOW = 0.1;

const LINE = readFileSync(new URL('./sites/line.site.yaml', import.meta.url), 'utf8');

const SNOOPING = 's2:\n    kind: switch\n    igmp-snooping: true';

/** A change of the line that is built, and the condition by which the counters suffice. */
const BUILT = {
  line: [LINE, ({ found }) => found.length === 0],
  withoutG2: [LINE.replace(/^ {2}g2: .*\n/m, ''), ({ found }) => found.length === 6],
  twice: [LINE.replace('mux-rate: 4 Mb/s', 'mux-rate: 8 Mb/s'), ({ found }) => found.length === 5],
  flooding: [
    LINE.replace(SNOOPING, SNOOPING.replace('true', 'false')),
    ({ found }) => found.length === 2 && found.every(({ message }) => message.includes('flooded')),
  ],
} as const satisfies Readonly<Record<string, readonly [string, (audited: Audited) => boolean]>>;

/** Labs that run at the same time. */
const AT_ONCE = 2;

describe('counters of the lab', function () {
  const outcomes = new Ahead(
    Object.values(BUILT).map(
      ([built, isGood]) =>
        () =>
          measured(built, isGood),
    ),
    AT_ONCE,
  );
  const audit = (name: keyof typeof BUILT): Promise<Audited> => outcomes.get(Object.keys(BUILT).indexOf(name));

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  after(() => outcomes.ended());

  it('agree with the plan of what runs, at hosts and at switches, in both directions of every cable', async () => {
    const { found, summary } = await audit('line');
    console.log(summary.map((line) => `      ${line}`).join('\n'));
    assert.deepEqual(
      found.map(({ message }) => message),
      [],
    );
  });

  it('show a stream that has stopped, at every port that it should pass, the one to the querier among them', async () => {
    const audited = await audit('withoutG2');
    assert.deepEqual(
      titles(audited, 'port-below-plan', 'g2'),
      [
        's1/ask1 → ask1/eth',
        's1/s2 → s2/s1',
        's2/s3 → s3/s2',
        's2/view2 → view2/eth',
        's3/view3 → view3/eth',
        'server/eth → s1/server',
      ],
      told(audited).join('\n'),
    );
  });

  it('show a stream of twice its rate', async () => {
    const audited = await audit('twice');
    assert.deepEqual(
      titles(audited, 'port-above-plan', 'g1'),
      ['s1/ask1 → ask1/eth', 's1/s2 → s2/s1', 's1/view1 → view1/eth', 's2/view2 → view2/eth', 'server/eth → s1/server'],
      told(audited).join('\n'),
    );
  });

  it('show a group that a switch floods which does not snoop', async () => {
    assert.ok(LINE.includes(SNOOPING));
    const audited = await audit('flooding');
    const messages = told(audited).sort();
    // s2 floods what reaches it, g1 and g2: both come to the silent host, and g1 to s3, which drops it there.
    assert.equal(messages.length, 2, messages.join('\n'));
    assert.match(
      messages[0] ?? '',
      /^warning port-above-plan: s2\/s3 → s3\/s2 .* as much as g1 \(4\.\d+ Mb\/s\): not planned there, so is it flooded/,
    );
    assert.match(
      messages[1] ?? '',
      /^warning port-above-plan: s2\/silent → silent\/eth .* as much as g[12] \([\d.]+ Mb\/s\) and g[12] \([\d.]+ Mb\/s\): not planned there, so is it flooded/,
    );
  });
});

/** The directions of the findings, which must all be of one kind and name one stream. */
function titles({ found }: Audited, fault: string, stream: string): string[] {
  for (const { rule, severity, message } of found) {
    assert.deepEqual([rule.id, severity], [fault, 'warning'], message);
    assert.match(message, new RegExp(` as much as ${stream} \\(`));
  }
  return found
    .map(({ message }) => / carried/.exec(message)?.index ?? 0)
    .map((end, index) => found[index]?.message.slice(0, end) ?? '')
    .sort();
}

/** Builds and runs the line with the change, and compares the counters with the plan of the line. */
async function measured(built: string, isGood: (audited: Audited) => boolean): Promise<Audited> {
  const plan = planFrom({ 'line.site.yaml': LINE });
  const lab = new Lab(planFrom({ 'line.site.yaml': built }));
  try {
    await lab.build();
    let inTime = 0;
    for (let tries = 1; ; tries++) {
      const { latest, slowest, ...readings } = await takeWhileItRuns(lab, plan);
      if (latest <= LATE && slowest <= SLOW) inTime++;
      const audited = auditCounters(plan, readings, undefined, { ...USUAL_LIMITS, over: 4000 });
      if (isGood(audited) || inTime === TRIES || tries === MOST_TRIES) return audited;
    }
  } finally {
    lab.end();
  }
}

interface Taken extends Readings {
  /** Seconds by which the latest packet missed its time, and which the slowest reading took. */
  readonly latest: number;
  readonly slowest: number;
}

async function takeWhileItRuns(lab: Lab, plan: Plan): Promise<Taken> {
  const hosts = plan.site.devices.filter(({ bridging, ports }) => !bridging && ports.length === 1);
  const switches = plan.site.devices.filter(({ bridging }) => bridging);
  const lines: string[] = [];
  const rows: string[] = [];
  let slowest = 0;
  const take = async <T>(reading: Promise<T>): Promise<T> => {
    const asked = Date.now();
    const answer = await reading;
    slowest = Math.max(slowest, (Date.now() - asked) / 1000);
    return answer;
  };
  const begun = Date.now();
  const running = lab.measure(SECONDS, 1);
  // The senders are under way after a moment, and end after their seconds.
  for (let at = 1; at <= SECONDS - 0.5; at += EVERY) {
    await sleep(Math.max(0, begun + at * 1000 - Date.now()));
    for (const host of hosts) lines.push(await take(lineOf(lab, host)));
    for (const device of switches) rows.push(...(await take(octetsOf(lab, device))));
    if (Date.now() > begun + (SECONDS - 0.5) * 1000) break;
  }
  const { latest } = await running;
  const parts = [
    readingsOf(new LinkLines(), lines.join('\n')),
    readingsOf(new IfMibTable(), [TABLE, ...rows].join('\n')),
  ];
  return { samples: parts.flatMap(({ samples }) => samples), notes: [], latest, slowest };
}
