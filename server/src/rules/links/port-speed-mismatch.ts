import { type Link, oppositePort } from '../../network/link.ts';
import { heaviestFlowWords } from '../../network/heaviest.ts';
import { type Policies, type Port, portName } from '../../site/model.ts';
import { bitRate, percentOver } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const portSpeedMismatch: Rule = {
  id: 'port-speed-mismatch',
  severity: 'error',
  summary: 'The two ends of a cable differ in speed, and the slower one cannot do what is asked of it.',
  why: `Over copper the two ends agree on the slower speed, which does no harm as long as it is enough: a camera of
100 Mb/s belongs on a gigabit port. Where the streams fit the faster end and not the slower one, pictures break up for
want of a faster port. Over fibre and direct attach both ends need modules of one speed, or there is no link at all.`,
  source: 'Auto-negotiation: IEEE 802.3 clause 28 (from memory). Modules: common practice, no source.',
  check(context: RuleContext, report: Report): void {
    const found: Overloaded[] = [];
    for (const link of context.network.topology.links) {
      const { a, b, cable } = link;
      if (a.speed === undefined || b.speed === undefined || a.speed === b.speed) continue;
      const ends = a.speed < b.speed ? { slower: a, faster: b } : { slower: b, faster: a };
      if (cable.type === undefined || cable.type.startsWith('cat')) {
        const finding = overloaded(context, link, ends);
        if (finding !== undefined) found.push({ slower: ends.slower, finding });
      } else apart(context, link, ends, report);
    }
    // The ports of a range have one speed.
    for (const [first, ...others] of grouped(found, ({ slower }) => rangeOf(slower)).values())
      if (first !== undefined) report(together(first, others));
  },
};

interface Overloaded {
  readonly slower: Port;
  readonly finding: Finding;
}

function rangeOf({ device, keyPath, name }: Port): object | string {
  return keyPath.length === 0 || keyPath[1] === name ? {} : [device.name, ...keyPath].join(' ');
}

function together({ finding }: Overloaded, others: readonly Overloaded[]): Finding {
  const all = others.map((other) => other.finding);
  if (all.length === 0) return finding;
  return {
    ...finding,
    acceptAt: [...new Set([finding, ...all].flatMap(({ acceptAt }) => acceptAt))],
    related: [
      ...(finding.related ?? []),
      ...others.map((other) => ({ at: other.finding.at, message: `${portName(other.slower)} is too slow as well` })),
    ],
    effects: [finding, ...all].flatMap(({ effects = [] }) => effects),
    entails: [finding, ...all].flatMap(({ entails = [] }) => entails),
  };
}

interface Ends {
  readonly slower: Port;
  readonly faster: Port;
}

/** Reports modules of different speeds. */
function apart({ network }: RuleContext, link: Link, { slower, faster }: Ends, report: Report): void {
  const { type = '' } = link.cable;
  const [low, high] = [bitRate(slower.speed ?? 0), bitRate(faster.speed ?? 0)];
  report({
    at: placeOfEnd(link, slower),
    message:
      `${portName(slower)} runs at ${low}, ${portName(faster)} at ${high}: over ${type} there is no link unless both ` +
      `have modules of one speed.`,
    acceptAt: acceptAtPorts(slower, faster),
    related: related({ slower, faster }),
    // A consequence of a group's cable in a port outside of the group, which is reported.
    effects: slower.lag === undefined && faster.lag === undefined ? [] : [link.cable],
    entails: [
      ...(slower.lag === undefined && faster.lag === undefined ? [link.cable] : []),
      network.load(link, slower),
      network.load(link, faster),
    ],
  });
}

/** A finding for streams that fit the faster end but not the slower one. */
function overloaded({ plan, site, network }: RuleContext, link: Link, { slower, faster }: Ends): Finding | undefined {
  const { limit } = site.policies.linkLoad;
  const [low, high] = [slower.speed ?? 0, faster.speed ?? 0];
  const over = [slower, faster].flatMap((out) => {
    const load = network.load(link, out);
    const bound = exceeded(site.policies, load.line.peak, low);
    if (bound === undefined) return [];
    const fits = exceeded(site.policies, load.line.peak, high) === undefined;
    // For streams that nobody behind the link asked for, flooding or querier-far reports.
    const isWanted = !plan.overloads.some((other) => other.link === link && other.out === out);
    return fits && isWanted ? [{ out, load, bound }] : [];
  });
  const [worst] = over.sort((a, b) => b.load.line.peak - a.load.line.peak);
  if (worst === undefined) return undefined;
  const { out, load, bound } = worst;
  return {
    at: placeOfEnd(link, slower),
    severity: bound === limit ? 'error' : 'warning',
    message:
      `${portName(slower)} runs at ${bitRate(low)}, so the cable carries no more, though ${portName(faster)} could do ` +
      `${bitRate(high)}: ${portName(out)} → ${portName(oppositePort(link, out))} is to carry ` +
      `${bitRate(load.line.peak)}${load.line.peak > load.line.nominal ? ' at peak' : ''}, ` +
      `${percentOver(load.line.peak, low, bound)} of ${bitRate(low)}; ${heaviestFlowWords(network, link, out)}. Take a faster port, ` +
      'or move streams or lower their bit rates.',
    acceptAt: acceptAtPorts(slower, faster),
    related: related({ slower, faster }),
    // link-load reports a stream that is too much for several links at one of them.
    effects: over.map((each) => each.load),
    entails: over.map((each) => each.load),
  };
}

/** The policy's bound that a load exceeds, in ten-thousandths; `undefined` where it exceeds none. */
function exceeded({ linkLoad: { warn, limit } }: Policies, rate: number, capacity: number): number | undefined {
  const scaled = rate * 10_000;
  return scaled > limit * capacity ? limit : scaled > warn * capacity ? warn : undefined;
}

function related({
  slower,
  faster,
}: Ends): { readonly at: ReturnType<typeof placeOfPort>; readonly message: string }[] {
  return [slower, faster].map((port) => ({
    at: placeOfPort(port, 'speed'),
    message: `${portName(port)}: ${bitRate(port.speed ?? 0)}`,
  }));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
  recorder: {kind: server, speed: 10 Mb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
#                      ^^^^^^^^ recorder/eth runs at 10 Mb/s, so the cable carries no more, though core/2 could do 1 Gb/s: core/2 → recorder/eth is to carry 12.7 Mb/s, 127 % of 10 Mb/s; paddock
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 12 Mb/s}, receivers: [recorder]}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 12 Mb/s}, receivers: [recorder]}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {speed: 10 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 1 Gb/s}}}
cables:
  - {from: core/16, to: barn/1, type: os2, length: 180 m}
#                       ^^^^^^ barn/1 runs at 1 Gb/s, core/16 at 10 Gb/s: over os2 there is no link
`,
    good: `
devices:
  core: {kind: switch, ports: {16: {speed: 1 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 1 Gb/s}}}
cables:
  - {from: core/16, to: barn/1, type: os2, length: 180 m}
`,
  },
];
