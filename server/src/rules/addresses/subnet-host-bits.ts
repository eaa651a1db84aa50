import { type ParsedSubnet, formatSubnet } from '../../standards/ipv4.ts';
import { setValue } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { KeyPath } from '../../text/syntax.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const subnetHostBits: Rule = {
  id: 'subnet-host-bits',
  severity: 'warning',
  showAfter: 'value',
  summary: "A subnet is written with a host's address.",
  why: `A subnet is named by its lowest address: all bits after the prefix are zero. Written with another address, it is read
as the subnet that contains it, which is most likely what is meant; but some routers reject a route written so, and it
may hide a wrong prefix.`,
  source: 'RFC 4632 §3.1, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, subnet } of site.vlans)
      if (subnet?.hostBits === true) report(finding(item, ['subnet'], subnet, name));
    for (const { item, name, routes } of site.devices) {
      for (const { to, keyPath } of routes) if (to.hostBits) report(finding(item, [...keyPath, 'to'], to, name));
    }
  },
};

/** From this prefix on only the last of the four numbers changes. */
const LAST_NUMBER = 24;

function finding(item: Item, keyPath: KeyPath, subnet: ParsedSubnet, about: string): Finding {
  const at = placeOf(item, keyPath);
  const proper = formatSubnet(subnet);
  const written = at.piece.text.slice(at.start, at.end);
  return {
    at,
    message: `${written} is a host in ${proper}; write the subnet with its lowest address.`,
    acceptAt: [about],
    // With a shorter prefix, its length may be the mistake.
    fixes: () => [
      { title: `Write ${proper}`, safe: subnet.prefix >= LAST_NUMBER, edits: [setValue(item, keyPath, proper)] },
    ],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.1/24}
#                         ^^^^^^^^^^^^^^^ 192.168.20.1/24 is a host in 192.168.20.0/24
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
`,
  },
  {
    bad: `
devices:
  recorder: {kind: server, routes: [{to: 239.192.20.0/14, port: eth}]}
#                                        ^^^^^^^^^^^^^^^ 239.192.20.0/14 is a host in 239.192.0.0/14
`,
    fixed: `
devices:
  recorder: {kind: server, routes: [{to: 239.192.0.0/14, port: eth}]}
`,
  },
];
