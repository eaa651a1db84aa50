import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { holder, isReserved, macOf } from '../../network/address-uses.ts';
import { placeOf } from '../../site/item.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { formatAddress } from '../../standards/ipv4.ts';

export const reservedWithoutMac: Rule = {
  id: 'reserved-without-mac',
  severity: 'warning',
  showAfter: 'item',
  summary: 'An address is reserved for a device without a hardware address.',
  why: `A DHCP server recognises a device by its hardware address, so without one it can reserve nothing for it, and \`make
dnsmasq\` leaves the device out. It is on the label; write it as \`mac\`.`,
  source: 'RFC 2131 §4.2 (the client is known by its identifier or its hardware address), from memory',
  check({ network }: RuleContext, report: Report): void {
    for (const use of network.addressUses) {
      if (!isReserved(use) || macOf(use) !== undefined) continue;
      const { device, port } = use;
      // A MAC address in the wrong form is reported there.
      if (hasShapeProblem(device.item, [...(port?.keyPath ?? []), 'mac'])) continue;
      report({
        at: placeOf(device.item, [...(port?.keyPath ?? []), 'reserved']),
        message:
          `${formatAddress(use.address)} is reserved for ${holder(use)}, which has no hardware address here, so ` +
          'no DHCP server can reserve it. Give its mac.',
        acceptAt: [device.name, holder(use), formatAddress(use.address)],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.10-192.168.10.254}
devices:
  office-pc: {kind: computer, address: 192.168.10.20, reserved: true}
#                                                               ^^^^ 192.168.10.20 is reserved for office-pc, which has no hardware address here
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.10-192.168.10.254}
devices:
  office-pc: {kind: computer, address: 192.168.10.20, mac: 02:00:00:00:10:20, reserved: true}
`,
  },
];
