/** Aerial systems that are worked by hand, to a hundredth of a decibel. */

import assert from 'node:assert/strict';
import { reportOf } from '../../server/src/report/report.ts';
import type { PointReport, RadioReport } from '../../server/src/report/radio.ts';
import { near } from '../standards/television/near.ts';
import { planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';

const rf = (text: string): RadioReport => reportOf(planOf(siteOf(text))).rf;

function pointAt({ points }: RadioReport, at: string, multiplex: string): PointReport {
  const found = points.find((point) => point.at === at && point.multiplex === multiplex);
  assert.ok(
    found,
    `${multiplex} does not reach ${at}: ${points.map((point) => `${point.multiplex} ${point.at}`).join(', ')}`,
  );
  return found;
}

const WEAK = `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40214645 b/s}
devices:
  aerial: {kind: aerial, receives: {mux-a: 43 dBµV, mux-b: 46 dBµV}}
  amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 100 dBµV}
  splitter: {kind: splitter, ways: 4, loss: 7.5 dB}
  outlet: {kind: outlet, loss: 1 dB}
  tuner: {kind: tuner, inputs: {rf: {noise-figure: 6 dB}}}
`;

const AHEAD = `${WEAK}
cables:
  - {from: aerial, to: amp/in, type: coax-6, length: 3 m}
  - {from: amp/out, to: splitter/in, type: coax-6, length: 25 m}
  - {from: splitter/out-1, to: outlet/in, type: coax-6, length: 14 m}
  - {from: outlet/tv, to: tuner/rf, type: coax-59, length: 2 m}
`;

/** The same amplifier, a noisier one, between the last coax and the outlet. */
const BEHIND = `${WEAK.replace('noise-figure: 2 dB', 'noise-figure: 4 dB')}
cables:
  - {from: aerial, to: splitter/in, type: coax-6, length: 28 m}
  - {from: splitter/out-1, to: amp/in, type: coax-6, length: 14 m}
  - {from: amp/out, to: outlet/in}
  - {from: outlet/tv, to: tuner/rf, type: coax-59, length: 2 m}
`;

const WITHOUT = `${WEAK}
cables:
  - {from: aerial, to: splitter/in, type: coax-6, length: 28 m}
  - {from: splitter/out-1, to: outlet/in, type: coax-6, length: 14 m}
  - {from: outlet/tv, to: tuner/rf, type: coax-59, length: 2 m}
`;

// Worked by hand: A√f + Bf, sums of decibels, Friis, N₀ = 3.588 dBµV in 8 MHz.
describe('A weak signal', () => {
  it('has these levels behind an amplifier at the aerial', () => {
    const report = rf(AHEAD);
    near(pointAt(report, 'outlet/tv', 'mux-b').level, 51.306, 0.001);
    near(pointAt(report, 'outlet/tv', 'mux-a').level, 47.077, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-b').level, 50.941, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-a').level, 46.64, 0.001);
    assert.equal(pointAt(report, 'tuner/rf', 'mux-a').frequency, 674e6);
  });

  it('has this noise behind an amplifier at the aerial', () => {
    const report = rf(AHEAD);
    for (const [at, multiplex, noiseFigure, carrierToNoise] of [
      ['tuner/rf', 'mux-b', 4.8, 37.612],
      ['tuner/rf', 'mux-a', 5.442, 33.97],
      ['outlet/tv', 'mux-b', 3.093, 39.319],
      ['outlet/tv', 'mux-a', 3.366, 36.046],
    ] as const) {
      near(pointAt(report, at, multiplex).noiseFigure, noiseFigure, 0.001);
      near(pointAt(report, at, multiplex).carrierToNoise ?? NaN, carrierToNoise, 0.001);
    }
    near(pointAt(report, 'tuner/rf', 'mux-b').margin ?? NaN, 17.612, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-a').margin ?? NaN, 15.27, 0.001);
  });

  it('is hardly there where the amplifier comes after the loss, at the same level', () => {
    const report = rf(BEHIND);
    near(pointAt(report, 'tuner/rf', 'mux-b').level, 50.941, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-b').noiseFigure, 17.771, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-b').margin ?? NaN, 4.641, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-a').noiseFigure, 19.001, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-a').margin ?? NaN, 1.711, 0.001);
  });

  it('is not enough without an amplifier', () => {
    const report = rf(WITHOUT);
    near(pointAt(report, 'outlet/tv', 'mux-b').level, 31.306, 0.001);
    near(pointAt(report, 'outlet/tv', 'mux-a').level, 27.077, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-b').margin ?? NaN, 1.353, 0.001);
    near(pointAt(report, 'tuner/rf', 'mux-a').margin ?? NaN, -1.648, 0.001);
  });
});

describe('A strong signal', () => {
  const levels = [80, 80, 79, 80, 76, 76];
  const channels = [21, 24, 27, 30, 34, 37];
  const strong = (front: string): string => `
multiplexes:
${channels.map((channel) => `  c${channel}: {system: dvb-t, channel: ${channel}, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}`).join('\n')}
devices:
  aerial: {kind: aerial, receives: {${channels.map((channel, index) => `c${channel}: ${levels[index] ?? 0} dBµV`).join(', ')}}}
  pad: {kind: attenuator, loss: ${front}}
  amp: {kind: amplifier, gain: 20 dB, noise-figure: 5 dB, max-output: 98 dBµV}
  splitter: {kind: splitter, ways: 8, loss: 11 dB}
  outlet: {kind: outlet, loss: 1 dB}
  tuner: {kind: tuner, inputs: {rf: {max-input: 80 dBµV}}}
cables:
  - {from: aerial, to: pad/in, type: coax-6, length: 10 m}
  - {from: pad/out, to: amp/in}
  - {from: amp/out, to: splitter/in}
  - {from: splitter/out-1, to: outlet/in, type: coax-6, length: 20 m}
  - {from: outlet/tv, to: tuner/rf, type: coax-59, length: 2 m}
`;

  // Worked by hand; the limit is 98 − 7.5 · lg 5.
  for (const [front, strongest, headroom, first, last, composite] of [
    ['0 dB', 98.525, -5.767, 83.575, 78.997, 89.588],
    ['6 dB', 92.525, 0.233, 77.575, 72.997, 83.588],
    ['10 dB', 88.525, 4.233, 73.575, 68.997, 79.588],
  ] as const)
    it(`drives its amplifier so far with ${front} in front`, () => {
      const plan = planOf(siteOf(strong(front)));
      const report = reportOf(plan).rf;
      const [amplifier] = report.amplifiers;
      near(amplifier?.strongest, strongest, 0.001);
      near(amplifier?.limit ?? NaN, 92.758, 0.001);
      near(amplifier?.headroom ?? NaN, headroom, 0.001);
      near(pointAt(report, 'outlet/tv', 'c21').level, first, 0.001);
      near(pointAt(report, 'outlet/tv', 'c37').level, last, 0.001);
      near(plan.television.reception.receivers[0]?.composite, composite, 0.001);
    });
});

describe('A satellite', () => {
  const DISH = `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
  sat-2: {system: dvb-s2, frequency: 10773 MHz, polarisation: horizontal, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 3/4}
devices:
  dish: {kind: lnb, type: quad, receives: {sat-1: 78 dBµV, sat-2: 76 dBµV}, quality: {sat-1: 15 dB}}
  tuner: {kind: tuner, inputs: {sat: {noise-figure: 10 dB}}}
cables:
  - {from: dish/out-1, to: tuner/sat, type: coax-6, length: 20 m}
`;

  // A√f + Bf at 1178 and 1023 MHz by hand; with 15 dB at the dish the coax and the tuner take nothing that counts.
  it('comes down at its intermediate frequency', () => {
    const report = rf(DISH);
    const point = pointAt(report, 'tuner/sat', 'sat-1');
    assert.equal(point.frequency, 1178e6);
    near(point.level, 78 - (0.66 * Math.sqrt(1178) + 0.0008 * 1178) * 0.2, 0.001);
    near(point.carrierToNoise ?? NaN, 15, 0.001);
    near(point.margin ?? NaN, 15 - 7.62, 0.001);
    assert.equal(pointAt(report, 'tuner/sat', 'sat-2').frequency, 1023e6);
  });

  it('gives each output of a quattro its own plane', () => {
    const report = rf(DISH.replace('type: quad', 'type: quattro').replace('dish/out-1', 'dish/vh'));
    assert.deepEqual(
      report.points.filter(({ at }) => at === 'tuner/sat').map(({ multiplex }) => multiplex),
      ['sat-1'],
    );
  });
});
