import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { type Connector, connectorName } from '../../site/model.ts';
import { type Affected, type CommonCause, commonCauses } from '../../television/common-cause.ts';
import type { Point } from '../../television/reception.ts';
import type { Signal } from '../../television/signals.ts';
import { few, asName } from '../../text/words.ts';
import { decibels, level } from '../../text/radio-words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const outletLevelLow: Rule = {
  id: 'outlet-level-low',
  severity: 'error',
  summary: 'A multiplex arrives at an outlet below the window of levels.',
  why: `Rain, wind and plugs take a few decibels more, and the picture freezes. A better aerial, less loss on the way, or
an amplifier at the mast puts it right. Roofs, ladders and masts: falls kill. Do not work alone, in wind or wet, or near
overhead lines, and never while thunder is near; leave it to licensed people where local codes say so.`,
  source: 'EN 60728-1 by a handbook that quotes it; DVB-T2 by a service specification for cable',
  check({ plan }: RuleContext, report: Report): void {
    const low: Low[] = [];
    const right: Signal[] = [];
    for (const { at, points } of plan.television.reception.outlets) {
      const [worst, ...others] = points
        .filter((point) => missingAt(point) > 0)
        .sort((a, b) => missingAt(b) - missingAt(a));
      if (worst === undefined) right.push(...points.slice(0, 1).map(({ signal }) => signal));
      else low.push({ at, signal: worst.signal, worst, others });
    }
    for (const cause of commonCauses(low, right)) report(found(cause));
  },
};

/** An outlet with too low a level, with its points. */
interface Low extends Affected {
  readonly at: Connector;
  readonly worst: Point;
  readonly others: readonly Point[];
}

/** dB below the window. */
function missingAt({ signal, window }: Point): number {
  return (window?.min ?? -Infinity) - signal.level;
}

/** The finding, at the outlet with the lowest level. */
function found({ affected, behind }: CommonCause<Low>): Finding {
  const first = affected.reduce((most, one) => (missingAt(one.worst) > missingAt(most.worst) ? one : most));
  const { at, worst, others } = first;
  const { signal, window } = worst;
  const elsewhere = affected.filter((one) => one !== first);
  const where = elsewhere.map((one) => connectorName(one.at));
  return {
    at: namePlace(at.device.item),
    message:
      `${asName(signal.multiplex.name)} arrives at ${level(signal.level)}, ${decibels(missingAt(worst))} below the ` +
      `${level(window?.min ?? 0)} that an outlet needs` +
      (others.length === 0 ? '' : `; below it too: ${few(others.map(nameOf))}`) +
      (behind === undefined ? '' : `; likewise at ${few(where)} behind ${asName(behind.name)}`) +
      '. Lower the loss on the way, or amplify at the aerial.',
    acceptAt: [...acceptAtConnector(at), ...[worst, ...others].map(nameOf)],
    // A consequence where it is too low for a receiver on the same aerial, which is reported.
    effects: affected.flatMap((one) => [one.worst, ...one.others]),
    // A single low signal makes the levels uneven.
    entails: affected.flatMap((one) => [one.worst, ...one.others].map(({ signal: own }) => own)),
    related: elsewhere.map((one) => ({
      at: namePlace(one.at.device.item),
      message: `${nameOf(one.worst)} arrives at ${level(one.worst.signal.level)} here`,
    })),
  };
}

function nameOf({ signal }: Point): string {
  return signal.multiplex.name;
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
