import assert from 'node:assert/strict';
import { readSite } from '../../server/src/cli/sites.ts';
import { type Headroom, headroomOf } from '../../server/src/headroom/headroom.ts';
import { headroomWords, limitsWords, nextWords, panelWords } from '../../server/src/headroom/words.ts';
import { planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';

/**
 * One switch of 24 ports, 22 of them with PoE, budget 130 W; 4 cameras of class 3, H.264 at 6 Mb/s and 9 at peak, pulled
 * by a recorder that sends each on to a screen and keeps it for 14 d on 8 TB.
 */
function house({ capacity = '8 TB', decoders = '', budget = '130 W', poe = 'at' } = {}): string {
  const each = (make: (i: number) => string): string => [0, 1, 2, 3].map(make).join('');
  return `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    igmp-snooping: true
    unregistered-multicast: drop
    address: 192.168.20.2
    poe-budget: ${budget}
    ports:
      1-22: {speed: 1 Gb/s, vlan: video, poe: ${poe}}
      23-24: {speed: 1 Gb/s, vlan: video}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  screen: {kind: display, address: 192.168.20.6, speed: 1 Gb/s${decoders}}
${each((i) => `  cam-${i}: {kind: camera, address: 192.168.20.${31 + i}, speed: 100 Mb/s, poe: {class: 3}}\n`)}cables:
  - {from: core/23, to: recorder, type: cat6, length: 1 m}
  - {from: core/24, to: screen, type: cat6, length: 9 m}
${each((i) => `  - {from: core/${i + 1}, to: cam-${i}, type: cat6, length: 30 m}\n`)}streams:
${each(
  (
    i,
  ) => `  cam-${i}: {source: cam-${i}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s, keyframe-interval: 2 s}, receivers: [recorder]}
  live-${i}: {source: recorder, carries: cam-${i}, transport: rtp, group: 239.192.20.${31 + i}, port: 5004, receivers: [screen]}\n`,
)}volumes:
  archive: {host: recorder, capacity: ${capacity}, reserve: 5 %, sustained-write: 120 MB/s}
recordings:
${each((i) => `  cam-${i}: {stream: cam-${i}, volume: archive, segment: 60 s, keep: 14 d, file: "cam-${i}/%Y-%m-%d_%H-%M-%S%z.mp4"}\n`)}policies:
  link-load: {warn: 70 %, limit: 90 %}
  volume-fill: {limit: 90 %}
`;
}

function headroomIn(text: string, camera = 'cam-0', at = 'core'): Headroom {
  const plan = planOf(siteOf(text));
  const [device, to] = [camera, at].map((name) => plan.site.deviceByName.get(name));
  assert.ok(device !== undefined && to !== undefined);
  return headroomOf(plan, device, to);
}

describe('headroom', () => {
  // Sums by hand: (6840 − 3628.8) / 907.2 GB = 3.54; (130 − 61.6) / 15.4 W = 4.44 (IEEE 802.3 class 3); 22 − 4 ports;
  // (120 − 4.5) / 1.125 MB/s = 102.7; 254 − 7 addresses. A copy on the line is 9 Mb/s × 1478 / 1400 = 9.50 Mb/s by RTP
  // (RFC 5180 App. A.1): (900 − 38.0) / 9.50 = 90.7 at the screen. RTSP comes in segments of 1448 B with 78 B around
  // them and Ethernet's 20 B, so at least 9 × 1538 / 1448 = 9.56 Mb/s, and what is sent on goes out beside
  // acknowledgements: fewer than 90 each way at the recorder.
  it('names each limit with what it bears alone, in the order in which they bind', () => {
    const { more, limits } = headroomIn(house());
    const found = limits.map(({ limit, at, more: alone }) => [limit, at, alone]);
    assert.equal(more, 3);
    assert.deepEqual(found.slice(0, 3), [
      ['volume', 'archive', 3],
      ['power', 'core', 4],
      ['ports', 'core', 18],
    ]);
    assert.deepEqual(found.slice(5), [
      ['link', 'core/24 → screen/eth', 90],
      ['write', 'archive', 102],
      ['addresses', 'video', 247],
      // A scope of 2^18 groups (RFC 2365 §6.2) less its first, the four in use, the 256 that share addresses with the
      // groups that are always flooded, where it has those, and the 256 of its highest /24 (§9).
      ['groups', '239.192.0.0 to 239.195.255.255', 2 ** 18 - 1 - 4 - 256],
      ['decoders', 'screen', undefined],
    ]);
    for (const [limit, at, alone] of found.slice(3, 5)) {
      assert.equal(limit, 'link');
      assert.match(String(at), /recorder/);
      assert.ok(Number(alone) >= 86 && Number(alone) < 90, `${alone} at ${at}`);
    }
  });

  it('says what binds once the first limit is out of the way', () => {
    const found = headroomIn(house());
    assert.equal(headroomWords(found), '3 more like cam-0 at core, then archive reaches 90 % of 7.6 TB.');
    assert.equal(nextWords(found), 'With that solved, 4: then core feeds 130 W at most.');
    assert.match(limitsWords(found), /^Each limit alone: volume archive 3, power core 4, ports core 18, link /);
    assert.equal(headroomIn(house({ capacity: '24 TB' })).more, 4);
    assert.equal(headroomIn(house({ capacity: '100 TB', budget: '900 W' })).more, 18);
  });

  it('takes no port that feeds too little, or is of another network', () => {
    const two = house().replace('poe: {class: 3}', 'poe: {class: 4}').replace('23-24:', '23-26:');
    assert.equal(headroomIn(two.replace('poe: at', 'poe: af')).more, 0);
    assert.match(headroomIn(two.replace('poe: at', 'poe: af')).stop, /no free port left .* without enough power/);
    assert.match(headroomIn(house().replace('1-22: {speed: 1 Gb/s, vlan: video', '1-22: {speed: 1 Gb/s')).stop, /port/);
  });

  // (130 − 83.2) ÷ 15.4 = 3 at core, (150 − 120.2) ÷ 15.4 = 1 at stable, (65 − 22.4) ÷ 15.4 = 2 at the glasshouse; of
  // class 4, whose port gives 30 W, 46.8 ÷ 30 = 1 at core and 29.8 ÷ 30 = 0 at stable (IEEE 802.3 Table 33-1).
  it('counts PoE by class at each switch of the frozen sample, and names the ports where there are none', () => {
    const plan = planOf(readSite('test/fixtures/harrow-lane-0.1').folder.site());
    const bears = (camera: string, at: string): [number | undefined, Headroom] => {
      const [device, to] = [camera, at].map((name) => plan.site.deviceByName.get(name));
      assert.ok(device !== undefined && to !== undefined);
      const headroom = headroomOf(plan, device, to);
      return [headroom.limits.find((limit) => limit.limit === 'power' && limit.at === at)?.more, headroom];
    };
    assert.deepEqual(
      ['core', 'stable', 'glasshouse'].map((at) => bears('gate-cam', at)[0]),
      [3, 1, 2],
    );
    assert.deepEqual(
      ['core', 'stable'].map((at) => bears('paddock-north-cam', at)[0]),
      [1, 0],
    );
    const [, { more, stop, panels }] = bears('paddock-north-cam', 'stable');
    assert.equal(more, 0);
    assert.match(stop, /^stable has no free port left/);
    assert.deepEqual(panels, []);
  });

  it('says how many ports are free at a panel on the way, which is no limit', () => {
    const text = house()
      .replace('  screen: {', '  panel: {kind: patch-panel, ports: {1-3: {}}}\n  screen: {')
      .replace('to: cam-0, type: cat6, length: 30 m', 'to: cam-0, type: cat6, length: 30 m, through: [panel/1]')
      .replace('to: cam-1, type: cat6, length: 30 m', 'to: cam-1, type: cat6, length: 30 m, through: [panel/3]');
    assert.deepEqual(panelWords(headroomIn(text)), ['panel, which cam-0 is led through, has 1 free port.']);
    assert.equal(headroomIn(text).more, 3);
    assert.deepEqual(panelWords(headroomIn(text, 'cam-2')), []);
  });

  it('counts what a screen shows at a time, which is no error to exceed', () => {
    const decoders = (number: number): number | undefined =>
      headroomIn(house({ decoders: `, decoders: ${number}` })).limits.find(({ limit }) => limit === 'decoders')?.more;
    assert.equal(decoders(4), 0);
    assert.equal(decoders(6), 2);
    assert.equal(decoders(3), undefined);
    assert.equal(headroomIn(house({ decoders: ', decoders: 4' })).more, 3);
  });

  it('reports no limit that the site does not say', () => {
    const { limits } = headroomIn(
      house().replace(', sustained-write: 120 MB/s', '').replace('    poe-budget: 130 W\n', ''),
    );
    const unknown = limits.filter(({ more }) => more === undefined).map(({ limit }) => limit);
    assert.deepEqual(unknown.sort(), ['decoders', 'power', 'write']);
    assert.deepEqual(
      limits.map(({ more }) => more === undefined),
      limits.map((_, index) => index >= limits.length - 3),
    );
  });

  it('counts the groups that a switch keeps apart, and the watts of a UPS', () => {
    // The table has two places left beside the four groups in use.
    const tabled = house({ capacity: '900 TB', budget: '900 W' }).replace(
      'igmp-snooping: true',
      '$&\n    group-table: 6',
    );
    const { more, stop } = headroomIn(tabled);
    assert.deepEqual([more, stop], [2, 'core keeps 6 groups apart']);
    // Four cameras of 9 W and a switch of 20 W without PoE losses: 56 of 80 W, and 24 W are two more of 9 W.
    const fed = house({ capacity: '900 TB', budget: '900 W' })
      .replace('igmp-snooping: true', '$&\n    power: {at-most: 20 W, from: ups-1, poe-efficiency: 100 %}')
      .replaceAll('poe: {class: 3}', 'poe: {class: 3, power: 9 W}')
      .replaceAll(', length: 30 m', '')
      .replace('devices:', 'devices:\n  ups-1: {kind: ups, rated-power: 80 W}');
    const found = headroomIn(fed);
    assert.deepEqual([found.more, found.stop], [2, 'ups-1 gives 80 W at most']);
  });

  it('counts links that a group floods', () => {
    // 100 Mb/s camera ports take the groups of all: 90 / 9.50 is nine in all.
    const flooding = house({ capacity: '900 TB', budget: '900 W' }).replace(
      'igmp-snooping: true',
      'igmp-snooping: false',
    );
    const { more, stop } = headroomIn(flooding.replaceAll(/\n\s+unregistered-multicast: drop/g, ''));
    assert.equal(more, 5);
    assert.match(stop, /core\/\d → cam-\d\/eth reaches 90 % of 100 Mb\/s/);
  });
});
