import { acceptAtConnector } from '../../site/accept-at.ts';
import type { Fix } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { type Connector, type Device, connectorName } from '../../site/model.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { attenuatorInFront } from '../../television/insert-fix.ts';
import { type Affected, type CommonCause, commonCauses } from '../../television/common-cause.ts';
import type { Point, Receiver } from '../../television/reception.ts';
import type { Signal } from '../../television/signals.ts';
import type { Television } from '../../television/television.ts';
import { excessAt, excessOf } from '../../television/too-much.ts';
import { passes } from '../../television/what-if.ts';
import { few, asName } from '../../text/words.ts';
import { decibels, level } from '../../text/radio-words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const outletLevelHigh: Rule = {
  id: 'outlet-level-high',
  severity: 'warning',
  summary: 'A multiplex arrives at an outlet above the window of levels.',
  why: `A television that gets too much distorts, and loses even strong programmes. Lower the gain of the amplifier, or
put an attenuator in front of it, or of the outlet.`,
  source: 'EN 60728-1 by a handbook that quotes it; DVB-T2 by a service specification for cable',
  check(context: RuleContext, report: Report): void {
    const { reception } = context.plan.television;
    const high: High[] = [];
    const right: Signal[] = [];
    for (const { at, points } of reception.outlets) {
      const [worst, ...others] = points
        .filter((point) => excessAt(point) > 0)
        .sort((a, b) => excessAt(b) - excessAt(a));
      if (worst === undefined) right.push(...points.slice(0, 1).map(({ signal }) => signal));
      else high.push({ at, signal: worst.signal, worst, others });
    }
    for (const cause of commonCauses(high, right)) report(found(context, cause));
  },
};

/** An outlet with too high a level, with its points. */
interface High extends Affected {
  readonly at: Connector;
  readonly worst: Point;
  readonly others: readonly Point[];
}

/** The finding, at the outlet with the highest level. */
function found({ plan: { television }, site }: RuleContext, { affected, behind }: CommonCause<High>): Finding {
  const first = affected.reduce((most, one) => (excessAt(one.worst) > excessAt(most.worst) ? one : most));
  const { at, worst, others } = first;
  const { signal, window } = worst;
  const elsewhere = affected.filter((one) => one !== first);
  const receivers = overloadedBehind(television, behind ?? at.device);
  const loss = attenuatorFor(Math.max(excessAt(worst), ...receivers.map(excessOf)));
  const where = elsewhere.map((one) => connectorName(one.at));
  return {
    at: namePlace(at.device.item),
    message:
      `${asName(signal.multiplex.name)} arrives at ${level(signal.level)}, ${decibels(excessAt(worst))} above the ` +
      `${level(window?.max ?? 0)} that an outlet may have` +
      (others.length === 0 ? '' : `; above it too: ${few(others.map(nameOf))}`) +
      (behind === undefined ? '' : `; likewise at ${few(where)} behind ${asName(behind.name)}`) +
      `. It needs an attenuator of ${loss} dB, or less gain.`,
    acceptAt: [...acceptAtConnector(at), ...[worst, ...others].map(nameOf)],
    effects: affected.flatMap((one) => [one.worst, ...one.others]),
    // A single high signal makes the levels uneven.
    entails: [...affected.flatMap((one) => [one.worst, ...one.others].map(({ signal: own }) => own)), ...receivers],
    related: [
      ...elsewhere.map((one) => ({
        at: namePlace(one.at.device.item),
        message: `${nameOf(one.worst)} arrives at ${level(one.worst.signal.level)} here`,
      })),
      ...receivers.map((receiver) => ({
        at: namePlace(receiver.at.device.item),
        message: `${asName(receiver.at.name)} gets ${level(receiver.composite)} in all, and takes ${level(receiver.maxInput)}`,
      })),
    ],
    fixes: () => padFor(site, television, affected, loss),
  };
}

/** Receivers whose signals all come through a part, or from an aerial. */
function overloadedBehind({ reception }: Television, part: Device): Receiver[] {
  return reception.receivers.filter(
    (receiver) =>
      excessOf(receiver) > 0 &&
      receiver.points.every((point) => point.signal.source.device === part || passes(point, part)),
  );
}

/** An attenuator at the only outlet, or in front of all; none where it would leave too low a level anywhere. */
function padFor(
  site: RuleContext['site'],
  television: Television,
  affected: readonly High[],
  loss: number,
): readonly Fix[] {
  const [first] = affected;
  if (first === undefined) return [];
  const ways = affected.map(({ signal }) => signal.steps.flatMap(({ by }) => ('cable' in by ? [by.cable] : [])));
  const cable = ways[0]?.findLast((one) => ways.every((way) => way.includes(one)));
  const isBehind = ({ signal }: Point): boolean => signal.steps.some(({ by }) => 'cable' in by && by.cable === cable);
  const points = television.reception.outlets.flatMap((outlet) => outlet.points.filter(isBehind));
  if (points.some(({ signal, window }) => signal.level - loss < (window?.min ?? -Infinity))) return [];
  const run = television.runs.find((one) => one.cable === cable);
  // The end that signals arrive at: they have passed more parts there.
  const passed = (at: Connector): number => television.signals.at(at)[0]?.steps.length ?? 0;
  const at = run === undefined ? undefined : passed(run.a) > passed(run.b) ? run.a : run.b;
  return attenuatorInFront(site, television, at, loss);
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
  chimney-aerial: {kind: aerial, receives: {mux-a: 79 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
# ^^^^^^^^^^^^^^ mux-a arrives at 76.2 dBµV, 2.2 dB above the 74.0 dBµV that an outlet may have. It needs an attenuator of 3 dB
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 79 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
  parlour-outlet-pad: {kind: attenuator, loss: 3 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet-pad/in, type: coax-6, length: 10 m}
  - {from: parlour-outlet-pad/out, to: parlour-outlet/in, type: coax-6, length: 0.1 m}
`,
  },
];
