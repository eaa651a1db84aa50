import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import { contains, formatSubnet, parseSubnet } from '../../standards/ipv4.ts';

/** Address blocks that a house may use, with their source. */
const OWN = ['10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', '100.64.0.0/10', '169.254.0.0/16', '192.0.2.0/24']
  .concat(['198.51.100.0/24', '203.0.113.0/24', '198.18.0.0/15'])
  .flatMap((text) => parseSubnet(text) ?? []);

export const subnetPublic: Rule = {
  id: 'subnet-public',
  severity: 'warning',
  showAfter: 'value',
  summary: 'A VLAN uses addresses that belong to somebody on the Internet.',
  why: `Hosts in the VLAN look for those addresses on their own link, so their real owners on the Internet cannot be reached
from the house. Take a subnet of 10.0.0.0/8, 172.16.0.0/12 or 192.168.0.0/16. If the addresses are yours, accept the
finding with the reason.`,
  source: 'RFC 1918 §3, read; RFC 6598 §7, RFC 3927 §2.1, RFC 5737 §3 and RFC 2544 App. C.2.2, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, subnet } of site.vlans) {
      if (subnet === undefined || OWN.some((own) => own.prefix <= subnet.prefix && contains(own, subnet.network)))
        continue;
      report({
        at: placeOf(item, ['subnet']),
        message:
          `${formatSubnet(subnet)} is not a private network: others have these addresses on the ` +
          'Internet. Take a subnet of 10.0.0.0/8, 172.16.0.0/12 or 192.168.0.0/16.',
        acceptAt: [name],
        // A consequence where its hosts are in another subnet, which is reported.
        effects: [subnet],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.186.20.0/24}
#                         ^^^^^^^^^^^^^^^ 192.186.20.0/24 is not a private network: others have
  house: {id: 10, subnet: 172.32.10.0/24}
#                         ^^^^^^^^^^^^^^ 172.32.10.0/24 is not a private network: others have
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
  house: {id: 10, subnet: 172.31.10.0/24}
  tests: {id: 30, subnet: 10.0.0.0/8}
`,
  },
];
