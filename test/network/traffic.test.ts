import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import type { Plan } from '../../server/src/plan.ts';
import { oppositePort } from '../../server/src/network/link.ts';
import { directionExplained } from '../../server/src/report/explain/link.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { portName } from '../../server/src/site/model.ts';
import { siteOf } from '../site-of.ts';

function plan(what: string): Plan {
  return planOf(
    siteOf(`
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  core:
    kind: switch
    ports:
      1: {speed: 1 Gb/s, vlan: house}
      2: {speed: 1 Gb/s, vlan: video}
      3: {speed: 1 Gb/s, trunk: [house, video]}
      4: {speed: 1 Gb/s, vlan: video}
  router:
    kind: router
    ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}
  office-pc: {kind: computer, address: 192.168.10.20, speed: 1 Gb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  nas: {kind: server, address: 192.168.20.6, speed: 1 Gb/s}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: recorder}
  - {from: core/3, to: router/lan}
  - {from: core/4, to: nas}
${what}
`),
  );
}

/** bit/s on the line, by direction. */
function loads({ network }: Plan): Record<string, number> {
  return Object.fromEntries(
    network.topology.links.flatMap((link) =>
      [link.a, link.b].map((out) => [
        `${portName(out)} → ${portName(oppositePort(link, out))}`,
        network.load(link, out).line.peak,
      ]),
    ),
  );
}

const used = (of: Plan): string[] =>
  Object.entries(loads(of))
    .filter(([, rate]) => rate > 0)
    .map(([direction]) => direction);

describe('Other traffic', () => {
  // 941 Mb/s is the data that TCP gets through a link of 1 Gb/s, as anybody who measures one sees: 1448 bytes of 1538
  // with headers, timestamps, preamble and gap. Common practice; the bytes are those of RFC 793 §3.1, RFC 7323 §3.2 and
  // RFC 5180 App. A.1.
  it('of 941.48 Mb/s fills 1 Gb/s, and its acknowledgements take what they take', () => {
    const rates = loads(plan('traffic: {copy: {from: recorder, to: nas, rate: 941.482444 Mb/s}}'));
    const there = rates['recorder/eth → core/2'] ?? 0;
    assert.ok(Math.abs(there - 1e9) < 10, String(there));
    // One of 90 bytes on the line, preamble and gap included, for two segments.
    const segments = 941_482_444 / 8 / 1448;
    assert.ok(Math.abs((rates['core/2 → recorder/eth'] ?? 0) - (segments / 2) * 90 * 8) < 1);
  });

  it('takes the links that a pulled stream takes, in both directions and through the router', () => {
    const stream =
      'streams: {live: {source: recorder, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [office-pc]}}';
    assert.deepEqual(used(plan('traffic: {copy: {from: recorder, to: office-pc, rate: 6 Mb/s}}')), used(plan(stream)));
  });

  it('adds to streams, and its two directions to each other', () => {
    const of = (what: string): Record<string, number> => loads(plan(`traffic: {${what}}`));
    const there = of('a: {from: recorder, to: office-pc, rate: 10 Mb/s}');
    const back = of('b: {from: office-pc, to: recorder, rate: 4 Mb/s}');
    const both = of('c: {from: recorder, to: office-pc, rate: 10 Mb/s, back: 4 Mb/s}');
    for (const [direction, rate] of Object.entries(both)) {
      const sum = (there[direction] ?? 0) + (back[direction] ?? 0);
      assert.ok(Math.abs(rate - sum) <= 1, `${direction}: ${rate}, not ${sum}`);
    }
  });

  it('has a line of its own in the sum of a link, and a share in the report', () => {
    const of = plan('traffic: {copy: {from: recorder, to: nas, rate: 100 Mb/s}}');
    const link = of.network.topology.links.find(({ b }) => b.device.name === 'recorder') ?? assert.fail();
    const { lines, total } = directionExplained(of, link, link.b);
    assert.deepEqual(
      lines.map(({ label, formula }) => [label, formula]),
      [['copy', 'other traffic']],
    );
    assert.deepEqual(lines[0]?.cells, total?.cells);
    const { links, traffic } = reportOf(of);
    assert.deepEqual(links[1]?.backward.traffic?.['copy']?.line, links[1]?.backward.line);
    assert.equal(traffic[0]?.there.payload.peak, 100_000_000);
  });

  it('that gets nowhere says why', () => {
    const of = plan('traffic: {copy: {from: recorder, to: core, rate: 100 Mb/s}}');
    assert.match(reportOf(of).traffic[0]?.reason ?? '', /core only passes frames/);
    assert.deepEqual(used(of), []);
  });
});
