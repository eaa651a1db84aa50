/**
 * The channel plans and parameters, held against where and how transmitters really are: a distribution's scan tables.
 */

import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type ChannelPlan,
  channelAt,
  channelFrequency,
} from '../../../server/src/standards/television/channel-plan.ts';
import { intermediateFrequency, satelliteBand } from '../../../server/src/standards/television/satellite.ts';
import {
  type Modulation,
  type System,
  bandwidthsOf,
  codeRatesOf,
  guardIntervalsOf,
  modulationsOf,
} from '../../../server/src/standards/television/system.ts';
import { unavailable } from '../../availability.ts';

const TABLES = '/usr/share/dvb';

type Entry = ReadonlyMap<string, string>;

/** The entries of all tables of a folder whose name fits. */
function entriesOf(folder: string, name = /./): Entry[] {
  return readdirSync(join(TABLES, folder))
    .filter((file) => name.test(file))
    .flatMap((file) => {
      const text = readFileSync(join(TABLES, folder, file), 'utf8').replaceAll(/^\s*#.*$/gm, '');
      return text
        .split(/^\[.*\]$/m)
        .slice(1)
        .map(
          (entry): Entry =>
            new Map([...entry.matchAll(/^\s*(\w+) = (.*?)\s*$/gm)].map(([, key = '', value = '']) => [key, value])),
        );
    });
}

const SYSTEMS: Readonly<Record<string, System>> = {
  'DVBT': 'dvb-t',
  'DVBT2': 'dvb-t2',
  'DVBC/ANNEX_A': 'dvb-c',
  'DVBC/ANNEX_B': 'j83b',
  'DVBS': 'dvb-s',
  'DVBS2': 'dvb-s2',
  'ATSC': 'atsc',
  'ISDBT': 'isdb-t',
};

const MODULATIONS: Readonly<Record<string, Modulation>> = {
  'QPSK': 'qpsk',
  'PSK/8': '8psk',
  'APSK/16': '16apsk',
  'APSK/32': '32apsk',
  'QAM/16': '16qam',
  'QAM/32': '32qam',
  'QAM/64': '64qam',
  'QAM/128': '128qam',
  'QAM/256': '256qam',
  'VSB/8': '8vsb',
};

const frequency = (entry: Entry): number => Number(entry.get('FREQUENCY'));

/** The share of frequencies that are on a plan. */
function share(plan: ChannelPlan, frequencies: readonly number[]): number {
  return frequencies.filter((one) => channelAt(plan, one) !== undefined).length / frequencies.length;
}

describe('Scan tables', function () {
  before(function () {
    if (!existsSync(TABLES)) unavailable(this, `${TABLES} is not there (apt-get install dtv-scan-tables)`);
  });

  it('put Europe’s transmitters on the channels of region 1', () => {
    const all = entriesOf('dvb-t', /^(?!au-|tw-|co-|auto-|vn-|hk-|ke-|ug-)/).map(frequency);
    const uhf = all.filter((one) => one > 470e6);
    assert.ok(uhf.length > 3000, `${uhf.length} entries`);
    assert.ok(share('region-1', uhf) > 0.995, `${share('region-1', uhf)} of ${uhf.length}`);
    const exact = uhf.filter((one) => channelFrequency('region-1', Math.round((one - 306e6) / 8e6)) === one);
    assert.ok(exact.length / uhf.length > 0.95, `${exact.length} of ${uhf.length}`);
  });

  it('put band III on channels of 7 MHz', () => {
    // Russia has 8 MHz there.
    const band = entriesOf('dvb-t', /^(?!au-|auto-|ru-)/)
      .map(frequency)
      .filter((one) => one > 170e6 && one < 231e6);
    assert.ok(band.length > 150, `${band.length} entries`);
    assert.ok(share('region-1', band) > 0.99, `${share('region-1', band)} of ${band.length}`);
  });

  it('put Australia’s transmitters on its channels', () => {
    // Some tables still have analogue vision carriers, such as 534.25 MHz.
    const all = entriesOf('dvb-t', /^au-/).map(frequency);
    assert.ok(all.length > 200, `${all.length} entries`);
    assert.ok(share('australia', all) > 0.97, `${share('australia', all)} of ${all.length}`);
  });

  it('put North America’s transmitters on its channels', () => {
    const all = entriesOf('atsc', /^us-ATSC-center-frequencies-8VSB$/).map(frequency);
    assert.ok(all.length > 60, `${all.length} entries`);
    assert.ok(share('north-america', all) > 0.98, `${share('north-america', all)} of ${all.length}`);
  });

  it('put Brazil’s transmitters on its channels', () => {
    const all = entriesOf('isdb-t', /^br-/).map(frequency);
    assert.ok(all.length > 10_000, `${all.length} entries`);
    assert.ok(share('brazil', all) > 0.99, `${share('brazil', all)} of ${all.length}`);
  });

  it('have parameters that the systems have', () => {
    let seen = 0;
    const wrong: string[] = [];
    for (const folder of ['dvb-t', 'dvb-c', 'dvb-s', 'atsc', 'isdb-t'])
      for (const entry of entriesOf(folder)) {
        const system = SYSTEMS[entry.get('DELIVERY_SYSTEM') ?? ''];
        if (system === undefined) continue;
        seen++;
        for (const fault of faultsOf(system, entry)) wrong.push(`${folder}: ${fault}`);
      }
    assert.ok(seen > 25_000, `${seen} entries`);
    // Of some 28,000 a few are slips, such as 8PSK in DVB-S.
    assert.ok(wrong.length < seen / 200, `${wrong.length} of ${seen}: ${[...new Set(wrong)].slice(0, 20).join('; ')}`);
  });

  it('have transponders that a universal LNB brings down to its cable', () => {
    const ku = entriesOf('dvb-s')
      .map((entry) => frequency(entry) * 1000)
      .filter((one) => one >= 10_700e6 && one <= 12_750e6);
    assert.ok(ku.length > 5000, `${ku.length} entries`);
    for (const one of ku) {
      const intermediate = intermediateFrequency(one);
      assert.ok(intermediate >= 950e6 && intermediate <= 2150e6, `${one} gives ${intermediate}`);
    }
    assert.ok(ku.some((one) => satelliteBand(one) === 'low') && ku.some((one) => satelliteBand(one) === 'high'));
  });
});

function faultsOf(system: System, entry: Entry): string[] {
  const faults: string[] = [];
  const modulation = MODULATIONS[entry.get('MODULATION') ?? ''];
  if (modulation !== undefined && !modulationsOf(system).includes(modulation)) faults.push(`${system} ${modulation}`);
  const codeRate = entry.get('CODE_RATE_HP') ?? entry.get('INNER_FEC') ?? 'AUTO';
  if (modulation !== undefined && /\d/.test(codeRate)) {
    const rates = codeRatesOf(system, modulation);
    if (rates.length > 0 && !rates.includes(codeRate)) faults.push(`${system} ${modulation} ${codeRate}`);
  }
  const guard = entry.get('GUARD_INTERVAL') ?? 'AUTO';
  if (/\d/.test(guard) && guardIntervalsOf(system).length > 0 && !guardIntervalsOf(system).includes(guard))
    faults.push(`${system} guard interval ${guard}`);
  const bandwidth = Number(entry.get('BANDWIDTH_HZ') ?? 0);
  if (bandwidth > 0 && bandwidthsOf(system).length > 0 && !bandwidthsOf(system).includes(bandwidth))
    faults.push(`${system} ${bandwidth} Hz`);
  return faults;
}
