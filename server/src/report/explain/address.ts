/** An address: the devices that have it, and its place in its VLAN. */

import { holder } from '../../network/address-uses.ts';
import type { Plan } from '../../plan.ts';
import type { Site, Vlan } from '../../site/model.ts';
import {
  type AddressRange,
  type Subnet,
  broadcast,
  contains,
  firstHost,
  formatAddress,
  formatSubnet,
  isMulticast,
  isPrivate,
  lastHost,
  overlaps,
} from '../../standards/ipv4.ts';
import { count, few, list } from '../../text/words.ts';
import { answer } from '../answer/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { digitsGrouped } from './figure.ts';
import { groupExplained } from './group.ts';

export function addressExplained(plan: Plan, address: number): Explanation {
  if (isMulticast(address)) return groupExplained(plan, address);
  const { site, network } = plan;
  const holders = network.addressUses.filter((use) => use.address === address);
  const vlans = site.vlans.filter(({ subnet }) => subnet !== undefined && contains(subnet, address));
  const lines: ExplanationLine[] = holders.map((use) => ({
    label: holder(use),
    cells: [use.device.kind ?? 'device'],
    formula: rolesOf(site, use.device.name).join('; '),
  }));
  for (const vlan of vlans) if (vlan.subnet !== undefined) lines.push(...vlanLines(vlan, vlan.subnet, address));
  if (vlans.length === 0) lines.push({ label: 'VLAN', cells: ['none'], formula: 'no subnet of the site holds it' });
  lines.push({ label: 'kind', cells: [isPrivate(address) ? 'private' : 'not private'], source: 'RFC 1918 §3' });
  const names = [...new Set(holders.map(holder))];
  return {
    answer: answer(
      names.length === 0 ? 'no device has it' : `${list(names)} ${names.length === 1 ? 'has' : 'have'} it`,
      ...vlans.flatMap(({ subnet, name }) => (subnet === undefined ? [] : [`${placeIn(subnet, address)} in ${name}`])),
      ...vlans.flatMap(({ pool }) =>
        pool !== undefined && pool.first <= address && address <= pool.last ? ['in the DHCP pool'] : [],
      ),
    ),
    title: `${formatAddress(address)}${holders.length === 0 ? '' : `: ${list(names)}`}`,
    sentences: holders.length > 1 ? [`${count(holders.length, 'place')} have it; in a VLAN only one may.`] : [],
    columns: [],
    lines,
  };
}

function rolesOf(site: Site, device: string): string[] {
  const of = (role: string, vlans: readonly Vlan[]): string[] =>
    vlans.length === 0 ? [] : [`${role} of ${list(vlans.map(({ name }) => name))}`];
  return [
    ...of(
      'gateway',
      site.vlans.filter(({ gateway }) => gateway === device),
    ),
    ...of(
      'querier',
      site.vlans.filter(({ querier }) => querier === device),
    ),
  ];
}

function vlanLines(vlan: Vlan, subnet: Subnet, address: number): ExplanationLine[] {
  const place = placeIn(subnet, address);
  const lines: ExplanationLine[] = [
    { label: `VLAN ${vlan.name}`, cells: [formatSubnet(subnet)], formula: place, source: 'RFC 4632 §3.1' },
  ];
  const { pool } = vlan;
  if (pool !== undefined && pool.first <= address && address <= pool.last) {
    lines.push({
      label: 'DHCP pool',
      cells: ['inside'],
      formula: `${formatAddress(pool.first)} to ${formatAddress(pool.last)} may go to any host`,
    });
  }
  return lines;
}

function placeIn(subnet: Subnet, address: number): string {
  if (address === subnet.network && subnet.prefix < 31) return 'network address, which no host may have';
  if (address === broadcast(subnet) && subnet.prefix < 31) return 'broadcast address, which no host may have';
  return `host ${digitsGrouped(address - firstHost(subnet) + 1)} of ${digitsGrouped(hostsIn(subnet))}`;
}

/** The number of addresses for hosts. */
export function hostsIn(subnet: Subnet): number {
  return lastHost(subnet) - firstHost(subnet) + 1;
}

export function subnetExplained(plan: Plan, subnet: Subnet): Explanation {
  const uses = plan.network.addressUses.filter(({ address }) => contains(subnet, address));
  const vlans = plan.site.vlans.filter((vlan) => vlan.subnet !== undefined && overlaps(vlan.subnet, subnet));
  const span = (first: number, last: number): string => `${formatAddress(first)} to ${formatAddress(last)}`;
  const lines: ExplanationLine[] = isMulticast(subnet.network)
    ? [{ label: 'groups', cells: [span(subnet.network, broadcast(subnet))], source: 'RFC 5771 §3' }]
    : [
        {
          label: 'for hosts',
          cells: [{ value: hostsIn(subnet), unit: 'addresses' }],
          formula: span(firstHost(subnet), lastHost(subnet)),
          source: 'RFC 4632 §3.1',
        },
        {
          label: 'in use',
          cells: [{ value: new Set(uses.map(({ address }) => address)).size, unit: 'addresses' }],
          formula: few([...new Set(uses.map(holder))], 6),
        },
        { label: 'broadcast', cells: [formatAddress(broadcast(subnet))] },
        { label: 'VLAN', cells: [vlans.length === 0 ? 'none' : list(vlans.map(({ name }) => name))] },
      ];
  const used = new Set(uses.map(({ address }) => address)).size;
  return {
    answer: isMulticast(subnet.network)
      ? `${span(subnet.network, broadcast(subnet))}, groups of multicast`
      : answer(
          `${count(hostsIn(subnet), 'address', 'addresses')} for hosts, ${used} in use`,
          list(vlans.map(({ name }) => name)),
        ),
    title: formatSubnet(subnet),
    columns: [],
    lines,
  };
}

export function rangeExplained(plan: Plan, { first, last }: AddressRange): Explanation {
  const uses = plan.network.addressUses.filter(({ address }) => first <= address && address <= last);
  const used = new Set(uses.map(({ address }) => address)).size;
  return {
    answer: `${count(last - first + 1, 'address', 'addresses')}, ${used === 0 ? 'none' : used} declared by devices`,
    title: `${formatAddress(first)} to ${formatAddress(last)}`,
    columns: [],
    lines: [
      { label: 'in all', cells: [{ value: last - first + 1, unit: 'addresses' }] },
      {
        label: 'declared by devices',
        cells: [{ value: used, unit: 'addresses' }],
        formula: few([...new Set(uses.map(holder))], 6),
      },
    ],
  };
}
