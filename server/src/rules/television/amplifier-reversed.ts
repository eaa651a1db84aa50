import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, connectorAt } from '../../site/model.ts';
import type { Site } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const amplifierReversed: Rule = {
  id: 'amplifier-reversed',
  severity: 'error',
  summary: 'A signal arrives at the output of an amplifier.',
  why: `An amplifier works one way: nothing gets through from its output to its input, so that no outlet behind it has a
picture. Its supply is on the wrong side too. Swap the two coaxes.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.kind !== 'amplifier') continue;
      const out = device.connectorByName.get('out');
      const wrong =
        out === undefined ? [] : plan.television.signals.at(out).filter(({ steps }) => isOffCoax(steps.at(-1)));
      if (wrong.length === 0) continue;
      const multiplexes = new Set<Multiplex>(wrong.map(({ multiplex }) => multiplex));
      const end = endAt(site, device, 'out');
      if (end === undefined) continue;
      const names = [...multiplexes].map(({ name }) => name);
      const other = endAt(site, device, 'in');
      report({
        at: placeOf(end.cable.item, [end.key]),
        message:
          `${few(names)} ${names.length === 1 ? 'arrives' : 'arrive'} at the output of ${asName(device.name)}, which lets nothing ` +
          'through to its input. Swap its coaxes.',
        acceptAt: [device.name, `${device.name}/out`, ...names],
        entails: [device, ...multiplexes],
        fixes: () =>
          fixOf(
            `Swap the coaxes of ${asName(device.name)}`,
            setValue(end.cable.item, [end.key], scalarText(`${device.name}/in`, true)),
            ...(other === undefined
              ? []
              : [setValue(other.cable.item, [other.key], scalarText(`${device.name}/out`, true))]),
          ),
      });
    }
  },
};

/** Whether a signal arrives by a coax, not through the amplifier. */
function isOffCoax(step: { readonly by: object } | undefined): boolean {
  return step !== undefined && 'cable' in step.by;
}

function endAt(
  site: Pick<Site, 'cables' | 'deviceByName'>,
  { connectorByName }: Device,
  name: string,
): { readonly cable: Site['cables'][number]; readonly key: 'from' | 'to' } | undefined {
  const connector = connectorByName.get(name);
  for (const cable of site.cables) {
    if (connectorAt(site, cable.from) === connector) return { cable, key: 'from' };
    if (connectorAt(site, cable.to) === connector) return { cable, key: 'to' };
  }
  return undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 55 dBµV}}
  mast-amp: {kind: amplifier, gain: 12 dB, noise-figure: 2 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-amp/out, type: coax-6, length: 2 m}
#                              ^^^^^^^^^^^^ mux-a arrives at the output of mast-amp
  - {from: mast-amp/in, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 55 dBµV}}
  mast-amp: {kind: amplifier, gain: 12 dB, noise-figure: 2 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
  },
];
