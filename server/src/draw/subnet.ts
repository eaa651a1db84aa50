/** The addresses of a VLAN's subnet as a map: who has which, and what is free. */

import type { AddressUse } from '../network/address-uses.ts';
import type { Plan } from '../plan.ts';
import { vlanAnswer } from '../report/answer/vlan.ts';
import { type Vlan, portName } from '../site/model.ts';
import {
  type ParsedSubnet,
  broadcast,
  contains,
  firstHost,
  formatAddress,
  formatSubnet,
  lastHost,
} from '../standards/ipv4.ts';
import { count, list } from '../text/words.ts';
import {
  type DrawingKind,
  type Look,
  type Mark,
  type Name,
  type Point,
  type Row,
  deviceNamed,
  portNamed,
} from './drawing.ts';
import { words } from './words.ts';

export const subnetMap: DrawingKind = {
  kind: 'subnet',
  title: 'Addresses of a subnet',
  summary: 'the addresses of a VLAN as a map: who has which, the DHCP pool, what is free',
  subjects: ({ site }) => site.vlans.filter(({ subnet }) => subnet !== undefined).map(({ name }) => name),
  draw(plan, subject) {
    const vlan = plan.site.vlanByName.get(subject);
    if (vlan?.subnet === undefined) throw new Error(`${subject} is not a VLAN of this site with a subnet`);
    const { subnet } = vlan;
    const uses = usesIn(plan, subnet);
    const blocks = blocksOf(vlan, subnet, uses);
    const shown = blocks.slice(0, MOST);
    const hidden = 2 ** (32 - subnet.prefix) / BLOCK - shown.length;
    return {
      title: `Addresses of ${vlan.name}, ${formatSubnet(subnet)}`,
      description: `${vlanAnswer(plan, vlan)}.${hidden >= 1 ? ` ${count(hidden, 'block')} of 256 addresses with none in use ${hidden === 1 ? 'is' : 'are'} left out.` : ''}`,
      ...mapOf({ plan, vlan, subnet, uses }, shown),
      tables: [
        {
          title: 'Addresses in use',
          head: ['Address', 'Device', 'At'],
          rows: [...uses].flatMap(([address, all]) => all.map((use) => rowOf(address, use))),
        },
      ],
    };
  },
};

const BLOCK = 256;
/** Blocks that are drawn. */
const MOST = 8;
/** A part of a block, so that rows begin at the same places in each. */
const COLUMNS = 8;
const CELL = { width: 122, height: 38, gap: 4 };
/** The height of rows that are only words. */
const LINE = 24;
const MARGIN = 16;
const HEAD = 30;
const SMALL = 11;

/** Who has each address, in their order. */
function usesIn({ network }: Plan, subnet: ParsedSubnet): ReadonlyMap<number, readonly AddressUse[]> {
  const found = new Map<number, AddressUse[]>();
  const inside = network.addressUses.filter(({ address }) => contains(subnet, address));
  for (const use of inside.sort((a, b) => a.address - b.address))
    found.set(use.address, [...(found.get(use.address) ?? []), use]);
  return found;
}

/** First addresses of blocks with something in them; the first of all where none has. */
function blocksOf({ pool }: Vlan, { network: first }: ParsedSubnet, uses: ReadonlyMap<number, unknown>): number[] {
  const blockOf = (address: number): number => address - (address % BLOCK);
  const taken = [...uses.keys(), ...(pool === undefined ? [] : [pool.first, pool.last])].map(blockOf);
  const blocks = [...new Set(taken)].sort((a, b) => a - b);
  return blocks.length === 0 ? [blockOf(first)] : blocks;
}

interface Site {
  readonly plan: Plan;
  readonly vlan: Vlan;
  readonly subnet: ParsedSubnet;
  readonly uses: ReadonlyMap<number, readonly AddressUse[]>;
}

function mapOf(of: Site, blocks: readonly number[]): { width: number; height: number; marks: Mark[] } {
  const { subnet } = of;
  const marks: Mark[] = [];
  let y = MARGIN;
  for (const block of blocks) {
    const first = Math.max(block, subnet.network);
    const last = Math.min(block + BLOCK - 1, broadcast(subnet));
    marks.push(words(`${formatAddress(first)} – .${last % BLOCK}`, MARGIN, y + 14, { size: 13, strong: true }));
    y += HEAD;
    for (const row of rowsOf(of, first, last)) {
      if (row.all !== undefined) {
        const said = `.${row.first % BLOCK} – .${row.last % BLOCK}: ${row.last - row.first + 1} ${row.all}`;
        marks.push(words(said, MARGIN + 5, y + 14, { size: SMALL, look: 'quiet' }));
        y += LINE;
        continue;
      }
      for (let address = row.first; address <= row.last; address++) {
        const x = MARGIN + (address % COLUMNS) * (CELL.width + CELL.gap);
        marks.push(...cell(of, address, { x, y }));
      }
      y += CELL.height + CELL.gap;
    }
    y += MARGIN;
  }
  return { width: 2 * MARGIN + COLUMNS * (CELL.width + CELL.gap) - CELL.gap, height: y, marks };
}

/** Addresses side by side, or several rows of which all are the same. */
interface MapRow {
  readonly first: number;
  readonly last: number;
  readonly all: 'free' | 'in the pool' | undefined;
}

function rowsOf(of: Site, first: number, last: number): MapRow[] {
  const rows: MapRow[] = [];
  for (let start = first; start <= last;) {
    const end = Math.min(last, start - (start % COLUMNS) + COLUMNS - 1);
    const states = new Set<string>();
    for (let address = start; address <= end; address++)
      states.add(of.uses.has(address) ? 'used' : stateOf(of, address, []).says);
    const [state, another] = states;
    const all =
      another !== undefined ? undefined : state === '' ? 'free' : state === 'pool' ? 'in the pool' : undefined;
    const before = rows.at(-1);
    if (before !== undefined && all !== undefined && before.all === all)
      rows[rows.length - 1] = { ...before, last: end };
    else rows.push({ first: start, last: end, all });
    start = end + 1;
  }
  return rows;
}

function cell(of: Site, address: number, { x, y }: Point): Mark[] {
  const { plan, vlan, uses } = of;
  const all = uses.get(address) ?? [];
  const { look, says } = stateOf(of, address, all);
  const marks: Mark[] = [
    ...(look === 'quiet'
      ? []
      : [{ mark: 'box', x, y, width: CELL.width, height: CELL.height, look, round: 3 } as const]),
    words(`.${address % BLOCK}`, x + 5, y + 14, {
      size: SMALL,
      look: look === 'plain' || look === 'bad' ? 'plain' : 'quiet',
    }),
    ...(says === ''
      ? []
      : [
          words(says, x + 5, y + 30, {
            size: SMALL,
            maxWidth: CELL.width - 10,
            look: look === 'bad' ? 'bad' : 'plain',
          }),
        ]),
  ];
  const [first] = all;
  if (first === undefined) return marks;
  const who = list(all.map((use) => nameOf(use).name));
  const isGateway = vlan.gateway !== undefined && all.some(({ device }) => device.name === vlan.gateway);
  const isQuerier = plan.network.tree(plan.network.topology.domainOf(vlan)).querier;
  const roles = [
    ...(isGateway ? ['gateway'] : []),
    ...(all.some(({ device }) => device === isQuerier) ? ['querier'] : []),
  ];
  const label = [`${formatAddress(address)}: ${who}`, ...roles, ...(look === 'bad' ? [says] : [])].join(', ');
  return [{ mark: 'thing', at: nameOf(first), role: 'address', label, marks }];
}

function stateOf(
  { subnet, vlan: { pool } }: Site,
  address: number,
  uses: readonly AddressUse[],
): { look: Look; says: string } {
  const [first, another] = uses;
  if (first !== undefined && another !== undefined) return { look: 'bad', says: `▲ ${uses.length} ×` };
  if (first !== undefined) return { look: 'plain', says: first.device.name };
  if (address < firstHost(subnet)) return { look: 'quiet', says: 'network' };
  if (address > lastHost(subnet)) return { look: 'quiet', says: 'broadcast' };
  return pool !== undefined && pool.first <= address && address <= pool.last
    ? { look: 'faded', says: 'pool' }
    : { look: 'quiet', says: '' };
}

function nameOf({ device, port }: AddressUse): Name {
  return port === undefined ? deviceNamed(device.name) : portNamed(portName(port));
}

function rowOf(address: number, use: AddressUse): Row {
  return {
    things: [nameOf(use)],
    cells: [formatAddress(address), { names: [deviceNamed(use.device.name)] }, { names: [nameOf(use)] }],
  };
}
