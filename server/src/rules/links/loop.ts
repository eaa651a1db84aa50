import { type BridgeTree, bridgesBetween, linkBetween } from '../../network/bridge-tree.ts';
import type { Link } from '../../network/link.ts';
import { type Fix, fixOf, putValue } from '../../site/edit.ts';
import { type Device, type Site, portName } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** The usual priority of a switch that is meant to be the root. */
const ROOT = 4096;

export const loop: Rule = {
  id: 'loop',
  severity: 'error',
  showAfter: 'item',
  summary: 'Cables between switches form a loop without spanning tree.',
  why: `Broadcasts circulate in a loop for ever, more and more of them, until nothing else gets through. With
\`spanning-tree: true\` on all its switches one cable is blocked, and takes over when another fails. Or remove a
cable. Until then nobody can say what crosses which cable: the loads leave one cable out.`,
  source: 'IEEE 802.1D-2004 clause 17, rapid spanning tree',
  check({ site, network }: RuleContext, report: Report): void {
    const { domains, links: all } = network.topology;
    const order = new Map(all.map((link, index) => [link, index]));
    const found = new Set<string>();
    for (const domain of domains) {
      const tree = network.tree(domain);
      for (const link of tree.loops) {
        const { devices, links } = roundOf(tree, link);
        // VLANs share cables, so a loop of several VLANs is one loop.
        const name = links
          .map((part) => order.get(part) ?? 0)
          .sort((a, b) => a - b)
          .join();
        if (found.has(name)) continue;
        found.add(name);
        report(
          findingOf(
            site,
            link,
            devices,
            links.filter((part) => part !== link),
          ),
        );
      }
    }
  },
};

/** The switches round the loop that a link closes, in order from one of its ends to the other, and the links. */
function roundOf(tree: BridgeTree, link: Link): { devices: Device[]; links: Link[] } {
  const [a, b] = [tree.bridges.get(link.a.device), tree.bridges.get(link.b.device)];
  const bridges = (a === undefined || b === undefined ? undefined : bridgesBetween(a, b)) ?? [];
  const links = bridges.slice(1).flatMap((bridge, index) => linkBetween(bridges[index] ?? bridge, bridge) ?? []);
  return { devices: bridges.map(({ device }) => device), links: [link, ...links] };
}

function findingOf(site: Site, link: Link, devices: readonly Device[], others: readonly Link[]): Finding {
  const able = devices.filter(({ kind }) => kind !== 'media-converter');
  const without = able.filter(({ spanningTree }) => !spanningTree);
  const round = [...devices, ...devices.slice(0, 1)].map(({ name }) => name).join(', ');
  const words = list(without.map(({ name }) => asName(name)));
  return {
    at: placeOfEnd(link, link.b),
    message:
      `This cable closes a loop: ${round}. ` +
      (without.length === 0
        ? 'Remove a cable.'
        : `${words} ${without.length === 1 ? 'does' : 'do'} not run spanning tree: set \`spanning-tree: true\` ` +
          'there, or remove a cable.'),
    acceptAt: [...acceptAtPorts(link.b, link.a), ...devices.map(({ name }) => name)],
    // A consequence where cables of one aggregated link lead to several ends, which is reported.
    effects: [link, ...others].filter(({ a, b }) => a.lag !== undefined || b.lag !== undefined),
    related: others.map((other) => ({
      at: placeOfEnd(other, other.a),
      message: `${portName(other.a)} – ${portName(other.b)} is part of the loop`,
    })),
    fixes: () => fixesOf(site, able, without),
  };
}

/** Turns spanning tree on. Where all priorities are equal, the switch with the most ports is made the root. */
function fixesOf({ devices }: Site, able: readonly Device[], without: readonly Device[]): Fix[] {
  const edits = without.flatMap(({ item }) => putValue(item, 'spanning-tree', 'true'));
  const [first, ...others] = devices
    .filter((device) => able.includes(device))
    .sort((a, b) => b.ports.length - a.ports.length);
  const isChance =
    first !== undefined &&
    others.length > 0 &&
    others.every(({ spanningTreePriority }) => spanningTreePriority === first.spanningTreePriority) &&
    first.spanningTreePriority > ROOT;
  const root = isChance ? putValue(first.item, 'spanning-tree-priority', String(ROOT)) : [];
  const title = `Run spanning tree on ${list(without.map(({ name }) => asName(name)))}`;
  return root.length === 0 || edits.length === 0
    ? fixOf(title, ...edits)
    : fixOf(`${title}, with ${asName(first?.name ?? '')} as its root`, ...edits, ...root);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  barn: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  stable: {kind: switch, ports: {1-4: {}}}
cables:
  - {from: core/1, to: barn/1}
  - {from: core/2, to: stable/1}
  - {from: barn/2, to: stable/2}
#                      ^^^^^^^^ closes a loop: barn, core, stable, barn. stable does not run spanning tree
`,
    fixed: `
devices:
  core: {kind: switch, spanning-tree: true, ports: {1-4: {}}, spanning-tree-priority: 4096}
  barn: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  stable: {kind: switch, ports: {1-4: {}}, spanning-tree: true}
cables:
  - {from: core/1, to: barn/1}
  - {from: core/2, to: stable/1}
  - {from: barn/2, to: stable/2}
`,
  },
];
