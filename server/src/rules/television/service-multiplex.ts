import { fixOf, remove } from '../../site/edit.ts';
import { type Place, placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { isSatellite } from '../../standards/television/system.ts';
import { few, list, asName } from '../../text/words.ts';
import { knownReception } from '../../television/units.ts';
import { multiplexesOf } from '../../television/wishes.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const serviceMultiplex: Rule = {
  id: 'service-multiplex',
  severity: 'error',
  summary: 'A multiplex is wanted that no aerial receives.',
  why: `What no aerial or LNB receives, no tuner can give. Add it to \`receives\` of the one that does, with the level that
a meter shows at its lead, or take the service from a multiplex that is received.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) both(stream, report);
    if (site.multiplexes.length === 0) return;
    const received = receivedNames(site);
    // An undeclared multiplex may be the one that carries it.
    if ([...received].some((name) => !site.multiplexByName.has(name))) return;
    const isKnown = knownReception(site.devices);
    const wanted = new Map<Multiplex, Use[]>();
    for (const use of usesOf(site)) {
      const [first] = use.multiplexes;
      if (first === undefined || use.multiplexes.some((one) => received.has(one.name) || !isKnown(one))) continue;
      const known = wanted.get(first);
      if (known === undefined) wanted.set(first, [use]);
      else known.push(use);
    }
    for (const uses of wanted.values()) {
      const [first, ...others] = uses;
      if (first === undefined) continue;
      const names = first.multiplexes.map(({ name }) => name);
      const sky = first.multiplexes.every(({ system }) => system !== undefined && isSatellite(system));
      report({
        at: first.at,
        message:
          `No ${sky ? 'LNB' : 'aerial'} receives ${list(names, 'or')}, so ${few(uses.map(({ name }) => name))} cannot be ` +
          `had. Add ${names.length === 1 ? 'it' : 'one of them'} to \`receives\` of the one that does, or choose another multiplex.`,
        acceptAt: [...new Set([first.name, ...names])],
        related: others.map(({ at, name }) => ({ at, message: `${asName(name)} needs it too` })),
      });
    }
  },
};

/** Reports a stream with both a service and a multiplex; the service counts. */
function both({ item, name, service, multiplex }: Stream, report: Report): void {
  if (service === undefined || multiplex === undefined) return;
  report({
    at: placeOf(item, ['multiplex']),
    severity: 'warning',
    message:
      `${asName(name)} names both the service ${asName(service)} and the whole of ${asName(multiplex)}, and is counted ` +
      'as the service alone. Remove one of the two.',
    acceptAt: [name, service, multiplex],
    related: [{ at: placeOf(item, ['service']), message: 'the service' }],
    fixes: () => [
      ...fixOf(`Send ${asName(service)} alone`, remove(item, ['multiplex'])),
      ...fixOf(`Send all of ${asName(multiplex)}`, remove(item, ['service'])),
    ],
  });
}

/** A place that needs a multiplex. */
interface Use {
  readonly name: string;
  readonly multiplexes: readonly Multiplex[];
  readonly at: Place;
}

/** Uses of multiplexes by services and streams: a stream of a service needs what the service declares. */
function usesOf(site: Site): Use[] {
  return [
    ...site.services.map(({ item, name }) => ({
      name,
      multiplexes: multiplexesOf(site, { service: name }),
      at: placeOf(item, ['multiplex']),
    })),
    ...site.streams.flatMap(({ item, name, multiplex }) =>
      multiplex === undefined
        ? []
        : [{ name, multiplexes: multiplexesOf(site, { multiplex }), at: placeOf(item, ['multiplex']) }],
    ),
    ...site.occasions.flatMap(({ item, name, multiplexes }) =>
      multiplexes.map((multiplex) => ({
        name,
        multiplexes: multiplexesOf(site, { multiplex }),
        at: placeOf(item, item.names.find(({ names, text }) => names === 'multiplexes' && text === multiplex)?.keyPath),
      })),
    ),
  ];
}

/** Names of received multiplexes, also where the level cannot be read. */
function receivedNames({ devices }: Site): ReadonlySet<string> {
  return new Set(
    devices.flatMap(({ kind, item }) =>
      kind === 'aerial' || kind === 'lnb'
        ? item.names.flatMap(({ names, text }) => (names === 'multiplexes' ? [text] : []))
        : [],
    ),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-b, rate: 6 Mb/s}
#                   ^^^^^ No aerial receives mux-b, so film and sport cannot be had
  sport: {multiplex: mux-b, rate: 6 Mb/s}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-b, rate: 6 Mb/s}
  sport: {multiplex: mux-b, rate: 6 Mb/s}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV, mux-b: 58 dBµV}}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}}
streams:
  all-d: {source: tv-tuner, multiplex: mux-d, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
#                                      ^^^^^ No aerial receives mux-d, so all-d and evening cannot be had
occasions:
  evening: {multiplexes: [mux-a, mux-d]}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-d: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  film: {multiplex: [mux-d, mux-a], rate: 6 Mb/s}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}}
streams:
  all-a: {source: tv-tuner, multiplex: mux-a, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
occasions:
  evening: {services: [film]}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
devices:
  loft-aerial: {kind: aerial, receives: {mux-a: 62 dBµV}}
  tv-tuner: {kind: tuner, tuners: {1: {systems: [dvb-t]}}}
streams:
  news: {source: tv-tuner, transport: ts-rtp, port: 5004, service: news, multiplex: mux-a}
#                                                                                   ^^^^^ news names both the service news and the whole of mux-a
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
devices:
  loft-aerial: {kind: aerial, receives: {mux-a: 62 dBµV}}
  tv-tuner: {kind: tuner, tuners: {1: {systems: [dvb-t]}}}
streams:
  news: {source: tv-tuner, transport: ts-rtp, port: 5004, service: news}
`,
  },
];
