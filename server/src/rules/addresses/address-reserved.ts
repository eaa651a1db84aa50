import { broadcast, firstHost, formatAddress, formatSubnet, lastHost, whyNotHost } from '../../standards/ipv4.ts';
import { holder } from '../../network/address-uses.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const addressReserved: Rule = {
  id: 'address-reserved',
  severity: 'error',
  showAfter: 'value',
  summary: 'A device has the network or broadcast address of its subnet, or one that no host can have.',
  why: `The lowest address of a subnet names the subnet itself, and the highest all of its hosts, so no host can have
either; most devices refuse it. A /31 or /32 has neither. Addresses in 0.0.0.0/8 and
127.0.0.0/8, multicast groups and everything above them are never host addresses.`,
  source: 'RFC 1122 §3.2.1.3, from memory; /31: RFC 3021 §2.1–2.2, read',
  check({ site, network }: RuleContext, report: Report): void {
    for (const use of network.addressUses) {
      const { home, address, device } = use;
      const special = whyNotHost(address);
      if (special !== undefined) {
        report({
          at: placeOf(device.item, use.keyPath),
          message: `${formatAddress(address)} ${special}, so ${asName(device.name)} cannot have it. Take another address.`,
          acceptAt: [device.name, holder(use), formatAddress(address)],
          fixes: () => nextFreeAddressFix(site, home ?? use.vlans[0], use),
        });
        continue;
      }
      const subnet = home?.subnet;
      if (home === undefined || subnet === undefined || (address >= firstHost(subnet) && address <= lastHost(subnet)))
        continue;
      const which = address === broadcast(subnet) ? 'broadcast' : 'network';
      report({
        at: placeOf(device.item, use.keyPath),
        message:
          `${formatAddress(address)} is the ${which} address of ${asName(home.name)}, ${formatSubnet(subnet)}. Hosts have ` +
          `${formatAddress(firstHost(subnet))} to ${formatAddress(lastHost(subnet))}.`,
        acceptAt: [device.name, holder(use), formatAddress(address)],
        related: [{ at: placeOf(home.item, ['subnet']), message: `the subnet of ${asName(home.name)}` }],
        fixes: () => nextFreeAddressFix(site, home, use),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.0}
#                                      ^^^^^^^^^^^^ 192.168.20.0 is the network address of video
  stable-cam: {kind: camera, address: 192.168.20.255}
#                                     ^^^^^^^^^^^^^^ 192.168.20.255 is the broadcast address of video
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/31}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.0}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.1}
  stable-cam: {kind: camera, address: 192.168.20.255}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 239.192.20.31}
#                                      ^^^^^^^^^^^^^ 239.192.20.31 is a multicast group, so paddock-cam cannot have it
  stable-cam: {kind: camera, address: 0.0.0.0}
#                                     ^^^^^^^ 0.0.0.0 stands for a host that has no address yet
`,
    good: `
devices:
  paddock-cam: {kind: camera, address: 223.255.255.254}
  stable-cam: {kind: camera, address: 1.0.0.1}
`,
  },
];
