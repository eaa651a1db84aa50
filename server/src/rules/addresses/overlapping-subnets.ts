import { formatSubnet, overlaps } from '../../standards/ipv4.ts';
import { placeOf } from '../../site/item.ts';
import type { Vlan } from '../../site/model.ts';
import { few } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const overlappingSubnets: Rule = {
  id: 'overlapping-subnets',
  severity: 'error',
  summary: 'The subnets of two VLANs have addresses in common.',
  why: `A router has one way to an address, so of two VLANs with the same addresses it reaches one only, and hosts look
for the other's on their own link in vain. Of two subnets that overlap one lies within the other: make the larger
smaller, or move one of them.`,
  source: 'RFC 4632 §5.1 (the longest match wins), from memory',
  check({ site }: RuleContext, report: Report): void {
    const order = new Map(site.vlans.map((vlan, index) => [vlan, index]));
    const isEarlier = (a: Vlan, b: Vlan): boolean => (order.get(a) ?? 0) < (order.get(b) ?? 0);
    const bySize = site.vlans
      .flatMap((vlan) => (vlan.subnet === undefined ? [] : [{ vlan, subnet: vlan.subnet }]))
      .sort(
        (a, b) =>
          a.subnet.network - b.subnet.network ||
          a.subnet.prefix - b.subnet.prefix ||
          (isEarlier(a.vlan, b.vlan) ? -1 : 1),
      );
    const clashes = new Map<Vlan, Vlan[]>();
    const around: typeof bySize = [];
    for (const entry of bySize) {
      // Of two that overlap one holds the other, so those that hold this one are a stack.
      while (around.length > 0 && !overlaps(around[around.length - 1]?.subnet ?? entry.subnet, entry.subnet))
        around.pop();
      for (const { vlan } of around) {
        const [earlier, later] = isEarlier(vlan, entry.vlan) ? [vlan, entry.vlan] : [entry.vlan, vlan];
        const found = clashes.get(later);
        if (found === undefined) clashes.set(later, [earlier]);
        else found.push(earlier);
      }
      around.push(entry);
    }
    for (const [{ name, item, subnet }, others] of clashes) {
      if (subnet === undefined) continue;
      const words = others.flatMap((other) =>
        other.subnet === undefined ? [] : `${formatSubnet(other.subnet)} of ${other.name}`,
      );
      report({
        at: placeOf(item, ['subnet']),
        message:
          `${formatSubnet(subnet)} overlaps ${few(words)}, so a router cannot tell their hosts apart. Give each VLAN ` +
          'addresses of its own.',
        about: [name],
        related: others.map((other) => ({
          at: placeOf(other.item, ['subnet']),
          message: `the subnet of ${other.name}`,
        })),
      });
    }
  },
};

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
