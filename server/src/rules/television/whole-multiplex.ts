import { type Fix, fixOf, nameText, setKey, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import type { Service } from '../../site/television/facts.ts';
import { TABLES_OF_SERVICE } from '../../standards/television/net-rate.ts';
import { bitRate, few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const wholeMultiplex: Rule = {
  id: 'whole-multiplex',
  severity: 'information',
  summary: 'A whole multiplex is sent to screens that show one of its services at a time.',
  why: `A multiplex has 24 to 50 Mb/s, and a service of it a few. A tuner can filter the packets of one service out and
send these alone: \`service\` instead of \`multiplex\`. The rest only loads the links on the way.`,
  source: 'ISO/IEC 13818-1: a transport stream of one programme is one; filtering by PID is common practice',
  check({ site }: RuleContext, report: Report): void {
    if (site.multiplexes.length === 0) return;
    const used = new Set([
      ...site.recordings.map(({ stream }) => stream),
      ...site.streams.map(({ carries }) => carries),
    ]);
    for (const stream of site.streams) {
      const { item, name, receivers } = stream;
      const multiplex = stream.service === undefined ? stream.multiplex : undefined;
      const whole = multiplex === undefined ? undefined : site.media(stream).broadcast?.nominal;
      const shown = used.has(name) ? undefined : shownAtOnce(site, stream);
      if (multiplex === undefined || whole === undefined || shown === undefined) continue;
      const services = site.services.filter(({ multiplexes }) => multiplexes.includes(multiplex));
      const enough = enoughFor(services, shown);
      if (enough === undefined ? shown > 1 : enough >= whole) continue;
      const instead = enough === undefined ? 'a few Mb/s' : bitRate(enough);
      report({
        at: placeOf(item, ['multiplex']),
        message:
          `${asName(name)} sends all of ${multiplex}, ${bitRate(whole)}, and ${few(receivers)} ` +
          `${receivers.length === 1 ? 'shows' : 'show'} ${shown === 1 ? 'one service' : `${shown} services`} of it at a ` +
          `time, ${instead}. Send ${shown === 1 ? 'that' : 'those'} by \`service\`.`,
        acceptAt: [name, multiplex],
        effects: [stream],
        fixes: () => (shown === 1 ? services.flatMap((service) => sendOnly(stream, service)) : []),
      });
    }
  },
};

/** The most services that its receivers can show at once; `undefined` where one of them is no screen. */
function shownAtOnce(site: Site, { receivers }: Stream): number | undefined {
  const screens = receivers.map((receiver) => site.deviceByName.get(receiver));
  if (screens.length === 0 || screens.some((screen) => screen?.kind !== 'display')) return undefined;
  return screens.reduce((sum, screen) => sum + (screen?.decoders ?? 1), 0);
}

/** bit/s of the largest services at their peaks, each as a stream of its own; `undefined` where a rate is not known. */
function enoughFor(services: readonly Service[], shown: number): number | undefined {
  const rates = services.map(({ rate, peakRate }) => peakRate ?? rate);
  if (rates.length === 0 || rates.includes(undefined)) return undefined;
  return rates
    .map((rate = 0) => rate + TABLES_OF_SERVICE)
    .sort((a, b) => b - a)
    .slice(0, shown)
    .reduce((sum, rate) => sum + rate, 0);
}

function sendOnly({ item }: Stream, { name }: Service): Fix[] {
  return fixOf(
    `Send ${asName(name)} alone`,
    setKey(item, ['multiplex'], 'service'),
    setValue(item, ['multiplex'], nameText(name)),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  sport: {multiplex: mux-b, rate: 6 Mb/s, peak-rate: 9 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}}
  kitchen-screen: {kind: display, address: 192.168.20.60}
streams:
  tv-sport: {source: tv-tuner, multiplex: mux-b, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
#                                         ^^^^^ tv-sport sends all of mux-b, 40.2 Mb/s, and kitchen-screen shows one service of it at a time, 9.03 Mb/s
`,
    fixed: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  sport: {multiplex: mux-b, rate: 6 Mb/s, peak-rate: 9 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}}
  kitchen-screen: {kind: display, address: 192.168.20.60}
streams:
  tv-sport: {source: tv-tuner, service: sport, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
`,
  },
];
