/** Which tuner takes what on an occasion. */

import assert from 'node:assert/strict';
import { check } from '../../server/src/check.ts';
import { hover } from '../../server/src/features/hover/hover.ts';
import { planOf } from '../../server/src/plan.ts';
import { explain } from '../../server/src/report/explain.ts';
import { explanationText } from '../../server/src/report/explain/explanation.ts';
import { reportOf } from '../../server/src/report/report.ts';
import type { OccasionReport } from '../../server/src/report/occasions.ts';
import { folderOf } from '../site.ts';
import { siteOf } from '../site-of.ts';

/** One occasion's report, and how many multiplexes it assigns. */
function occasionOf(text: string, name = 'evening'): OccasionReport {
  const found = reportOf(planOf(siteOf(text))).rf.occasions.find((occasion) => occasion.name === name);
  assert.ok(found);
  return found;
}

const TERRESTRIAL = (name: string, system: string, channel: number): string =>
  `  ${name}: {system: ${system}, channel: ${channel}, modulation: ${system === 'dvb-t' ? '64qam' : '256qam'}, code-rate: 2/3, guard-interval: 1/32}`;
const SATELLITE = (name: string, frequency: number, polarisation: string): string =>
  `  ${name}: {system: dvb-s2, frequency: ${frequency} MHz, polarisation: ${polarisation}, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}`;

/** Four terrestrial tuners of which two do DVB-T2, and two for a satellite. */
const house = (
  satellite: string,
  services = 'film: {multiplex: mux-d, rate: 6 Mb/s}',
  evening = 'services: [film], multiplexes: [mux-a, mux-b, mux-c, sat-1, sat-2, sat-3]',
): string => `
multiplexes:
${TERRESTRIAL('mux-a', 'dvb-t', 46)}
${TERRESTRIAL('mux-b', 'dvb-t2', 21)}
${TERRESTRIAL('mux-c', 'dvb-t2', 24)}
${TERRESTRIAL('mux-d', 'dvb-t2', 27)}
${SATELLITE('sat-1', 11778, 'vertical')}
${SATELLITE('sat-2', 10773, 'horizontal')}
${SATELLITE('sat-3', 12188, 'horizontal')}
services:
  ${services}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV, mux-b: 60 dBµV, mux-c: 60 dBµV, mux-d: 60 dBµV}}
  dish: {kind: lnb, type: quad, receives: {sat-1: 76 dBµV, sat-2: 76 dBµV, sat-3: 76 dBµV}}
  sat-splitter: {kind: splitter, ways: 2, loss: 5 dB, power-pass: true}
  tv-tuner:
    kind: tuner
    inputs: {rf: {}, sat-1: {supplies: 400 mA}, sat-2: {supplies: 400 mA}}
    tuners:
      1-2: {systems: [dvb-t], input: rf}
      3-4: {systems: [dvb-t, dvb-t2], input: rf}
      5: {systems: [dvb-s2], input: sat-1}
      6: {systems: [dvb-s2], input: sat-2}
cables:
  - {from: chimney-aerial, to: tv-tuner/rf, type: coax-6, length: 20 m}
${satellite}
occasions:
  evening: {${evening}}
`;

const TWO_CABLES = `
  - {from: dish/out-1, to: tv-tuner/sat-1, type: coax-6, length: 22 m}
  - {from: dish/out-2, to: tv-tuner/sat-2, type: coax-6, length: 22 m}
`;
const ONE_CABLE = `
  - {from: dish/out-1, to: sat-splitter/in, type: coax-6, length: 20 m}
  - {from: sat-splitter/out-1, to: tv-tuner/sat-1, type: coax-6, length: 2 m}
  - {from: sat-splitter/out-2, to: tv-tuner/sat-2, type: coax-6, length: 2 m}
`;

describe('An occasion', () => {
  // Worked by hand: four terrestrial tuners face four multiplexes, but two of them three of DVB-T2.
  it('names what is short: five of seven can be had', () => {
    const { assigned, unmet, short } = occasionOf(house(TWO_CABLES));
    assert.equal(Object.keys(assigned).length, 5);
    assert.equal(unmet.length, 2);
    assert.deepEqual(short, [
      { multiplexes: ['mux-b', 'mux-c', 'mux-d'], tuners: ['tv-tuner/3', 'tv-tuner/4'] },
      { multiplexes: ['sat-1', 'sat-2', 'sat-3'], tuners: ['tv-tuner/5', 'tv-tuner/6'] },
    ]);
  });

  it('takes a service from a multiplex that is tuned already', () => {
    const { assigned, unmet, short } = occasionOf(house(TWO_CABLES, 'film: {multiplex: [mux-d, mux-a], rate: 6 Mb/s}'));
    assert.deepEqual(Object.keys(assigned), ['mux-a', 'mux-b', 'mux-c', 'sat-1', 'sat-2']);
    assert.deepEqual(unmet, ['sat-3']);
    assert.deepEqual(short, [{ multiplexes: ['sat-1', 'sat-2', 'sat-3'], tuners: ['tv-tuner/5', 'tv-tuner/6'] }]);
  });

  // Three planes on one cable: three of the terrestrial ones and one by satellite.
  it('gets one plane of a satellite by one cable', () => {
    const { assigned, short } = occasionOf(house(ONE_CABLE));
    assert.equal(Object.keys(assigned).length, 4);
    assert.deepEqual(short[1], { multiplexes: ['sat-1', 'sat-2', 'sat-3'], tuners: ['tv-tuner/5', 'tv-tuner/6'] });
  });

  it('asks for what is recorded or sent on, whatever is watched', () => {
    const recorded = house(TWO_CABLES, 'film: {multiplex: mux-d, rate: 6 Mb/s}', 'multiplexes: [mux-b, mux-c]').replace(
      'devices:',
      'devices:\n  recorder: {kind: server, address: 192.168.20.5}',
    ).concat(`
streams:
  tv-film: {source: tv-tuner, service: film, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
volumes:
  disk: {host: recorder, capacity: 4 TB}
recordings:
  film: {stream: tv-film, volume: disk, keep: 7 d}
`);
    assert.deepEqual(occasionOf(recorded).short, [
      { multiplexes: ['mux-b', 'mux-c', 'mux-d'], tuners: ['tv-tuner/3', 'tv-tuner/4'] },
    ]);
    const [without] = recorded.split('volumes:');
    assert.deepEqual(occasionOf(without ?? '').short, []);
  });

  it('leaves a multiplex to no tuner that gets too little of it', () => {
    const weak = house(TWO_CABLES).replace('mux-b: 60 dBµV', 'mux-b: 20 dBµV');
    const { unmet, short } = occasionOf(weak, 'evening');
    assert.deepEqual(unmet, ['mux-b', 'sat-3']);
    assert.deepEqual(short[0], { multiplexes: ['mux-b'], tuners: [] });
  });

  it('counts no signal where the site describes no aerial', () => {
    const { assigned, unmet } = occasionOf(`
multiplexes:
${TERRESTRIAL('mux-a', 'dvb-t', 46)}
${TERRESTRIAL('mux-b', 'dvb-t2', 21)}
devices:
  tv-tuner: {kind: tuner, tuners: {1: {systems: [dvb-t, dvb-t2]}, 2: {systems: [dvb-t]}}}
occasions:
  evening: {multiplexes: [mux-a, mux-b]}
`);
    assert.deepEqual({ ...assigned }, { 'mux-a': 'tv-tuner/2', 'mux-b': 'tv-tuner/1' });
    assert.deepEqual(unmet, []);
  });

  it('takes a stream from a tuner of its source, or of its source’s host', () => {
    const { assigned, short } = occasionOf(`
multiplexes:
${TERRESTRIAL('mux-a', 'dvb-t', 46)}
${TERRESTRIAL('mux-b', 'dvb-t', 21)}
${TERRESTRIAL('mux-c', 'dvb-t', 24)}
devices:
  recorder: {kind: server, address: 192.168.20.5}
  attic-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1: {systems: [dvb-t]}}}
  stick: {kind: tuner, host: recorder, tuners: {1: {systems: [dvb-t]}}}
streams:
  a: {source: recorder, multiplex: mux-a, transport: ts-rtp, group: 239.192.30.1, port: 5004}
  b: {source: recorder, multiplex: mux-b, transport: ts-rtp, group: 239.192.30.2, port: 5004}
  again-a: {source: recorder, carries: a, transport: ts-rtp, group: 239.192.30.3, port: 5004}
  again-b: {source: recorder, carries: b, transport: ts-rtp, group: 239.192.30.4, port: 5004}
occasions:
  evening: {multiplexes: [mux-c]}
`);
    assert.deepEqual({ ...assigned }, { 'mux-a': 'stick/1', 'mux-c': 'attic-tuner/1' });
    assert.deepEqual(short, [{ multiplexes: ['mux-a', 'mux-b'], tuners: ['stick/1'] }]);
  });
});

describe('What tuners do', () => {
  const plan = planOf(siteOf(house(TWO_CABLES)));
  const explained = (...path: string[]): string => {
    const found = explain(plan, path);
    assert.ok('explanations' in found);
    return found.explanations.map(explanationText).join('\n');
  };

  it('is explained for an occasion', () => {
    const text = explained('occasions', 'evening');
    assert.match(text, /needs 7 multiplexes at once, and 5 of them can be had/);
    assert.match(text, /Only tv-tuner\/3 and tv-tuner\/4 can take mux-b, mux-c and mux-d: 1 tuner too few/);
    assert.match(text, /mux-a +tv-tuner\/1 +all of it/);
    assert.match(text, /mux-d +none +film/);
  });

  it('is explained for a tuner', () => {
    const text = explained('devices', 'tv-tuner');
    assert.match(text, /^ +evening *\n +1 +mux-a +dvb-t at rf/m);
    assert.match(text, /^ +2 +– +dvb-t at rf/m);
  });

  it('is explained at the name of an occasion', () => {
    const text = house(TWO_CABLES);
    const checked = check(folderOf({ 'all.site.yaml': text }));
    const [file] = checked.files;
    assert.ok(file);
    const found = hover(checked, file, text.lastIndexOf('evening:'));
    assert.match(found?.markdown ?? '', /5 of them can be had/);
  });
});
