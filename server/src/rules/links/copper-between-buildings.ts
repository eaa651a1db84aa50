import { cableDevices, isCopper } from '../../site/cable.ts';
import { type Fix, fixOf, setValue } from '../../site/edit.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { placeOf } from '../../site/item.ts';
import { type Cable, type Device, type Site, connectorAt, portAt } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const copperBetweenBuildings: Rule = {
  id: 'copper-between-buildings',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A copper cable joins two buildings.',
  why: `Each building has an earth of its own. Copper between them carries the difference, and the surge of a nearby lightning
strike, into both: equipment dies, and whoever touches it can be hurt. Glass joins no earths, so fibre is the
usual choice, with power for what is behind it from its own building; a cable with metal in its sheath or a strain wire
is no better than copper. Where copper has to be, surge protection and bonding at both ends are work for licensed people,
and the local code says how. Parts of a house that share one earth are one building here. Look into no fibre end, lit or
not. Work in trenches, on roofs and at earth rods has dangers of its own.`,
  source: 'Common practice; IEC 62305-4 and TIA-607 treat it (from memory, neither was read)',
  check({ site }: RuleContext, report: Report): void {
    if (site.devices.every(({ building }) => building === undefined)) return;
    for (const cable of site.cables) {
      // coax-between-buildings reports a coax for television.
      if (connectorAt(site, cable.from) !== undefined && connectorAt(site, cable.to) !== undefined) continue;
      const placed = cableDevices(site, cable).filter(({ building }) => building !== undefined);
      const buildings = [...new Set(placed.flatMap(({ building }) => building ?? []))];
      const copper = buildings.length < 2 ? false : isCopper(site, cable);
      if (copper === false) continue;
      const between = list(buildings);
      report({
        at: placeOf(cable.item, cable.type === undefined ? ['from'] : ['type']),
        ...(copper === 'unknown' && { severity: 'information' as const }),
        message:
          (copper === 'unknown'
            ? `This cable joins ${between}, and does not say its type. If it is copper, it joins two earths and `
            : `This cable joins ${between} by copper: it joins two earths and `) +
          'brings in the surge of lightning nearby, which can harm people and equipment. Lay fibre, or have it ' +
          'protected and bonded at both ends as the local code asks.',
        acceptAt: acceptAtItem(cable.item),
        effects: [cable],
        related: places(placed),
        fixes: () => fixesOf(site, cable),
      });
    }
  },
};

/** The first device of each building. */
function places(devices: readonly Device[]): { at: ReturnType<typeof placeOf>; message: string }[] {
  const first = devices.filter(
    ({ building }, index) => devices.findIndex((one) => one.building === building) === index,
  );
  return first.map(({ item, name, building }) => ({
    at: placeOf(item, ['building'], 'value'),
    message: `${asName(name)} is in ${building ?? ''}`,
  }));
}

/** Changes the cable to fibre, where it carries no PoE. */
function fixesOf(site: Site, { item, type, from, to }: Cable): Fix[] {
  const isPowered = [from, to].some((end) => portAt(site, end)?.pd !== undefined);
  return type === undefined || isPowered ? [] : fixOf('Take single-mode fibre (os2)', setValue(item, ['type'], 'os2'));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, building: farmhouse, ports: {1-8: {speed: 1 Gb/s}}}
  stable: {kind: switch, building: stable, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/8, to: stable/8, type: cat6, length: 60 m}
#                                      ^^^^ This cable joins farmhouse and stable by copper: it joins two earths
`,
    fixed: `
devices:
  core: {kind: switch, building: farmhouse, ports: {1-8: {speed: 1 Gb/s}}}
  stable: {kind: switch, building: stable, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/8, to: stable/8, type: os2, length: 60 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, building: farmhouse, ports: {1-8: {speed: 1 Gb/s}}}
  stable: {kind: switch, building: stable, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/8, to: stable/8, length: 60 m}
#          ^^^^^^ This cable joins farmhouse and stable, and does not say its type. If it is copper
`,
    good: `
devices:
  core: {kind: switch, building: farmhouse, ports: {1-8: {speed: 1 Gb/s}}}
  glasshouse: {kind: switch, building: farmhouse, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/8, to: glasshouse/8, type: cat6, length: 60 m}
`,
  },
];
