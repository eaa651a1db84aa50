import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { few, asName } from '../../text/words.ts';
import { decibels } from '../../text/radio-words.ts';
import { type Connector, type Device, connectorName } from '../../site/model.ts';
import { type Affected, type CommonCause, commonCauses } from '../../television/common-cause.ts';
import { type Point, isReceived } from '../../television/reception.ts';
import type { Signal } from '../../television/signals.ts';
import type { Television } from '../../television/television.ts';
import { worthMoving } from '../../television/amplified-first.ts';
import { isShortByDistortion } from '../../television/too-much.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const carrierToNoise: Rule = {
  id: 'carrier-to-noise',
  severity: 'error',
  summary: 'The ratio of carrier to noise at a receiver is below what it needs, or close to it.',
  why: `A digital picture goes from perfect to none within one or two decibels. Noise that is added cannot be taken out
again: a better aerial, less loss in front of the first amplifier, or an amplifier with a lower noise figure helps; more
gain behind does not. \`policies: aerial-system: margin\` says how much to keep in hand.`,
  source: 'DVB-T NorDig 2.2, DVB-T2 Rec. ITU-R BT.2033-2, DVB-S2 EN 302 307-1; by transcriptions, see the reference',
  check({ plan, site }: RuleContext, report: Report): void {
    const { margin } = site.policies.aerialSystem;
    // Separates those that moving an amplifier corrects, as that may be reported there.
    const none: Sorts = { here: [], elsewhere: [] };
    const close: Sorts = { here: [], elsewhere: [] };
    const enough: Signal[] = [];
    const isElsewhere = (point: Point): boolean =>
      (worthMoving(point, margin)?.margin ?? 0) >= margin || isShortByDistortion(plan.television, point, margin);
    for (const receiver of plan.television.reception.receivers) {
      const known = receiver.points.filter((point) => isReceived(receiver, point));
      const short = known.filter((point) => (point.margin ?? 0) < margin);
      if (short.length === 0) enough.push(...known.slice(0, 1).map(({ signal }) => signal));
      for (const [own, found] of [
        [short.filter(isLost), none],
        [short.filter((point) => !isLost(point)), close],
      ] as const) {
        const [worst, ...others] = [...own].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
        if (worst === undefined) continue;
        const sort = own.every(isElsewhere) ? found.elsewhere : found.here;
        sort.push({ signal: worst.signal, at: receiver.at, worst, others });
      }
    }
    for (const [{ here, elsewhere }, severity] of [
      [none, 'error'],
      [close, 'warning'],
    ] as const)
      for (const short of [here, elsewhere])
        for (const cause of commonCauses(short, enough)) report({ ...found(plan.television, cause, margin), severity });
  },
};

/** A receiver with too little carrier to noise, with its points. */
interface Short extends Affected {
  readonly at: Connector;
  readonly worst: Point;
  readonly others: readonly Point[];
}

interface Sorts {
  readonly here: Short[];
  readonly elsewhere: Short[];
}

function isLost({ margin }: Point): boolean {
  return (margin ?? 0) < 0;
}

/** Signals from an aerial or LNB that are too low at outlets, and so lost at receivers too. */
function lowFrom({ reception }: Television, source: Device): object[] {
  return reception.outlets.flatMap(({ points }) =>
    points
      .filter(({ signal, window }) => signal.source.device === source && signal.level < (window?.min ?? -Infinity))
      .flatMap((point) => [point, point.signal]),
  );
}

/** The finding, at the receiver with the least. */
function found(television: Television, { affected, behind }: CommonCause<Short>, asked: number): Finding {
  const first = affected.reduce((least, one) => ((one.worst.margin ?? 0) < (least.worst.margin ?? 0) ? one : least));
  const { at, worst, others } = first;
  const { carrierToNoise: ratio = 0, margin = 0, signal } = worst;
  const words = isLost(worst)
    ? `${decibels(-margin)} less than it needs`
    : `${decibels(margin)} more than it needs, and ${decibels(asked)} are asked for`;
  const also = others.length === 0 ? '' : `; also ${few(others.map((point) => point.signal.multiplex.name))}`;
  const elsewhere = affected.filter((one) => one !== first);
  return {
    at: namePlace(at.device.item),
    message:
      `${asName(signal.multiplex.name)} reaches ${connectorName(at)} with ${decibels(ratio)} of carrier to noise, ${words}${also}` +
      (behind === undefined
        ? ''
        : `; likewise at ${few(elsewhere.map((one) => connectorName(one.at)))} behind ${asName(behind.name)}`) +
      '. Lower the loss in front of the first amplifier, or take a better aerial.',
    acceptAt: [...acceptAtConnector(at), ...[worst, ...others].map((point) => point.signal.multiplex.name)],
    related: elsewhere.map((one) => ({
      at: namePlace(one.at.device.item),
      message: `${asName(one.signal.multiplex.name)} has ${decibels(one.worst.carrierToNoise ?? 0)} here`,
    })),
    effects: affected.flatMap((one) => [one.worst, ...one.others]),
    // Where the level is too low as well.
    entails: [
      ...affected.flatMap((one) => [one.worst, ...one.others]),
      ...affected.flatMap((one) => television.signals.at(one.at)),
      ...(isLost(worst) ? lowFrom(television, signal.source.device) : []),
    ],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 40 dBµV}}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
# ^^^^^^^^^^ mux-a reaches parlour-tv/rf with 24.6 dB of carrier to noise, 5.9 dB more than it needs, and 6.0 dB are asked for.
cables:
  - {from: chimney-aerial, to: parlour-tv/rf, type: coax-6, length: 33 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 40 dBµV}}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: chimney-aerial, to: parlour-tv/rf, type: coax-6, length: 20 m}
`,
  },
  {
    // A tuner without declared systems takes any.
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 20 dBµV}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {noise-figure: 6 dB}}, tuners: {1: {input: rf}}}
# ^^^^^^^^ mux-a reaches tv-tuner/rf with
cables:
  - {from: chimney-aerial, to: tv-tuner/rf, type: coax-6, length: 10 m}
`,
  },
];
