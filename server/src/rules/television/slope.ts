import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { type Connector, connectorName } from '../../site/model.ts';
import { type Affected, commonCauses } from '../../television/common-cause.ts';
import type { Point } from '../../television/reception.ts';
import type { Signal } from '../../television/signals.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** Between channels next to each other, dB; EN 60728-1, from memory. */
const NEIGHBOURS = 3;
/** Television, Hz. */
const HIGHEST = 862e6;

export const slope: Rule = {
  id: 'slope',
  severity: 'warning',
  summary: 'Levels of television at an outlet differ by too much.',
  why: `A tuner sets its gain by the strongest, and the weakest drowns. Long coax takes more off high channels: an
equaliser, better coax on the long run, or an aerial that is turned a little evens it out.`,
  source: 'EN 60728-1: 12 dB between any two, 3 dB between neighbours; from memory',
  check({ plan, site }: RuleContext, report: Report): void {
    const most = site.policies.aerialSystem.slope;
    const uneven: Uneven[] = [];
    const even: Signal[] = [];
    for (const { at, points } of plan.television.reception.outlets) {
      const sorted = points
        .filter(({ signal }) => signal.frequency <= HIGHEST)
        .sort((a, b) => a.signal.frequency - b.signal.frequency);
      const found = widest(sorted, most) ?? neighbours(sorted);
      if (found === undefined) even.push(...points.slice(0, 1).map(({ signal }) => signal));
      else uneven.push({ ...found, at, signal: found.weak.signal });
    }
    for (const { affected, behind } of commonCauses(uneven, even)) {
      const first = affected.reduce((widest, one) => (spread(one) > spread(widest) ? one : widest));
      const { at, strong, weak, allowed } = first;
      const elsewhere = affected.filter((one) => one !== first);
      report({
        at: namePlace(at.device.item),
        message:
          `${asName(strong.signal.multiplex.name)} arrives at ${level(strong.signal.level)} and ${asName(weak.signal.multiplex.name)} at ` +
          `${level(weak.signal.level)}: ${decibels(spread(first))} apart, ${allowed}` +
          (behind === undefined
            ? ''
            : `; likewise at ${few(elsewhere.map((one) => connectorName(one.at)))} behind ${asName(behind.name)}`) +
          '. Even them out with an equaliser, or with better coax on the long run.',
        effects: outside(affected),
        acceptAt: [...acceptAtConnector(at), strong.signal.multiplex.name, weak.signal.multiplex.name],
        related: elsewhere.map((one) => ({
          at: namePlace(one.at.device.item),
          message: `${decibels(spread(one))} apart here`,
        })),
      });
    }
  },
};

/** An outlet at which levels differ by too much. */
interface Uneven extends Affected, Apart {
  readonly at: Connector;
}

/** The signals outside their window, which are reported; empty where both are inside at one of the outlets. */
function outside(affected: readonly Uneven[]): Signal[] {
  const found = affected.map(({ strong, weak }) =>
    weak.signal.level < (weak.window?.min ?? -Infinity)
      ? weak.signal
      : strong.signal.level > (strong.window?.max ?? Infinity)
        ? strong.signal
        : undefined,
  );
  return found.includes(undefined) ? [] : found.filter((signal) => signal !== undefined);
}

function spread({ strong, weak }: Apart): number {
  return strong.signal.level - weak.signal.level;
}

interface Apart {
  readonly strong: Point;
  readonly weak: Point;
  readonly allowed: string;
}

function widest(points: readonly Point[], most: number): Apart | undefined {
  const byLevel = [...points].sort((a, b) => b.signal.level - a.signal.level);
  const [strong, weak] = [byLevel[0], byLevel.at(-1)];
  if (strong === undefined || weak === undefined || strong.signal.level - weak.signal.level <= most) return undefined;
  return { strong, weak, allowed: `and ${decibels(most)} are allowed` };
}

/** Channels that touch. */
function neighbours(points: readonly Point[]): Apart | undefined {
  for (const [index, point] of points.entries()) {
    const next = points[index + 1];
    if (next === undefined || next.signal.frequency - point.signal.frequency > 8.5e6) continue;
    const [strong, weak] = point.signal.level > next.signal.level ? [point, next] : [next, point];
    if (strong.signal.level - weak.signal.level > NEIGHBOURS)
      return { strong, weak, allowed: `and ${decibels(NEIGHBOURS)} are allowed between neighbours` };
  }
  return undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 52 dBµV, mux-d: 65 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
# ^^^^^^^^^^^^^^ mux-d arrives at 62.3 dBµV and mux-a at 49.2 dBµV: 13.1 dB apart, and 12.0 dB are allowed.
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 58 dBµV, mux-d: 65 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
  },
];
