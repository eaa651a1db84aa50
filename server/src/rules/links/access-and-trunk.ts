import { type Edit, type Fix, fixOf, remove, setKey } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const accessAndTrunk: Rule = {
  id: 'access-and-trunk',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A port is set as an access port and as a trunk at once, or has a native VLAN without a trunk.',
  why: `An access port is in one VLAN and its frames carry no tag; a trunk carries several, each frame tagged, and its
\`native\` VLAN alone without one. A port is one or the other. Until the site says which, a \`vlan\` beside a trunk counts as
its native VLAN, and a \`native\` without a trunk as the VLAN of an access port.`,
  source: 'IEEE 802.1Q, untagged and tagged member sets of a port (from memory)',
  check({ site }: RuleContext, report: Report): void {
    let before: Port | undefined;
    for (const port of site.ports) {
      // The ports of a range have one entry.
      const isSame = before?.device === port.device && before.keyPath[1] === port.keyPath[1];
      before = port;
      if (isSame) continue;
      const { device, keyPath, vlan, trunk, native } = port;
      const name = portName(port);
      const acceptAt = [name, device.name];
      if (trunk !== undefined && vlan !== undefined) {
        report({
          at: placeOf(device.item, [...keyPath, 'vlan']),
          message:
            `${asName(name)} has both a vlan and a trunk; it can only be one of the two. ` +
            (native === undefined
              ? `Make ${asName(vlan)} the native VLAN of the trunk, or remove one.`
              : 'Remove one.'),
          acceptAt,
          fixes: () =>
            [
              native === undefined
                ? fix(
                    `Make ${asName(vlan)} the native VLAN of the trunk`,
                    setKey(device.item, [...keyPath, 'vlan'], 'native'),
                  )
                : fix('Remove vlan', remove(device.item, [...keyPath, 'vlan'])),
              native === undefined ? fix('Remove the trunk', remove(device.item, [...keyPath, 'trunk'])) : [],
            ].flat(),
        });
      } else if (trunk === undefined && native !== undefined) {
        report({
          at: placeOf(device.item, [...keyPath, 'native']),
          message:
            `${asName(name)} has a native VLAN and no trunk. Write vlan for an access port, or say which VLANs its trunk ` +
            'carries.',
          acceptAt,
          fixes: () =>
            vlan === undefined
              ? fix(`Make it an access port of ${asName(native)}`, setKey(device.item, [...keyPath, 'native'], 'vlan'))
              : fix('Remove native', remove(device.item, [...keyPath, 'native'])),
        });
      }
    }
  },
};

function fix(title: string, edit: Edit | undefined): Fix[] {
  return fixOf(title, edit);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {vlan: house, trunk: [house, video]}}}
#                                         ^^^^^ core/16 has both a vlan and
`,
    good: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 16: {native: house, trunk: [house, video]}}}
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {16: {native: house, trunk: [house, video]}}}
`,
  },
  {
    bad: `
vlans: {house: {id: 10}}
devices:
  core: {kind: switch, ports: {1-8: {native: house}}}
#                                            ^^^^^ core/1 has a native VLAN and no trunk
`,
    fixed: `
vlans: {house: {id: 10}}
devices:
  core: {kind: switch, ports: {1-8: {vlan: house}}}
`,
  },
];
