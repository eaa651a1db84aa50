/** The rows in the boxes of the network: for each port its neighbour and the loads both ways. */

import { grouped } from '../../grouped.ts';
import { perObject } from '../../memo.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import { loadOf } from '../../network/loads.ts';
import { domainsOf, type BroadcastDomain } from '../../network/vlan-membership.ts';
import type { Plan } from '../../plan.ts';
import { sumWords } from '../../report/answer/words.ts';
import { isRateKnown } from '../../site/media.ts';
import { type Device, type Port, type Stream, portName } from '../../site/model.ts';
import { count, percent, watts } from '../../text/words.ts';
import type { Look, Name, DrawingOptions } from '../drawing.ts';
import { deviceNamed, portNamed } from '../drawing.ts';
import { drawingKindWords } from '../kind-words.ts';
import { bothLoads, lookOf } from '../load.ts';
import type { NetworkBox, PortRow } from './boxes.ts';

export interface LinkFigure {
  readonly words: string;
  /** Of the speed, to be shown as a length. */
  readonly share: number;
}

/** A line in a box. */
export interface BoxLine {
  readonly at: Name;
  readonly role: string;
  /** `16` */
  readonly port: string;
  readonly name: string;
  /** The loads out of the port and into it; none where the box at the other end shows them. */
  readonly out: LinkFigure | undefined;
  readonly into: LinkFigure | undefined;
  /** In place of figures. */
  readonly state: string;
  readonly look: Look;
  /** The same in words, for a screen reader. */
  readonly label: string;
  /** Of a link between boxes, where its line begins or ends. */
  readonly link: Link | undefined;
}

/** What is to be seen of the site. */
export interface Shown {
  readonly plan: Plan;
  readonly wanted: DrawingOptions;
  /** Whether a link is of what is wanted; the others are faded. */
  readonly has: (link: Link) => boolean;
  readonly loops: ReadonlySet<Link>;
  /** More ports than can be drawn one by one: hosts of a kind are one line. */
  readonly grouped: boolean;
}

export function shownOf(plan: Plan, wanted: DrawingOptions, grouped: boolean): Shown {
  const { network, site } = plan;
  const loops = new Set(network.topology.domains.flatMap((domain) => network.tree(domain).loops));
  const vlan = wanted.vlan === undefined ? undefined : site.vlanByName.get(wanted.vlan);
  const domain = vlan === undefined ? undefined : network.topology.domainOf(vlan);
  const stream = wanted.stream === undefined ? undefined : site.streamByName.get(wanted.stream);
  const has = (link: Link): boolean =>
    (domain === undefined || domainsOf(link).includes(domain)) &&
    (stream === undefined || [link.a, link.b].some((out) => crosses(plan, link, out, stream)));
  return { plan, wanted, has, loops, grouped };
}

function crosses({ network }: Plan, link: Link, out: Port, stream: Stream): boolean {
  return [...network.copies(link, out), ...network.waiting(link, out)].some((one) => one.stream === stream);
}

/** The words below the name of a box: the kind of device, and its role in the network. */
export function headWords({ plan }: Shown, { device }: NetworkBox): string[] {
  const { network } = plan;
  const source = powerAt(plan).get(device);
  const isRoot = device.spanningTree && network.topology.spanningTree.roots.includes(device);
  const asked = queriedBy(plan, device);
  return [
    drawingKindWords(device),
    ...(isRoot ? ['root of the spanning tree'] : []),
    ...(asked.length === 0 ? [] : [`querier of ${asked.map(({ name }) => name).join(', ')}`]),
    ...(source === undefined
      ? []
      : [
          `${source.allotted > (source.budget ?? Infinity) ? '▲ ' : ''}PoE ${watts(source.allotted)} of ${source.budget === undefined ? '?' : watts(source.budget)}`,
        ]),
  ];
}

function queriedBy({ network }: Plan, device: Device): readonly BroadcastDomain[] {
  return queriersIn(network).get(device) ?? [];
}

const queriersIn = perObject((network: Plan['network']) =>
  grouped(network.topology.domains, (domain) => (domain.vlan === undefined ? undefined : network.tree(domain).querier)),
);

const powerAt = perObject(({ poe }: Plan) => new Map(poe.map((source) => [source.device, source])));

export function linesOf(shown: Shown, box: NetworkBox, isFirst: (link: Link, device: Device) => boolean): BoxLine[] {
  const { grouped: isGrouped } = shown;
  if (!isGrouped) return box.rows.map((row) => lineOf(shown, row, isFirst(row.link, box.device)));
  const lines: BoxLine[] = [];
  const hosts: PortRow[] = [];
  for (const row of box.rows) {
    if (row.leads !== 'out') lines.push(lineOf(shown, row, isFirst(row.link, box.device)));
    else hosts.push(row);
  }
  for (const [kind, rows] of grouped(hosts, ({ far }) => far.kind ?? 'device')) {
    const [only, another] = rows;
    if (only !== undefined && another === undefined) lines.push(lineOf(shown, only, isFirst(only.link, box.device)));
    else lines.push(groupLine(shown, box, kind, rows));
  }
  return lines;
}

function lineOf(shown: Shown, row: PortRow, isTold: boolean): BoxLine {
  const { plan, wanted, loops } = shown;
  const { link, port, far, name, leads } = row;
  const { out, into } = bothLoads(plan, link, port, wanted);
  const has = shown.has(link);
  const state = stateOf(link, loops);
  const stream = wanted.stream === undefined ? undefined : plan.site.streamByName.get(wanted.stream);
  const figure = (load: typeof out, by: Port): LinkFigure =>
    stream === undefined
      ? { words: load.sign === '' ? load.words : `${load.sign} ${load.words}`, share: load.share }
      : { words: streamCountWords(shown, link, by, stream), share: 0 };
  const asked = queriedBy(plan, far);
  const role = leads === 'out' && asked.length > 0 ? ', querier' : '';
  const isWhole = isTold && state === '' && has;
  const there = figure(out, port);
  const back = figure(into, oppositePort(link, port));
  const said = isWhole ? `${there.words} out, ${back.words} in` : state === '' ? 'the same link' : state;
  return {
    at: portNamed(portName(port)),
    role: 'port',
    port: name,
    name: `${leads === 'up' ? '↑ ' : ''}${far.name}${role}`,
    out: isWhole ? there : undefined,
    into: isWhole ? back : undefined,
    state,
    look: has ? lookOfLink(link, state, isTold ? [out, into] : [], 'quiet') : 'faded',
    label: `${portName(port)} to ${portName(oppositePort(link, port))}: ${said}`,
    link: leads === 'out' ? undefined : link,
  };
}

/** The look of a link, or of a port at it. @param otherwise where nothing is the matter */
export function lookOfLink(
  { failed }: Link,
  state: string,
  loads: Parameters<typeof lookOf>[0],
  otherwise: Look,
): Look {
  if (failed) return 'lost';
  if (state === '') return lookOf(loads, otherwise);
  return state === 'blocked' ? 'idle' : 'bad';
}

/** What keeps it from carrying anything; empty where nothing does. */
export function stateOf(link: Link, loops: ReadonlySet<Link>): string {
  if (link.failed) return '✕ fails';
  if (link.blocked !== undefined) return 'blocked';
  if (loops.has(link)) return '▲ loop';
  return domainsOf(link).length === 0 ? '▲ no VLAN passes' : '';
}

/** What one stream takes in a direction. */
export function streamCountWords({ plan, wanted }: Shown, link: Link, out: Port, stream: Stream): string {
  const { network, site } = plan;
  const copies = [...network.copies(link, out), ...network.waiting(link, out)].find((one) => one.stream === stream);
  return copies === undefined
    ? '–'
    : sumWords(loadOf(copies, network.rates(stream)).line[wanted.rate], isRateKnown(site, stream));
}

function groupLine(shown: Shown, { device }: NetworkBox, kind: string, rows: readonly PortRow[]): BoxLine {
  const { plan, wanted } = shown;
  const loads = rows.map(({ link, port }) => bothLoads(plan, link, port, wanted));
  const most = (which: 'out' | 'into'): LinkFigure => {
    const share = loads.reduce((greatest, load) => Math.max(greatest, load[which].share), 0);
    const isKnown = loads.every((load) => load[which].isKnown);
    return { words: isKnown ? `≤ ${percent(share, 1)}` : share === 0 ? '?' : `≤ ${percent(share, 1)} + ?`, share };
  };
  const [out, into] = [most('out'), most('into')];
  const name = count(rows.length, kind, kind === 'switch' ? 'switches' : `${kind}s`);
  const first = rows[0];
  return {
    at: first === undefined ? deviceNamed(device.name) : portNamed(portName(first.port)),
    role: 'ports',
    port: `${first?.name ?? ''}…`,
    name,
    out,
    into,
    state: '',
    look: rows.some(({ link }) => shown.has(link))
      ? lookOf(
          loads.flatMap((load) => [load.out, load.into]),
          'quiet',
        )
      : 'faded',
    label: `${name} at ${device.name}: each ${out.words} out of its port, ${into.words} into it`,
    link: undefined,
  };
}
