import assert from 'node:assert/strict';
import { noiseFloor } from '../../../server/src/standards/television/noise.ts';
import { neededRatio, outletWindow, tunerNoiseFigure } from '../../../server/src/standards/television/reception.ts';
import {
  type System,
  codeRatesOf,
  modulationsOf,
  noiseBandwidth,
} from '../../../server/src/standards/television/system.ts';
import { near } from './near.ts';

const SYSTEMS: readonly System[] = ['dvb-t', 'dvb-t2', 'dvb-c', 'j83b', 'dvb-s', 'dvb-s2', 'atsc', 'isdb-t'];

describe('Reception', () => {
  it('of all that the standards have is known', () => {
    for (const system of SYSTEMS)
      for (const modulation of modulationsOf(system)) {
        const rates = codeRatesOf(system, modulation);
        for (const codeRate of rates.length === 0 ? [undefined] : rates) {
          const what = `${system} ${modulation} ${String(codeRate)}`;
          assert.ok(Number.isFinite(neededRatio({ system, modulation, codeRate })), what);
          assert.ok(Number.isFinite(outletWindow({ system, modulation, codeRate })?.min), what);
        }
      }
  });

  // The smallest level that works is N₀ + noise figure + C/N; BT.2033-2 and NorDig 2.2 by transcriptions, sums by hand.
  it('needs a smallest level', () => {
    const smallest = (system: System, modulation: '64qam' | '256qam' | 'qpsk', codeRate: string, figure: number) =>
      noiseFloor(noiseBandwidth({ system, modulation, bandwidth: 8e6 })) +
      figure +
      (neededRatio({ system, modulation, codeRate }) ?? NaN);
    near(smallest('dvb-t2', '256qam', '2/3', 6), 29.59);
    near(smallest('dvb-t2', '64qam', '2/3', 6), 24.99);
    near(smallest('dvb-t2', 'qpsk', '1/2', 6), 12.19);
    near(smallest('dvb-t', '64qam', '2/3', 7), 29.29);
  });

  // ATSC A/74 implies a noise figure of 8 dB: −106.19 dBm + 8 + 15.2 = −82.99 dBm.
  it('of ATSC agrees with A/74', () => {
    near(noiseFloor(6e6) - 108.7506 + 8 + (neededRatio({ system: 'atsc', modulation: '8vsb' }) ?? NaN), -82.99);
  });

  // Eb/N0 behind the codes to C/N in the symbol rate, by hand.
  it('of DVB-S counts the codes', () => {
    const rows = [4.15, 5.89, 6.91, 7.86, 8.48];
    for (const [index, codeRate] of codeRatesOf('dvb-s', 'qpsk').entries())
      near(neededRatio({ system: 'dvb-s', modulation: 'qpsk', codeRate }), rows[index] ?? NaN, 0.0101);
  });

  // Two tables that do not know each other: outlet levels of EN 60728-1 keep 13 to 16 dB over what BT.2033-2 needs.
  it('of DVB-T2 has about the same reserve at every outlet', () => {
    for (const modulation of modulationsOf('dvb-t2'))
      for (const codeRate of codeRatesOf('dvb-t2', modulation)) {
        const t2 = { system: 'dvb-t2', modulation, codeRate, bandwidth: 8e6 } as const;
        const needed = noiseFloor(noiseBandwidth(t2)) + tunerNoiseFigure('dvb-t2') + (neededRatio(t2) ?? NaN);
        near((outletWindow(t2)?.min ?? NaN) - needed, 14.4, 1.35);
      }
  });

  // EN 60728-1 as a handbook of a maker quotes it.
  it('wants a window of levels at an outlet', () => {
    assert.deepEqual(outletWindow({ system: 'dvb-t', modulation: '64qam', codeRate: '2/3' }), { min: 45, max: 74 });
    assert.deepEqual(outletWindow({ system: 'dvb-t', modulation: '16qam', codeRate: '2/3' }), { min: 36, max: 74 });
    assert.deepEqual(outletWindow({ system: 'dvb-t2', modulation: '256qam', codeRate: '2/3' }), { min: 44, max: 74 });
    assert.deepEqual(outletWindow({ system: 'dvb-c', modulation: '256qam' }), { min: 54, max: 74 });
    assert.deepEqual(outletWindow({ system: 'dvb-s2', modulation: '8psk', codeRate: '2/3' }), { min: 47, max: 77 });
  });
});
