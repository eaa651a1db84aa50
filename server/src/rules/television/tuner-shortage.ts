/** Occasions that want more tuners than there are. Long by its examples. */

import { grouped } from '../../grouped.ts';
import { namePlace } from '../../site/item.ts';
import { type CableEnd, type Site, connectorAt, portAt } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { count, few, list, asName } from '../../text/words.ts';
import { type Short, type Tuned, isOf } from '../../television/occasions.ts';
import { doesSystem } from '../../television/units.ts';
import type { Asked } from '../../television/wishes.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerShortage: Rule = {
  id: 'tuner-shortage',
  severity: 'error',
  summary: 'More multiplexes are wanted at once than tuners can take.',
  why: `A tuner takes one multiplex at a time, with any number of its services. Who comes last sees nothing, or the
recording that was planned is lost. Watch and record fewer at once, choose services of one multiplex, or add a tuner. What is recorded
or sent on by a server counts at all times.`,
  source: 'the marriage theorem of Hall (1935), from memory: the set that is named is the smallest with the whole lack',
  check({ plan, site }: RuleContext, report: Report): void {
    const { tuning } = plan.television;
    if (tuning.units.length === 0) return;
    // The number of tuners is unknown where one declares nothing.
    if (site.devices.some(({ kind, tuners }) => kind === 'tuner' && tuners.length === 0)) return;
    // The signals of a cable with a wrong end are unknown.
    const isWhole = site.cables.every(
      ({ from, to }) => !isOnCoax(site, from, to) || (areJoined(site, from, to) && from?.device !== to?.device),
    );
    if (isWhole) reportUnreached({ plan, site }, report);
    const isKnown = ({ asked }: Short): boolean =>
      isWhole ||
      tuning.units.every((unit) => asked.every(({ multiplex }) => tuning.fit(unit, multiplex) !== 'not-here'));
    const always = new Set<string>();
    for (const short of tuning.standing.tooFew) {
      if (short.units.length === 0 || !isKnown(short)) continue;
      const streams = short.asked.flatMap(({ wishes }) => wishes.flatMap(({ stream }) => stream ?? []));
      const [first] = streams;
      if (first === undefined) continue;
      for (const { multiplex } of short.asked) always.add(multiplex.name);
      report({
        at: namePlace(first.item),
        message: `At all times ${few(streams.map(({ name }) => name))} need ${shortageWords(site, short, tuning.standing)}`,
        acceptAt: streams.map(({ name }) => name),
        effects: [short],
        related: streams
          .slice(1)
          .map(({ item, name }) => ({ at: namePlace(item), message: `${asName(name)} is needed too` })),
      });
    }
    for (const [short, own] of grouped(tuning.never, (never) => never.short)) {
      const [first, ...others] = own;
      if (first === undefined || !isKnown(short)) continue;
      const taken = short.asked.flatMap(({ wishes }) => wishes.flatMap(({ stream }) => stream ?? []));
      const running = taken.filter((stream) => own.every((never) => never.stream !== stream));
      report({
        at: namePlace(first.stream.item),
        severity: 'warning',
        message:
          `Nobody ever gets ${few(own.map(({ stream }) => stream.name))} beside ${few(running.map(({ name }) => name))}, ` +
          `which ${running.length === 1 ? 'runs' : 'run'} at all times: that takes ${shortageWords(site, short, tuning.standing)}`,
        acceptAt: own.map(({ stream }) => stream.name),
        effects: [short],
        related: [
          ...others.map(({ stream }) => ({ at: namePlace(stream.item), message: `nor ${asName(stream.name)}` })),
          ...running.map(({ item, name }) => ({ at: namePlace(item), message: `${asName(name)} runs at all times` })),
        ],
      });
    }
    for (const occasion of site.occasions) {
      const tuned = tuning.of(occasion);
      for (const short of tuned.tooFew) {
        if (short.units.length === 0 || !isKnown(short)) continue;
        if (short.asked.every(({ multiplex }) => always.has(multiplex.name))) continue;
        report({
          at: namePlace(occasion.item),
          message: `${occasion.name} needs ${shortageWords(site, short, tuned)}`,
          acceptAt: [occasion.name, ...short.asked.map(({ multiplex }) => multiplex.name)],
          effects: [short],
          related: short.asked.flatMap(({ wishes, multiplex }) =>
            wishes.flatMap(({ stream }) =>
              stream === undefined
                ? []
                : [
                    {
                      at: namePlace(stream.item),
                      message: `${asName(stream.name)} needs ${asName(multiplex.name)} at all times`,
                    },
                  ],
            ),
          ),
        });
      }
    }
  },
};

/** A multiplex that reaches no tuner of its system. */
interface Unreached {
  readonly able: readonly string[];
  /** No coax leads to any of them. */
  readonly isOpen: boolean;
  readonly multiplexes: Multiplex[];
  readonly shorts: Set<Short>;
}

/** Reports received multiplexes that reach no tuner of their system, at the first occasion that wants them. */
function reportUnreached({ plan, site }: Pick<RuleContext, 'plan' | 'site'>, report: Report): void {
  const { tuning, signals, runs } = plan.television;
  // Other rules report what stops them.
  if (signals.loops.length > 0) return;
  const received = new Set(signals.all.map(({ multiplex }) => multiplex));
  const stopped = new Set(signals.stopped.map(({ signal }) => signal.multiplex));
  const reported = new Set<Multiplex>();
  const cabled = new Set(runs.flatMap(({ a, b }) => [a, b]));
  for (const occasion of site.occasions) {
    const byUnits = new Map<string, Unreached>();
    for (const short of tuning.of(occasion).tooFew) {
      for (const { multiplex, source } of short.units.length > 0 ? [] : short.asked) {
        const able = tuning.units.filter(
          (unit) => doesSystem(unit, multiplex) && (source === undefined || isOf(unit, source)),
        );
        if (able.length === 0 || !received.has(multiplex) || stopped.has(multiplex) || reported.has(multiplex))
          continue;
        reported.add(multiplex);
        const names = able.map(({ name }) => name);
        const isOpen = able.every(({ inputs }) => inputs.length > 0 && !inputs.some((input) => cabled.has(input)));
        const together = byUnits.get(names.join(' ')) ?? { able: names, isOpen, multiplexes: [], shorts: new Set() };
        together.multiplexes.push(multiplex);
        together.shorts.add(short);
        byUnits.set(names.join(' '), together);
      }
    }
    for (const { able, isOpen, multiplexes, shorts } of byUnits.values()) {
      const names = multiplexes.map(({ name }) => name);
      report({
        at: namePlace(occasion.item),
        message:
          `${asName(occasion.name)} needs ${few(names)}, and nothing of ${names.length === 1 ? 'it' : 'them'} comes to ${few(able)}. ` +
          `Lead a coax there from where ${names.length === 1 ? 'it is' : 'they are'} received.`,
        acceptAt: [occasion.name, ...names],
        // A consequence where no coax leads to these tuners, which is reported.
        effects: isOpen ? [...shorts] : multiplexes,
      });
    }
  }
}

function isOnCoax({ deviceByName }: Site, ...ends: readonly (CableEnd | undefined)[]): boolean {
  return ends.some((end) => end !== undefined && (deviceByName.get(end.device)?.connectorByName.size ?? 0) > 0);
}

/** Whether both ends are there, and both of the same sort. */
function areJoined(site: Site, from: CableEnd | undefined, to: CableEnd | undefined): boolean {
  const isCoax = connectorAt(site, from) !== undefined;
  if (isCoax !== (connectorAt(site, to) !== undefined)) return false;
  return isCoax || (portAt(site, from) !== undefined && portAt(site, to) !== undefined);
}

/** The most names in a message. */
const MOST_NAMED = 6;

function shortageWords(site: Site, { asked, units, missing }: Short, tuned: Tuned): string {
  const able = units.map(({ name }) => name);
  const systems = [...new Set(asked.flatMap(({ multiplex }) => multiplex.system ?? []))];
  return (
    `${few(
      asked.map(({ multiplex }) => multiplex.name),
      MOST_NAMED,
    )} at once, which only ${few(able, MOST_NAMED)} can take: ` +
    `${count(missing, 'tuner')} too few. ${otherwise(site, asked, tuned)}Watch and record fewer at once, or add a tuner for ` +
    `${list(systems, 'or')}.`
  );
}

/** The advice for a service that an already tuned multiplex carries too. */
function otherwise({ services }: Site, asked: readonly Asked[], { assigned }: Tuned): string {
  const tuned = new Set([...assigned.keys()].map(({ multiplex }) => multiplex.name));
  const short = new Set(asked.map(({ multiplex }) => multiplex.name));
  for (const { name, multiplexes } of services) {
    const other = multiplexes.find((each) => tuned.has(each) && !short.has(each));
    if (other !== undefined && multiplexes.some((each) => short.has(each)))
      return `${asName(name)} also comes in ${other}, which is tuned already. `;
  }
  return '';
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-c: {system: dvb-t2, channel: 24, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-d: {system: dvb-t2, channel: 27, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  film: {multiplex: [mux-d, mux-a], rate: 6 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1-2: {systems: [dvb-t]}, 3-4: {systems: [dvb-t, dvb-t2]}}}
occasions:
  evening: {multiplexes: [mux-a, mux-b, mux-c, mux-d]}
# ^^^^^^^ evening needs mux-b, mux-c and mux-d at once, which only tv-tuner/3 and tv-tuner/4 can take: 1 tuner too few. film also comes in mux-a, which is tuned already.
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-c: {system: dvb-t2, channel: 24, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-d: {system: dvb-t2, channel: 27, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  film: {multiplex: [mux-d, mux-a], rate: 6 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1-2: {systems: [dvb-t]}, 3-4: {systems: [dvb-t, dvb-t2]}}}
occasions:
  evening: {services: [film], multiplexes: [mux-a, mux-b, mux-c]}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-d, rate: 6 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5}
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1: {systems: [dvb-t]}}}
streams:
  tv-news: {source: tv-tuner, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
# ^^^^^^^ At all times tv-news and tv-film need mux-a and mux-d at once, which only tv-tuner/1 can take: 1 tuner too few
  tv-film: {source: tv-tuner, service: film, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [recorder]}
volumes:
  disk: {host: recorder, capacity: 4 TB}
recordings:
  news: {stream: tv-news, volume: disk, keep: 7 d}
  film: {stream: tv-film, volume: disk, keep: 7 d}
occasions:
  evening: {services: [news]}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-a, rate: 6 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5}
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1: {systems: [dvb-t]}}}
streams:
  tv-news: {source: tv-tuner, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
  tv-film: {source: tv-tuner, service: film, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [recorder]}
volumes:
  disk: {host: recorder, capacity: 4 TB}
recordings:
  news: {stream: tv-news, volume: disk, keep: 7 d}
  film: {stream: tv-film, volume: disk, keep: 7 d}
occasions:
  evening: {services: [news]}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  gable-aerial: {kind: aerial, receives: {mux-d: 60 dBµV}}
  parlour-tv: {kind: display, inputs: {rf: {}}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1: {systems: [dvb-t]}}}
cables:
  - {from: chimney-aerial, to: parlour-tv/rf, type: coax-6, length: 20 m}
  - {from: gable-aerial, to: tv-tuner/rf, type: coax-6, length: 20 m}
occasions:
  evening: {multiplexes: [mux-a]}
# ^^^^^^^ evening needs mux-a, and nothing of it comes to tv-tuner/1
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1: {systems: [dvb-t]}}}
cables:
  - {from: chimney-aerial, to: tv-tuner/rf, type: coax-6, length: 20 m}
occasions:
  evening: {multiplexes: [mux-a]}
`,
  },
  {
    // The recording keeps the only tuner.
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  loft-aerial: {kind: aerial, receives: {mux-a: 62 dBµV, mux-b: 62 dBµV}}
  tv-tuner: {kind: tuner, inputs: {rf: {}}, tuners: {1: {systems: [dvb-t], input: rf}}}
  recorder: {kind: server}
  parlour-screen: {kind: display}
cables:
  - {from: loft-aerial, to: tv-tuner/rf, type: coax-6, length: 5 m}
streams:
  all-a: {source: tv-tuner, transport: ts-rtp, port: 5004, multiplex: mux-a, receivers: [recorder]}
  all-b: {source: tv-tuner, transport: ts-rtp, port: 5004, multiplex: mux-b, receivers: [parlour-screen]}
# ^^^^^ Nobody ever gets all-b beside all-a, which runs at all times
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  all-a: {stream: all-a, volume: archive}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  loft-aerial: {kind: aerial, receives: {mux-a: 62 dBµV, mux-b: 62 dBµV}}
  tv-tuner: {kind: tuner, inputs: {rf: {}}, tuners: {1-2: {systems: [dvb-t], input: rf}}}
  recorder: {kind: server}
  parlour-screen: {kind: display}
cables:
  - {from: loft-aerial, to: tv-tuner/rf, type: coax-6, length: 5 m}
streams:
  all-a: {source: tv-tuner, transport: ts-rtp, port: 5004, multiplex: mux-a, receivers: [recorder]}
  all-b: {source: tv-tuner, transport: ts-rtp, port: 5004, multiplex: mux-b, receivers: [parlour-screen]}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  all-a: {stream: all-a, volume: archive}
`,
  },
];
