import { namePlace, placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import { megahertz } from '../../text/radio-words.ts';
import { televisionEnds } from '../../standards/television/channel-plan.ts';
import { skyFrequency } from '../../site/television/channel.ts';
import { isInBand } from '../../television/part.ts';
import type { StoppedSignal } from '../../television/signals.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const frequencyNotPassed: Rule = {
  id: 'frequency-not-passed',
  severity: 'error',
  summary: 'A part does not let a multiplex pass.',
  why: `What lies outside the frequencies of a splitter, a filter or an amplifier ends there: one for 5–862 MHz stops a
satellite, a filter for 470–694 MHz stops channels from 49 on. Take a part for these frequencies, or lead the coax round
it.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    const byDevice = new Map<Device, StoppedSignal[]>();
    for (const stopped of plan.television.signals.stopped) {
      const known = byDevice.get(stopped.device);
      if (known === undefined) byDevice.set(stopped.device, [stopped]);
      else known.push(stopped);
    }
    for (const [device, stopped] of byDevice) {
      const names = [...new Set(stopped.map(({ signal }) => signal.multiplex.name))];
      const key = device.kind === 'filter' ? 'passes' : 'frequencies';
      const range = device.aerial?.frequencies;
      const first = stopped[0]?.signal;
      if (first === undefined) continue;
      report({
        at:
          range === undefined || isInBand(range, first.frequency)
            ? namePlace(device.item)
            : placeOf(device.item, [key]),
        message:
          range === undefined || isInBand(range, first.frequency)
            ? `${asName(device.name)} does not let ${few(names)} pass by ${first.at.name}, which is not for ` +
              `${megahertz(first.frequency)}. Lead the coax to another of its connectors, or round it.`
            : `${asName(device.name)} does not let ${few(names)} pass: ${megahertz(first.frequency)} is outside of ` +
              `${megahertz(range.from)} to ${megahertz(range.to)}. Take a part for it, or lead the coax round this one.`,
        acceptAt: [device.name, ...names],
        entails: [...new Set(stopped.map(({ signal }) => signal.multiplex))],
      });
    }
    for (const device of site.devices) reportOutside(site, device, report);
  },
};

/** Reports an aerial that receives frequencies outside of its own, where its declared gain does not hold. */
function reportOutside(site: RuleContext['site'], { kind, item, name, aerial }: Device, report: Report): void {
  const range = aerial?.frequencies;
  if (kind !== 'aerial' || range === undefined) return;
  const outside = site.multiplexes.flatMap((multiplex) => {
    if (!aerial?.receives.has(multiplex.name) && !aerial?.field.has(multiplex.name)) return [];
    const frequency = skyFrequency(site, multiplex);
    // Frequencies that telephones use today are reported by mobile-band.
    const isOld = frequency !== undefined && frequency >= (televisionEnds(site.channelPlan) ?? Infinity);
    return frequency === undefined || isOld || isInBand(range, frequency) ? [] : [{ name: multiplex.name, frequency }];
  });
  const [first] = outside;
  if (first === undefined) return;
  const names = outside.map((one) => one.name);
  report({
    at: placeOf(item, ['frequencies']),
    message:
      `${name} is made for ${megahertz(range.from)} to ${megahertz(range.to)}, and ${few(names)} ` +
      `${names.length === 1 ? 'is' : 'are'} outside of it, at ${megahertz(first.frequency)}. Correct one of them, or take ` +
      'an aerial for it.',
    acceptAt: [name, ...names],
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  gable-aerial: {kind: aerial, frequencies: 470-606 MHz, receives: {mux-a: 41 dBµV}}
#                                           ^^^^^^^^^^^ gable-aerial is made for 470 MHz to 606 MHz, and mux-a is outside of it, at 674 MHz.
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  gable-aerial: {kind: aerial, frequencies: 470-694 MHz, receives: {mux-a: 49 dBµV}}
`,
  },
  {
    bad: `
multiplexes:
  mux-c: {system: dvb-t, channel: 52, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-c: 60 dBµV}}
  mast-filter: {kind: filter, passes: 470-694 MHz, loss: 1 dB}
#                                     ^^^^^^^^^^^ mast-filter does not let mux-c pass: 722 MHz is outside of 470 MHz to 694 MHz.
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-filter/in, type: coax-6, length: 1 m}
  - {from: mast-filter/out, to: parlour-outlet/in, type: coax-6, length: 10 m}
lint: {rules: {mobile-band: off}}
`,
    good: `
multiplexes:
  mux-c: {system: dvb-t, channel: 44, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-c: 60 dBµV}}
  mast-filter: {kind: filter, passes: 470-694 MHz, loss: 1 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-filter/in, type: coax-6, length: 1 m}
  - {from: mast-filter/out, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
  },
];
