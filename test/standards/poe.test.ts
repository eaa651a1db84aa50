import assert from 'node:assert/strict';
import { classFor, portTypes, powerClasses } from '../../server/src/standards/poe.ts';

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
});
