import assert from 'node:assert/strict';
import { channelAt, channelFrequency, isOnChannel } from '../../../server/src/standards/television/channel-plan.ts';
import { intermediateFrequency, planeOf } from '../../../server/src/standards/television/satellite.ts';
import { near } from './near.ts';

describe('Channels', () => {
  // The grids that transmitters in the scan tables are on; see scan-tables.test.ts.
  it('have their centre here', () => {
    const megahertz = (...[plan, channel]: Parameters<typeof channelFrequency>): number =>
      (channelFrequency(plan, channel) ?? NaN) / 1e6;
    for (const [channel, centre] of [
      [21, 474],
      [48, 690],
      [60, 786],
      [7, 191.5],
      [12, 226.5],
    ] as const)
      assert.equal(megahertz('region-1', channel), centre);
    for (const [channel, centre] of [
      [6, 177.5],
      ['9A', 205.5],
      [35, 578.5],
      [51, 690.5],
    ] as const)
      assert.equal(megahertz('australia', channel), centre);
    for (const [channel, centre] of [
      [4, 69],
      [6, 85],
      [13, 213],
      [14, 473],
      [36, 605],
    ] as const)
      assert.equal(megahertz('north-america', channel), centre);
    near(megahertz('japan', 27), 557.142857, 1e-6);
    near(megahertz('brazil', 14), 473.142857, 1e-6);
    assert.equal(channelFrequency('region-1', 13), undefined);
  });

  it('are found by a frequency that is moved a little', () => {
    assert.equal(channelAt('region-1', 474e6 + 1e6 / 6), 21);
    assert.equal(channelAt('region-1', 478e6), undefined);
    assert.equal(isOnChannel('region-1', 46, 674e6), true);
    assert.equal(isOnChannel('region-1', 46, 682e6), false);
  });
});

// Worked by hand with the oscillators 9750 and 10 600 MHz and the change of band at 11 700 MHz.
describe('A universal LNB', () => {
  it('brings a transponder down', () => {
    for (const [frequency, intermediate] of [
      [11_778, 1178],
      [10_773, 1023],
      [12_188, 1588],
      [11_700, 1100],
    ] as const)
      assert.equal(intermediateFrequency(frequency * 1e6), intermediate * 1e6);
  });

  it('is asked for a plane by voltage and tone', () => {
    assert.deepEqual(planeOf('vertical', 11_778e6), { volts: 13, tone: true });
    assert.deepEqual(planeOf('horizontal', 10_773e6), { volts: 18, tone: false });
    assert.deepEqual(planeOf('left', 12_188e6), { volts: 18, tone: true });
  });
});
