import { formatAddress } from '../../standards/ipv4.ts';
import { type AddressUse, holder, isReserved, macOf } from '../../network/address-uses.ts';
import { type Fix, addEntry, fixOf } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const addressInDhcpPool: Rule = {
  id: 'address-in-dhcp-pool',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A fixed address is in the DHCP pool.',
  why: `The server may give the address to another device while this one is off, and then two have it. Take an address
outside the pool. Where the server keeps the address for this device by a reservation, say the device's \`mac\` and
\`reserved: true\`.`,
  source: 'RFC 2131 §3.1 and §4.3.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const use of network.addressUses) {
      const { home, address, device } = use;
      const pool = home?.pool;
      if (home === undefined || pool === undefined || address < pool.first || address > pool.last) continue;
      // Without a MAC address reserved-without-mac reports.
      if (isReserved(use)) continue;
      // For the gateway dhcp-pool-outside-subnet reports, at the pool.
      if (home.gateway === device.name) continue;
      report({
        at: placeOf(device.item, use.keyPath),
        message:
          `${formatAddress(address)} is in the DHCP pool of ${asName(home.name)}, ${formatAddress(pool.first)} to ` +
          `${formatAddress(pool.last)}, so another device may be given it. Use one outside the pool, or reserve it for the device's MAC address.`,
        acceptAt: [device.name, holder(use), formatAddress(address)],
        // Where the pool includes the gateway, the pool is wrong.
        effects: [pool],
        related: [{ at: placeOf(home.item, ['dhcp-pool']), message: `the DHCP pool of ${asName(home.name)}` }],
        fixes: () => [...nextFreeAddressFix(site, home, use), ...reserve(use)],
      });
    }
  },
};

/** Reserves the address, where a MAC address is known for the DHCP server. */
function reserve(use: AddressUse): Fix[] {
  const { device, port, keyPath } = use;
  // Not in a range, where all ports would get it.
  if (macOf(use) === undefined || (port !== undefined && keyPath[0] === 'ports' && keyPath[1] !== port.name)) return [];
  const at = port === undefined ? [] : port.keyPath;
  return fixOf('Say that the DHCP server reserves it for this device', addEntry(device.item, at, 'reserved', 'true'));
}

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
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.10-192.168.10.254}
devices:
  office-pc: {kind: computer, address: 192.168.10.20, mac: 02:00:00:00:10:20}
#                                      ^^^^^^^^^^^^^ is in the DHCP pool of house
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.10-192.168.10.254}
devices:
  office-pc: {kind: computer, address: 192.168.10.20, mac: 02:00:00:00:10:20, reserved: true}
`,
  },
];
