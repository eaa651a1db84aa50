import { placeOf } from '../../site/item.ts';
import { type Cable, type Connector, type Device, type Site, connectorAt } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const amplifierUnpowered: Rule = {
  id: 'amplifier-unpowered',
  severity: 'error',
  summary: 'No supply reaches an amplifier that is powered along its coax.',
  why: `An amplifier without power does not pass the signal as it is: it blocks it by 20 dB and more. Let the parts in
between pass current, or put an inserter between them and the amplifier. Supplies put current on the coax: switch them
off before you screw a plug, and keep mains supplies indoors, dry and ventilated.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    const unpowered = plan.television.directCurrent.consumers.filter(
      ({ device, feeds }) => device.kind === 'amplifier' && feeds.length === 0,
    );
    if (unpowered.length === 0) return;
    const cables = cablesByConnector(site);
    for (const { device, connector, stoppedBy } of unpowered) {
      if (isInDoubt(site, cables, connector)) continue;
      const names = [...new Set(stoppedBy.map(({ name }) => name))];
      report({
        at: placeOf(device.item, ['powered-by']),
        message:
          `No supply reaches ${asName(device.name)} by ${connector.name}` +
          (names.length === 0
            ? '. Put a power inserter on that coax.'
            : `: ${list(names)} ${names.length === 1 ? 'passes' : 'pass'} no current. Set power-pass there, or put an ` +
              'inserter in front.'),
        acceptAt: [device.name, ...names],
        effects: [device],
      });
    }
  },
};

function cablesByConnector(site: Site): ReadonlyMap<Connector, readonly Cable[]> {
  const found = new Map<Connector, Cable[]>();
  for (const cable of site.cables)
    for (const end of [cable.from, cable.to]) {
      const connector = connectorAt(site, end);
      if (connector === undefined) continue;
      const own = found.get(connector);
      if (own === undefined) found.set(connector, [cable]);
      else own.push(cable);
    }
  return found;
}

/** Whether its coax has a wrong end, or shares a connector with another, which is reported there. */
function isInDoubt(site: Site, cables: ReadonlyMap<Connector, readonly Cable[]>, connector: Connector): boolean {
  const [cable] = cables.get(connector) ?? [];
  if (cable === undefined) return false;
  const ends = [cable.from, cable.to].map((end) => connectorAt(site, end));
  if (ends.some((end) => end === undefined || (cables.get(end)?.length ?? 0) > 1)) return true;
  return cable.through.some(({ device }) => !isOnCoax(site.deviceByName.get(device)?.kind));
}

function isOnCoax(kind: Device['kind']): boolean {
  return kind === 'power-inserter' || kind === 'isolator' || kind === 'earth-block';
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, powered-by: out, supply: 12 V, current: 60 mA}
#                                                                          ^^^ No supply reaches mast-amp by out: house-splitter passes no current.
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, terminated: [out-2]}
  loft-supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: house-splitter/in, type: coax-6, length: 10 m}
  - {from: house-splitter/out-1, to: loft-supply/aerial, type: coax-6, length: 1 m}
`,
    good: `
devices:
  chimney-aerial: {kind: aerial}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, powered-by: out, supply: 12 V, current: 60 mA}
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, terminated: [out-2], power-pass: [out-1]}
  loft-supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: house-splitter/in, type: coax-6, length: 10 m}
  - {from: house-splitter/out-1, to: loft-supply/aerial, type: coax-6, length: 1 m}
`,
  },
];
