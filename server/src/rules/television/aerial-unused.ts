import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Signal } from '../../television/signals.ts';
import { isReceiver } from '../../television/reception.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { type Device, type Site, connectorAt } from '../../site/model.ts';
import { asName } from '../../text/words.ts';

export const aerialUnused: Rule = {
  id: 'aerial-unused',
  severity: 'warning',
  summary: 'What an aerial or an LNB receives gets to no outlet and no receiver.',
  why: `Its coax is missing, or ends at a part with nothing behind it, so nobody sees what it receives. Run it to an
outlet or a receiver, or take it out.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    const { runs, signals } = plan.television;
    // Nothing is missing before anything is cabled, or where there is nobody to watch.
    if (runs.length === 0 || !site.devices.some(isUse)) return;
    const stopped = new Set(signals.stopped.map(({ signal }) => signal.source.device));
    for (const loop of signals.loops) stopped.add(loop.source.device);
    const used = new Set<Device>();
    const furthest = new Map<Device, Signal>();
    for (const signal of signals.all) {
      const { device } = signal.source;
      if (isUse(signal.at.device)) used.add(device);
      const known = furthest.get(device);
      if (known === undefined || signal.steps.length > known.steps.length) furthest.set(device, signal);
    }
    const joined = new Set(runs.map(({ cable }) => cable));
    // A cable with a wrong far end is reported by itself.
    const isHalfCabled = ({ name }: Device): boolean =>
      site.cables.some((cable) => !joined.has(cable) && [cable.from, cable.to].some((end) => end?.device === name));
    const seen = new Set(signals.all.flatMap(({ source, multiplex }) => (used.has(source.device) ? [multiplex] : [])));
    for (const [device, signal] of furthest) {
      // A signal stopped by a part, or at the wrong side of an amplifier, is reported there.
      const end = signal.at;
      if (used.has(device) || stopped.has(device) || isAtWrongSide(signal) || isHalfCabled(end.device)) continue;
      const isCabled = end.device !== device;
      // A spare aerial that is not cabled yet.
      if (!isCabled && signals.all.every(({ source, multiplex }) => source.device !== device || seen.has(multiplex)))
        continue;
      report({
        at: placeOfLast(site, signal) ?? namePlace(device.item),
        message: isCabled
          ? `What ${asName(device.name)} receives ends at ${asName(end.device.name)}, with no outlet and no receiver behind it. Run it on, ` +
            `or remove ${asName(device.name)}.`
          : `No coax leads from ${asName(device.name)} to an outlet or a receiver. Cable it, or remove it.`,
        acceptAt: [device.name, ...(isCabled ? [end.device.name] : [])],
        // Open outputs and missing reception follow from it.
        entails: [
          end.device,
          ...signals.all.filter(({ source }) => source.device === device).map((one) => one.multiplex),
        ],
      });
    }
  },
};

/** Whether the signal arrives at the output of an amplifier by a coax. */
function isAtWrongSide({ at, steps }: Signal): boolean {
  const last = steps.at(-1);
  return at.device.kind === 'amplifier' && at.name === 'out' && last !== undefined && 'cable' in last.by;
}

/** Whether television is watched or recorded at the device. */
function isUse(device: Device): boolean {
  return device.kind === 'outlet' || (isReceiver(device) && device.coaxInputs.size > 0);
}

/** The far end of the last coax on its way. */
function placeOfLast(site: Site, { at, steps }: Signal): ReturnType<typeof placeOf> | undefined {
  for (const { by } of [...steps].reverse()) {
    if (!('cable' in by)) continue;
    const { cable } = by;
    const end = [cable.from, cable.to].find((one) => connectorAt(site, one)?.device === at.device);
    return placeOf(cable.item, end?.keyPath ?? []);
  }
  return undefined;
}

const AIR = `multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  gable-aerial: {kind: aerial, receives: {mux-a: 58 dBµV}}
  loft-block: {kind: earth-block}
  parlour-outlet: {kind: outlet, loss: 1 dB}
`;

export const examples: readonly Example[] = [
  {
    bad: `
${AIR}cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 12 m}
  - {from: gable-aerial, to: loft-block/in, type: coax-6, length: 5 m}
#                            ^^^^^^^^^^^^^ What gable-aerial receives ends at loft-block, with no outlet and no receiver behind it
`,
    good: `
${AIR}cables:
  - {from: chimney-aerial, to: loft-block/in, type: coax-6, length: 5 m}
  - {from: loft-block/out, to: parlour-outlet/in, type: coax-6, length: 12 m}
lint:
  accept:
    - {rule: aerial-unused, at: gable-aerial, because: a spare for the day when the chimney goes}
`,
  },
];
