import assert from 'node:assert/strict';
import { LEVEL_OF_MILLIWATT } from '../../../server/src/standards/television/level.ts';
import {
  combinedRatio,
  lossy,
  manMadeNoise,
  noiseFigureOf,
  noiseFloor,
} from '../../../server/src/standards/television/noise.ts';
import { noiseBandwidth } from '../../../server/src/standards/television/system.ts';
import { near } from './near.ts';

describe('Noise', () => {
  // k and T₀ = 290 K: the −174 dBm/Hz that every handbook of radio rounds to.
  it('is −173.975 dBm in a hertz', () => {
    near(noiseFloor(1) - LEVEL_OF_MILLIWATT, -173.975, 0.0006);
  });

  // By hand, with the number of carriers over the useful symbol that EN 300 744 and EN 302 755 have.
  it('has the bandwidth of the system', () => {
    const ofdm = { modulation: '64qam' } as const;
    near(noiseBandwidth({ system: 'dvb-t', bandwidth: 8e6, ...ofdm }) / 1e6, 7.6083, 6e-5);
    near(noiseBandwidth({ system: 'dvb-t', bandwidth: 7e6, ...ofdm }) / 1e6, 6.6572, 6e-5);
    near(noiseBandwidth({ system: 'dvb-t2', bandwidth: 6e6, ...ofdm }) / 1e6, 5.7062, 6e-5);
    near(noiseBandwidth({ system: 'dvb-t2', bandwidth: 8e6, extended: true, ...ofdm }) / 1e6, 7.7681, 7e-5);
    near(noiseFloor(7.6083e6), 3.59);
    near(noiseFloor(7.6083e6) - LEVEL_OF_MILLIWATT, -105.16);
    near(noiseFloor(6e6), 2.56);
    near(noiseFloor(27.5e6), 9.17);
    near(noiseFloor(6.9e6), 3.16);
  });

  // Friis' formula; the chains are worked by hand.
  it('grows along a chain', () => {
    const amplifier = (gain: number, noiseFigure: number) => ({ gain, noiseFigure });
    const tuner = (noiseFigure: number) => ({ gain: 0, noiseFigure });
    near(noiseFigureOf([amplifier(20, 2), lossy(12), tuner(6)]), 3.436, 0.0006);
    near(noiseFigureOf([lossy(12), amplifier(20, 4), tuner(6)]), 16.051, 0.0006);
    near(noiseFigureOf([amplifier(15, 1.5), lossy(9.5), tuner(7)]), 4.461, 0.0006);
    near(noiseFigureOf([amplifier(18, 2), lossy(7), amplifier(12, 5), lossy(11.5), tuner(6)]), 3.216, 0.0006);
    near(noiseFigureOf([amplifier(55, 0.3), lossy(15), tuner(10)]), 0.304, 0.0006);
    near(noiseFigureOf([amplifier(20, 2), lossy(6), tuner(8)]), 2.62);
    near(noiseFigureOf([lossy(6), amplifier(20, 2), tuner(8)]), 8.14);
    near(noiseFigureOf([lossy(20), tuner(6)]), 26, 1e-9);
    assert.equal(noiseFigureOf([]), 0);
  });

  it('adds up as powers', () => {
    near(combinedRatio([30, 30]), 26.99);
    near(combinedRatio([28, 35, 45]), 27.14);
    assert.equal(combinedRatio([]), Infinity);
  });

  // Rec. ITU-R BT.2033-2, tables 31 and 32, by a transcription.
  it('of men is heard in band III only', () => {
    assert.equal(manMadeNoise(205.5e6), 2);
    assert.equal(manMadeNoise(474e6), 0);
  });
});
