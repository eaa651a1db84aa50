import { namePlace } from '../../site/item.ts';
import { televisionEnds } from '../../standards/television/channel-plan.ts';
import { megahertz } from '../../text/radio-words.ts';
import { skyFrequency } from '../../site/television/channel.ts';
import { type System, isSatellite } from '../../standards/television/system.ts';
import { filterInFront } from '../../television/insert-fix.ts';
import { isInBand } from '../../television/part.ts';
import type { Signal } from '../../television/signals.ts';
import type { FrequencyRange } from '../../text/quantity.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const mobileBand: Rule = {
  id: 'mobile-band',
  severity: 'warning',
  summary: 'A terrestrial multiplex lies where mobile telephones are today, or an amplifier takes them along.',
  why: `Television has left these frequencies in most countries, so the channel is probably out of date; if it is still on
air, telephones and their masts are stronger than it. Read the broadcaster's table again, and put a filter in front of
the first amplifier. An amplifier with nothing in front that keeps telephones out is reported as information only: where
one of their masts is near, it is overloaded, whatever its levels of television are.`,
  source: 'the 700 MHz and 600 MHz bands: 3GPP band 28 by a page that quotes it, band 71 from memory; countries differ',
  check({ plan: { television }, site }: RuleContext, report: Report): void {
    const end = televisionEnds(site.channelPlan);
    if (end === undefined || site.multiplexes.length === 0) return;
    for (const multiplex of site.multiplexes) {
      const { item, name, system } = multiplex;
      const frequency = skyFrequency(site, multiplex);
      if (frequency === undefined || frequency < end || !isTerrestrial(system)) continue;
      report({
        at: namePlace(item),
        message:
          `${asName(name)} is at ${megahertz(frequency)}, and television ends at ${megahertz(end)} in ${site.channelPlan}: ` +
          'mobile telephones are there. Check the channel, and filter in front of the first amplifier.',
        acceptAt: [name],
        // A consequence where a part stops it, which is reported.
        effects: [multiplex],
      });
    }
    for (const { device } of television.amplifiers) {
      const at = device.connectorByName.get('in');
      const signals = at === undefined ? [] : television.signals.at(at);
      const open = signals.filter((signal) => isOffAir(signal) && !isFiltered(signal, end));
      const lowest = Math.min(...open.map(({ frequency }) => frequency));
      if (at === undefined || open.length === 0 || isKeptOut(device.aerial?.frequencies, end)) continue;
      report({
        at: namePlace(device.item),
        severity: 'information',
        message:
          `No filter is in front of ${asName(device.name)}, and it takes what is above ${megahertz(end)} as well: a telephone ` +
          'mast near by is stronger than television and overloads it. Put a filter in front, or say under ' +
          'frequencies what it takes.',
        acceptAt: [device.name],
        fixes: () => filterInFront(site, television, at, { from: lowest < VHF_ENDS ? VHF : UHF, to: end }),
      });
    }
  },
};

/** The start of the television bands, and the end of the lower one, Hz. */
const VHF = 47e6;
const VHF_ENDS = 300e6;
const UHF = 470e6;
/** From the end of television to the first carrier of telephones, Hz. */
const GUARD = 9e6;

/** Whether the system is neither for satellite nor for cable. */
function isTerrestrial(system: System | undefined): boolean {
  return system !== undefined && !isSatellite(system) && system !== 'dvb-c' && system !== 'j83b';
}

/** Whether it comes from an aerial without an amplifier in front, which would be reported itself. */
function isOffAir({ source, multiplex, steps }: Signal): boolean {
  if (source.device.kind !== 'aerial' || !isTerrestrial(multiplex.system)) return false;
  return !steps.some(({ by }) => 'device' in by && by.device.kind === 'amplifier');
}

function isFiltered({ steps, frequency }: Signal, end: number): boolean {
  return steps.some(({ by }) => {
    if (!('device' in by)) return false;
    const { kind, aerial, coaxInputs } = by.device;
    // A filter without declared frequencies counts as one for this.
    if (kind === 'filter') return aerial?.frequencies === undefined || isKeptOut(aerial.frequencies, end);
    return [...coaxInputs.values()].some(
      ({ passes }) => passes !== undefined && isInBand(passes, frequency) && isKeptOut(passes, end),
    );
  });
}

/** Whether a range ends below the telephones. */
function isKeptOut(range: FrequencyRange | undefined, end: number): boolean {
  return range !== undefined && range.to < end + GUARD;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-c: {system: dvb-t, channel: 52, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
# ^^^^^ mux-c is at 722 MHz, and television ends at 694 MHz in region-1
`,
    good: `
multiplexes:
  mux-c: {system: dvb-t, channel: 44, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
`,
  },
  {
    bad: `
multiplexes:
  mux-c: {system: dvb-t, channel: 44, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-c: 45 dBµV}}
  mast-amp: {kind: amplifier, gain: 16 dB, noise-figure: 2 dB}
# ^^^^^^^^ No filter is in front of mast-amp, and it takes what is above 694 MHz as well
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
    fixed: `
multiplexes:
  mux-c: {system: dvb-t, channel: 44, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-c: 45 dBµV}}
  mast-amp: {kind: amplifier, gain: 16 dB, noise-figure: 2 dB}
  mast-amp-filter: {kind: filter, passes: 470-694 MHz, loss: 1.5 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-amp-filter/in, type: coax-6, length: 2 m}
  - {from: mast-amp-filter/out, to: mast-amp/in, type: coax-6, length: 0.1 m}
  - {from: mast-amp/out, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
  },
];
