import { type Subnet, formatSubnet, overlaps } from '../../standards/ipv4.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { receiversLostBy } from '../../network/lost.ts';
import { placeOf } from '../../site/item.ts';
import type { Vlan } from '../../site/model.ts';
import { leastWhere } from '../../text/bisect.ts';
import { few, asName } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const overlappingSubnets: Rule = {
  id: 'overlapping-subnets',
  severity: 'error',
  showAfter: 'value',
  summary: 'The subnets of two VLANs have addresses in common.',
  why: `A router has one route to an address, so of two VLANs with the same addresses it reaches only one, and hosts look
in vain for the other's on their own link. Of two overlapping subnets one is always inside the other: shrink the larger
one, or move one of them.`,
  source: 'RFC 4632 §5.1 (the longest match wins), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const clashes = clashesIn(site.vlans);
    // Computed once: there may be many clashes, and many streams.
    const lost = clashes.length === 0 ? [] : receiversLostBy(network, (why) => why.obstacle === 'not-on-link');
    // A subnet that contains several others is the wrong one.
    const holding = grouped(clashes, ({ others, total }) => (total === 1 ? others[0]?.vlan : undefined));
    // Where it is declared before those inside, only it is reported.
    const own = new Set(clashes.map(({ vlan }) => vlan));
    const wide = [...holding].flatMap(([vlan, inner]) =>
      vlan === undefined || own.has(vlan) || inner.length < 2 ? [] : aroundAll(vlan, inner),
    );
    const held = new Set(wide.flatMap(({ others }) => others.map((other) => other.vlan)));
    for (const clash of [...wide, ...clashes.filter(({ vlan }) => !held.has(vlan))]) {
      const { vlan, subnet, others, total } = clash;
      const words = others.map((other) => `${formatSubnet(other.subnet)} of ${asName(other.vlan.name)}`);
      const overlapping = (holding.get(vlan) ?? []).filter((other) => other.subnet.prefix > subnet.prefix);
      const all = [vlan, ...others.map((other) => other.vlan), ...overlapping.map((other) => other.vlan)];
      report({
        at: placeOf(vlan.item, ['subnet']),
        message:
          `${formatSubnet(subnet)} overlaps ${few(words, 2, total)}, so a router cannot tell their hosts apart. Give ` +
          'each VLAN addresses of its own.',
        acceptAt: [vlan.name],
        // A consequence where its hosts are in another subnet, which is reported.
        effects: [subnet],
        entails: [
          ...overlapping.map((other) => other.subnet),
          ...portsIn(network, all),
          ...lost.map(({ unreached }) => unreached.why).filter((why) => isBetween(why, all)),
        ],
        related: [...others, ...overlapping].map((other) => ({
          at: placeOf(other.vlan.item, ['subnet']),
          message: `the subnet of ${asName(other.vlan.name)}`,
        })),
      });
    }
  },
};

/** The clashes of a subnet that contains those of several VLANs declared after it, as by a mask that is too short. */
function aroundAll(vlan: Vlan, inner: readonly Clash[]): Clash[] {
  const { subnet } = vlan;
  if (subnet === undefined || !inner.every((one) => one.subnet.prefix > subnet.prefix)) return [];
  return [{ vlan, subnet, index: -1, others: inner, total: inner.length }];
}

/** Whether a host looks for the destination in the wrong one of the VLANs. */
function isBetween(why: Obstacle, vlans: readonly Vlan[]): boolean {
  const isOne = (name: string): boolean => vlans.some((vlan) => vlan.name === name);
  return why.obstacle === 'not-on-link' && isOne(why.network) && isOne(why.to);
}

/** Router ports in these VLANs, as routes may expect their addresses in the wrong one. */
function portsIn({ interfaces, routers }: RuleContext['network'], vlans: readonly Vlan[]): object[] {
  return routers.flatMap((device) =>
    interfaces.of(device).flatMap(({ port, domain }) => (vlans.some((vlan) => vlan === domain.vlan) ? [port] : [])),
  );
}

/** A VLAN's subnet, and the place of the VLAN in the site. */
interface Declared {
  readonly vlan: Vlan;
  readonly subnet: Subnet;
  readonly index: number;
}

interface Clash extends Declared {
  /** The first few of those declared before it. */
  readonly others: readonly Declared[];
  readonly total: number;
}

/** The most related places that are listed. */
const RELATED = 5;

/** Each VLAN whose subnet overlaps one that is declared before it, in the order of the site. */
function clashesIn(vlans: readonly Vlan[]): Clash[] {
  const declared = vlans.flatMap((vlan, index): Declared[] =>
    vlan.subnet === undefined ? [] : [{ vlan, subnet: vlan.subnet, index }],
  );
  const equal = [...grouped(declared, ({ subnet }) => formatSubnet(subnet)).values()].map((own) => ({
    own,
    subnet: own[0]?.subnet ?? { network: 0, prefix: 0 },
    within: [] as Declared[],
  }));
  equal.sort((a, b) => a.subnet.network - b.subnet.network || a.subnet.prefix - b.subnet.prefix);
  // Of two overlapping subnets one contains the other, so those that contain this one are nested, at most 32 deep.
  const around: typeof equal = [];
  const clashes: Clash[] = [];
  const holders = equal.map((one) => {
    while (around.length > 0 && !overlaps(around.at(-1)?.subnet ?? one.subnet, one.subnet)) around.pop();
    const holding = [...around];
    for (const { within } of holding) for (const inner of one.own) within.push(inner);
    around.push(one);
    return { one, holding };
  });
  for (const { one, holding } of holders) {
    const overlapping = [...holding.map(({ own }) => own), one.own, one.within.sort((a, b) => a.index - b.index)];
    for (const each of one.own) {
      const before = overlapping.map((all) => ({ all, count: leastWhere(0, all.length, isFrom(all, each.index)) }));
      const total = before.reduce((sum, { count }) => sum + count, 0);
      const others = before.flatMap(({ all, count }) => all.slice(0, Math.min(count, RELATED))).slice(0, RELATED);
      if (total > 0) clashes.push({ ...each, others, total });
    }
  }
  return clashes.sort((a, b) => a.index - b.index);
}

function isFrom(all: readonly Declared[], index: number): (at: number) => boolean {
  return (at) => (all[at]?.index ?? 0) >= index;
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.0.0/16}
  video: {id: 20, subnet: 192.168.20.0/24}
#                         ^^^^^^^^^^^^^^^ 192.168.20.0/24 overlaps 192.168.0.0/16 of house
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
`,
  },
];
