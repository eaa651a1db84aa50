import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { isReserved } from '../../network/address-uses.ts';
import { placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { count, few } from '../../text/words.ts';

export const dhcpPoolTooSmall: Rule = {
  id: 'dhcp-pool-too-small',
  severity: 'warning',
  summary: 'A DHCP pool has fewer addresses than devices that need one.',
  why: `The last device gets no address and reaches nobody; after a power cut that may be a camera. The count includes the
devices in the VLAN without a fixed address, and reservations inside the pool. Phones and visitors come on
top. Make the pool larger, or give those that stay an address outside.`,
  source: 'RFC 2131 §4.3.1 (no address is offered where none is left), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const vlan of site.vlans) {
      const { item, name, pool } = vlan;
      if (pool === undefined) continue;
      const size = pool.last - pool.first + 1;
      const domain = network.topology.domainOf(vlan);
      const asking = site.devices.filter((device) => {
        const own = network.interfaces.in(device, domain);
        return own !== undefined && own.address === undefined && asksForAddress(device);
      });
      const kept = new Set(
        network.addressUses
          .filter(
            (use) => use.home === vlan && isReserved(use) && use.address >= pool.first && use.address <= pool.last,
          )
          .map(({ address }) => address),
      );
      const needed = asking.length + kept.size;
      if (needed <= size) continue;
      const reserved = kept.size === 0 ? '' : `, and ${count(kept.size, 'reservation')} in it`;
      report({
        at: placeOf(item, ['dhcp-pool']),
        message:
          `The pool has ${count(size, 'address', 'addresses')}, and ${needed} are needed: for ` +
          `${few(
            asking.map((device) => device.name),
            3,
          )}${reserved}. Make it larger, or give some an address of ` +
          'their own.',
        acceptAt: [name],
      });
    }
  },
};

/** Whether a device gets its address by DHCP: not those that run DHCP, nor those with an address to fill in. */
function asksForAddress({ kind, item }: Device): boolean {
  return kind !== 'router' && !item.mentions.some(({ text }) => text === 'auto');
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.101}
#                                                     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ The pool has 2 addresses, and 3 are needed: for gate-cam and yard-cam, and 1 reservation in it
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  gate-cam: {kind: camera}
  yard-cam: {kind: camera}
  paddock-cam: {kind: camera, address: 192.168.20.100, mac: 02:00:00:00:20:31, reserved: true}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: paddock-cam}
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.109}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  gate-cam: {kind: camera}
  yard-cam: {kind: camera}
  paddock-cam: {kind: camera, address: 192.168.20.100, mac: 02:00:00:00:20:31, reserved: true}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: paddock-cam}
`,
  },
];
