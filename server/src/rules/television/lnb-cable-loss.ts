import { aboutConnector } from '../../site/about.ts';
import { headOf } from '../../site/item.ts';
import { outletWindow } from '../../standards/television/reception.ts';
import { isSatellite } from '../../standards/television/system.ts';
import { transmissionOf } from '../../site/television/channel.ts';
import { decibels, level, megahertz } from '../../text/radio-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const lnbCableLoss: Rule = {
  id: 'lnb-cable-loss',
  severity: 'warning',
  summary: 'A satellite arrives at a tuner below the usual level.',
  why: `Coax takes 1.6 times as much at 2150 MHz as at the top of television, so that a long run is short at the highest
transponders first. Take thicker coax, a shorter way, or an amplifier for the first intermediate frequency near the LNB.`,
  source: 'EN 60728-1: 47 dBµV at least, by a handbook that quotes it',
  check({ plan, site }: RuleContext, report: Report): void {
    const { margin } = site.policies.aerialSystem;
    for (const { at, points } of plan.television.reception.receivers) {
      const low = points
        .flatMap((point) => {
          const transmission = transmissionOf(site, point.signal.multiplex);
          if (transmission === undefined || !isSatellite(transmission.system)) return [];
          const min = outletWindow(transmission)?.min ?? -Infinity;
          // Short of carrier to noise as well: told by that.
          return point.signal.level < min && (point.margin ?? 0) >= margin ? [{ signal: point.signal, min }] : [];
        })
        .sort((a, b) => a.signal.level - b.signal.level);
      const [worst] = low;
      if (worst === undefined) continue;
      const { signal, min } = worst;
      report({
        at: headOf(at.device.item),
        message:
          `${signal.multiplex.name} reaches ${at.name} at ${level(signal.level)}, ${decibels(min - signal.level)} below the ` +
          `usual ${level(min)}; it is at ${megahertz(signal.frequency)} on the coax. Take thicker coax, or a shorter way.`,
        about: [...aboutConnector(at), ...low.map((one) => one.signal.multiplex.name)],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 12692 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, type: single, receives: {sat-1: 70 dBµV}, quality: {sat-1: 16 dB}}
  tv-tuner: {kind: tuner, inputs: {sat: {}}}
# ^^^^^^^^ sat-1 reaches sat at 43.8 dBµV, 3.2 dB below the usual 47.0 dBµV; it is at 2092 MHz on the coax.
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-59, length: 67 m}
`,
    good: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 12692 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, type: single, receives: {sat-1: 70 dBµV}, quality: {sat-1: 16 dB}}
  tv-tuner: {kind: tuner, inputs: {sat: {}}}
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-11, length: 67 m}
`,
  },
];
