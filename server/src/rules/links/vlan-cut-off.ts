import type { BridgeTree } from '../../network/bridge-tree.ts';
import { oppositePort } from '../../network/link.ts';
import { domainsOf } from '../../network/vlan-membership.ts';
import { portName } from '../../site/model.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const vlanCutOff: Rule = {
  id: 'vlan-cut-off',
  severity: 'error',
  summary: 'Spanning tree keeps a cable idle that a VLAN needs.',
  why: `Spanning tree with one instance, as most small switches run it, looks at cables and not at VLANs: it keeps one
cable of a loop idle, for all VLANs. A VLAN that only that cable carries is then in two parts. Let all cables round the
loop carry the same VLANs.`,
  source: 'IEEE 802.1D-2004 clause 17 (one tree for all VLANs), as against IEEE 802.1Q multiple spanning trees',
  check({ network }: RuleContext, report: Report): void {
    const { topology } = network;
    const peopled = new Map<BridgeTree, ReadonlySet<number>>();
    for (const link of topology.spanningTree.blocked) {
      if (link.blocked === undefined) continue;
      const other = oppositePort(link, link.blocked);
      for (const domain of domainsOf(link)) {
        const { name } = domain;
        const tree = network.tree(domain);
        let components = peopled.get(tree);
        if (components === undefined) peopled.set(tree, (components = componentsWithHosts(tree)));
        const [here, there] = [
          tree.bridges.get(link.blocked.device)?.component,
          tree.bridges.get(other.device)?.component,
        ];
        if (here === undefined || there === undefined || here === there) continue;
        if (!components.has(here) || !components.has(there)) continue;
        report({
          at: placeOfEnd(link, link.blocked),
          message:
            `Spanning tree keeps ${portName(link.blocked)} – ${portName(other)} idle, and with it ${asName(name)} is cut ` +
            `in two: no other cable carries it from ${asName(link.blocked.device.name)} to ` +
            `${asName(other.device.name)}. Let all cables ` +
            `round the loop carry ${asName(name)}.`,
          acceptAt: [...acceptAtPorts(link.blocked, other), name],
          effects: [link],
          ...consequencesOf(network.causes, [link]),
        });
      }
    }
  },
};

function componentsWithHosts({ bridges }: BridgeTree): Set<number> {
  const found = new Set<number>();
  for (const { links, component } of bridges.values()) {
    if (links.some(({ a, b }) => !a.forwards || !b.forwards)) found.add(component);
  }
  return found;
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, spanning-tree: true, ports: {1: {vlan: video}, 15: {trunk: [house]}, 16: {trunk: [video]}}}
  barn: {kind: switch, spanning-tree: true, ports: {1: {vlan: video}, 15: {trunk: [house]}, 16: {trunk: [video]}}}
  recorder: {kind: server}
  paddock-cam: {kind: camera}
cables:
  - {from: core/15, to: barn/15}
  - {from: core/16, to: barn/16}
#          ^^^^^^^ Spanning tree keeps core/16 – barn/16 idle, and with it video is cut in two
  - {from: core/1, to: recorder}
  - {from: barn/1, to: paddock-cam}
`,
    good: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, spanning-tree: true, ports: {1: {vlan: video}, 15: {trunk: [house, video]}, 16: {trunk: [house, video]}}}
  barn: {kind: switch, spanning-tree: true, ports: {1: {vlan: video}, 15: {trunk: [house, video]}, 16: {trunk: [house, video]}}}
  recorder: {kind: server}
  paddock-cam: {kind: camera}
cables:
  - {from: core/15, to: barn/15}
  - {from: core/16, to: barn/16}
  - {from: core/1, to: recorder}
  - {from: barn/1, to: paddock-cam}
`,
  },
];
