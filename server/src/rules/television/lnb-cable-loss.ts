import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { type Connector, connectorName } from '../../site/model.ts';
import { outletWindow } from '../../standards/television/reception.ts';
import { isSatellite } from '../../standards/television/system.ts';
import { transmissionOf } from '../../site/television/channel.ts';
import { decibels, level, megahertz } from '../../text/radio-words.ts';
import { type Affected, type CommonCause, commonCauses } from '../../television/common-cause.ts';
import type { Signal } from '../../television/signals.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const lnbCableLoss: Rule = {
  id: 'lnb-cable-loss',
  severity: 'warning',
  summary: 'A satellite arrives at a tuner below the usual level.',
  why: `Coax takes 1.6 times as much at 2150 MHz as at the top of television, so that a long run is short at the highest
transponders first. Take thicker coax, a shorter way, or an amplifier for the first intermediate frequency near the LNB.`,
  source: 'EN 60728-1: 47 dBµV at least, by a handbook that quotes it',
  check({ plan, site }: RuleContext, report: Report): void {
    const { margin: asked } = site.policies.aerialSystem;
    const low: Low[] = [];
    const right: Signal[] = [];
    for (const { at, points } of plan.television.reception.receivers) {
      const satellite = points.flatMap((point) => {
        const transmission = transmissionOf(site, point.signal.multiplex);
        if (transmission === undefined || !isSatellite(transmission.system)) return [];
        const min = outletWindow(transmission)?.min ?? -Infinity;
        return [{ at, signal: point.signal, min, margin: point.margin ?? 0 }];
      });
      const below = satellite
        // A carrier to noise that is too low as well is reported by carrier-to-noise.
        .filter(({ signal, min, margin }) => signal.level < min && margin >= asked)
        .sort((a, b) => a.signal.level - b.signal.level);
      const [worst] = below;
      if (worst === undefined) right.push(...satellite.slice(0, 1).map(({ signal }) => signal));
      else low.push({ ...worst, names: below.map(({ signal }) => signal.multiplex.name) });
    }
    for (const cause of commonCauses(low, right)) report(findingOf(cause));
  },
};

/** A receiver with too low a level from a satellite. */
interface Low extends Affected {
  readonly at: Connector;
  /** dBµV */
  readonly min: number;
  /** The names of all multiplexes that are low there. */
  readonly names: readonly string[];
}

function findingOf({ affected, behind }: CommonCause<Low>): Finding {
  const first = affected.reduce((most, one) =>
    one.min - one.signal.level > most.min - most.signal.level ? one : most,
  );
  const { at, signal, min, names } = first;
  const elsewhere = affected.filter((one) => one !== first);
  return {
    at: namePlace(at.device.item),
    message:
      `${asName(signal.multiplex.name)} reaches ${connectorName(at)} at ${level(signal.level)}, ${decibels(min - signal.level)} below the ` +
      `usual ${level(min)}; it is at ${megahertz(signal.frequency)} on the coax` +
      (behind === undefined
        ? ''
        : `; likewise at ${few(elsewhere.map((one) => connectorName(one.at)))} behind ${asName(behind.name)}`) +
      '. Take thicker coax, or a shorter way.',
    acceptAt: [...acceptAtConnector(at), ...names],
    // A consequence where another multiplex there has too little carrier to noise, which is reported.
    effects: affected.map((one) => one.signal),
    related: elsewhere.map((one) => ({
      at: namePlace(one.at.device.item),
      message: `${asName(one.signal.multiplex.name)} arrives at ${level(one.signal.level)} here`,
    })),
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 12692 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, type: single, receives: {sat-1: 70 dBµV}, quality: {sat-1: 16 dB}}
  tv-tuner: {kind: tuner, inputs: {sat: {}}}
# ^^^^^^^^ sat-1 reaches tv-tuner/sat at 43.8 dBµV, 3.2 dB below the usual 47.0 dBµV; it is at 2092 MHz on the coax.
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
