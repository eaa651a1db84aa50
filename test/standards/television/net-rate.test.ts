import assert from 'node:assert/strict';
import { netRate, TABLES_OF_SERVICE } from '../../../server/src/standards/television/net-rate.ts';
import {
  type Modulation,
  type Transmission,
  bandwidthsOf,
  codeRatesOf,
  guardIntervalsOf,
  occupiedBandwidth,
} from '../../../server/src/standards/television/system.ts';
import { near } from './near.ts';

const rate = (transmission: Transmission): number => netRate(transmission)?.rate ?? NaN;
const mbps = (transmission: Transmission): number => rate(transmission) / 1e6;

const dvbT = (megahertz: number, modulation: Modulation, codeRate: string, guardInterval: string): Transmission => ({
  system: 'dvb-t',
  bandwidth: megahertz * 1e6,
  modulation,
  codeRate,
  guardInterval,
});

describe('Net rate of a multiplex', () => {
  // EN 300 744, the table of net rates in a channel of 8 MHz, Mb/s, by two published copies of it: 1/4, 1/8, 1/16,
  // 1/32.
  it('of DVB-T is that of the table in the standard', () => {
    const TABLE: Readonly<Record<string, readonly (readonly [string, ...number[]])[]>> = {
      'qpsk': [
        ['1/2', 4.976, 5.529, 5.855, 6.032],
        ['2/3', 6.635, 7.373, 7.806, 8.043],
        ['3/4', 7.465, 8.294, 8.782, 9.048],
        ['5/6', 8.294, 9.216, 9.758, 10.053],
        ['7/8', 8.709, 9.676, 10.246, 10.556],
      ],
      '16qam': [
        ['1/2', 9.953, 11.059, 11.709, 12.064],
        ['2/3', 13.271, 14.745, 15.612, 16.086],
        ['3/4', 14.929, 16.588, 17.564, 18.096],
        ['5/6', 16.588, 18.431, 19.516, 20.107],
        ['7/8', 17.418, 19.353, 20.491, 21.112],
      ],
      '64qam': [
        ['1/2', 14.929, 16.588, 17.564, 18.096],
        ['2/3', 19.906, 22.118, 23.419, 24.128],
        ['3/4', 22.394, 24.882, 26.346, 27.144],
        ['5/6', 24.882, 27.647, 29.273, 30.16],
        ['7/8', 26.126, 29.029, 30.737, 31.668],
      ],
    };
    for (const [modulation, rows] of Object.entries(TABLE))
      for (const [codeRate, ...rates] of rows)
        for (const [index, guardInterval] of guardIntervalsOf('dvb-t').entries())
          near(mbps(dvbT(8, modulation as Modulation, codeRate, guardInterval)), rates[index] ?? NaN, 0.0011);
  });

  it('of DVB-T in other channels follows their width', () => {
    assert.equal(rate(dvbT(8, '64qam', '2/3', '1/32')), 24_128_342);
    assert.equal(rate(dvbT(8, '64qam', '3/4', '1/32')), 27_144_385);
    assert.equal(rate(dvbT(7, '64qam', '3/4', '1/16')), 23_052_768);
    assert.equal(rate(dvbT(7, '64qam', '2/3', '1/8')), 19_352_941);
    assert.equal(rate(dvbT(6, '64qam', '3/4', '1/4')), 16_795_588);
  });

  const t2 = (modulation: Modulation, codeRate: string, blocks: number, bandwidth = 8e6): Transmission => ({
    system: 'dvb-t2',
    bandwidth,
    modulation,
    codeRate,
    guardInterval: '1/128',
    extended: true,
    frame: { size: 32, symbols: 60, blocks },
  });

  // ETSI TS 102 831's table of largest rates: 32K extended, guard interval 1/128, pilot pattern 7, 60 symbols.
  it('of DVB-T2 is that of the frame', () => {
    assert.equal(rate(t2('256qam', '2/3', 202)), 40_214_645);
    for (const [modulation, blocks, rates] of [
      ['qpsk', 50, [7.444, 8.946, 9.954, 11.198, 11.949, 12.457]],
      ['16qam', 101, [15.037, 18.07, 20.107, 22.62, 24.136, 25.162]],
      ['64qam', 151, [22.482, 27.016, 30.061, 33.818, 36.085, 37.619]],
      ['256qam', 202, [30.075, 36.141, 40.215, 45.24, 48.273, 50.324]],
    ] as const)
      for (const [index, codeRate] of codeRatesOf('dvb-t2', modulation).entries())
        near(mbps(t2(modulation, codeRate, blocks)), rates[index] ?? NaN, 0.0011);
    near(mbps(t2('256qam', '2/3', 202, 7e6)), 35.188, 0.0011);
    near(mbps(t2('256qam', '2/3', 202, 6e6)), 30.161, 0.0011);
  });

  // EN 300 429 by secondary notes.
  it('of DVB-C is that of its symbols', () => {
    const dvbC = (symbolRate: number, modulation: Modulation): Transmission => ({
      system: 'dvb-c',
      symbolRate: symbolRate * 1e6,
      modulation,
    });
    near(mbps(dvbC(6.9, '256qam')), 50.871, 0.0006);
    near(mbps(dvbC(6.9, '64qam')), 38.153, 0.0006);
    near(mbps(dvbC(6.875, '128qam')), 44.35, 0.0006);
    near(mbps(dvbC(6.25, '256qam')), 46.078, 0.0006);
    near(mbps(dvbC(5, '64qam')), 27.647, 0.0006);
    near(occupiedBandwidth(dvbC(6.9, '256qam')) / 1e6, 7.935, 1e-6);
  });

  // ITU-T J.83 annex B: 26.970 and 38.811 Mb/s are the rates that the trade knows.
  it('of J.83 B is what the trade knows', () => {
    near(mbps({ system: 'j83b', modulation: '64qam' }), 26.97, 0.0006);
    near(mbps({ system: 'j83b', modulation: '256qam' }), 38.811, 0.0006);
  });

  // EN 300 421 by secondary notes.
  it('of DVB-S is that of its symbols', () => {
    const dvbS = (symbolRate: number, codeRate: string): Transmission => ({
      system: 'dvb-s',
      symbolRate: symbolRate * 1e6,
      modulation: 'qpsk',
      codeRate,
    });
    assert.equal(rate(dvbS(27.5, '3/4')), 38_014_706);
    near(mbps(dvbS(22, '5/6')), 33.791, 0.0006);
    near(mbps(dvbS(30, '3/4')), 41.471, 0.0006);
    near(mbps(dvbS(20, '7/8')), 32.255, 0.0006);
  });

  // EN 302 307-1 table 13: spectral efficiency of every mode without pilots, to six digits, as open-source receivers
  // have it.
  it('of DVB-S2 has the efficiency of the table in the standard', () => {
    const TABLE: readonly (readonly [Modulation, string, number])[] = [
      ['qpsk', '1/4', 0.490243],
      ['qpsk', '1/3', 0.656448],
      ['qpsk', '2/5', 0.789412],
      ['qpsk', '1/2', 0.988858],
      ['qpsk', '3/5', 1.188304],
      ['qpsk', '2/3', 1.322253],
      ['qpsk', '3/4', 1.487473],
      ['qpsk', '4/5', 1.587196],
      ['qpsk', '5/6', 1.654663],
      ['qpsk', '8/9', 1.766451],
      ['qpsk', '9/10', 1.788612],
      ['8psk', '3/5', 1.779991],
      ['8psk', '2/3', 1.980636],
      ['8psk', '3/4', 2.228124],
      ['8psk', '5/6', 2.478562],
      ['8psk', '8/9', 2.646012],
      ['8psk', '9/10', 2.679207],
      ['16apsk', '2/3', 2.637201],
      ['16apsk', '3/4', 2.966728],
      ['16apsk', '4/5', 3.165623],
      ['16apsk', '5/6', 3.300184],
      ['16apsk', '8/9', 3.523143],
      ['16apsk', '9/10', 3.567342],
      ['32apsk', '3/4', 3.703295],
      ['32apsk', '4/5', 3.951571],
      ['32apsk', '5/6', 4.11954],
      ['32apsk', '8/9', 4.397854],
      ['32apsk', '9/10', 4.453027],
    ];
    for (const [modulation, codeRate, efficiency] of TABLE)
      near(rate({ system: 'dvb-s2', symbolRate: 1e9, modulation, codeRate }) / 1e9, efficiency, 1.1e-6);
    assert.deepEqual(
      TABLE.filter(([modulation]) => modulation === '8psk').map(([, codeRate]) => codeRate),
      codeRatesOf('dvb-s2', '8psk'),
    );
  });

  it('of DVB-S2 is less with pilots', () => {
    const s2 = { system: 'dvb-s2', symbolRate: 27.5e6, modulation: '8psk', codeRate: '2/3' } as const;
    near(mbps(s2), 54.467, 0.0006);
    near(mbps({ ...s2, pilots: true }), 53.231, 0.0006);
    near(mbps({ ...s2, symbolRate: 23e6, codeRate: '3/4', pilots: true }), 50.083, 0.0006);
  });

  // ATSC A/53 by the constants of GNU Radio; an open-source transport-stream library has the same number.
  it('of ATSC is fixed', () => {
    assert.equal(rate({ system: 'atsc', modulation: '8vsb' }), 19_392_658);
  });

  // ABNT NBR 15601 table 4, kb/s of a segment, as the Linux driver mb86a20s quotes it: 1/4, 1/8, 1/16, 1/32.
  it('of ISDB-T is that of its segments', () => {
    const segment = (modulation: Modulation, codeRate: string, guardInterval: string, segments = 1): Transmission => ({
      system: 'isdb-t',
      bandwidth: 6e6,
      modulation,
      codeRate,
      guardInterval,
      segments,
    });
    for (const [modulation, codeRate, rates] of [
      ['qpsk', '1/2', [280.85, 312.06, 330.42, 340.43]],
      ['64qam', '3/4', [1263.86, 1404.29, 1486.9, 1531.95]],
      ['64qam', '7/8', [1474.5, 1638.34, 1734.71, 1787.28]],
    ] as const)
      for (const [index, guardInterval] of guardIntervalsOf('isdb-t').entries())
        near(rate(segment(modulation, codeRate, guardInterval)) / 1000, rates[index] ?? NaN, 0.011);
    near(mbps(segment('64qam', '3/4', '1/8', 12)), 16.852, 0.0011);
    near(mbps(segment('64qam', '7/8', '1/32', 13)), 23.235, 0.0011);
  });

  it('is not known where something is not said', () => {
    assert.equal(netRate({ system: 'dvb-t', modulation: '64qam' }), undefined);
    assert.equal(netRate({ system: 'dvb-t2', modulation: '256qam', codeRate: '2/3', bandwidth: 8e6 }), undefined);
    assert.equal(netRate({ system: 'dvb-s2', modulation: 'qpsk', symbolRate: 1e6, codeRate: '7/8' }), undefined);
    assert.deepEqual(bandwidthsOf('dvb-s'), []);
  });

  // Two packets of 188 bytes every 100 ms.
  it('is more than its services by their tables', () => {
    assert.equal(TABLES_OF_SERVICE, 30_080);
  });
});
