import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { type BlockUse, blockOf, onAlwaysFloodedMac, sourceSpecificHeld } from '../../standards/multicast.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** Blocks for a site's own groups. For source-specific groups all devices must support IGMPv3. */
const FREE: readonly BlockUse[] = ['organization-local', 'local-scope', 'admin-scoped', 'ssm'];

export const groupReserved: Rule = {
  id: 'group-reserved',
  severity: 'warning',
  showAfter: 'value',
  summary: 'A group is in a block that is reserved for something else.',
  why: `Most blocks of multicast addresses are assigned to protocols or to somebody else, and network gear may treat
them in ways of its own. Worst is 224.0.0.0/24: every switch sends it everywhere, and no router forwards it. For video
in a house take 239.192.0.0/14, or 239.255.0.0/16, which never leaves the site. The rest of 239.0.0.0/8 is for local
use as well; a group there is reported only beside others in those two scopes, whose boundaries and announcements leave it
out.`,
  source: 'RFC 5771 §3–§10, RFC 2365 §6, RFC 4607 §1, RFC 6034 §3, read',
  check({ site, network }: RuleContext, report: Report): void {
    const isScoped = site.streams.some(({ group }) => group !== undefined && isMulticast(group) && isInScope(group));
    for (const stream of site.streams) {
      const { group } = stream;
      if (group === undefined || !isMulticast(group)) continue;
      const { name, use, advice, first, last } = blockOf(group);
      if (FREE.includes(use) && !sourceSpecificHeld(group)) continue;
      if (use === 'unassigned-admin' && !isScoped) continue;
      // Flooding is worse, and another group fixes both.
      if (use !== 'ssm' && onAlwaysFloodedMac(group)) continue;
      report({
        at: placeOf(stream.item, ['group']),
        severity: use === 'local-control' ? 'error' : 'warning',
        message: `${formatAddress(group)} is in ${name} (${formatAddress(first)} to ${formatAddress(last)}). ${advice}`,
        acceptAt: [stream.name],
        // Routes may lead another way for the intended group, and routers may forward it.
        entails: network
          .delivery(stream)
          .unreached.flatMap((own) =>
            own.why.obstacle === 'joins-elsewhere' || own.why.obstacle === 'link-local' ? [own, own.why] : [],
          ),
        fixes: () => nextFreeGroupFix(site, stream),
      });
    }
  },
};

/** Whether the group is in a scope that RFC 2365 names. */
function isInScope(group: number): boolean {
  const { use } = blockOf(group);
  return use === 'organization-local' || use === 'local-scope';
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 224.0.0.31, port: 5004}
#                                                         ^^^^^^^^^^ 224.0.0.31 is in Local Network Control (224.0.0.0 to 224.0.0.255)
  yard-live: {source: recorder, transport: rtp, group: 224.2.1.32, port: 5004}
#                                                      ^^^^^^^^^^ 224.2.1.32 is in SDP/SAP
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.255.20.32, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.0.1, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 224.2.1.32, port: 5004}
`,
  },
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.65.20.32, port: 5004}
#                                                      ^^^^^^^^^^^^ 239.65.20.32 is in Administratively Scoped, unassigned (239.0.0.0 to 239.191.255.255)
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.65.20.31, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.65.20.32, port: 5004}
`,
  },
];
