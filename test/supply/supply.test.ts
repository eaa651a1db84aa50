// Hand sums of power, with device figures that are assumed; the sum stands beside each.
import assert from 'node:assert/strict';
import { type Plan, planOf } from '../../server/src/plan.ts';
import type { Device } from '../../server/src/site/model.ts';
import type { UpsFigures } from '../../server/src/supply/ups.ts';
import { siteOf } from '../site-of.ts';

const UPS =
  'ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh, chemistry: lead-acid, efficiency: 85 %}';

/** The core of a farmhouse: 51 W of powered devices, a recorder with five disks, a router; no cable has a length. */
function farmhouse(recorder = 'from: ups-1'): Plan {
  return planOf(
    siteOf(`
devices:
  ${UPS}
  core:
    kind: switch
    power: {at-most: 18 W, from: ups-1}
    ports: {1-4: {poe: af}, 5: {poe: at}, 6-8: {}}
  recorder: {kind: server, address: 10.0.0.5, power: {at-most: 75 W, ${recorder}}}
  router: {kind: router, power: {at-most: 8 W, from: ups-1}}
  gate-cam: {kind: camera, address: 10.0.0.11, poe: {class: 3, power: 9.5 W}}
  drive-cam: {kind: camera, address: 10.0.0.12, poe: {class: 3, power: 9.5 W}}
  yard-cam: {kind: camera, address: 10.0.0.13, poe: {class: 3, power: 11 W}}
  porch-cam: {kind: camera, address: 10.0.0.14, poe: {class: 2, power: 5 W}}
  ap: {kind: access-point, poe: {class: 4, power: 16 W}}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: drive-cam}
  - {from: core/3, to: yard-cam}
  - {from: core/4, to: porch-cam}
  - {from: core/5, to: ap}
  - {from: core/6, to: recorder}
  - {from: core/7, to: router}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
  drive: {source: drive-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
`),
  );
}

function device({ site }: Plan, name: string): Device {
  const found = site.deviceByName.get(name);
  assert.ok(found !== undefined, name);
  return found;
}

function ups(plan: Plan, name = 'ups-1'): UpsFigures {
  const found = plan.supply().ups(device(plan, name));
  assert.ok(found !== undefined, name);
  return found;
}

const watts = (milliwatts: number): string => (milliwatts / 1000).toFixed(2);
const minutes = (milliseconds: number | undefined): string => ((milliseconds ?? NaN) / 60_000).toFixed(1);

describe('Power', () => {
  it('of a switch at the wall is its own with that of its ports over what its supply makes of it', () => {
    const plan = farmhouse();
    // 18 + (9.5 + 9.5 + 11 + 5 + 16) ÷ 0.88 = 18 + 57.95.
    assert.equal(watts(plan.supply().power(device(plan, 'core')).taken.most), '75.95');
    // 18 + (15.4 · 3 + 7 + 30) ÷ 0.88, what the classes may take.
    assert.equal(watts(plan.supply().power(device(plan, 'core')).taken.byClass), '112.55');
  });

  it('of a UPS is what hangs on it, in watts and in volt-amperes', () => {
    const { load, apparent } = ups(farmhouse());
    assert.equal(watts(load), '158.95'); // 75.95 + 75 + 8
    assert.equal((apparent / 1000).toFixed(1), '167.3'); // ÷ 0.95
  });

  it('lasts 44.4 min, 69.3 by the label, and 84.0 without the recorder', () => {
    const { runtime, runtimeOfLabel, runtimePeukert } = ups(farmhouse());
    assert.equal(minutes(runtime), '44.4');
    assert.equal(minutes(runtimeOfLabel), '69.3');
    assert.equal(minutes(runtimePeukert), '45.2');
    assert.equal(minutes(ups(farmhouse('idle: 70 W')).runtime), '84.0');
  });

  it('of 158.95 W takes 1392 kWh in a year', () => {
    const { total } = farmhouse().supply();
    assert.equal(watts(total.mean), '158.95');
    assert.equal(((total.mean * 8760) / 1e6).toFixed(0), '1392');
  });

  // 12 W at night and 6 W by day, 12 h each: 9 W · 8.76 = 78.8 kWh.
  it('is between idle and most on average', () => {
    const plan = planOf(siteOf('devices: {lamp-cam: {kind: camera, power: {idle: 6 W, at-most: 12 W}}}'));
    assert.equal(((plan.supply().total.mean * 8.76) / 1000).toFixed(1), '78.8');
  });

  it('counts what is lost in a cable with a length: 12 W behind 38 m leave the port as 12.24 W', () => {
    const plan = planOf(
      siteOf(`
devices:
  core: {kind: switch, power: {at-most: 0 W, poe-efficiency: 100 %}, ports: {1: {poe: af}}}
  cam: {kind: camera, poe: {class: 3, power: 12 W}}
cables: [{from: core/1, to: cam, type: cat6, length: 38 m}]
`),
    );
    assert.equal(watts(plan.supply().total.most), '12.24');
  });

  it('passes through a switch that is powered by PoE itself', () => {
    const plan = planOf(
      siteOf(`
devices:
  core: {kind: switch, power: {at-most: 10 W, poe-efficiency: 80 %}, ports: {1: {poe: bt}}}
  barn: {kind: switch, power: {at-most: 4 W, poe-efficiency: 80 %}, ports: {1: {poe: {class: 6}}, 2: {poe: af}}}
  cam: {kind: camera, poe: {class: 3, power: 8 W}}
cables: [{from: core/1, to: barn/1}, {from: barn/2, to: cam}]
`),
    );
    // cam 8; barn 4 + 8 ÷ 0.8 = 14; core 10 + 14 ÷ 0.8 = 27.5.
    assert.equal(watts(plan.supply().total.most), '27.50');
  });

  it('says whose watts are not said, and counts nothing for them', () => {
    const plan = planOf(
      siteOf(`devices: {${UPS.replace('ups-1: ', '"ups-1": ')}, nas: {kind: server, power: {from: ups-1}}}`),
    );
    assert.equal(ups(plan).load, 0);
    assert.equal(ups(plan).runtime, undefined);
    assert.deepEqual(
      ups(plan).undeclared.map(({ name }) => name),
      ['nas'],
    );
  });
});

describe('Without mains', () => {
  it('a camera goes on as long as all that it needs', () => {
    const plan = farmhouse();
    assert.deepEqual(
      plan
        .cameraRuntimes()
        .map(({ camera, lasts, chain }) => [camera.name, minutes(lasts), chain.map(({ name }) => name)]),
      [
        ['gate-cam', '44.4', ['gate-cam', 'core', 'recorder']],
        ['drive-cam', '44.4', ['drive-cam', 'core', 'recorder']],
      ],
    );
  });

  it('ends at once where the recorder is on the mains, whatever feeds the camera', () => {
    const [gate] = farmhouse('idle: 70 W').cameraRuntimes();
    assert.equal(gate?.lasts, 0);
    assert.equal(gate?.endsAt?.name, 'recorder');
  });

  it('a device with a plug and PoE goes on by either', () => {
    const plan = planOf(
      siteOf(`
devices:
  ${UPS}
  main: {kind: circuit}
  core: {kind: switch, power: {at-most: 18 W, from: ups-1}, ports: {1: {poe: at}}}
  barn: {kind: switch, power: {at-most: 5 W, from: main}, ports: {1: {poe: {class: 3}}}}
cables: [{from: core/1, to: barn/1}]
`),
    );
    const { lasts } = plan.supply();
    assert.equal(lasts(device(plan, 'main')), 0);
    assert.equal(lasts(device(plan, 'barn')), lasts(device(plan, 'core')));
    assert.ok((lasts(device(plan, 'core')) ?? 0) > 0);
  });

  it('a UPS behind a UPS adds what its battery holds', () => {
    const plan = planOf(
      siteOf(`
devices:
  first: {kind: ups, battery: 100 Wh, chemistry: lithium, efficiency: 100 %, depth-of-discharge: 100 %, health: 100 %}
  second: {kind: ups, battery: 50 Wh, chemistry: lithium, efficiency: 100 %, depth-of-discharge: 100 %, health: 100 %, power: {from: first}}
  nas: {kind: server, power: {at-most: 100 W, from: second}}
`),
    );
    assert.equal(minutes(plan.supply().lasts(device(plan, 'nas'))), '90.0');
  });

  it('devices that feed each other in a circle are reported, and hang on nothing', () => {
    const plan = planOf(
      siteOf(
        'devices: {a: {kind: ups, power: {from: b}}, b: {kind: ups, power: {from: a}}, c: {kind: server, power: {at-most: 1 W, from: a}}}',
      ),
    );
    assert.deepEqual(
      plan.supply().feeding.circles.map((circle) => circle.map(({ name }) => name)),
      [['a', 'b']],
    );
    assert.equal(plan.supply().total.most, 1000);
  });

  /** A ring of barn, core and house; the camera is at the barn, the recorder at the house. */
  const ring = (core: string): Plan =>
    planOf(
      siteOf(`
devices:
  small: {kind: ups, battery: 10 Wh, chemistry: lithium, efficiency: 100 %, depth-of-discharge: 100 %, health: 100 %}
  large: {kind: ups, battery: 100 Wh, chemistry: lithium, efficiency: 100 %, depth-of-discharge: 100 %, health: 100 %}
  house: {kind: switch, spanning-tree: true, spanning-tree-priority: 4096, power: {at-most: 10 W, from: large}, ports: {1-8: {speed: 1 Gb/s}}}
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 8192, power: {at-most: 10 W${core}}, ports: {1-8: {speed: 1 Gb/s}}}
  barn: {kind: switch, spanning-tree: true, power: {at-most: 10 W, from: large}, ports: {1-8: {speed: 1 Gb/s}, 9: {speed: 100 Mb/s}}}
  recorder: {kind: server, address: 10.0.0.5, power: {at-most: 20 W, from: large}, speed: 1 Gb/s}
  cam: {kind: camera, address: 10.0.0.11, power: {at-most: 10 W, from: large}, speed: 100 Mb/s}
cables:
  - {from: house/1, to: core/1}
  - {from: core/2, to: barn/2}
  - {from: barn/9, to: house/3}
  - {from: house/8, to: recorder}
  - {from: barn/8, to: cam}
streams: {gate: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}}
`),
    );

  // barn/9 is of 100 Mb/s, so that the way by core is the cheaper one: 2 × 20,000 against 200,000 (802.1D Table 17-3).
  // small: 10 Wh ÷ 10 W = 60 min of core. large: 100 Wh ÷ (10 + 10 + 20 + 10) W = 120 min of all else.
  it('of a camera goes on by the other side of a ring when a switch of the first goes dark', () => {
    const [life] = ring(', from: small').cameraRuntimes();
    assert.equal(minutes(life?.lasts), '120.0');
    assert.deepEqual(life?.turns.map(minutes), ['60.0']);
    assert.deepEqual(
      life.chain.map(({ name }) => name),
      ['cam', 'barn', 'house', 'recorder'],
    );
  });

  it('of a camera goes on by the other side at once where the first is on the mains alone', () => {
    const [life] = ring('').cameraRuntimes();
    assert.deepEqual([minutes(life?.lasts), life?.turns], ['120.0', [0]]);
  });

  it('of a camera makes no turn where all on its way goes dark together', () => {
    const [stays] = ring(', from: large').cameraRuntimes();
    // 100 Wh ÷ 60 W
    assert.deepEqual([minutes(stays?.lasts), stays?.turns], ['100.0', []]);
  });

  it('of a camera ends with its clock', () => {
    const house = (clock: string): string => `
vlans: {video: {id: 20, subnet: 10.0.0.0/24${clock}}}
devices:
  ${UPS}
  core: {kind: switch, power: {at-most: 18 W, from: ups-1}, ports: {1-2: {vlan: video, poe: at}, 3-4: {vlan: video}}}
  recorder: {kind: server, address: 10.0.0.5, power: {at-most: 75 W, from: ups-1}}
  router: {kind: router, ports: {lan: {vlan: video, address: 10.0.0.1}}}
  cam: {kind: camera, address: 10.0.0.11, poe: {class: 3, power: 9 W}}
cables: [{from: core/1, to: cam}, {from: core/3, to: recorder}, {from: core/4, to: router}]
streams: {gate: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}}
volumes: {disk: {host: recorder, capacity: 4 TB}}
recordings: {gate: {stream: gate, volume: disk, segment: 60 s, keep: 9 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}}
`;
    const lives = (clock: string): [number, string | undefined][] =>
      planOf(siteOf(house(clock)))
        .cameraRuntimes()
        .map(({ lasts, endsAt }) => [Math.sign(lasts ?? NaN), endsAt?.name]);
    assert.deepEqual(lives(''), [[1, 'recorder']]);
    assert.deepEqual(lives(', clock: router'), [[0, 'router']]);
    assert.deepEqual(lives(', clock: recorder'), [[1, 'recorder']]);
  });
});
