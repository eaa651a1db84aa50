import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { blockOf, scopeRelativeReserved } from '../../standards/multicast.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const groupScopeRelative: Rule = {
  id: 'group-scope-relative',
  severity: 'warning',
  showAfter: 'value',
  summary: 'A group is in the highest /24 of its scope, which is reserved for protocols.',
  why: `The highest 256 groups of a scope are assigned by their distance from its end, the same in every scope: the last
one is where sessions are announced (SAP). A stream there collides with the traffic of such protocols. Use a lower group.`,
  source: 'RFC 2365 §9, RFC 2974 §3, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { group } = stream;
      if (group === undefined || !isMulticast(group) || !scopeRelativeReserved(group)) continue;
      const { name, last } = blockOf(group);
      const what =
        group === last
          ? `where sessions are announced in ${name} (SAP)`
          : `among the highest 256 groups of ${name}, which are kept for protocols`;
      report({
        at: placeOf(stream.item, ['group']),
        message: `${formatAddress(group)} is ${what}. Take a lower group.`,
        acceptAt: [stream.name],
        fixes: () => nextFreeGroupFix(site, stream),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.195.255.255, port: 5004}
#                                                         ^^^^^^^^^^^^^^^ 239.195.255.255 is where sessions are announced
  yard-live: {source: recorder, transport: rtp, group: 239.255.255.32, port: 5004}
#                                                      ^^^^^^^^^^^^^^ 239.255.255.32 is among the highest 256 groups of IPv4 Local Scope
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.195.254.255, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.0.1, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.255.255.32, port: 5004}
`,
  },
];
