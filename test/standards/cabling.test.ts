import assert from 'node:assert/strict';
import { CHANNEL, reach, type CableType } from '../../server/src/standards/cabling.ts';

const types: readonly CableType[] = [
  'cat5',
  'cat5e',
  'cat6',
  'cat6a',
  'cat7',
  'cat8',
  'om1',
  'om2',
  'om3',
  'om4',
  'om5',
  'os2',
  'dac',
];
const speeds = [10e6, 100e6, 1e9, 2.5e9, 5e9, 10e9, 25e9, 40e9, 100e9, 400e9];

describe('Cabling (TIA-568, IEEE 802.3)', () => {
  it('has a channel of 100 m: 90 m laid and 10 m of cords', () => {
    // TIA-568, secondary
    assert.equal(CHANNEL, 100);
  });

  // Least category for 100 m, from an encyclopedia's table (secondary). 5GBASE-T wants 6, or 5e in some installations.
  for (const [speed, carrying, failing] of [
    [100e6, 'cat5', undefined],
    [1e9, 'cat5', undefined],
    [2.5e9, 'cat5e', 'cat5'],
    [5e9, 'cat6', 'cat5'],
    [10e9, 'cat6a', 'cat5e'],
  ] as const) {
    it(`carries ${speed / 1e9} Gb/s over 100 m of ${carrying}, not ${failing ?? 'less'}`, () => {
      assert.equal(reach(carrying, speed)?.metres, 100);
      assert.equal(reach(carrying, speed)?.verified, 'secondary');
      if (failing !== undefined) assert.equal(reach(failing, speed), undefined);
    });
  }

  // From memory: TIA TSB-155; IEEE 802.3bq, clauses 26, 38, 52, 802.3ba, 802.3by; SFF-8431.
  for (const [type, speed, metres] of [
    ['cat6', 10e9, 55],
    ['cat8', 25e9, 30],
    ['cat8', 40e9, 30],
    ['om1', 1e9, 275],
    ['om2', 1e9, 550],
    ['om1', 10e9, 33],
    ['om2', 10e9, 82],
    ['om3', 10e9, 300],
    ['om4', 10e9, 400],
    ['om3', 40e9, 100],
    ['om4', 40e9, 150],
    ['os2', 1e9, 5000],
    ['os2', 10e9, 10_000],
    ['dac', 10e9, 7],
  ] as const) {
    it(`carries ${speed / 1e9} Gb/s over ${metres} m of ${type} (from memory)`, () => {
      assert.equal(reach(type, speed)?.metres, metres);
      assert.equal(reach(type, speed)?.verified, 'from memory');
    });
  }

  it('does not carry what no kind of Ethernet sends over it', () => {
    for (const [type, speed] of [
      ['cat5', 2.5e9],
      ['cat6a', 25e9],
      ['om2', 25e9],
      ['dac', 100e6],
      ['os2', 400e9],
    ] as const) {
      assert.equal(reach(type, speed), undefined, `${type} ${speed}`);
    }
  });

  it('carries a speed between two kinds of Ethernet as far as the faster', () => {
    assert.equal(reach('cat6', 7e9)?.metres, 55);
  });

  it('goes no further for more speed, on copper and multimode fibre up to 10 Gb/s', () => {
    for (const type of types.filter((one) => one !== 'os2' && one !== 'dac')) {
      const metres = speeds.map((speed) => reach(type, speed)?.metres ?? 0).slice(0, 6);
      assert.deepEqual(
        metres,
        metres.toSorted((a, b) => b - a),
        type,
      );
    }
  });

  it('says for every figure what it rests on', () => {
    for (const type of types) {
      for (const found of speeds.map((speed) => reach(type, speed))) {
        if (found !== undefined) assert.ok(found.metres > 0 && found.basis !== '' && found.source !== '');
      }
    }
  });
});
