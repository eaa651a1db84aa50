import assert from 'node:assert/strict';
import { networkOf } from '../../server/src/network/network.ts';
import { portName } from '../../server/src/site/model.ts';
import { siteOf } from '../site-of.ts';

/** The roots, and the port that is kept idle at each blocked link. */
function treeOf(devices: string, cables: string): { roots: string[]; idle: string[] } {
  const { topology } = networkOf(siteOf(`devices:\n${devices}\ncables:\n${cables}\n`));
  return {
    roots: topology.spanningTree.roots.map(({ name }) => name),
    idle: topology.spanningTree.blocked.map(({ blocked }) => (blocked === undefined ? '' : portName(blocked))),
  };
}

const RING = `
  - {from: barn/1, to: core/1}
  - {from: core/2, to: stable/2}
  - {from: stable/1, to: barn/2}`;

function ring({ barn = '', core = '', stable = '', speed = '1 Gb/s' } = {}): string {
  const set = `kind: switch, spanning-tree: true`;
  return `
  barn: {${set}${barn}, ports: {1-4: {speed: 1 Gb/s}}}
  core: {${set}${core}, ports: {1-4: {speed: 1 Gb/s}}}
  stable: {${set}${stable}, ports: {1: {speed: ${speed}}, 2: {speed: 1 Gb/s}}}`;
}

// The rules of IEEE 802.1D-2004: priority vectors §17.6, path costs Table 17-3 (20 000 at 1 Gb/s, 200 000 at
// 100 Mb/s), port roles §17.7. Costs as in Open vSwitch's lib/rstp.c, which cites the table; the rules from memory.
describe('Spanning tree', () => {
  it('takes the lowest priority for root, then the first name, where a switch has its address', () => {
    assert.deepEqual(treeOf(ring(), RING).roots, ['barn']);
    assert.deepEqual(treeOf(ring({ core: ', spanning-tree-priority: 4096' }), RING).roots, ['core']);
    assert.deepEqual(treeOf(ring({ barn: ', spanning-tree-priority: 61440' }), RING).roots, ['core']);
  });

  it('in a ring of equals cuts the link across from the root, at the end of the later name', () => {
    assert.deepEqual(treeOf(ring(), RING).idle, ['stable/2']);
  });

  it('prefers a way round over a slow link: 20 000 + 20 000 is less than 200 000', () => {
    assert.deepEqual(treeOf(ring({ speed: '100 Mb/s' }), RING).idle, ['stable/1']);
  });

  it('keeps a slow link where the root is behind it', () => {
    // stable's own way to itself costs nothing; the ring is cut between the other two.
    const { roots, idle } = treeOf(ring({ stable: ', spanning-tree-priority: 0' }), RING);
    assert.deepEqual({ roots, idle }, { roots: ['stable'], idle: ['core/1'] });
  });

  it('of two parallel links keeps that of the lower port at the root, whatever the other end is', () => {
    const two = `
  barn: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  core: {kind: switch, spanning-tree: true, ports: {1-4: {}}}`;
    assert.deepEqual(treeOf(two, '  - {from: barn/1, to: core/1}\n  - {from: barn/2, to: core/2}').idle, ['core/2']);
    assert.deepEqual(treeOf(two, '  - {from: barn/1, to: core/2}\n  - {from: barn/2, to: core/1}').idle, ['core/1']);
  });

  it('counts ports by number, not in the order they are written down', () => {
    const two = `
  barn: {kind: switch, spanning-tree: true, ports: {10: {}, 2-3: {}}}
  core: {kind: switch, spanning-tree: true, ports: {10: {}, 2-3: {}}}`;
    assert.deepEqual(treeOf(two, '  - {from: barn/10, to: core/10}\n  - {from: barn/2, to: core/2}').idle, ['core/10']);
  });

  // Which number a port of such a name has, no standard says; that order does not matter, the site language does.
  it('counts ports with other names by the numbers in them, or by name', () => {
    const two = (ports: string): string => `
  barn: {kind: switch, spanning-tree: true, ports: {${ports}}}
  core: {kind: switch, spanning-tree: true, ports: {1-2: {}}}`;
    for (const ports of ['sfp2: {}, sfp10: {}', 'sfp10: {}, sfp2: {}']) {
      assert.deepEqual(
        treeOf(two(ports), '  - {from: barn/sfp10, to: core/1}\n  - {from: barn/sfp2, to: core/2}').idle,
        ['core/1'],
      );
    }
    for (const ports of ['east: {}, west: {}', 'west: {}, east: {}']) {
      assert.deepEqual(
        treeOf(two(ports), '  - {from: barn/west, to: core/1}\n  - {from: barn/east, to: core/2}').idle,
        ['core/1'],
      );
    }
  });

  it('hears its neighbours through media converters, and takes what the way costs from its own port', () => {
    const converted = (fibre: string): string => `
  barn: {kind: switch, spanning-tree: true, ports: {1: {speed: ${fibre}}, 2: {speed: 1 Gb/s}}}
  core: {kind: switch, spanning-tree: true, ports: {1: {speed: ${fibre}}, 2: {speed: 1 Gb/s}}}
  barn-converter: {kind: media-converter, ports: {copper: {speed: 1 Gb/s}, fibre: {}}}
  core-converter: {kind: media-converter, ports: {copper: {speed: 1 Gb/s}, fibre: {}}}`;
    const cables = `
  - {from: barn/1, to: barn-converter/copper}
  - {from: barn-converter/fibre, to: core-converter/fibre}
  - {from: core-converter/copper, to: core/1}
  - {from: barn/2, to: core/2}`;
    assert.deepEqual(treeOf(converted('1 Gb/s'), cables).idle, ['core/2']);
    assert.deepEqual(treeOf(converted('100 Mb/s'), cables).idle, ['core/1']);
  });

  it('cuts a cable that leads back to the same switch at its higher port (a backup port)', () => {
    const one = `
  core: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  converter: {kind: media-converter, ports: {a: {}, b: {}}}`;
    assert.deepEqual(treeOf(one, '  - {from: core/3, to: converter/a}\n  - {from: converter/b, to: core/2}').idle, [
      'core/3',
    ]);
  });

  it('leaves a loop closed that runs through a switch without it', () => {
    const mixed = ring().replace('stable: {kind: switch, spanning-tree: true', 'stable: {kind: switch');
    assert.deepEqual(treeOf(mixed, RING).idle, []);
    const { tree, topology } = networkOf(siteOf(`devices:\n${mixed}\ncables:\n${RING}\n`));
    assert.deepEqual(
      topology.domains.map((domain) => tree(domain).loops.length),
      [1],
    );
  });

  it('switches that do not hang together have a root each', () => {
    const pairs = ['barn', 'core', 'glasshouse', 'stable'].map(
      (name) => `  ${name}: {kind: switch, spanning-tree: true, ports: {1-4: {}}}`,
    );
    assert.deepEqual(
      treeOf(pairs.join('\n'), '  - {from: core/1, to: barn/1}\n  - {from: stable/1, to: glasshouse/1}').roots,
      ['barn', 'glasshouse'],
    );
  });

  it('an idle link carries nothing, and the streams take the other way', () => {
    const { load, topology } = networkOf(
      siteOf(`
devices:
${ring()}
  paddock-cam: {kind: camera}
  recorder: {kind: server}
cables:${RING}
  - {from: core/3, to: paddock-cam}
  - {from: barn/3, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
`),
    );
    const carrying = topology.links.filter((link) => load(link, link.a).line.peak + load(link, link.b).line.peak > 0);
    assert.deepEqual(
      carrying.map(({ a, b }) => `${portName(a)} – ${portName(b)}`),
      ['barn/1 – core/1', 'core/3 – paddock-cam/eth', 'barn/3 – recorder/eth'],
    );
  });
});
