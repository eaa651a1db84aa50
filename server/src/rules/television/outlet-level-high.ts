import { aboutConnector } from '../../site/about.ts';
import { headOf } from '../../site/item.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { few } from '../../text/words.ts';
import { decibels, level } from '../../text/radio-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const outletLevelHigh: Rule = {
  id: 'outlet-level-high',
  severity: 'warning',
  summary: 'A multiplex arrives at an outlet above the window of levels.',
  why: `A television that gets too much distorts, and loses even strong programmes. Lower the gain of the amplifier, or
put an attenuator in front of it, or of the outlet.`,
  source: 'EN 60728-1 by a handbook that quotes it; DVB-T2 by a service specification for cable',
  check({ plan }: RuleContext, report: Report): void {
    for (const { at, points } of plan.television.reception.outlets) {
      const high = points
        .map((point) => ({ point, excess: point.signal.level - (point.window?.max ?? Infinity) }))
        .filter(({ excess }) => excess > 0)
        .sort((a, b) => b.excess - a.excess);
      const [worst, ...others] = high;
      if (worst === undefined) continue;
      const { signal, window } = worst.point;
      const more = others.length === 0 ? '' : `; above it too: ${few(others.map(nameOf))}`;
      report({
        at: headOf(at.device.item),
        message:
          `${signal.multiplex.name} arrives at ${level(signal.level)}, ${decibels(worst.excess)} above the ` +
          `${level(window?.max ?? 0)} that an outlet may have${more}. It needs an attenuator of ` +
          `${attenuatorFor(worst.excess)} dB, or less gain.`,
        about: [...aboutConnector(at), ...high.map(nameOf)],
      });
    }
  },
};

function nameOf({
  point,
}: {
  readonly point: { readonly signal: { readonly multiplex: { readonly name: string } } };
}): string {
  return point.signal.multiplex.name;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 79 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
# ^^^^^^^^^^^^^^ mux-a arrives at 76.2 dBµV, 2.2 dB above the 74.0 dBµV that an outlet may have. It needs an attenuator of 3 dB
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 79 dBµV}}
  pad: {kind: attenuator, loss: 3 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: pad/in, type: coax-6, length: 10 m}
  - {from: pad/out, to: parlour-outlet/in, type: coax-6, length: 0.3 m}
`,
  },
];
