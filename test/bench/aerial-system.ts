/** How long an aerial system of six multiplexes and twenty outlets takes to compute, from its site, warm. */

import { performance } from 'node:perf_hooks';
import { televisionOf } from '../../server/src/television/television.ts';
import { siteOf } from '../site-of.ts';
import { type Spread, spread } from './spread.ts';

const CHANNELS = [21, 24, 27, 30, 34, 37];
const OUTLETS = 20;
const WARM = 200;
const TIMES = 500;

/** Milliseconds. */
export function aerialSystem(): Spread {
  const site = siteOf(house());
  for (let i = 0; i < WARM; i++) televisionOf(site);
  return spread(
    Array.from({ length: TIMES }, () => {
      const start = performance.now();
      televisionOf(site);
      return performance.now() - start;
    }),
  );
}

function house(): string {
  const outlets = Array.from({ length: OUTLETS }, (_, index) => index + 1);
  const lines = (of: readonly number[], line: (number: number) => string): string => of.map(line).join('');
  return `multiplexes:
${lines(CHANNELS, (channel) => `  c${channel}: {system: dvb-t, channel: ${channel}, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}\n`)}devices:
  aerial: {kind: aerial, receives: {${CHANNELS.map((channel) => `c${channel}: 60 dBµV`).join(', ')}}}
  filter: {kind: filter, passes: 470-694 MHz, loss: 1 dB}
  amp: {kind: amplifier, gain: 24 dB, noise-figure: 3 dB, max-output: 116 dBµV}
  splitter: {kind: splitter, ways: ${OUTLETS}, loss: 14 dB, isolation: 25 dB}
${lines(outlets, (n) => `  outlet-${n}: {kind: outlet, loss: 1 dB}\n  set-${n}: {kind: display, inputs: {rf: {max-input: 80 dBµV, systems: [dvb-t]}}}\n`)}cables:
  - {from: aerial, to: filter/in, type: coax-6, length: 2 m}
  - {from: filter/out, to: amp/in, type: coax-6, length: 6 m}
  - {from: amp/out, to: splitter/in, type: coax-6, length: 1 m}
${lines(outlets, (n) => `  - {from: splitter/out-${n}, to: outlet-${n}/in, type: coax-6, length: ${5 + n} m}\n  - {from: outlet-${n}/tv, to: set-${n}/rf, type: coax-59, length: 2 m}\n`)}`;
}
