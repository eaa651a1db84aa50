import { aboutConnector } from '../../site/about.ts';
import { headOf } from '../../site/item.ts';
import { few } from '../../text/words.ts';
import { decibels, level } from '../../text/radio-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const outletLevelLow: Rule = {
  id: 'outlet-level-low',
  severity: 'error',
  summary: 'A multiplex arrives at an outlet below the window of levels.',
  why: `Rain, wind and plugs take a few decibels more, and the picture freezes. A better aerial, less loss on the way, or
an amplifier at the mast puts it right. Roofs, ladders and masts: falls kill. Do not work alone, in wind or wet, or near
overhead lines, and never while thunder is near; leave it to licensed people where local codes say so.`,
  source: 'EN 60728-1 by a handbook that quotes it; DVB-T2 by a service specification for cable',
  check({ plan }: RuleContext, report: Report): void {
    for (const { at, points } of plan.television.reception.outlets) {
      const low = points.flatMap((point) => {
        const missing = (point.window?.min ?? -Infinity) - point.signal.level;
        return missing > 0 ? [{ point, missing }] : [];
      });
      const worst = low.reduce<(typeof low)[number] | undefined>(
        (most, one) => (most === undefined || one.missing > most.missing ? one : most),
        undefined,
      );
      if (worst === undefined) continue;
      const { signal, window } = worst.point;
      const others = low.length === 1 ? '' : `; below it too: ${few(otherNames(low, worst))}`;
      report({
        at: headOf(at.device.item),
        message:
          `${signal.multiplex.name} arrives at ${level(signal.level)}, ${decibels(worst.missing)} below the ` +
          `${level(window?.min ?? 0)} that an outlet needs${others}. Take loss out of the way, or amplify at the aerial.`,
        about: [...aboutConnector(at), ...low.map(({ point }) => point.signal.multiplex.name)],
      });
    }
  },
};

function otherNames<
  T extends { readonly point: { readonly signal: { readonly multiplex: { readonly name: string } } } },
>(all: readonly T[], besides: T): string[] {
  return all.filter((one) => one !== besides).map(({ point }) => point.signal.multiplex.name);
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 52 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
# ^^^^^^^^^^^^^^ mux-a arrives at 44.1 dBµV, 0.9 dB below the 45.0 dBµV that an outlet needs.
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 39 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 52 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
  },
];
