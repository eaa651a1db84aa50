import { type Port, portName } from '../../site/model.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import type { DirectionLoad } from '../../network/loads.ts';
import { flowsOn, heaviestFlowWords } from '../../network/heaviest.ts';
import { grouped } from '../../grouped.ts';
import type { Network } from '../../network/network.ts';
import { type Fix, fixOf, putValue } from '../../site/edit.ts';
import { asName, bitRate, percentOver, threshold } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const linkLoad: Rule = {
  id: 'link-load',
  severity: 'error',
  summary: 'A link carries more than the policy allows.',
  why: `A link that is nearly full delays and drops packets, and multicast is never resent: pictures break up for
everyone behind it. Loads are counted at line rate, preamble and gaps included. Between \`warn\` and \`limit\` it is a
warning, above \`limit\` an error. Move streams, receivers or other traffic, prune with IGMP snooping, lower bit rates, or make the
link faster.`,
  source: 'Line rate: IEEE 802.3, as in RFC 5180 App. A.1. The thresholds of 70 % and 90 % are common practice.',
  check({ site, network }: RuleContext, report: Report): void {
    const { warn, limit } = site.policies.linkLoad;
    const least = Math.min(warn, limit);
    const found: Overloaded[] = [];
    for (const link of network.topology.links) {
      const { capacity } = link;
      if (capacity === undefined || capacity === 0) continue;
      const over = [link.a, link.b].flatMap((out): Over[] => {
        const load = network.load(link, out);
        return load.line.peak * 10_000 <= least * capacity ? [] : [{ out, load, capacity }];
      });
      // A link that is too slow in both directions is one mistake, reported for the fuller one.
      const [worse, other] = over.sort((a, b) => b.load.line.peak - a.load.line.peak);
      if (worse === undefined) continue;
      const [largest] = flowsOn(network, link, worse.out);
      const alone = largest !== undefined && largest.peak * 10_000 > least * capacity ? largest.of : undefined;
      found.push({ link, worse, other, alone });
    }
    if (found.length === 0) return;
    // A stream that is too much for several links by itself is reported at the fullest.
    const entailed = new Map<Overloaded, readonly Overloaded[]>();
    for (const [alone, along] of grouped(found, ({ alone }) => alone)) {
      const [worst, ...others] = along.sort((a, b) => filled(b) - filled(a));
      if (alone !== undefined && worst !== undefined) entailed.set(worst, others);
    }
    for (const each of found) report(findingOf({ site, network }, each, entailed.get(each) ?? []));
  },
};

/** A link that carries more than the policy allows in one or both directions. */
interface Overloaded {
  readonly link: Link;
  readonly worse: Over;
  readonly other: Over | undefined;
  /** The stream or other traffic that is too much by itself. */
  readonly alone: object | undefined;
}

function filled({ worse: { load, capacity } }: Overloaded): number {
  return load.line.peak / capacity;
}

function loadsAt({ worse, other }: Overloaded): DirectionLoad[] {
  return other === undefined ? [worse.load] : [worse.load, other.load];
}

/** A direction that carries more than the policy allows. */
interface Over {
  readonly out: Port;
  readonly load: DirectionLoad;
  /** bit/s */
  readonly capacity: number;
}

function findingOf(
  { site, network }: Pick<RuleContext, 'site' | 'network'>,
  overloaded: Overloaded,
  others: readonly Overloaded[],
): Finding {
  const { link, worse, other } = overloaded;
  const { out, load, capacity } = worse;
  const { warn, limit } = site.policies.linkLoad;
  const { line } = load;
  const isOver = line.peak * 10_000 > limit * capacity;
  const bound = isOver ? limit : warn;
  const into = oppositePort(link, out);
  const atPeak = line.peak > line.nominal ? ' at peak' : '';
  const nominal = line.peak > line.nominal ? ` (${bitRate(line.nominal)} nominal)` : '';
  const back =
    other === undefined ? '' : `, and back ${percentOver(other.load.line.peak, capacity, Math.min(warn, limit))}`;
  const than = isOver
    ? `more than the limit of ${threshold(limit)}`
    : `more than the ${threshold(warn)} that policy warns at`;
  return {
    at: placeOfEnd(link, out),
    severity: isOver ? 'error' : 'warning',
    message:
      `${portName(out)} → ${portName(into)} carries ${bitRate(line.peak)}${atPeak}, ` +
      `${percentOver(line.peak, capacity, bound)} of ${bitRate(capacity)}${nominal}; ` +
      `${heaviestFlowWords(network, link, out)}${back}. That is ${than}: move streams or lower their bit rates, or make the link faster.`,
    acceptAt: acceptAtPorts(out, into),
    related: others.map((one) => ({
      at: placeOfEnd(one.link, one.worse.out),
      message: `${portName(one.worse.out)} carries it too: ${percentOver(one.worse.load.line.peak, one.worse.capacity, Math.min(warn, limit))}`,
    })),
    effects: loadsAt(overloaded),
    entails: others.flatMap(loadsAt),
    fixes: () => shownOneAtATime(network, overloaded, limit),
  };
}

/** A screen that is said to take several streams at once, and could have the largest of them. */
function shownOneAtATime(network: Network, { link, worse: { out, capacity } }: Overloaded, limit: number): Fix[] {
  const { device } = oppositePort(link, out);
  if (device.kind !== 'display' || device.decoders !== undefined) return [];
  const [largest, ...others] = flowsOn(network, link, out);
  if (largest === undefined || others.length === 0 || largest.peak * 10_000 > limit * capacity) return [];
  return fixOf(`Say that ${asName(device.name)} shows one at a time`, ...putValue(device.item, 'decoders', '1'));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 10 Mb/s}, 2: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 10 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
#                      ^^^^^^^^^^^ paddock-cam/eth → core/1 carries 10.4 Mb/s, 104 % of 10 Mb/s; paddock
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 9.8 Mb/s}, receivers: [recorder]}
`,
    good: `
devices:
  core: {kind: switch, ports: {1: {speed: 100 Mb/s}, 2: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 9.8 Mb/s}, receivers: [recorder]}
`,
  },
  {
    // A screen that shows one of several.
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 100 Mb/s}, 2: {speed: 1 Gb/s}}}
  parlour-screen: {kind: display, speed: 100 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: parlour-screen}
#          ^^^^^^ core/1 → parlour-screen/eth carries 106 Mb/s, 106 % of 100 Mb/s
  - {from: core/2, to: recorder}
streams:
  hill: {source: recorder, transport: ts-rtp, group: 239.192.1.1, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
  sky: {source: recorder, transport: ts-rtp, group: 239.192.1.2, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1: {speed: 100 Mb/s}, 2: {speed: 1 Gb/s}}}
  parlour-screen: {kind: display, speed: 100 Mb/s, decoders: 1}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: parlour-screen}
  - {from: core/2, to: recorder}
streams:
  hill: {source: recorder, transport: ts-rtp, group: 239.192.1.1, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
  sky: {source: recorder, transport: ts-rtp, group: 239.192.1.2, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
`,
  },
];
