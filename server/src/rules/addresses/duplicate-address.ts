import { formatAddress } from '../../standards/ipv4.ts';
import { type AddressUse, holder, isOutside } from '../../network/address-uses.ts';
import { receiversLostBy } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { placeOf } from '../../site/item.ts';
import { few } from '../../text/words.ts';
import { nextFreeAddressFix } from '../../site/free/address.ts';
import { firstOthers, grouped } from '../../grouped.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const duplicateAddress: Rule = {
  id: 'duplicate-address',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two devices have the same address.',
  why: `Whichever answers first gets the packets, and that changes by the minute: now one device cannot be reached, now
the other. Give each port an address of its own. The fix takes the next one that is free in the VLAN and
outside its DHCP pool; set it on the device as well.`,
  source: 'RFC 5227 §1 and §2.4, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const [address, uses] of grouped(network.addressUses, (use) => use.address)) {
      if (uses.length < 2) continue;
      // A consequence where all but one are in the wrong network, which is reported.
      const stray = uses.filter((use) => use.vlans.length > 0 && isOutside(use, use.vlans));
      const effects = uses.length - stray.length < 2 ? stray : [];
      for (const use of uses) {
        const at = placeOf(use.device.item, use.keyPath);
        const word = (): Finding => {
          const others = firstOthers(uses, use, RELATED);
          const names = few(others.map(holder), 2, uses.length - 1);
          return {
            at,
            message: `${formatAddress(address)} is also the address of ${names}. Give each an address of its own.`,
            acceptAt: [use.device.name, holder(use), formatAddress(address)],
            effects,
            entails: astrayBetween(network, uses),
            related: others.map((other) => ({
              at: placeOf(other.device.item, other.keyPath),
              message: `${holder(other)} has it here`,
            })),
            fixes: () => nextFreeAddressFix(site, use.home, use),
          };
        };
        report({ at, word });
      }
    }
  },
};

/** Deliveries that fail as one of them is the querier in place of the other. */
function astrayBetween({ deliveries }: Network, uses: readonly AddressUse[]): object[] {
  const names = new Set(uses.map(({ device }) => device.name));
  return receiversLostBy(
    { deliveries },
    (why) => why.obstacle === 'report-astray' && names.has(why.router) && names.has(why.querier),
  ).flatMap(({ unreached }) => [unreached, unreached.why]);
}

/** The most related places that are listed. */
const RELATED = 5;

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.33-192.168.20.99}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
#                                      ^^^^^^^^^^^^^ 192.168.20.31 is also the address of stable-cam
  stable-cam: {kind: camera, address: 192.168.20.31}
#                                     ^^^^^^^^^^^^^ 192.168.20.31 is also the address of paddock-cam
  yard-cam: {kind: camera, address: 192.168.20.32}
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.33-192.168.20.99}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
  stable-cam: {kind: camera, address: 192.168.20.30}
  yard-cam: {kind: camera, address: 192.168.20.32}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.33-192.168.20.99}
devices:
  paddock-cam: {kind: camera, address: 192.168.20.100}
  stable-cam: {kind: camera, address: 192.168.20.31}
  yard-cam: {kind: camera, address: 192.168.20.32}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.1.31}
#                                      ^^^^^^^^^^^^ 192.168.1.31 is also the address of stable-cam
  stable-cam: {kind: camera, address: 192.168.1.31}
#                                     ^^^^^^^^^^^^ 192.168.1.31 is also the address of paddock-cam
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, address: 192.168.1.32}
  stable-cam: {kind: camera, address: 192.168.1.31}
`,
  },
];
