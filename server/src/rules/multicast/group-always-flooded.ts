import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { groupMac, onAlwaysFloodedMac, sourceSpecificHeld } from '../../standards/multicast.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const groupAlwaysFlooded: Rule = {
  id: 'group-always-flooded',
  severity: 'warning',
  showAfter: 'value',
  summary: "Switches flood a group's MAC address in spite of IGMP snooping.",
  why: `The groups 224.0.0.0 to 224.0.0.255 go out of every port of a snooping switch, since routers and hosts rely on
it. Groups that end in 0.0.x or 128.0.x share their MAC addresses, and a switch that forwards by MAC address floods them
as well. Take a group with another second or third octet.`,
  source: 'RFC 4541 §2.1.2(2) and (5), RFC 1112 §6.4, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { group } = stream;
      if (group === undefined || !isMulticast(group) || !onAlwaysFloodedMac(group)) continue;
      // For these, group-reserved reports.
      if (sourceSpecificHeld(group)) continue;
      report({
        at: placeOf(stream.item, ['group']),
        message:
          `${formatAddress(group)} has the MAC address ${groupMac(group)}, which it shares with a group that every ` +
          'switch floods: it may go out of all ports. Take another group.',
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
  paddock-live: {source: recorder, transport: rtp, group: 239.128.0.31, port: 5004}
#                                                         ^^^^^^^^^^^^ 239.128.0.31 has the MAC address 01:00:5e:00:00:1f
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.0.31, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.0.1, port: 5004}
`,
  },
];
