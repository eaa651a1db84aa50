import assert from 'node:assert/strict';
import { readSite } from '../../server/src/cli/sites.ts';
import { elementNamed } from '../../server/src/failure/element.ts';
import { type Failure, failureOf } from '../../server/src/failure/failure.ts';
import { rankingOf } from '../../server/src/failure/ranking.ts';
import { failureWords, lossWords } from '../../server/src/failure/words.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';

function failing(plan: Plan, name: string): Failure {
  const element = elementNamed(plan, name);
  assert.ok(element !== undefined, `${name} may fail`);
  return failureOf(plan, element);
}

function names(all: readonly { readonly name: string }[]): string[] {
  return all.map(({ name }) => name).sort();
}

function picturesOf({ pictures }: Failure): string[] {
  return pictures.map(({ stream, receiver }) => `${stream.name} ${receiver}`).sort();
}

describe('what fails', () => {
  describe('at Harrow Lane as of 0.1', () => {
    const plan = planOf(readSite('test/fixtures/harrow-lane-0.1').folder.site());
    const load = (failure: Failure, at: string): { before: number; after: number } => {
      const found = failure.takeovers.find((one) => one.at === at);
      assert.ok(found !== undefined, `${at} takes over`);
      return found;
    };

    // A link that takes over carries the sum of what the two sides of the ring carried before, in each direction.
    it('takes nothing with it where a ring has another side, which carries the sum of both', () => {
      for (const [cut, idle, other] of [
        ['F-01', ['stable/10', 'glasshouse/8'], ['glasshouse/7', 'core/15']],
        ['G-01', ['glasshouse/8', 'stable/10'], ['stable/9', 'core/16']],
      ] as const) {
        const failure = failing(plan, cut);
        assert.deepEqual([failure.pictures, failure.recordings, failure.cameras], [[], [], []]);
        const there = (pair: readonly [string, string]): string => `${pair[0]} → ${pair[1]}`;
        const back = (pair: readonly [string, string]): string => `${pair[1]} → ${pair[0]}`;
        for (const way of [there, back]) {
          const [taken, kept] = [load(failure, way(idle)), load(failure, way(other))];
          assert.equal(taken.before, 0);
          assert.equal(kept.after, taken.after + kept.before, `${cut}: ${way(other)}`);
        }
        assert.ok(failure.takeovers.every(({ fits }) => fits === true));
      }
    });

    // Timers of 802.1D: twice 15 s where the port that discarded is the switch's own, 20 s before that where it is not;
    // groups a query of 125 s and an answer of 10 s later (RFC 3376 §8).
    it('says when what goes another way is back', () => {
      const times = [failing(plan, 'F-01'), failing(plan, 'G-01')].map(({ recovery }) => recovery?.frames);
      assert.ok(times.includes(30) && times.includes(50), String(times));
      assert.equal(failing(plan, 'F-01').recovery?.groups, 135);
    });

    it('takes the cameras of a switch with it, and what the recorder made of them', () => {
      const failure = failing(plan, 'stable');
      const cameras = ['paddock', 'paddock-north', 'stable-aisle', 'foaling-box', 'hayloft', 'tack-room'];
      assert.deepEqual(names(failure.recordings), [...cameras].sort());
      assert.deepEqual(names(failure.cameras), cameras.map((name) => `${name}-cam`).sort());
      for (const picture of ['paddock-live kitchen-screen', 'gate-live stable-screen', 'yard-live stable-screen'])
        assert.ok(picturesOf(failure).includes(picture), picture);
      assert.ok(!picturesOf(failure).includes('gate-live kitchen-screen'));
      // The same with both fibres cut, for all but what is fed there.
      const element = { kind: 'duct', name: 'both', devices: [], volume: undefined } as const;
      const cables = plan.site.cables.filter(({ label }) => label === 'F-01' || label === 'F-02');
      assert.equal(cables.length, 2);
      const cut = failureOf(plan, { ...element, cables });
      assert.deepEqual(names(cut.recordings), names(failure.recordings));
      assert.deepEqual(picturesOf(cut), picturesOf(failure));
    });

    it('takes all recordings with the recorder or its card for cameras, and leaves television', () => {
      for (const name of ['R-01', 'recorder']) {
        const failure = failing(plan, name);
        assert.equal(failure.recordings.length, 12);
        const lost = new Set(failure.pictures.map(({ stream }) => stream.name));
        assert.ok(lost.has('gate-office'));
        assert.ok(!lost.has('tv-one') && !lost.has('tv-two'));
      }
      assert.deepEqual(
        failing(plan, 'recorder').footage.map(({ fate }) => fate),
        plan.site.volumes.map(() => 'out-of-reach'),
      );
      // Another card, if the host goes by it then.
      assert.equal(failing(plan, 'R-01').otherwise?.recordings.length, 0);
      assert.equal(failing(plan, 'recorder').otherwise, undefined);
    });

    it('takes the querier with its switch', () => {
      assert.deepEqual(failing(plan, 'core').withoutQuerier, ['video']);
      assert.deepEqual(failing(plan, 'stable').withoutQuerier, []);
    });

    it('ranks what must not fail, and leaves out what loses nothing', () => {
      const ranking = rankingOf(plan).ranked.map(
        ({ element, recordings }) => [element.name, recordings.length] as const,
      );
      assert.equal(ranking[0]?.[0], 'core');
      assert.deepEqual(
        ranking.map(([, number]) => number),
        ranking.map(([, number]) => number).sort((a, b) => b - a),
      );
      const ranked = new Set(ranking.map(([name]) => name));
      assert.ok(!ranked.has('core/16 – stable/9') && !ranked.has('stable/10 – glasshouse/8'));
      assert.ok(ranked.has('core/1 – gate-cam/eth'));
    });
  });

  // Which level survives what: md(4).
  it('loses the footage of a disk as its redundancy has it, and fills a new one', () => {
    const plan = planOf(
      siteOf(`
devices:
  recorder: {kind: server}
volumes:
  one: {host: recorder, capacity: 8 TB}
  striped: {host: recorder, capacity: 8 TB, disks: 3}
  pair: {host: recorder, capacity: 8 TB, disks: 2, redundancy: mirror, sustained-write: 100 MB/s}
  three: {host: recorder, capacity: 8 TB, disks: 3, redundancy: mirror}
  five: {host: recorder, capacity: 8 TB, disks: 4, redundancy: raid5}
  six: {host: recorder, capacity: 8 TB, disks: 5, redundancy: raid6}
  ten: {host: recorder, capacity: 8 TB, disks: 4, redundancy: raid10}
`),
    );
    const fates = plan.site.volumes.map(({ name }) => failing(plan, name).footage[0]?.fate);
    assert.deepEqual(fates, ['lost', 'lost', 'unprotected', 'kept', 'unprotected', 'kept', 'unprotected']);
    // 8 TB at 100 MB/s: 80 000 s: 22 h, 13 min and 20 s.
    assert.equal(failing(plan, 'pair').footage[0]?.rebuild, 80_000);
    assert.match(failureWords(failing(plan, 'pair')), /replaced and filled, which takes 22 h 13 min at least/);
  });

  const FED = `
devices:
  house-circuit: {kind: circuit}
  core: {kind: switch, power: {from: house-circuit}, poe-budget: 60 W, ports: {1-4: {speed: 1 Gb/s, poe: at}, 5-8: {speed: 1 Gb/s}}}
  shed: {kind: switch, poe-budget: 60 W, ports: {1: {speed: 1 Gb/s, poe: {class: 4}}, 2-4: {speed: 1 Gb/s, poe: af}}}
  shed-cam: {kind: camera, speed: 100 Mb/s, poe: {class: 3}}
  screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: shed/1, type: cat6, length: 20 m, label: S-1, duct: garden}
  - {from: shed/2, to: shed-cam, type: cat6, length: 9 m}
  - {from: core/5, to: screen, type: cat6, length: 9 m}
streams:
  shed: {source: shed-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
`;

  it('leaves hosts without the right time where nothing joins them with their clock', () => {
    const house = (clock: string): string => `
vlans: {video: {id: 20, subnet: 10.0.0.0/24, clock: ${clock}}}
devices:
  core: {kind: switch, address: 10.0.0.2, ports: {1-4: {speed: 1 Gb/s, vlan: video}}}
  router: {kind: router, ports: {lan: {speed: 1 Gb/s, vlan: video, address: 10.0.0.1}}}
  cam: {kind: camera, address: 10.0.0.11, speed: 100 Mb/s}
  recorder: {kind: server, address: 10.0.0.5, speed: 1 Gb/s}
cables:
  - {from: core/1, to: cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: router, label: R-1}
`;
    const without = (name: string, clock = 'router'): string[] =>
      failing(planOf(siteOf(house(clock))), name).clocks.flatMap(({ hosts }) => names(hosts));
    assert.deepEqual(without('router'), ['cam', 'recorder']);
    assert.deepEqual(without('R-1'), ['cam', 'recorder']);
    assert.deepEqual(without('core/1'), ['cam']);
    assert.deepEqual(without('R-1', 'recorder'), ['router']);
    assert.deepEqual(without('router', 'nobody'), []);
  });

  it('takes with it what it feeds, and what that feeds', () => {
    const plan = planOf(siteOf(FED));
    for (const name of ['S-1', 'core/1', 'shed/1', 'garden']) {
      const failure = failing(plan, name);
      assert.deepEqual(names(failure.devices), ['shed', 'shed-cam'], name);
      assert.equal(lossWords(failure), '1 camera and 1 picture');
    }
    assert.deepEqual(names(failing(plan, 'house-circuit').devices), ['core', 'shed', 'shed-cam']);
    assert.equal(failing(plan, 'core/5').devices.length, 0);
  });

  it('leaves an aggregated link the cables that are left', () => {
    const plan = planOf(
      siteOf(`
devices:
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: up}, 3: {speed: 1 Gb/s}}}
  barn: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: up}, 3: {speed: 1 Gb/s}}}
  cam: {kind: camera, speed: 100 Mb/s}
  screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: barn/1, label: L-1, duct: drive}
  - {from: core/2, to: barn/2, label: L-2, duct: drive}
  - {from: barn/3, to: cam}
  - {from: core/3, to: screen}
streams:
  cam: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
`),
    );
    assert.deepEqual(
      ['L-1', 'L-2', 'drive'].map((name) => failing(plan, name).pictures.length),
      [0, 0, 1],
    );
  });
});
