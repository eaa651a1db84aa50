/** The load of a link in one direction: the sum of its streams' copies. */

import { type Link, oppositePort } from '../../network/link.ts';
import { type Counts, loadOf } from '../../network/loads.ts';
import { sharesOf } from '../../network/shares.ts';
import type { Network } from '../../network/network.ts';
import type { CrossingRates, Load } from '../../network/rates.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type Stream, portName } from '../../site/model.ts';
import { lastMemberQueryTime } from '../../standards/igmp.ts';
import { bitRate, count, few, list, percent } from '../../text/words.ts';
import { type Explanation, type ExplanationLine, RATES } from './explanation.ts';
import { type Figure, rates } from './figure.ts';
import { WIRE_WORDS, type WireKind } from './stream.ts';

/** `core/16 → barn/1` */
export function directionName(link: Link, out: Port): string {
  return `${portName(out)} → ${portName(oppositePort(link, out))}`;
}

/**
 * The load of a link in the direction that leaves by `out`. Beyond `most` streams, the greatest have a line each and
 * the others share one.
 */
export function directionExplained(
  plan: Plan,
  link: Link,
  out: Port,
  kind: WireKind = 'line',
  most = Infinity,
): Explanation {
  const title = `${directionName(link, out)}: ${WIRE_WORDS[kind]}`;
  if (link.blocked !== undefined && plan.network.copies(link, out).length === 0) {
    return {
      title,
      sentences: [`Spanning tree blocks it at ${portName(link.blocked)}.`],
      columns: RATES,
      lines: [],
      total: total(plan, link, out, kind),
    };
  }
  const { network } = plan;
  const lines = [
    ...network
      .copies(link, out)
      .flatMap((copies) => lineOfCopies(copies.stream.name, copies, network.rates(copies.stream), kind)),
    ...network
      .trafficCopies(link, out)
      .flatMap((copies) => lineOfCopies(copies.traffic.name, copies, copies.rates, kind, 'other traffic')),
  ];
  const load = network.load(link, out)[kind];
  return {
    title,
    sentences: [
      ...saysOfLoad(link, load),
      ...saysOfCables(plan, link, out),
      ...saysOfChoice(plan, link, out, kind),
      ...(link.blocked === undefined ? [] : [`Spanning tree blocks it at ${portName(link.blocked)}.`]),
    ],
    columns: RATES,
    lines: folded(lines, most),
    total: total(plan, link, out, kind),
    ...(kind === 'line' && link.capacity !== undefined && { after: [shareLine(link.capacity, load)] }),
  };
}

/** One stream's part of a link's load. */
export function shareExplained(
  plan: Plan,
  link: Link,
  out: Port,
  name: string,
  kind: WireKind,
): Explanation | undefined {
  const copies = plan.network.copies(link, out).find(({ stream }) => stream.name === name);
  if (copies === undefined) return undefined;
  const own = plan.network.rates(copies.stream);
  const lines = lineOfCopies(name, copies, own, kind);
  const sum = (part: keyof Load): number =>
    partsOf(copies, own, kind).reduce((all, { count: number, load }) => all + number * load[part], 0);
  return {
    title: `${directionName(link, out)}: ${WIRE_WORDS[kind]} of ${name}`,
    columns: RATES,
    lines,
    total: { label: name, cells: rates({ nominal: sum('nominal'), peak: sum('peak') }) },
  };
}

/** The speed that a link runs at. */
export function capacityExplained(link: Link): Explanation {
  const line = (port: Port): ExplanationLine => ({
    label: portName(port),
    cells: [port.speed === undefined ? 'no speed declared' : { value: port.speed, unit: 'b/s' }],
    formula: 'as declared',
  });
  return {
    title: `${directionName(link, link.a)}: speed`,
    columns: [],
    lines: link.members.flatMap(({ a, b }) => [line(a), line(b)]),
    total: {
      label: 'speed',
      cells: [link.capacity === undefined ? 'unknown' : { value: link.capacity, unit: 'b/s' }],
      formula: link.members.length === 1 ? 'the lower of the two' : 'the lower of the two, of each cable together',
    },
  };
}

function total(plan: Plan, link: Link, out: Port, kind: WireKind): ExplanationLine {
  return { label: 'in all', cells: rates(plan.network.load(link, out)[kind]) };
}

function saysOfLoad({ capacity }: Link, load: Load): string[] {
  if (load.peak === 0) return ['Nothing crosses it in this direction.'];
  const of = (rate: number): string =>
    capacity === undefined || capacity === 0 ? '' : `, ${percent(rate, capacity)} of ${bitRate(capacity)}`;
  const nominal = load.nominal === load.peak ? '' : `; ${bitRate(load.nominal)} nominal`;
  return [`${bitRate(load.peak)}${load.nominal === load.peak ? '' : ' at peak'}${of(load.peak)}${nominal}.`];
}

/** The cables of an aggregated link, and the load that one of them may have to carry. */
function saysOfCables({ network }: Plan, link: Link, out: Port): string[] {
  const shares = sharesOf(network, link, out);
  if (shares === undefined) return [];
  const { members, capacity } = link;
  const ends = members.map(({ a, b }) => portName(a.device === out.device ? a : b));
  const speed = capacity === undefined ? '' : ` of ${bitRate(capacity / members.length)}`;
  const words = `${members.length} cables${speed} are one link (IEEE 802.1AX): ${list(ends)}.`;
  const [greatest] = shares.greatest;
  if (greatest === undefined) return [words];
  return [
    words,
    `A stream takes one of them, which a hash chooses: the fullest carries at least ${bitRate(shares.least)}, and ` +
      `${bitRate(shares.all)} if all meet there; ${greatest.name} alone takes ${bitRate(greatest.peak)}.`,
  ];
}

/** The screens that choose streams on the link, and the load for a moment while they change. */
function saysOfChoice({ network }: Plan, link: Link, out: Port, kind: WireKind): string[] {
  const waiting = network.waiting(link, out);
  if (waiting.length === 0) return [];
  const screens = [...network.choices.decoders].filter(([screen]) =>
    waiting.some(({ stream }) => receives(network, screen, stream)),
  );
  const shows = screens.map(([{ name }, decoders]) => `${name} shows ${count(decoders, 'stream')} at a time`);
  const largest = Math.max(...waiting.map((copies) => loadOf(copies, network.rates(copies.stream))[kind].peak));
  const names = waiting.map(({ stream }) => stream.name);
  return [
    `${list(shows)}, so the largest that can be shown together count, and ${few(names, 6)} not.`,
    `For up to ${lastMemberQueryTime()} s after a change the stream before may still come (RFC 3376 §8.10): ` +
      `then it is up to ${bitRate(network.load(link, out)[kind].peak + largest)}.`,
  ];
}

function receives({ choices }: Network, { name }: Device, { group, receivers }: Stream): boolean {
  return (
    receivers.includes(name) ||
    (group !== undefined && [...(choices.screens.get(group) ?? [])].some((screen) => screen.name === name))
  );
}

function shareLine(capacity: number, load: Load): ExplanationLine {
  const share = (part: keyof Load): Figure => ({
    value: capacity === 0 ? 0 : (load[part] / capacity) * 100,
    unit: '%',
  });
  return { label: 'of the speed', cells: [share('nominal'), share('peak')], formula: `of ${bitRate(capacity)}` };
}

/** The copies of a stream by their frames, and the rate of one copy. */
function partsOf(
  copies: Counts,
  own: CrossingRates,
  kind: WireKind,
  bothWays = false,
): { count: number; load: Load; words: string }[] {
  // A stream's replies have no payload.
  const back = kind === 'payload' && !bothWays ? { nominal: 0, peak: 0 } : undefined;
  return [
    { count: copies.untagged, load: own.untagged[kind], words: '' },
    { count: copies.tagged, load: own.tagged[kind], words: 'with a VLAN tag' },
    { count: copies.repliesUntagged, load: back ?? own.reply.untagged[kind], words: 'back to the source' },
    {
      count: copies.repliesTagged,
      load: back ?? own.reply.tagged[kind],
      words: 'back to the source, with a VLAN tag',
    },
  ].filter(({ count: number }) => number > 0);
}

function lineOfCopies(label: string, copies: Counts, own: CrossingRates, kind: WireKind, what = ''): ExplanationLine[] {
  return partsOf(copies, own, kind, what !== '').map(({ count: number, load, words }) => ({
    label,
    cells: rates({ nominal: number * load.nominal, peak: number * load.peak }),
    formula: [what, [number === 1 ? '' : count(number, 'copy', 'copies'), words].filter(isSaid).join(' ')]
      .filter(isSaid)
      .join(', '),
  }));
}

function isSaid(words: string): boolean {
  return words !== '';
}

/** The greatest at peak, in the order of the lines, and one line for the others. */
function folded(lines: readonly ExplanationLine[], most: number): readonly ExplanationLine[] {
  if (lines.length <= most) return lines;
  const value = ({ cells }: ExplanationLine, index: number): number => {
    const cell = cells[index];
    return typeof cell === 'object' ? cell.value : 0;
  };
  const greatest = new Set([...lines].sort((a, b) => value(b, 1) - value(a, 1)).slice(0, most - 1));
  const others = lines.filter((line) => !greatest.has(line));
  const sum = (index: number): number => others.reduce((all, line) => all + value(line, index), 0);
  return [
    ...lines.filter((line) => greatest.has(line)),
    { label: `${others.length} others`, cells: rates({ nominal: sum(0), peak: sum(1) }), formula: 'together' },
  ];
}
