import { type Place, placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { few, list, asName } from '../../text/words.ts';
import { type Unit, doesSystem } from '../../television/units.ts';
import { isOf } from '../../television/occasions.ts';
import { multiplexesOf } from '../../television/wishes.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerSystem: Rule = {
  id: 'tuner-system',
  severity: 'error',
  summary: 'A multiplex is asked of tuners none of which receives its system.',
  why: `A tuner for DVB-T never shows DVB-T2, and one for DVB-S no DVB-S2 that is not coded as such. Take a tuner that
does the system, or the service from another multiplex.`,
  source: 'EN 302 755, EN 302 307-1: each is another system than the one before it; from memory',
  check({ plan, site }: RuleContext, report: Report): void {
    const { units } = plan.television.tuning;
    const reported = new Set<string>();
    const lacking = new Map<string, object>();
    for (const { name, multiplexes, asked, at, of, stream } of usesOf(site, units)) {
      const [first] = multiplexes;
      if (first === undefined || asked.length === 0) continue;
      if (multiplexes.some((multiplex) => asked.some((unit) => doesSystem(unit, multiplex)))) continue;
      const key = multiplexes.map((multiplex) => multiplex.name).join(' ');
      // A system that all tuners lack is not reported again for one device.
      if (reported.has(key) || reported.has(`${of} ${key}`)) continue;
      reported.add(`${of} ${key}`).add(key);
      const devices = [...new Set(asked.map(({ device }) => device.name))];
      const able = [...new Set(asked.flatMap(({ tuner }) => tuner.systems))];
      const systems = [...new Set(multiplexes.flatMap(({ system }) => system ?? []))];
      // Several uses that one device lacks a system for are reported at the first.
      const lack = `${of} ${systems.join(' ')}`;
      const before = of === '' ? undefined : lacking.get(lack);
      const own = before ?? {};
      lacking.set(lack, own);
      report({
        at,
        message:
          `${asName(name)} needs ${list(
            multiplexes.map((multiplex) => multiplex.name),
            'or',
          )}, sent in ${list(systems, 'or')}, and ` +
          `${few(devices)} ${devices.length === 1 ? 'receives' : 'receive'} ${able.length === 0 ? 'nothing of that' : list(able)}` +
          `. Take a tuner for ${list(systems, 'or')}, or another multiplex.`,
        acceptAt: [name, ...multiplexes.map((multiplex) => multiplex.name)],
        effects: before === undefined ? [] : [own],
        // How much of the multiplex the stream sends does not matter while it cannot be received.
        entails: [...(before === undefined ? [own] : []), ...(stream === undefined ? [] : [stream])],
      });
    }
  },
};

interface Use {
  readonly name: string;
  readonly multiplexes: readonly Multiplex[];
  readonly at: Place;
  /** The tuners that should receive it. */
  readonly asked: readonly Unit[];
  /** The device of these tuners; empty for any. */
  readonly of: string;
  /** The stream that needs it, where it is no occasion. */
  readonly stream: Stream | undefined;
}

/** Streams before occasions, as they name the device. */
function usesOf(site: Site, units: readonly Unit[]): Use[] {
  if (units.length === 0) return [];
  const isUnknown = site.devices.some(({ kind, tuners }) => kind === 'tuner' && tuners.length === 0);
  return [
    ...site.streams.flatMap((stream): Use[] => {
      const source = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
      const multiplexes = multiplexesOf(site, stream);
      if (source === undefined || multiplexes.length === 0) return [];
      const asked = units.filter((unit) => isOf(unit, source));
      const at = placeOf(stream.item, [stream.service === undefined ? 'multiplex' : 'service']);
      return [{ name: stream.service ?? stream.name, multiplexes, at, asked, of: source.name, stream }];
    }),
    ...(isUnknown ? [] : site.occasions).flatMap(({ item, name, services, multiplexes }) => [
      ...services.map((service, index) => ({
        name: service,
        multiplexes: multiplexesOf(site, { service }),
        at: placeOf(item, ['services', index]),
        asked: units,
        of: '',
        stream: undefined,
      })),
      ...multiplexes.map((multiplex, index) => ({
        name,
        multiplexes: multiplexesOf(site, { multiplex }),
        at: placeOf(item, ['multiplexes', index]),
        asked: units,
        of: '',
        stream: undefined,
      })),
    ]),
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  film: {multiplex: mux-b, rate: 6 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1-2: {systems: [dvb-t]}}}
streams:
  tv-film: {source: tv-tuner, service: film, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
#                                      ^^^^ film needs mux-b, sent in dvb-t2, and tv-tuner receives dvb-t. Take a tuner for dvb-t2
occasions:
  evening: {services: [film]}
`,
    good: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  film: {multiplex: mux-b, rate: 6 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}, tuners: {1: {systems: [dvb-t]}, 2: {systems: [dvb-t, dvb-t2]}}}
streams:
  tv-film: {source: tv-tuner, service: film, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
occasions:
  evening: {services: [film]}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  sat-1: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1-2: {systems: [dvb-t]}}}
occasions:
  evening: {multiplexes: [mux-a, sat-1]}
#                                ^^^^^ evening needs sat-1, sent in dvb-s2, and tv-tuner receives dvb-t
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, tuners: {1-2: {systems: [dvb-t]}}}
occasions:
  evening: {multiplexes: [mux-a]}
`,
  },
];
