import { type SharedStandby, sharedStandbys } from '../../failure/shared-standby.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Place, namePlace, placeOf } from '../../site/item.ts';
import { few, list } from '../../text/words.ts';

export const standbyPath: Rule = {
  id: 'standby-path',
  severity: 'warning',
  summary: 'Two redundant paths fail together.',
  why: `A ring or a second cable is there for the day when one way is cut. Where both lie in one duct, or the
switches on both hang on one circuit or UPS, that day takes both. Lay one of them another way, or feed one from elsewhere.
Work on circuits is for licensed people, by your local code; look into no fibre end, lit or not.`,
  source: 'common practice',
  check({ plan, site, network }: RuleContext, report: Report): void {
    const isSaid = site.cables.some(({ duct }) => duct !== undefined) || site.devices.some(({ ups }) => ups);
    if (!isSaid && !site.devices.some(({ kind }) => kind === 'circuit')) return;
    for (const found of sharedStandbys({ site, network, storage: plan.storage, supply: plan.supply })) {
      const { shared, cables, devices, cutOff } = found;
      const [first, ...others] = placesOf(found);
      if (first === undefined) continue;
      const names = [...cables, ...devices].map(({ name }) => name);
      const together = cables.length > 0 ? `lie in ${shared}, and one cut takes` : `hang on ${shared}, which takes`;
      report({
        at: first,
        message:
          `${list(names)} back each other up, and all ${together} them together: ` +
          `${few(cutOff.map(({ name }) => name))} ${cutOff.length === 1 ? 'is' : 'are'} cut off then. ` +
          (cables.length > 0 ? 'Lay one of them another way.' : 'Feed one of them from elsewhere.'),
        acceptAt: [shared, ...names],
        related: others.map((at) => ({ at, message: 'this one fails with it' })),
      });
    }
  },
};

function placesOf({ cables, devices }: SharedStandby): Place[] {
  return [
    ...cables.map(({ item }) => placeOf(item, ['duct'])),
    ...devices.map((device) =>
      device.ownPower?.from === undefined ? namePlace(device.item) : placeOf(device.item, ['power', 'from']),
    ),
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 4096, ports: {1-4: {speed: 1 Gb/s}}}
  stable: {kind: switch, spanning-tree: true, ports: {1-4: {speed: 1 Gb/s}}}
  glasshouse: {kind: switch, spanning-tree: true, ports: {1-4: {speed: 1 Gb/s}}}
cables:
  - {from: core/1, to: stable/1, type: os2, length: 180 m, duct: yard-duct}
#                                                                ^^^^^^^^^ lie in yard-duct
  - {from: stable/2, to: glasshouse/2, type: os2, length: 120 m, duct: yard-duct}
  - {from: core/2, to: glasshouse/1, type: cat6a, length: 55 m}
`,
    good: `
devices:
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 4096, ports: {1-4: {speed: 1 Gb/s}}}
  stable: {kind: switch, spanning-tree: true, ports: {1-4: {speed: 1 Gb/s}}}
  glasshouse: {kind: switch, spanning-tree: true, ports: {1-4: {speed: 1 Gb/s}}}
cables:
  - {from: core/1, to: stable/1, type: os2, length: 180 m, duct: yard-duct}
  - {from: stable/2, to: glasshouse/2, type: os2, length: 120 m, duct: water-trench}
  - {from: core/2, to: glasshouse/1, type: cat6a, length: 55 m}
`,
  },
];
