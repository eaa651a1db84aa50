import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import type { CurrentConsumer, CurrentSource } from '../../television/direct-current.ts';
import { type Drop, dropsOf } from '../../television/voltage-drop.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** The least voltage sent to an LNB, and the least that it works with, mV. EN 61319-1, from memory. */
const LNB_SENT = 13_000;
const LNB_LEAST = 11_500;
/** The part of its voltage that an amplifier can lack. Common practice, no source. */
const TOLERANCE = 0.1;

export const supplyDrop: Rule = {
  id: 'supply-drop',
  severity: 'warning',
  summary: 'The coax takes so much of the voltage that an amplifier or LNB is short of it.',
  why: `A long coax takes some of the voltage, and one with a core of clad steel five times as much as copper. An LNB that
is short of it stays on one polarisation; an amplifier blocks. Take coax with a copper core, or a shorter way.`,
  source:
    'Ohm’s law; resistance of coax computed for copper, from memory for clad steel; least voltage of an LNB from memory of EN 61319-1',
  check({ plan }: RuleContext, report: Report): void {
    // The outputs of one LNB are supplied by the same coax.
    const reported = new Set<Device>();
    const { consumers } = plan.television.directCurrent;
    if (consumers.length === 0) return;
    const dropTo = dropsOf(consumers);
    for (const consumer of consumers) {
      const { device } = consumer;
      const short = consumer.feeds
        .map((feed) => shortage(consumer, feed.supply, dropTo(consumer, feed)))
        .find((one) => one !== undefined);
      if (short === undefined || reported.has(device)) continue;
      reported.add(device);
      report({
        at: namePlace(device.item),
        message:
          `${volts(short.left)} of ${volts(short.sent)} from ${short.by} are left for ${asName(device.name)}, which needs ` +
          `${volts(short.least)}: ${device.aerial?.current ?? 0} mA through ${short.resistance.toFixed(1)} Ω of coax` +
          `${short.others.length === 0 ? '' : `, which also feeds ${few(short.others.map(({ name }) => name))}`}. ` +
          'Take coax with a copper core, or a shorter way.',
        acceptAt: [device.name],
      });
    }
  },
};

interface Short extends Drop {
  readonly sent: number;
  readonly left: number;
  readonly least: number;
  readonly by: string;
}

/** In mV. */
function shortage({ device }: CurrentConsumer, supply: CurrentSource, drop: Drop): Short | undefined {
  if (device.aerial?.current === undefined) return undefined;
  const isLnb = device.kind === 'lnb';
  const sent = supply.voltage ?? (isLnb ? LNB_SENT : undefined);
  if (sent === undefined) return undefined;
  const least = isLnb ? LNB_LEAST : sent * (1 - TOLERANCE);
  const left = sent - drop.lost;
  return left >= least ? undefined : { ...drop, sent, left, least, by: supply.device.name };
}

function volts(millivolts: number): string {
  return `${(millivolts / 1000).toFixed(1)} V`;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  dish: {kind: lnb, type: single, current: 180 mA}
# ^^^^ 8.7 V of 13.0 V from tv-tuner are left for dish, which needs 11.5 V: 180 mA through 24.0 Ω of coax.
  tv-tuner: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-6, length: 200 m, core: clad-steel}
`,
    good: `
devices:
  dish: {kind: lnb, type: single, current: 180 mA}
  tv-tuner: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-11, length: 200 m, core: copper}
`,
  },
];
