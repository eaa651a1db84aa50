/** The settings of each port of a switch, and what is plugged into it. */

import { grouped } from '../../grouped.ts';
import { perObject } from '../../memo.ts';
import { type Link, memberLinkAt, oppositePort } from '../../network/link.ts';
import { hasVlans } from '../../network/vlan-membership.ts';
import type { PoeFeed } from '../../network/poe.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type Vlan, ownAddresses } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { visible } from '../../text/visible.ts';
import { bitRate, percent, watts } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type Output, together } from '../output.ts';
import { type Cell, csv } from '../quoting/csv.ts';
import { formatMac } from '../../standards/mac.ts';
import { cautionsOf } from '../tables/cautions.ts';
import { naturally } from '../../text/natural-order.ts';
import { type Column, type SheetCell, facts, parted, sheet, sheetTable } from '../tables/sheet.ts';
import { type CableRun, cableText, cableRun, byRun, reversed } from './cable-run.ts';
import { textAt } from '../../text/syntax.ts';

export const portTable: Output = {
  kind: 'port-table',
  title: 'Port table of a switch',
  summary:
    'each port of a switch: speed, VLANs, power, what is plugged in, predicted peak load; CSV and a page to print',
  subjects: (plan) => switches(plan).map(({ name }) => name),
  make(plan, subject) {
    return together(
      switches(plan)
        .filter(({ name }) => subject === undefined || name === subject)
        .map((device) => ofSwitch(plan, device)),
    );
  },
};

function switches({ site }: Plan): Device[] {
  return site.devices
    .filter(({ kind, bridging }) => kind === 'switch' || (kind === 'router' && bridging))
    .sort((a, b) => naturally(a.name, b.name));
}

interface Row {
  readonly port: Port;
  readonly use: string;
  readonly mode: 'access' | 'trunk' | 'all VLANs' | 'no VLAN' | 'routed';
  readonly untagged: Vlan | undefined;
  readonly tagged: readonly Vlan[];
  readonly feed: PoeFeed | undefined;
  /** The cables seen from the port; several only where the site plugs two into it. */
  readonly cables: readonly CableRun[];
  /** bit/s on the line, as in the report; `undefined` where the port has no link. */
  readonly peak: { readonly out: number; readonly in: number } | undefined;
}

function ofSwitch(plan: Plan, device: Device): Made {
  const refused = refusedName(device.item);
  if (refused !== undefined) return { files: [], refused: [refused], notes: [] };
  const rows = rowsOf(plan, device);
  const path = `port-table/${device.name}`;
  return {
    files: [
      { path: `${path}.csv`, text: csvOf(plan, rows) },
      { path: `${path}.html`, text: pageOf(plan, device, rows) },
    ],
    refused: [],
    notes: [],
  };
}

function rowsOf(plan: Plan, device: Device): Row[] {
  const { network } = plan;
  const cables = runsFrom(plan);
  const feeds = new Map(
    poeOf(plan)
      .get(device)
      ?.feeds.map((feed) => [feed.from, feed]),
  );
  const without = device.ports.some(hasVlans) ? 'no VLAN' : 'all VLANs';
  const ports = [...device.ports].sort((a, b) => naturally(a.name, b.name));
  return ports.map((port): Row => {
    const { untagged, tagged } = network.topology.vlanMembershipOf(port);
    const link = network.topology.linkAt(port);
    const peak = (at: Link, out: Port): number => network.load(at, out).line.peak;
    return {
      port,
      use: textAt(device.item.data, [...port.keyPath, 'description']) ?? '',
      mode: modeOf(port, without),
      untagged: untagged?.vlan,
      tagged: tagged
        .flatMap(({ vlan }) => vlan ?? [])
        .sort((a, b) => (a.id ?? 0) - (b.id ?? 0) || naturally(a.name, b.name)),
      feed: feeds.get(port),
      cables: [...(cables.get(port) ?? [])].sort(byRun),
      peak: link === undefined ? undefined : { out: peak(link, port), in: peak(link, oppositePort(link, port)) },
    };
  });
}

/** The cables of a site as seen from each port. */
const runsFrom = perObject((plan: Plan): ReadonlyMap<Port, CableRun[]> => {
  const runs = plan.site.cables.flatMap((cable) => {
    const run = cableRun(plan, cable);
    return [run, reversed(run)];
  });
  return grouped(runs, ({ here }) => here.port);
});

/** PoE sources by their device. */
const poeOf = perObject(({ poe }: Plan) => new Map(poe.map((source) => [source.device, source])));

/** VLANs by the name of their querier. */
const askedBy = perObject(({ site }: Plan) => grouped(site.vlans, ({ querier }) => querier));

/** @param without the mode of a port of which no VLAN is said, at that device */
function modeOf(port: Port, without: 'no VLAN' | 'all VLANs'): Row['mode'] {
  if (!port.forwards) return 'routed';
  if (hasVlans(port)) return port.trunk === undefined ? 'access' : 'trunk';
  return without;
}

const CSV_HEAD = [
  'Switch',
  'Port',
  'For',
  'Mode',
  'Untagged VLAN',
  'Untagged ID',
  'Tagged VLANs',
  'Tagged IDs',
  'Speed (bit/s)',
  'Link speed (bit/s)',
  'PoE',
  'PoE set aside (W)',
  'Group',
  'LACP',
  'Module',
  'Cabled to',
  'Through',
  'Cable',
  'Length (m)',
  'Label',
  'Idle by spanning tree',
  'Peak out (bit/s)',
  'Peak in (bit/s)',
  'Site',
];

function csvOf({ site, network }: Plan, rows: readonly Row[]): string {
  const each = (list: readonly (string | undefined)[]): string => list.map((text) => text ?? '').join('; ');
  return csv(
    CSV_HEAD,
    rows.map(({ port, use, mode, untagged, tagged, feed, cables, peak }): Cell[] => {
      const link = network.topology.linkAt(port);
      const own = link === undefined ? undefined : memberLinkAt(link, port);
      return [
        port.device.name,
        port.name,
        use,
        mode,
        untagged?.name ?? '',
        untagged?.id ?? '',
        each(tagged.map(({ name }) => name)),
        each(tagged.map(({ id }) => String(id ?? ''))),
        port.speed ?? '',
        own?.capacity ?? '',
        port.pse ?? '',
        feed === undefined ? '' : feed.allotted / 1000,
        port.lag ?? '',
        port.lag === undefined ? '' : port.lacp,
        port.module ?? port.medium ?? '',
        each(cables.map(({ there }) => there.text)),
        each(cables.map(({ through }) => through.join(' '))),
        each(cables.map(({ cable }) => cable.type)),
        each(cables.map(({ cable }) => (cable.length === undefined ? '' : String(cable.length / 1000)))),
        each(cables.map(({ label }) => label)),
        link?.blocked === undefined ? '' : 'yes',
        peak?.out ?? '',
        peak?.in ?? '',
        site.name ?? '',
      ];
    }),
  );
}

const COLUMNS: readonly Column[] = [
  { head: 'Port', set: 'w' },
  { head: 'For' },
  { head: 'Mode' },
  { head: 'Untagged', set: 'w' },
  { head: 'Tagged' },
  { head: 'Speed', set: 'w' },
  { head: 'PoE', set: 'w' },
  { head: 'Cabled to' },
  { head: 'Label', set: 'w' },
  { head: 'Cable', set: 'w' },
  { head: 'Peak out', set: 'n' },
  { head: 'Peak in', set: 'n' },
];

function pageOf(plan: Plan, device: Device, rows: readonly Row[]): string {
  const { site, network } = plan;
  const body = sheetTable(
    COLUMNS,
    rows.map(({ port, use, mode, untagged, tagged, feed, cables, peak }): SheetCell[] => {
      const link = network.topology.linkAt(port);
      const load = (amount: number | undefined): SheetCell =>
        amount === undefined
          ? ''
          : amount === 0
            ? '0'
            : parted(bitRate(amount), link?.capacity === undefined ? '' : percent(amount, link.capacity));
      return [
        port.name,
        use,
        parted(
          mode,
          port.lag === undefined ? '' : `group ${port.lag}${port.lacp === 'off' ? '' : `, LACP ${port.lacp}`}`,
        ),
        vlanText(untagged),
        commaParted(tagged.map(vlanText)),
        speedText(port, link === undefined ? undefined : memberLinkAt(link, port)?.capacity),
        poeText(port, feed),
        parted(...cables.flatMap(cableTo), link?.blocked === undefined ? '' : '(kept idle by spanning tree)'),
        known(cables.map(({ label }) => label)),
        known(cables.map(({ cable }) => cableText(cable))),
        load(peak?.out),
        load(peak?.in),
      ];
    }),
    (row) => (rows[row]?.cables.length === 0 ? 'free' : ''),
  );
  const used = new Set(rows.flatMap(({ cables }) => cables.map(({ cable }) => cable)));
  return sheet(site, {
    title: `Ports of ${visible(device.name, 100)}`,
    command: `make port-table ${device.name}`,
    cautions: cautionsOf(site, [...used], device.ports),
    body: `${switchFacts(plan, device)}${body}`,
  });
}

function known(texts: readonly string[]): string {
  return texts.filter((text) => text !== '').join('; ');
}

function switchFacts(plan: Plan, device: Device): string {
  const said = (key: string): string | undefined => textAt(device.item.data, [key]);
  const source = poeOf(plan).get(device);
  const asks = (askedBy(plan).get(device.name) ?? []).map(vlanText).sort(naturally);
  const mac = said('mac');
  return (
    facts(said('location'), said('model')) +
    facts(
      ...ownAddresses({ ...device, ports: [] }).map(
        ({ address, vlan }) => `Address ${formatAddress(address)}${vlan === undefined ? '' : ` in ${vlan}`}`,
      ),
      mac === undefined ? undefined : `MAC ${formatMac(mac)}`,
      `IGMP snooping ${device.snooping ? `on, unregistered multicast: ${device.unregistered}` : 'off'}`,
      asks.length === 0 ? undefined : `IGMP querier of ${asks.join(', ')}`,
      `Spanning tree ${device.spanningTree ? `on, priority ${device.spanningTreePriority}` : 'off'}`,
      source === undefined
        ? undefined
        : `PoE: ${watts(source.allotted)} set aside${source.budget === undefined ? '' : ` of ${watts(source.budget)}`}`,
    ) +
    facts(
      'Peaks are predicted, on the line: Ethernet frames with preamble and gaps; the share is of the speed of the ' +
        'link.' +
        (device.ports.some(({ pse }) => pse !== undefined)
          ? ' The watts behind a type of PoE are set aside for what is plugged in.'
          : ''),
    )
  );
}

function vlanText(vlan: Vlan | undefined): string {
  if (vlan === undefined) return '';
  return vlan.id === undefined ? vlan.name : `${vlan.name} (${vlan.id})`;
}

function commaParted(texts: readonly string[]): SheetCell {
  return parted(...texts.map((text, index) => (index < texts.length - 1 ? `${text},` : text)));
}

function speedText({ speed, module = '' }: Port, capacity: number | undefined): SheetCell {
  const own = speed === undefined ? '' : bitRate(speed);
  if (capacity === undefined || capacity === speed) return parted(own, module);
  return parted(bitRate(capacity), own === '' ? '' : `of ${own}`, module);
}

function poeText({ pse }: Port, feed: PoeFeed | undefined): string {
  return pse === undefined || feed === undefined ? (pse ?? '') : `${pse}, ${watts(feed.allotted)}`;
}

function cableTo({ there, through }: CableRun): string[] {
  return [there.text, ...through.map((panel) => `via ${panel}`)];
}
