import { namePlace } from '../../site/item.ts';
import { acceptAtConnector } from '../../site/accept-at.ts';
import { type Connector, type Device, connectorName } from '../../site/model.ts';
import { decibels } from '../../text/radio-words.ts';
import type { Signal } from '../../television/signals.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

/** Between outlets of one household, dB. EN 60728-1, from memory. */
const NEEDED = 22;

export const outletIsolation: Rule = {
  id: 'outlet-isolation',
  severity: 'warning',
  summary: 'Two outlets are hardly isolated from each other.',
  why: `What one receiver sends back, or a fault in its lead, disturbs the other. Take a splitter or a tap with more
isolation, or outlets with some of their own.`,
  source: 'EN 60728-1: 22 dB within a household; from memory',
  check({ plan }: RuleContext, report: Report): void {
    const outlets = plan.television.reception.outlets.flatMap(({ at, points }) => {
      const signal = points[0]?.signal;
      return signal === undefined ? [] : [{ at, signal }];
    });
    const reported = new Set<Device>();
    for (const [index, one] of outlets.entries())
      for (const other of outlets.slice(index + 1)) {
        const parted = apart(one, other);
        if (parted === undefined || parted.isolation >= NEEDED || reported.has(parted.at)) continue;
        reported.add(parted.at);
        report({
          at: namePlace(parted.at.item),
          message:
            `${connectorName(one.at)} and ${connectorName(other.at)} are ${decibels(parted.isolation)} apart by ` +
            `${asName(parted.at.name)}, and ${decibels(NEEDED)} are needed. Take a part with more isolation.`,
          acceptAt: [parted.at.name, ...acceptAtConnector(one.at), ...acceptAtConnector(other.at)],
        });
      }
  },
};

interface Outlet {
  readonly at: Connector;
  readonly signal: Signal;
}

/** The part at which the ways to two outlets separate, and the isolation between these, with the losses behind it. */
function apart(a: Outlet, b: Outlet): { readonly at: Device; readonly isolation: number } | undefined {
  if (a.signal.source !== b.signal.source) return undefined;
  const [first, second] = [a.signal.steps, b.signal.steps];
  let same = 0;
  while (same < first.length && sameThing(first[same], second[same])) same++;
  // The part where they separate counts as common, but may have a different loss for each.
  const step = first[same - 1];
  if (step === undefined || !('device' in step.by)) return undefined;
  const at = step.by.device;
  const own = at.aerial?.isolation;
  if (own === undefined) return undefined;
  const behind = (steps: typeof first): number =>
    -steps.slice(same).reduce((sum, { gain }) => sum + Math.min(gain, 0), 0);
  return { at, isolation: own + behind(first) + behind(second) };
}

function sameThing(a: Signal['steps'][number] | undefined, b: Signal['steps'][number] | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  if ('cable' in a.by) return 'cable' in b.by && a.by.cable === b.by.cable;
  return 'device' in b.by && a.by.device === b.by.device;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, isolation: 15 dB}
# ^^^^^^^^^^^^^^ parlour-outlet/tv and kitchen-outlet/tv are 18.8 dB apart by house-splitter, and 22.0 dB are needed.
  parlour-outlet: {kind: outlet, loss: 1 dB}
  kitchen-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-2, to: kitchen-outlet/in, type: coax-6, length: 5 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, isolation: 22 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
  kitchen-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-2, to: kitchen-outlet/in, type: coax-6, length: 5 m}
`,
  },
];
