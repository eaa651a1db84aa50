import { acceptAtItem } from '../../site/accept-at.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { valueAt } from '../../television/part.ts';
import { dataAt } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const gainReversed: Rule = {
  id: 'gain-reversed',
  severity: 'error',
  summary: 'A loss or a gain of a part or a coax has the wrong sign.',
  why: `A part without power gives less than it gets: its loss is written without a minus, and an amplifier's gain too.
Otherwise every level behind it is wrong by twice that figure.`,
  source: 'conservation of energy; how data sheets write it is common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, kind, aerial } of site.devices) {
      // A multiswitch may amplify.
      if (aerial === undefined || kind === 'multiswitch') continue;
      const { loss, tapLoss, gain, noiseFigure } = aerial;
      const found = {
        'loss': loss === undefined ? 0 : valueAt(loss, 0),
        'tap-loss': tapLoss === undefined ? 0 : valueAt(tapLoss, 0),
        'gain': kind === 'amplifier' ? (gain ?? 0) : 0,
        'noise-figure': noiseFigure ?? 0,
      };
      for (const [key, value] of Object.entries(found)) {
        if (value >= 0) continue;
        const text = dataAt(item.data, [key]);
        const better = typeof text === 'string' ? text.replace(/^\s*-/, '') : undefined;
        report({
          at: placeOf(item, [key]),
          message: `The ${key.replace('-', ' ')} of ${asName(name)} is below 0 dB, so it would ${WOULD[key] ?? 'gain'}. Write it without the minus.`,
          acceptAt: [name],
          fixes: () => (better === undefined ? [] : fixOf(`Write ${better}`, setValue(item, [key], better))),
        });
      }
    }
    for (const { item, coax } of site.cables) {
      if (coax.attenuation?.some(([, value]) => value < 0) !== true) continue;
      report({
        at: placeOf(item, ['attenuation']),
        message: 'The attenuation of this coax is below 0 dB, so it would gain. Write it without the minus.',
        acceptAt: acceptAtItem(item),
      });
    }
  },
};

const WOULD: Readonly<Record<string, string>> = { 'gain': 'lose', 'noise-figure': 'take noise away' };

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: -2 dB}
#                                                        ^^^^^ The noise figure of mast-amp is below 0 dB, so it would take noise away.
`,
    fixed: `
devices:
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB}
`,
  },
  {
    bad: `
devices:
  pad: {kind: attenuator, loss: -6 dB}
#                               ^^^^^ The loss of pad is below 0 dB, so it would gain.
`,
    fixed: `
devices:
  pad: {kind: attenuator, loss: 6 dB}
`,
  },
  {
    bad: `
devices:
  parlour-outlet: {kind: outlet, loss: 1 dB}
  parlour-tv: {kind: display, inputs: {rf: {systems: [dvb-t], noise-figure: 6 dB}}}
cables:
  - {from: parlour-outlet/tv, to: parlour-tv/rf, type: coax-6, length: 2 m, attenuation: {200 MHz: -8.6 dB, 860 MHz: -18.4 dB}}
#                                                                                        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ The attenuation of this coax is below 0 dB
`,
    good: `
devices:
  parlour-outlet: {kind: outlet, loss: 1 dB}
  parlour-tv: {kind: display, inputs: {rf: {systems: [dvb-t], noise-figure: 6 dB}}}
cables:
  - {from: parlour-outlet/tv, to: parlour-tv/rf, type: coax-6, length: 2 m, attenuation: {200 MHz: 8.6 dB, 860 MHz: 18.4 dB}}
`,
  },
];
