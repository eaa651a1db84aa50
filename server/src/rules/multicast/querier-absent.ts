import { bestQuerier } from '../../network/querier.ts';
import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const querierAbsent: Rule = {
  id: 'querier-absent',
  severity: 'error',
  summary: 'The querier of a VLAN has no port in it, or is a device that cannot be one.',
  why: `The querier asks again and again who wants which group, and switches send the answers towards it. One that is
not in the VLAN is not heard there: receivers behind another switch get nothing, and all memberships end. Name a
switch or router that has a port in the VLAN.`,
  source: 'RFC 4541 §2.1.1, RFC 3376 §8, read',
  check({ site, network }: RuleContext, report: Report): void {
    if (site.cables.length === 0) return;
    for (const vlan of site.vlans) {
      const device = vlan.querier === undefined ? undefined : site.deviceByName.get(vlan.querier);
      if (device?.kind === undefined) continue;
      const silent = SILENT[device.kind];
      if (silent === undefined && network.tree(network.topology.domainOf(vlan)).querier !== undefined) continue;
      const message =
        silent !== undefined
          ? `${device.name} is a ${silent}, which asks nobody for memberships. Name a switch or router.`
          : `No cabled port of ${device.name} carries ${vlan.name}, so it asks nobody there. Name one that has such ` +
            'a port.';
      report({
        at: placeOf(vlan.item, ['querier']),
        message,
        about: [vlan.name, device.name],
        related: [{ at: headOf(device.item), message: `${device.name} is declared here` }],
        fixes: () => {
          const better = bestQuerier(site, network, network.topology.domainOf(vlan));
          if (better === undefined) return [];
          return fixOf(
            `Name ${better.name} as querier`,
            setValue(vlan.item, ['querier'], scalarText(better.name, true)),
          );
        },
      });
    }
  },
};

/** Kinds of device that are no querier; a server or computer can be made one. */
const SILENT: Readonly<Partial<Record<string, string>>> = {
  'camera': 'camera',
  'display': 'display',
  'tuner': 'tuner',
  'patch-panel': 'patch panel',
  'media-converter': 'media converter',
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: paddock-cam}
#                          ^^^^^^^^^^^ paddock-cam is a camera
  guests: {id: 30, querier: core}
#                           ^^^^ No cabled port of core carries guests
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
`,
    good: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: core}
  guests: {id: 30, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {vlan: guests}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
  guest-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: guest-screen}
`,
    fixed: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: core}
  guests: {id: 30, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
`,
  },
];
