import { headOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { decibels } from '../../text/radio-words.ts';
import { amplifiedFirst } from '../../television/amplified-first.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** dB that are worth moving an amplifier for. */
const WORTH = 3;

export const amplifierAfterLoss: Rule = {
  id: 'amplifier-after-loss',
  severity: 'warning',
  summary: 'Loss in front of the first amplifier costs carrier to noise that is short.',
  why: `Noise that is added before the gain cannot be taken out again: an amplifier behind a splitter or a long coax raises
the signal and the noise alike. Move it to the aerial. Roofs and masts: leave the work to licensed people where local
codes say so.`,
  source: 'Friis’ formula for noise factors',
  check({ plan, site }: RuleContext, report: Report): void {
    const best = new Map<Device, { readonly gained: number; readonly loss: number; readonly to: string }>();
    for (const { points } of plan.television.reception.receivers) {
      for (const point of points) {
        if (point.margin === undefined || point.margin >= site.policies.aerialSystem.margin) continue;
        const moved = amplifiedFirst(point);
        if (moved === undefined || moved.gained < WORTH) continue;
        if (moved.gained > (best.get(moved.amplifier)?.gained ?? 0))
          best.set(moved.amplifier, {
            gained: moved.gained,
            loss: moved.lossInFront,
            to: point.signal.source.device.name,
          });
      }
    }
    for (const [amplifier, { gained, loss, to }] of best)
      report({
        at: headOf(amplifier.item),
        message:
          `${decibels(loss)} of loss are in front of ${amplifier.name}. At ${to} it would give ` +
          `${decibels(gained)} more of carrier to noise. Move it there, in front of splitters and long coax.`,
        about: [amplifier.name],
      });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 43 dBµV}}
  house-splitter: {kind: splitter, ways: 4, loss: 7.5 dB, terminated: [out-2, out-3, out-4]}
  set-amp: {kind: amplifier, gain: 20 dB, noise-figure: 4 dB}
# ^^^^^^^ 14.9 dB of loss are in front of set-amp. At chimney-aerial it would give 14.4 dB more of carrier to noise.
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 28 m}
  - {from: house-splitter/out-1, to: set-amp/in, type: coax-6, length: 14 m}
  - {from: set-amp/out, to: parlour-tv/rf, type: coax-59, length: 2 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 43 dBµV}}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 4 dB}
  house-splitter: {kind: splitter, ways: 4, loss: 7.5 dB, terminated: [out-2, out-3, out-4]}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 3 m}
  - {from: mast-amp/out, to: house-splitter/in, type: coax-6, length: 25 m}
  - {from: house-splitter/out-1, to: parlour-tv/rf, type: coax-6, length: 16 m}
`,
  },
];
