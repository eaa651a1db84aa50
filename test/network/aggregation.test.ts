// Link aggregation, as IEEE 802.1AX has it: one link of several cables, one stream on one of them.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { type Link } from '../../server/src/network/link.ts';
import { sharesOf } from '../../server/src/network/shares.ts';
import { portName } from '../../server/src/site/model.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { check } from '../../server/src/check.ts';
import { diagnosticsOf, folderOf } from '../site.ts';

/** Two switches with as many cables between them; streams from hosts at one to hosts at the other. */
function site({
  cables = 2,
  lag = 'lag: up, ',
  barn = lag,
  rates = ['100 Mb/s'],
  stp = false,
}: {
  cables?: number;
  lag?: string;
  barn?: string;
  rates?: readonly string[];
  stp?: boolean;
}): string {
  const numbers = Array.from({ length: cables }, (_, index) => index + 1);
  const hosts = rates.flatMap((_, index) => [
    `  from${index}: {kind: server, address: 192.168.20.${index + 10}, speed: 10 Gb/s}`,
    `  to${index}: {kind: display, address: 192.168.20.${index + 100}, speed: 10 Gb/s}`,
  ]);
  return `
vlans: {video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, spanning-tree: ${stp}, ports: {1-8: {${lag}speed: 1 Gb/s, vlan: video}, 11-99: {speed: 10 Gb/s, vlan: video}}}
  barn: {kind: switch, spanning-tree: ${stp}, ports: {1-8: {${barn}speed: 1 Gb/s, vlan: video}, 11-99: {speed: 10 Gb/s, vlan: video}}}
${hosts.join('\n')}
cables:
${numbers.map((number) => `  - {from: core/${number}, to: barn/${number}}`).join('\n')}
${rates.map((_, index) => `  - {from: core/${index + 11}, to: from${index}}\n  - {from: to${index}, to: barn/${index + 11}}`).join('\n')}
streams:
${rates.map((rate, index) => `  s${index}: {source: from${index}, transport: rtp, port: ${5004 + 2 * index}, video: {codec: h264, bitrate: ${rate}}, receivers: [to${index}]}`).join('\n')}
`;
}

const plan = (text: string): Plan => planOf(folderOf({ 'a.site.yaml': text }).site());
function uplink({ network }: Plan): Link {
  const link = network.topology.links.find(({ a }) => portName(a) === 'core/1');
  assert.ok(link !== undefined);
  return link;
}
const found = (text: string): string[] =>
  diagnosticsOf({ 'a.site.yaml': text })
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule, severity }) => `${rule.id} ${severity}`);

describe('aggregated cables', () => {
  it('are one link whose speeds add up, in the network and the report', () => {
    const made = plan(site({ cables: 3 }));
    assert.equal(uplink(made).capacity, 3_000_000_000);
    const [first, ...others] = reportOf(made).links;
    assert.deepEqual([first?.from, first?.cables, first?.capacity], ['core/1', 3, 3_000_000_000]);
    assert.ok(others.every(({ cables }) => cables === undefined));
  });

  it('are the same in any order of the file', () => {
    const text = site({ cables: 3 });
    const turned = text.replace(/( {2}- \{from: core\/1, .*\n)( {2}- .*\n)( {2}- .*\n)/, '$3$1$2');
    assert.notEqual(turned, text);
    const names = ({ members, a }: Link): string[] => [portName(a), ...members.map((member) => portName(member.b))];
    assert.deepEqual(names(uplink(plan(turned))), names(uplink(plan(text))));
  });

  it('close no loop, and spanning tree blocks none of them', () => {
    for (const stp of [false, true]) {
      const text = site({ cables: 4, stp });
      assert.deepEqual(found(text), []);
      assert.deepEqual(plan(text).network.topology.spanningTree.blocked, []);
    }
    assert.ok(found(site({ lag: '' })).includes('loop error'));
  });

  it('cost spanning tree what their speed together costs (IEEE 802.1D-2004 Table 17-3: 20 Tb/s over the speed)', () => {
    // A second way over hill at 1 Gb/s twice costs 40 000; a cable of 400 Mb/s costs 50 000, two of them 25 000.
    const ring = (lag: string): string => `
devices:
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 0, ports: {1-2: {speed: 400 Mb/s${lag}}, 3: {speed: 1 Gb/s}}}
  barn: {kind: switch, spanning-tree: true, ports: {1-2: {speed: 400 Mb/s${lag}}, 3: {speed: 1 Gb/s}}}
  hill: {kind: switch, spanning-tree: true, ports: {1-2: {speed: 1 Gb/s}}}
cables: [{from: core/1, to: barn/1}, {from: core/2, to: barn/2}, {from: core/3, to: hill/1}, {from: hill/2, to: barn/3}]
`;
    const blocked = (text: string): string[] =>
      plan(text).network.topology.spanningTree.blocked.map(({ a, b }) => `${portName(a)} ${portName(b)}`);
    assert.deepEqual(blocked(ring('')), ['core/1 barn/1', 'core/2 barn/2']);
    assert.deepEqual(blocked(ring(', lag: up')), ['hill/2 barn/3']);
  });

  it('carry the same in all as one cable would, whichever port is asked', () => {
    const [many, one] = [plan(site({ cables: 2 })), plan(site({ cables: 1, lag: '' }))];
    const link = uplink(many);
    for (const { a, b } of link.members) {
      assert.deepEqual(many.network.load(link, a), one.network.load(uplink(one), uplink(one).a));
      assert.deepEqual(many.network.load(link, b), one.network.load(uplink(one), uplink(one).b));
    }
  });

  it('have bounds that hold for every way in which a hash can spread the streams', () => {
    for (const rates of [
      ['900 Mb/s'],
      ['500 Mb/s', '400 Mb/s'],
      ['300 Mb/s', '300 Mb/s', '300 Mb/s'],
      ['600 Mb/s', '200 Mb/s', '100 Mb/s', '50 Mb/s'],
    ]) {
      for (const cables of [2, 3]) {
        const made = plan(site({ cables, rates }));
        const link = uplink(made);
        const shares = sharesOf(made.network, link, link.a);
        assert.ok(shares !== undefined);
        const peaks = made.network
          .copies(link, link.a)
          .map(({ stream }) => made.network.rates(stream).untagged.line.peak);
        const fullest = spreads(peaks.length, cables).map((at) =>
          Math.max(
            ...Array.from({ length: cables }, (_, cable) =>
              peaks.reduce((sum, peak, i) => sum + (at[i] === cable ? peak : 0), 0),
            ),
          ),
        );
        assert.ok(Math.min(...fullest) >= shares.least, `${rates.join()} on ${cables}`);
        assert.equal(Math.max(...fullest), shares.all);
      }
    }
  });

  it('are reported as they are: one stream too big, two that may meet, all that may meet', () => {
    assert.deepEqual(found(site({ rates: ['950 Mb/s'] })), ['aggregation-load error']);
    assert.deepEqual(found(site({ rates: ['500 Mb/s', '500 Mb/s'] })), ['aggregation-load warning']);
    assert.deepEqual(found(site({ rates: ['300 Mb/s', '300 Mb/s', '300 Mb/s'] })), ['aggregation-load information']);
    assert.deepEqual(found(site({ rates: ['100 Mb/s', '100 Mb/s'] })), []);
    // What the cables together do not bear is link-load's.
    assert.deepEqual(found(site({ rates: ['950 Mb/s', '950 Mb/s'] })), ['link-load error']);
  });

  it('carry by the first cable alone where the two ends do not agree, and the cause is reported once', () => {
    for (const barn of ['', 'lag: up, lacp: off, ']) {
      const text = site({ barn });
      assert.equal(uplink(plan(text)).capacity, 1_000_000_000);
      assert.deepEqual(found(text), ['aggregation-mismatch error']);
    }
    assert.deepEqual(found(site({ lag: 'lag: up, lacp: passive, ' })), ['aggregation-mismatch error']);
    assert.deepEqual(found(site({ lag: 'lag: up, lacp: passive, ', barn: 'lag: up, ' })), []);
  });

  it('give a host one interface, with the address that stands at any of its ports', () => {
    const text = `
vlans: {video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: store, vlan: video}, 3: {speed: 1 Gb/s, vlan: video}}}
  recorder: {kind: server, ports: {left: {speed: 1 Gb/s, lag: bond0}, right: {speed: 1 Gb/s, lag: bond0, address: 192.168.20.5}}, routes: [{to: 224.0.0.0/4, port: right}]}
  screen: {kind: display, address: 192.168.20.41, speed: 1 Gb/s}
cables: [{from: core/1, to: recorder/left}, {from: core/2, to: recorder/right}, {from: core/3, to: screen}]
streams:
  live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, egress: right, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [screen]}
`;
    const { diagnostics, plan: made } = check(folderOf({ 'a.site.yaml': text }));
    assert.deepEqual(
      diagnostics.map(({ rule }) => rule.id),
      [],
    );
    const recorder = made.site.deviceByName.get('recorder');
    assert.ok(recorder !== undefined);
    assert.deepEqual(
      made.network.interfaces.of(recorder).map(({ address }) => address),
      [0xc0_a8_14_05],
    );
    assert.deepEqual(
      made.network.deliveries.map(({ reaches }) => reaches),
      [['screen']],
    );
  });
});

/** Every way to put so many streams on so many cables. */
function spreads(streams: number, cables: number): number[][] {
  if (streams === 0) return [[]];
  return spreads(streams - 1, cables).flatMap((rest) => Array.from({ length: cables }, (_, cable) => [...rest, cable]));
}
