import { placeOf } from '../../site/item.ts';
import { openInputs } from '../../television/open-inputs.ts';
import { few, list } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerNotCabled: Rule = {
  id: 'tuner-not-cabled',
  severity: 'error',
  summary: 'A tuner that must receive something has no coax.',
  why: `What an aerial or a dish receives comes to a tuner by coax alone. Lead one to its input from a splitter, an outlet
or an LNB. Switch supplies off before you connect or disconnect a plug.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    for (const { device, inputs, wanted, shorts } of openInputs(site, plan.television)) {
      const names = inputs.map(({ name }) => `${device.name}/${name}`);
      const multiplexes = wanted.map(({ name }) => name);
      report({
        at: placeOf(device.item, inputs[0]?.keyPath ?? [], 'key'),
        message:
          `No coax leads to ${list(names)}, and ${few(multiplexes)} ${multiplexes.length === 1 ? 'is' : 'are'} wanted of ` +
          `${device.name}. Run one there from where ${multiplexes.length === 1 ? 'it is' : 'they are'} received.`,
        acceptAt: [device.name, ...names, ...multiplexes],
        // The output that the coax belongs at seems open.
        entails: [...shorts, ...site.devices.filter(({ kind }) => kind === 'splitter' || kind === 'tap')],
      });
    }
  },
};

const AIR = `multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
occasions:
  evening: {services: [news]}
devices:
  loft-aerial: {kind: aerial, receives: {mux-a: 62 dBµV}}
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, terminated: [out-2]}
  parlour-outlet: {kind: outlet, loss: 1 dB}
`;

export const examples: readonly Example[] = [
  {
    bad: `
${AIR}  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1-2: {systems: [dvb-t]}}}
#                                                         ^^ No coax leads to tv-tuner/rf, and mux-a is wanted of tv-tuner.
cables:
  - {from: loft-aerial, to: house-splitter/in, type: coax-6, length: 8 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 9 m}
`,
    good: `
${AIR}  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1-2: {systems: [dvb-t]}}}
cables:
  - {from: loft-aerial, to: house-splitter/in, type: coax-6, length: 8 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 9 m}
  - {from: house-splitter/out-2, to: tv-tuner/rf, type: coax-6, length: 2 m}
`,
  },
];
