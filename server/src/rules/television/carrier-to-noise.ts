import { aboutConnector } from '../../site/about.ts';
import { headOf } from '../../site/item.ts';
import { few } from '../../text/words.ts';
import { decibels } from '../../text/radio-words.ts';
import type { Point, Receiver } from '../../television/reception.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

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
    for (const receiver of plan.television.reception.receivers) {
      const known = receiver.points.filter((point) => isReceived(receiver, point));
      const none = known.filter((point) => (point.margin ?? 0) < 0);
      const close = known.filter((point) => (point.margin ?? 0) >= 0 && (point.margin ?? 0) < margin);
      if (none.length > 0)
        report({ ...found(receiver, none, (least) => `${decibels(-least)} less than it needs`), severity: 'error' });
      if (close.length > 0)
        report({
          ...found(
            receiver,
            close,
            (least) => `${decibels(least)} more than it needs, and ${decibels(margin)} are asked for`,
          ),
          severity: 'warning',
        });
    }
  },
};

/** Of systems that it has; what it cannot show anyway is no loss. */
function isReceived({ systems }: Receiver, { signal, margin }: Point): boolean {
  const { system } = signal.multiplex;
  return margin !== undefined && (systems === undefined || system === undefined || systems.includes(system));
}

function found(
  { at }: Receiver,
  points: readonly Point[],
  words: (margin: number) => string,
): { at: ReturnType<typeof headOf>; message: string; about: string[] } {
  const sorted = [...points].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  const [worst, ...others] = sorted;
  const also = others.length === 0 ? '' : `; also ${few(others.map(({ signal }) => signal.multiplex.name))}`;
  return {
    at: headOf(at.device.item),
    message:
      `${worst?.signal.multiplex.name ?? ''} reaches ${at.name} with ${decibels(worst?.carrierToNoise ?? 0)} of carrier ` +
      `to noise, ${words(worst?.margin ?? 0)}${also}. Take loss out in front of the first amplifier, or get a better aerial.`,
    about: [...aboutConnector(at), ...points.map(({ signal }) => signal.multiplex.name)],
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
# ^^^^^^^^^^ mux-a reaches rf with 24.6 dB of carrier to noise, 5.9 dB more than it needs, and 6.0 dB are asked for.
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
];
