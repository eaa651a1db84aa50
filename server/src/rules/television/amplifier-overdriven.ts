import { fixOf } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { takeOutEdits } from '../../site/television/insert-part.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { attenuatorInFront } from '../../television/insert-fix.ts';
import { type TooMuch, tooMuchBehind } from '../../television/too-much.ts';
import { isEnoughWithout } from '../../television/without-amplifier.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { count, asName } from '../../text/words.ts';
import type { Example, Related, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const amplifierOverdriven: Rule = {
  id: 'amplifier-overdriven',
  severity: 'error',
  summary: 'An amplifier must put out more than it can without distortion.',
  why: `Its distortion looks like noise on every channel, and no attenuator behind it helps. Put one in front, or take an
amplifier with less gain. What makers give as largest output holds for two carriers; more of them lower it.`,
  source: 'derating by 7.5 · lg(N − 1): common practice, within 1 dB of two makers’ tables',
  check({ plan, site }: RuleContext, report: Report): void {
    const { television } = plan;
    for (const load of television.amplifiers) {
      const { device, strongest, carriers, limit, headroom } = load;
      if (headroom === undefined || limit === undefined || headroom >= 0) continue;
      const behind = tooMuchBehind(television, device, -headroom, site.policies.aerialSystem.margin);
      report({
        at: namePlace(device.item),
        message:
          `${asName(device.name)} puts out ${asName(strongest.multiplex.name)} at ${level(strongest.level)}, ${decibels(-headroom)} above ` +
          `its limit of ${level(limit)} with ${count(carriers, 'multiplex', 'multiplexes')}. Put an attenuator of ` +
          `${behind.loss} dB in front, ${behind.loss > attenuatorFor(-headroom) ? 'as what is behind it needs, ' : ''}or take less gain.`,
        acceptAt: [device.name],
        related: [
          { at: placeOf(device.item, ['max-output']), message: 'its largest output, with two carriers' },
          ...placesOf(behind),
        ],
        entails: [...behind.distorted, ...behind.points, ...behind.receivers],
        fixes: () => [
          ...(isEnoughWithout(television, device, site.policies.aerialSystem.margin) === undefined
            ? []
            : fixOf(`Take ${asName(device.name)} out`, ...takeOutEdits(site, device))),
          ...attenuatorInFront(site, television, device.connectorByName.get('in'), behind.loss),
        ],
      });
    }
  },
};

/** Each outlet with its strongest signal, and each receiver, once. */
function placesOf({ points, receivers }: TooMuch): Related[] {
  const byLevel = [...points].sort((a, b) => a.signal.level - b.signal.level);
  const outlets = new Map(byLevel.map(({ signal }) => [signal.at.device, signal]));
  return [
    ...[...outlets].map(([{ item }, { multiplex, level: at }]) => ({
      at: namePlace(item),
      message: `${asName(multiplex.name)} arrives at ${level(at)} here, more than an outlet may have`,
    })),
    ...receivers.map(({ at, composite, maxInput }) => ({
      at: namePlace(at.device.item),
      message: `${at.name} gets ${level(composite)} in all, and takes ${level(maxInput)}`,
    })),
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 80 dBµV}}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 98 dBµV}
# ^^^^^^^^ mast-amp puts out mux-a at 99.9 dBµV, 1.9 dB above its limit of 98.0 dBµV with 1 multiplex. Put an attenuator of 3 dB in front
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 0.5 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 80 dBµV}}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 98 dBµV}
  mast-amp-pad: {kind: attenuator, loss: 3 dB}
cables:
  - {from: chimney-aerial, to: mast-amp-pad/in, type: coax-6, length: 0.5 m}
  - {from: mast-amp-pad/out, to: mast-amp/in, type: coax-6, length: 0.1 m}
`,
  },
];
