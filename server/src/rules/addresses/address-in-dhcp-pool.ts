import { formatAddress } from '../../standards/ipv4.ts';
import { holder } from '../../network/address-uses.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const addressInDhcpPool: Rule = {
  id: 'address-in-dhcp-pool',
  severity: 'warning',
  summary: 'A fixed address lies among those that a DHCP server hands out.',
  why: `The server may give the address to somebody else while the device is off, and then two have it. Take an address
outside the pool. Where the server keeps the address for this device by a reservation, accept the finding with that as
the reason.`,
  source: 'RFC 2131 §3.1 and §4.3.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const use of network.addressUses) {
      const { home, address, device } = use;
      const pool = home?.pool;
      if (home === undefined || pool === undefined || address < pool.first || address > pool.last) continue;
      // For the gateway dhcp-pool-outside-subnet reports, at the pool.
      if (home.gateway === device.name) continue;
      report({
        at: placeOf(device.item, use.route),
        message:
          `${formatAddress(address)} is in the DHCP pool of ${home.name}, ${formatAddress(pool.first)} to ` +
          `${formatAddress(pool.last)}, so somebody else may be given it. Take one outside the pool.`,
        about: [device.name, holder(use), formatAddress(address)],
        related: [{ at: placeOf(home.item, ['dhcp-pool']), message: `the DHCP pool of ${home.name}` }],
        fixes: () => nextFreeAddressFix(site, home, use),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.131}
#                                      ^^^^^^^^^^^^^^ is in the DHCP pool of video
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.200}
`,
  },
];
