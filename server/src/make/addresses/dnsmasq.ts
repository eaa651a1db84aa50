/** DHCP and names of the site for dnsmasq: dnsmasq(8). */

import { holder, macOf } from '../../network/address-uses.ts';
import type { Plan } from '../../plan.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Vlan } from '../../site/model.ts';
import { type Subnet, contains, formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { list, asName } from '../../text/words.ts';
import { visible } from '../../text/visible.ts';
import { commented, header } from '../header.ts';
import { clockAddress, gatewayAddress } from '../network/gateways.ts';
import type { Output, Refusal } from '../output.ts';
import { DOMAIN, type NamedAddress, hostNames } from './host-names.ts';

export const dnsmasq: Output = {
  kind: 'dnsmasq',
  title: 'DHCP and names: dnsmasq',
  summary: 'addresses that dnsmasq hands out, those it keeps for one device, and the names of all of them',
  subjects: () => [],
  make(plan) {
    const { named, changed, refused } = hostNames(plan);
    const all: Refusal[] = [...refused];
    const reservations = reservationsOf(named, all);
    const vlans = [...plan.site.vlans].sort((a, b) => (a.id ?? 0) - (b.id ?? 0) || (a.name < b.name ? -1 : 1));
    const text = [
      commented('#', header(plan.site, 'make dnsmasq')),
      '\n# Names that are only good at home (RFC 8375) are asked of nobody ' +
        `else.\ndomain=${DOMAIN}\nlocal=/${DOMAIN}/\n`,
      ...vlans.map((vlan) => vlanText(plan, vlan, reservations.get(vlan) ?? [], all)),
      withoutMac(named, reservations),
      named.length === 0 ? '' : `\n# Names.\n${named.map(record).join('')}`,
    ].join('');
    return { files: [{ path: 'dnsmasq.conf', text }], refused: all, notes: notesOf(changed) };
  },
};

function notesOf(changed: readonly string[]): string[] {
  return [
    'dnsmasq: put the file into /etc/dnsmasq.d and try it with `dnsmasq --test`. One DHCP server to a VLAN: ' +
      'switch off the one of the router before this one starts. It serves the VLANs that its machine has an address ' +
      'in.',
    ...(changed.length === 0
      ? []
      : [
          `dnsmasq: host names have no underscores, so that ${list(changed.map((name) => visible(name, 80)))} ` +
            `${changed.length === 1 ? 'has' : 'have'} a hyphen there.`,
        ]),
  ];
}

/** The addresses that are reserved for a MAC address, by VLAN. */
function reservationsOf(
  named: readonly NamedAddress[],
  refused: Refusal[],
): Map<Vlan, { each: NamedAddress; mac: string }[]> {
  const byVlan = new Map<Vlan, { each: NamedAddress; mac: string }[]>();
  for (const each of named) {
    const mac = macOf(each.use);
    const { home, device } = each.use;
    // A router sets its own addresses, and starts before DHCP.
    if (mac === undefined || home === undefined || device.kind === 'router') continue;
    byVlan.set(home, [...(byVlan.get(home) ?? []), { each, mac }]);
  }
  for (const [vlan, all] of byVlan) {
    const shared = (
      rule: string,
      same: (a: (typeof all)[number], b: (typeof all)[number]) => boolean,
      what: (one: (typeof all)[number]) => string,
    ): void => {
      const clashing = all.filter((one) => all.some((other) => other !== one && same(one, other)));
      for (const one of clashing) {
        const others = all.filter((other) => other !== one && same(one, other)).map(({ each }) => holder(each.use));
        refused.push({
          rule,
          at: placeOf(one.each.use.device.item, one.each.use.keyPath),
          message:
            `${what(one)} is that of ${list(others)} too, so that nothing can be kept for ${holder(one.each.use)} ` +
            `in ${asName(vlan.name)}. Give each its own.`,
        });
      }
      byVlan.set(
        vlan,
        (byVlan.get(vlan) ?? []).filter((one) => !clashing.includes(one)),
      );
    };
    shared(
      'duplicate-address',
      (a, b) => a.each.use.address === b.each.use.address,
      ({ each }) => formatAddress(each.use.address),
    );
    shared(
      'duplicate-mac',
      (a, b) => a.mac === b.mac,
      ({ mac }) => `The hardware address ${mac}`,
    );
  }
  return byVlan;
}

function vlanText(
  plan: Plan,
  vlan: Vlan,
  reservations: readonly { each: NamedAddress; mac: string }[],
  refused: Refusal[],
): string {
  const { name, subnet, pool, id } = vlan;
  if (pool === undefined && reservations.length === 0) return '';
  const why = unserved(vlan);
  if (why !== undefined) refused.push(why);
  if (why !== undefined || subnet === undefined) return '';
  const first =
    pool === undefined
      ? `${formatAddress(subnet.network)},static`
      : `${formatAddress(pool.first)},${formatAddress(pool.last)}`;
  const gateway = gatewayAddress(plan, vlan);
  const clock = clockAddress(plan, vlan);
  const lines = [
    `\n# VLAN ${name}${id === undefined ? '' : ` (${id})`}, ` +
      `${formatSubnet(subnet)}${pool === undefined ? ': only what is kept for a device' : ''}\n`,
    `dhcp-range=set:${name},${first},${mask(subnet)},12h\n`,
    // Without a value dnsmasq offers no router; without the line it would offer itself.
    `dhcp-option=tag:${name},option:router${gateway === undefined ? '' : `,${formatAddress(gateway)}`}\n`,
    ...(clock === undefined ? [] : [`dhcp-option=tag:${name},option:ntp-server,${formatAddress(clock)}\n`]),
    ...reservations.map(
      ({ each: { use, labels }, mac }) =>
        `dhcp-host=${mac},${formatAddress(use.address)},${labels[0] ?? ''}.${DOMAIN}\n`,
    ),
  ];
  return lines.join('');
}

/** Why nothing can be handed out in the VLAN; `undefined` where it can. */
export function unserved({ item, name, subnet, pool }: Vlan): Refusal | undefined {
  if (!TAG.test(name)) {
    const message = `${visible(name, 80)} is no name of a VLAN, so that nothing can be handed out in it. Rename it.`;
    return { rule: 'malformed-value', at: namePlace(item), message };
  }
  const at = placeOf(item, ['dhcp-pool']);
  if (subnet === undefined) {
    const message = `${asName(name)} has no subnet, so that no address of it can be handed out. Say its subnet.`;
    return { rule: 'not-made', isAsked: true, at, message };
  }
  if (pool === undefined || (contains(subnet, pool.first) && contains(subnet, pool.last))) return undefined;
  const message =
    `The pool of ${asName(name)} is not all inside ${formatSubnet(subnet)}, so that it cannot be handed out. Take ` +
    'addresses inside.';
  return { rule: 'dhcp-pool-outside-subnet', at, message };
}

const TAG = /^[A-Za-z0-9_-]+$/;

function mask({ prefix }: Subnet): string {
  return formatAddress(prefix === 0 ? 0 : (-1 << (32 - prefix)) >>> 0);
}

function withoutMac(
  named: readonly NamedAddress[],
  reservations: ReadonlyMap<Vlan, readonly { each: NamedAddress }[]>,
): string {
  const kept = new Set([...reservations.values()].flat().map(({ each }) => each));
  const others = named.filter((each) => !kept.has(each));
  if (others.length === 0) return '';
  const lines = others.map(({ use, labels }) => `${formatAddress(use.address)} ${labels[0] ?? ''}`);
  const reason =
    'Nothing is kept for these, which have no `mac` of their own in the site, or are routers: set the address on the ' +
    'device.';
  return `\n${commented('#', [reason, ...lines])}`;
}

/** Full names: a short one is completed by the domain that DHCP hands out. */
function record({ use, labels }: NamedAddress): string {
  return `host-record=${labels.map((label) => `${label}.${DOMAIN},`).join('')}${formatAddress(use.address)}\n`;
}
