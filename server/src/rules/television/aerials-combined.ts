import { namePlace } from '../../site/item.ts';
import type { Connector, Device } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const aerialsCombined: Rule = {
  id: 'aerials-combined',
  severity: 'warning',
  summary: 'A multiplex comes to one connector from two aerials.',
  why: `The same signal arrives twice at different times: channels vanish in part, and echoes may outlast the guard
interval. Combine aerials by band, each for channels of its own, or lead one aerial away.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    const reported = new Set<string>();
    for (const { at, points } of [...plan.television.reception.outlets, ...plan.television.reception.receivers]) {
      const sources = new Map<Multiplex, Device[]>();
      for (const { signal } of points) {
        if (signal.source.device.kind !== 'aerial') continue;
        const known = sources.get(signal.multiplex) ?? [];
        sources.set(signal.multiplex, [...known, signal.source.device]);
      }
      for (const [multiplex, aerials] of sources) {
        const [first, ...others] = aerials;
        const key = aerials.map(({ name }) => name).join();
        if (first === undefined || others.length === 0 || reported.has(key)) continue;
        reported.add(key);
        report(twice(at, multiplex, aerials, others[0] ?? first));
      }
    }
  },
};

function twice(at: Connector, multiplex: Multiplex, aerials: readonly Device[], second: Device): Parameters<Report>[0] {
  return {
    at: namePlace(second.item),
    message:
      `${asName(multiplex.name)} comes to ${asName(at.device.name)} from ${list(aerials.map(({ name }) => asName(name)))}: it disturbs itself. ` +
      'Combine them by band, each for channels of its own.',
    acceptAt: [...aerials.map(({ name }) => name), multiplex.name],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  hill-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  town-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
# ^^^^^^^^^^^ mux-a comes to parlour-outlet from hill-aerial and town-aerial: it disturbs itself.
  joined: {kind: splitter, ways: 2, loss: 4 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: hill-aerial, to: joined/out-1, type: coax-6, length: 5 m}
  - {from: town-aerial, to: joined/out-2, type: coax-6, length: 5 m}
  - {from: joined/in, to: parlour-outlet/in, type: coax-6, length: 5 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  local: {system: dvb-t, channel: 7, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  hill-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  town-aerial: {kind: aerial, receives: {local: 60 dBµV}}
  joined: {kind: combiner, inputs: {uhf: 470-694 MHz, vhf: 174-230 MHz}, loss: 1 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: hill-aerial, to: joined/uhf, type: coax-6, length: 5 m}
  - {from: town-aerial, to: joined/vhf, type: coax-6, length: 5 m}
  - {from: joined/out, to: parlour-outlet/in, type: coax-6, length: 5 m}
`,
  },
];
