import assert from 'node:assert/strict';
import {
  LOOP_OHMS,
  TYPE_1_LOOP_OHMS,
  classFor,
  loopOhms,
  portTypes,
  powerAtPort,
  powerClasses,
} from '../../server/src/standards/poe.ts';

describe('Power over Ethernet (IEEE 802.3af, at, bt)', () => {
  // Ethernet Alliance, "Overview of 802.3bt" (April 2018), a secondary transcription; class 0 from memory.
  it('knows the classes', () => {
    assert.deepEqual(
      powerClasses.map((power) => [power.class, power.pseMilliwatts / 1000, power.pdMilliwatts / 1000, power.type]),
      [
        [0, 15.4, 12.95, 1],
        [1, 4, 3.84, 1],
        [2, 7, 6.49, 1],
        [3, 15.4, 13, 1],
        [4, 30, 25.5, 2],
        [5, 45, 40, 3],
        [6, 60, 51, 3],
        [7, 75, 62, 4],
        [8, 90, 71.3, 4],
      ],
    );
  });

  it('loses power in the cable in every class', () => {
    for (const power of powerClasses) assert.ok(power.pdMilliwatts < power.pseMilliwatts, `class ${power.class}`);
  });

  // Linux's documentation of power sourcing equipment (secondary) gives 15.4, 30 and 60 W for types 1, 2 and 3.
  it('gives each type of port what its highest class takes', () => {
    for (const [type, watts] of [
      ['af', 15.4],
      ['at', 30],
      ['bt', 60],
      ['bt-type-4', 90],
    ] as const) {
      assert.equal(portTypes[type].pseMilliwatts, watts * 1000);
      assert.equal(powerClasses[portTypes[type].maxClass]?.pseMilliwatts, watts * 1000);
    }
  });

  it('finds the lowest class that is enough', () => {
    for (const [watts, expected] of [
      [0.5, 1],
      [3.84, 1],
      [3.85, 2],
      [6.49, 2],
      [12.95, 3],
      [13, 3],
      [13.01, 4],
      [25.5, 4],
      [26, 5],
      [71.3, 8],
    ] as const) {
      assert.equal(classFor(Math.round(watts * 1000))?.class, expected, `${watts} W`);
    }
    assert.equal(classFor(71_301), undefined);
  });

  // The currents of the two types, 0.35 A and 0.6 A, from memory of IEEE 802.3.
  it('loses in 100 m of cable what the class figures differ by: I² · R', () => {
    assert.equal((0.35 ** 2 * TYPE_1_LOOP_OHMS).toFixed(2), (15.4 - 12.95).toFixed(2));
    assert.equal((0.6 ** 2 * LOOP_OHMS).toFixed(2), (30 - 25.5).toFixed(2));
  });

  // By hand: P = (U − I·R)·I solved for I. 54 V, 38 m: R = 4.75 Ω, I = 0.2267 A, U·I = 12.24 W.
  it('knows what leaves the port for what arrives behind a cable', () => {
    const watts = (own: number, metres: number, volts?: number): string =>
      (
        (powerAtPort(own * 1000, loopOhms(metres, 3), volts === undefined ? undefined : volts * 1000) ?? NaN) / 1000
      ).toFixed(2);
    assert.equal(watts(12, 38), '12.24');
    assert.equal(watts(9.5, 84), '9.85');
    assert.equal(watts(25.5, 100, 50), '30.00');
    assert.equal(watts(12, 0), '12.00');
  });

  it('knows that more cannot arrive than U² ÷ 4R', () => {
    assert.equal(powerAtPort(58_321, loopOhms(100, 4)), undefined);
    assert.ok(powerAtPort(58_319, loopOhms(100, 4)) !== undefined);
  });

  it('meets half the resistance from class 5 on, over all four pairs', () =>
    assert.equal(loopOhms(100, 5), loopOhms(100, 4) / 2));
});
