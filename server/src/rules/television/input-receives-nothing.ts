import { placeOf } from '../../site/item.ts';
import { list } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const inputReceivesNothing: Rule = {
  id: 'input-receives-nothing',
  severity: 'warning',
  showAfter: 'pause',
  summary: 'Nothing that comes by the coax is sent in a system that the receiver takes there.',
  why: `A receiver for DVB-T shows nothing of a satellite, and one for DVB-S nothing of an aerial. Lead the coax to the
connector that is made for it, or correct the systems.`,
  source: 'EN 300 744, EN 302 755, EN 300 421 and EN 300 429 are systems of their own; from memory',
  check({ plan }: RuleContext, report: Report): void {
    for (const { at, systems, points } of plan.television.reception.receivers) {
      if (systems === undefined || systems.length === 0 || points.length === 0) continue;
      // A multiplex without a declared system may be of this one.
      const sent = new Set(points.map(({ signal }) => signal.multiplex.system));
      if ([...sent].some((system) => system === undefined || systems.includes(system))) continue;
      const { device, name } = at;
      if (device.coaxInputs.get(name)?.systems === undefined) continue;
      report({
        at: placeOf(device.item, ['inputs', name, 'systems']),
        message:
          `${device.name}/${name} receives ${list([...systems], 'or')}, and what comes by its coax is sent in ` +
          `${list([...sent].flatMap((system) => system ?? []))}. Lead the coax elsewhere, or correct the systems.`,
        acceptAt: [`${device.name}/${name}`, device.name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  hill-1: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  aerial: {kind: aerial, receives: {hill-1: 60 dBµV}}
  hall-tv: {kind: display, inputs: {rf: {systems: [dvb-s, dvb-s2]}}}
#                                                 ^^^^^^^^^^^^^^^ hall-tv/rf receives dvb-s or dvb-s2, and what comes by its coax is sent in dvb-t
cables:
  - {from: aerial, to: hall-tv/rf, type: coax-6, length: 12 m}
`,
    good: `
multiplexes:
  hill-1: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  aerial: {kind: aerial, receives: {hill-1: 60 dBµV}}
  hall-tv: {kind: display, inputs: {rf: {systems: [dvb-t, dvb-t2]}}}
cables:
  - {from: aerial, to: hall-tv/rf, type: coax-6, length: 12 m}
`,
  },
];
