/** Who has which address in which VLAN, what is free, and which groups are in use. */

import { type AddressUse, holder, isReserved, macOf } from '../../network/address-uses.ts';
import { html } from '../../report/page/cells.ts';
import type { Plan } from '../../plan.ts';
import type { Stream, Vlan } from '../../site/model.ts';
import { type AddressRange, firstHost, formatAddress, formatSubnet, lastHost } from '../../standards/ipv4.ts';
import { visible } from '../../text/visible.ts';
import type { Output } from '../output.ts';
import { gatewayAddress } from '../network/gateways.ts';
import { type Cell, csv } from '../quoting/csv.ts';
import { naturally } from '../../text/natural-order.ts';
import { type Column, facts, parted, sheet, sheetTable } from '../tables/sheet.ts';
import { textAt } from '../../text/syntax.ts';

export const addressPlan: Output = {
  kind: 'address-plan',
  title: 'Address plan',
  summary:
    'for each VLAN its addresses in order, the pool and what is free, and the groups of streams; CSV and a page to ' +
    'print',
  subjects: () => [],
  make(plan) {
    const parts = partsOf(plan);
    const streams = groupsOf(plan);
    if (parts.length === 0 && streams.length === 0) return { files: [], refused: [], notes: [] };
    const files = [
      { path: 'address-plan.csv', text: addressCsv(plan, parts) },
      { path: 'group-plan.csv', text: groupCsv(plan, streams) },
      { path: 'address-plan.html', text: pageOf(plan, parts, streams) },
    ];
    return { files, refused: [], notes: [] };
  },
};

/** The addresses of a VLAN, or those outside of every VLAN's subnet. */
interface Part {
  readonly vlan: Vlan | undefined;
  readonly rows: readonly Row[];
  /** Addresses that more than one device has. */
  readonly shared: ReadonlySet<number>;
}

interface Row extends AddressRange {
  readonly what: 'address' | 'pool' | 'free';
  readonly use: AddressUse | undefined;
}

function partsOf({ site, network }: Plan): Part[] {
  const uses = network.addressUses;
  const vlans = [...site.vlans].sort((a, b) => (a.id ?? Infinity) - (b.id ?? Infinity) || naturally(a.name, b.name));
  const parts = [...vlans, undefined].map((vlan): Part => {
    const own = uses
      .filter(({ home }) => home === vlan)
      .map((use): Row => ({ what: 'address', first: use.address, last: use.address, use }));
    const rows = [...own, ...(vlan === undefined ? [] : rangesOf(vlan, own))].sort(byAddress);
    return { vlan, rows, shared: repeated(own.map(({ first }) => first)) };
  });
  return parts.filter(({ vlan, rows }) => vlan !== undefined || rows.length > 0);
}

function repeated(numbers: readonly number[]): ReadonlySet<number> {
  const seen = new Set<number>();
  return new Set(numbers.filter((each) => seen.size === seen.add(each).size));
}

function byAddress(a: Row, b: Row): number {
  return a.first - b.first || b.last - a.last || naturally(nameOf(a), nameOf(b));
}

function nameOf({ use }: Row): string {
  return use === undefined ? '' : holder(use);
}

/** The pool, and the free ranges beside it and the addresses of devices. */
function rangesOf({ subnet, pool }: Vlan, taken: readonly AddressRange[]): Row[] {
  if (subnet === undefined) return [];
  const all: AddressRange[] = [...taken, ...(pool === undefined ? [] : [pool])].sort((a, b) => a.first - b.first);
  const free: Row[] = [];
  let next = firstHost(subnet);
  const last = lastHost(subnet);
  for (const range of all) {
    if (range.first > next)
      free.push({ what: 'free', first: next, last: Math.min(range.first - 1, last), use: undefined });
    next = Math.max(next, range.last + 1);
  }
  if (next <= last) free.push({ what: 'free', first: next, last, use: undefined });
  return [...free, ...(pool === undefined ? [] : [{ what: 'pool' as const, ...pool, use: undefined }])];
}

function remark(plan: Plan, { vlan, shared }: Part, { what, use, first, last }: Row): string {
  if (what === 'pool') return `DHCP pool of ${last - first + 1}`;
  if (what === 'free') return `${last - first + 1} free`;
  const roles = [
    vlan !== undefined && use?.device.name === vlan.gateway && gatewayAddress(plan, vlan) === first ? 'gateway' : '',
    vlan !== undefined && use?.device.name === vlan.querier ? 'IGMP querier' : '',
    vlan?.pool !== undefined && first >= vlan.pool.first && first <= vlan.pool.last ? 'inside the DHCP pool' : '',
    use !== undefined && isReserved(use) ? 'reserved' : '',
    shared.has(first) ? 'given more than once' : '',
  ];
  return roles.filter((role) => role !== '').join(', ');
}

function addressCsv(plan: Plan, parts: readonly Part[]): string {
  const records = parts.flatMap((part) =>
    part.rows.map((row): Cell[] => [
      part.vlan?.name ?? '',
      part.vlan?.id ?? '',
      part.vlan?.subnet === undefined ? '' : formatSubnet(part.vlan.subnet),
      row.what,
      formatAddress(row.first),
      formatAddress(row.last),
      nameOf(row),
      row.use?.device.kind ?? '',
      row.use === undefined ? '' : (macOf(row.use) ?? ''),
      remark(plan, part, row),
      plan.site.name ?? '',
    ]),
  );
  return csv(['VLAN', 'ID', 'Subnet', 'What', 'First', 'Last', 'Name', 'Kind', 'MAC', 'Remark', 'Site'], records);
}

const COLUMNS: readonly Column[] = [
  { head: 'Address', set: 'w' },
  { head: 'Name', set: 'w' },
  { head: 'Kind', set: 'w' },
  { head: 'MAC', set: 'w' },
  { head: 'Where' },
  { head: 'Remark' },
];

function pageOf(plan: Plan, parts: readonly Part[], streams: readonly Stream[]): string {
  const sections = parts.map((part) => {
    const { vlan, rows } = part;
    const cells = rows.map((row) => [
      row.first === row.last
        ? formatAddress(row.first)
        : parted(`${formatAddress(row.first)} –`, formatAddress(row.last)),
      nameOf(row),
      row.use?.device.kind?.replace('-', ' ') ?? '',
      row.use === undefined ? '' : (macOf(row.use) ?? ''),
      row.use === undefined ? '' : (textAt(row.use.device.item.data, ['location']) ?? ''),
      remark(plan, part, row),
    ]);
    const title =
      vlan === undefined
        ? 'In the subnet of no VLAN'
        : `${visible(vlan.name, 100)}${vlan.id === undefined ? '' : `, VLAN ${vlan.id}`}`;
    const known = vlan === undefined ? '' : vlanFacts(plan, vlan, rows);
    const classOf = (row: number): string => (rows[row]?.what === 'address' ? '' : 'free');
    const table = rows.length === 0 ? '' : sheetTable(COLUMNS, cells, classOf);
    return `<section>\n<h2>${html(title)}</h2>\n${known}${table}</section>\n`;
  });
  return sheet(plan.site, {
    title: 'Address plan',
    command: 'make address-plan',
    cautions: [],
    upright: true,
    body: sections.join('') + groupSection(plan, streams),
  });
}

function vlanFacts(plan: Plan, vlan: Vlan, rows: readonly Row[]): string {
  const gateway = gatewayAddress(plan, vlan);
  const free = rows.filter(({ what }) => what === 'free').reduce((sum, { first, last }) => sum + last - first + 1, 0);
  return facts(
    vlan.subnet === undefined ? 'no subnet' : formatSubnet(vlan.subnet),
    vlan.gateway === undefined
      ? 'no gateway'
      : `gateway ${visible(vlan.gateway, 100)}${gateway === undefined ? '' : `, ${formatAddress(gateway)}`}`,
    vlan.pool === undefined
      ? 'no DHCP pool'
      : `DHCP pool ${formatAddress(vlan.pool.first)} – ${formatAddress(vlan.pool.last)}`,
    vlan.subnet === undefined ? undefined : `${free} free`,
    textAt(vlan.item.data, ['description']),
  );
}

function groupsOf({ site }: Plan): Stream[] {
  return site.streams
    .filter(({ group }) => group !== undefined)
    .sort((a, b) => (a.group ?? 0) - (b.group ?? 0) || (a.port ?? 0) - (b.port ?? 0) || naturally(a.name, b.name));
}

function networksOf({ network }: Plan, stream: Stream): string {
  return network
    .delivery(stream)
    .domains.map(({ name }) => name)
    .sort(naturally)
    .join(', ');
}

function groupCsv(plan: Plan, streams: readonly Stream[]): string {
  const records = streams.map((stream): Cell[] => {
    const { name, group, port, transport, ttl, source, receivers } = stream;
    return [
      group === undefined ? '' : formatAddress(group),
      port ?? '',
      name,
      transport ?? '',
      ttl,
      source ?? '',
      [...receivers].sort(naturally).join('; '),
      networksOf(plan, stream),
      plan.site.name ?? '',
    ];
  });
  return csv(['Group', 'Port', 'Stream', 'Transport', 'TTL', 'Source', 'Receivers', 'Networks', 'Site'], records);
}

const GROUP_COLUMNS: readonly Column[] = [
  { head: 'Group', set: 'w' },
  { head: 'Port', set: 'n' },
  { head: 'Stream', set: 'w' },
  { head: 'Transport', set: 'w' },
  { head: 'From', set: 'w' },
  { head: 'To' },
  { head: 'In', set: 'w' },
];

function groupSection(plan: Plan, streams: readonly Stream[]): string {
  if (streams.length === 0) return '';
  const rows = streams.map((stream) => [
    stream.group === undefined ? '' : formatAddress(stream.group),
    stream.port === undefined ? '' : String(stream.port),
    stream.name,
    stream.transport ?? '',
    stream.source ?? '',
    [...stream.receivers].sort(naturally).join(', '),
    networksOf(plan, stream),
  ]);
  return `<section>\n<h2>Multicast groups</h2>\n${sheetTable(GROUP_COLUMNS, rows)}</section>\n`;
}
