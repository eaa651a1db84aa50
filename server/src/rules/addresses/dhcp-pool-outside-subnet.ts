import {
  type AddressRange,
  contains,
  firstHost,
  formatAddress,
  formatSubnet,
  lastHost,
  parseAddress,
} from '../../standards/ipv4.ts';
import type { AddressUse } from '../../network/address-uses.ts';
import { type Fix, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Vlan } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { textAt } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

export const dhcpPoolOutsideSubnet: Rule = {
  id: 'dhcp-pool-outside-subnet',
  severity: 'error',
  showAfter: 'value',
  summary: "A DHCP pool runs backwards, leaves its subnet, or contains the gateway's address.",
  why: `A host that is given an address from outside the subnet reaches nobody, and one that is given the address of the
gateway cuts off the whole VLAN. Keep the pool between the lowest and the highest host address of the subnet, with the
gateway and all fixed addresses outside.`,
  source: 'RFC 2131 §4.3.1, from memory; host addresses: RFC 1122 §3.2.1.3, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const gateways = new Map<string, AddressUse>();
    for (const use of network.addressUses) if (use.home?.gateway === use.device.name) gateways.set(use.home.name, use);
    for (const vlan of site.vlans) {
      const { item, name, pool, subnet } = vlan;
      const at = placeOf(item, ['dhcp-pool']);
      const acceptAt = [name];
      const turned = pool === undefined ? backwards(vlan) : undefined;
      if (turned !== undefined) {
        report({
          at,
          acceptAt,
          message: 'The pool runs backwards: write the lower address first.',
          fixes: () => [change(vlan, turned, true)],
        });
      }
      if (pool === undefined || subnet === undefined) continue;
      const inside = { first: Math.max(pool.first, firstHost(subnet)), last: Math.min(pool.last, lastHost(subnet)) };
      const gateway = gateways.get(name);
      if (inside.first !== pool.first || inside.last !== pool.last) {
        const left =
          contains(subnet, pool.first) && contains(subnet, pool.last) ? 'goes to the very ends of' : 'leaves';
        report({
          at,
          acceptAt,
          message:
            `The pool ${left} ${formatSubnet(subnet)}: hosts have ${formatAddress(firstHost(subnet))} to ` +
            `${formatAddress(lastHost(subnet))}. Keep it between them.`,
          effects: [subnet],
          related: [{ at: placeOf(item, ['subnet']), message: `the subnet of ${asName(name)}` }],
          fixes: () => (inside.first > inside.last ? [] : [change(vlan, inside, false)]),
        });
      } else if (gateway !== undefined && gateway.address >= pool.first && gateway.address <= pool.last) {
        report({
          at,
          acceptAt,
          message:
            `The pool contains ${formatAddress(gateway.address)}, the address of the gateway ${asName(gateway.device.name)}: a ` +
            'host that is given it cuts off the VLAN. Leave it out.',
          entails: [pool],
          related: [
            {
              at: placeOf(gateway.device.item, gateway.keyPath),
              message: `${asName(gateway.device.name)} has it here`,
            },
          ],
          fixes: () => {
            const below = { first: pool.first, last: gateway.address - 1 };
            const above = { first: gateway.address + 1, last: pool.last };
            const larger = below.last - below.first > above.last - above.first ? below : above;
            return larger.first > larger.last ? [] : [change(vlan, larger, false)];
          },
        });
      }
    }
  },
};

/** The range, where its ends are written in the wrong order. */
function backwards({ item }: Vlan): AddressRange | undefined {
  const { data } = item;
  const text = textAt(data, ['dhcp-pool']);
  if (text === undefined) return undefined;
  const [last, first, more] = text.split('-').map((end) => parseAddress(end.trim()));
  return first === undefined || last === undefined || more !== undefined || last <= first ? undefined : { first, last };
}

function change({ item }: Vlan, { first, last }: AddressRange, safe: boolean): Fix {
  const text = `${formatAddress(first)}-${formatAddress(last)}`;
  return { title: `Make it ${text}`, safe, edits: [setValue(item, ['dhcp-pool'], text)] };
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.200-192.168.11.99}
#                                                     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ leaves 192.168.10.0/24
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.199-192.168.20.100}
#                                                     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ runs backwards
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.200-192.168.10.254}
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.200-192.168.10.254}
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.199-192.168.20.100}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.1-192.168.10.199}
#                                                                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^ The pool contains 192.168.10.1, the address of the
devices:
  router: {kind: router, ports: {lan: {addresses: {house: 192.168.10.1}}}}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.2-192.168.10.199}
devices:
  router: {kind: router, ports: {lan: {addresses: {house: 192.168.10.1}}}}
`,
  },
];
