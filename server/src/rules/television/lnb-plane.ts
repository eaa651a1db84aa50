import { namePlace } from '../../site/item.ts';
import { connectorName } from '../../site/model.ts';
import { few, list, asName } from '../../text/words.ts';
import { planeWords } from '../../text/radio-words.ts';
import type { Contested } from '../../television/occasions.ts';
import { planeOfMultiplex } from '../../television/units.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const lnbPlane: Rule = {
  id: 'lnb-plane',
  severity: 'error',
  summary: 'Tuners on one cable of an LNB are asked for different polarisations or bands.',
  why: `One cable of an LNB carries one of four at a time: vertical or horizontal, low or high band. Whoever tunes last
takes the picture from the other. Give each tuner a cable and an output of its own, or feed both through a multiswitch.`,
  source: 'EN 61319-1: 13/18 V and 22 kHz choose what the LNB gives; from memory',
  check({ plan, site }: RuleContext, report: Report): void {
    const { tuning } = plan.television;
    const always = tuning.standing.contested.map((contested) => {
      const [stream] = contested.asked.flatMap(({ wishes }) => wishes.flatMap((wish) => wish.stream ?? []));
      return { contested, name: stream?.name ?? '', item: stream?.item };
    });
    const onOccasions = site.occasions.flatMap((occasion) =>
      tuning.of(occasion).contested.map((contested) => ({ contested, name: occasion.name, item: occasion.item })),
    );
    const reported = new Set<Contested['from']>();
    for (const { contested, name, item } of [...always, ...onOccasions]) {
      if (item === undefined || reported.has(contested.from)) continue;
      reported.add(contested.from);
      const others = onOccasions.filter((one) => one.contested.from === contested.from && one.item !== item);
      report({
        ...foundIn(site, contested),
        at: namePlace(item),
        acceptAt: [name, contested.from.device.name],
        related: others.map((one) => ({ at: namePlace(one.item), message: `so does ${asName(one.name)}` })),
      });
    }
  },
};

function foundIn(site: RuleContext['site'], { from, asked, units }: Contested): Pick<Finding, 'message'> {
  const wanted = asked.map(({ multiplex }) => {
    const plane = planeOfMultiplex(site, multiplex);
    return plane === undefined ? multiplex.name : `${multiplex.name} (${planeWords(plane)})`;
  });
  return {
    message:
      `${list(wanted)} are wanted at once from ${connectorName(from)}, and ${few(units.map(({ name }) => name))} share ` +
      'its cable, which carries one polarisation and band at a time. Give each of them a cable from an output of its own.',
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
  sat-2: {system: dvb-s2, frequency: 10773 MHz, polarisation: horizontal, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, type: quad, receives: {sat-1: 78 dBµV, sat-2: 76 dBµV}}
  sat-splitter: {kind: splitter, ways: 2, power-pass: true}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {sat-1: {supplies: 400 mA}, sat-2: {supplies: 400 mA}}, tuners: {1: {systems: [dvb-s2], input: sat-1}, 2: {systems: [dvb-s2], input: sat-2}}}
cables:
  - {from: dish/out-1, to: sat-splitter/in, type: coax-6, length: 20 m}
  - {from: sat-splitter/out-1, to: tv-tuner/sat-1, type: coax-6, length: 2 m}
  - {from: sat-splitter/out-2, to: tv-tuner/sat-2, type: coax-6, length: 2 m}
occasions:
  evening: {multiplexes: [sat-1, sat-2]}
# ^^^^^^^ sat-1 (vertical, high band) and sat-2 (horizontal, low band) are wanted at once from dish/out-1, and tv-tuner/1 and tv-tuner/2 share its cable
`,
    good: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
  sat-2: {system: dvb-s2, frequency: 10773 MHz, polarisation: horizontal, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, type: quad, receives: {sat-1: 78 dBµV, sat-2: 76 dBµV}}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {sat-1: {supplies: 400 mA}, sat-2: {supplies: 400 mA}}, tuners: {1: {systems: [dvb-s2], input: sat-1}, 2: {systems: [dvb-s2], input: sat-2}}}
cables:
  - {from: dish/out-1, to: tv-tuner/sat-1, type: coax-6, length: 22 m}
  - {from: dish/out-2, to: tv-tuner/sat-2, type: coax-6, length: 22 m}
occasions:
  evening: {multiplexes: [sat-1, sat-2]}
`,
  },
];
