import { type Port, portName } from '../../site/model.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import { type Shares, sharesOf } from '../../network/shares.ts';
import { bitRate, list, percentOver, threshold } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Severity } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const aggregationLoad: Rule = {
  id: 'aggregation-load',
  severity: 'error',
  summary: 'A cable in an aggregated link carries, or may carry, more than the policy allows.',
  why: `The speeds of aggregated cables add up, but the frames of one stream all take the same cable, which a hash of their
addresses picks. What does not fit on a cable however the streams are spread is an error. Where the two greatest
would not fit together it is a warning: they may share a cable by chance, and then always do. Where only all of them on
one cable would not fit, it is worth knowing, since consecutive addresses can be spread badly. Take one faster link instead, lower
the rates of the streams, or set a hash that includes port numbers and look at the counters.`,
  source: 'IEEE 802.1AX-2020 §6.2.4 and §8 (from memory): frames of a conversation take one member of the link',
  check({ site, network }: RuleContext, report: Report): void {
    const { warn, limit } = site.policies.linkLoad;
    for (const link of network.topology.links) {
      const { capacity, members } = link;
      if (members.length < 2 || capacity === undefined || capacity === 0) continue;
      const cable = capacity / members.length;
      for (const out of [link.a, link.b]) {
        const shares = sharesOf(network, link, out);
        // A load that exceeds all cables together is reported by link-load.
        if (shares === undefined || shares.all * 10_000 > Math.min(warn, limit) * capacity) continue;
        const found = worst(shares, cable, { warn, limit });
        if (found === undefined) continue;
        report({
          at: placeOfEnd(link, out),
          severity: found.severity,
          message:
            `${portName(out)} → ${portName(oppositePort(link, out))} is one link of ${members.length} cables of ` +
            `${bitRate(cable)}, and a stream takes one of them: ${found.words}, more than ${threshold(found.bound)}.`,
          acceptAt: acceptAtPorts(out, oppositePort(link, out)),
          related: others(link, out),
        });
      }
    }
  },
};

interface Worst {
  readonly severity: Severity;
  readonly words: string;
  readonly bound: number;
}

function worst(
  { greatest, least, two, all }: Shares,
  cable: number,
  bounds: Record<'warn' | 'limit', number>,
): Worst | undefined {
  const over = (rate: number, bound: number): boolean => rate * 10_000 > bound * cable;
  const share = (rate: number, bound: number): string => `${bitRate(rate)}, ${percentOver(rate, cable, bound)} of it`;
  const { warn, limit } = bounds;
  const names = greatest.map(({ name }) => name);
  const certain = (bound: number): string =>
    least === greatest[0]?.peak
      ? `${names[0] ?? ''} alone takes ${share(least, bound)}`
      : `however the streams are spread, one carries ${share(least, bound)}`;
  if (over(least, limit)) return { severity: 'error', words: certain(limit), bound: limit };
  if (over(least, warn)) return { severity: 'warning', words: certain(warn), bound: warn };
  if (over(two, limit))
    return {
      severity: 'warning',
      words: `${names[0] === names[1] ? `two copies of ${names[0] ?? ''}` : list(names)} take ${share(two, limit)} where they meet`,
      bound: limit,
    };
  if (over(all, limit))
    return { severity: 'information', words: `if all meet on one, it carries ${share(all, limit)}`, bound: limit };
  return undefined;
}

function others(link: Link, out: Port): { at: ReturnType<typeof placeOfEnd>; message: string }[] {
  return link.members
    .filter(({ cable }) => cable !== link.cable)
    .map((member) => {
      const port = member.a.device === out.device ? member.a : member.b;
      return { at: placeOfEnd(member, port), message: `${portName(port)} is part of the link` };
    });
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: store}, 9: {speed: 10 Gb/s}}}
  recorder: {kind: server, ports: {1-2: {speed: 1 Gb/s, lag: bond0}}}
  studio: {kind: server, speed: 10 Gb/s}
cables:
  - {from: core/1, to: recorder/1}
#          ^^^^^^ core/1 → recorder/1 is one link of 2 cables of 1 Gb/s, and a stream takes one of them: gate and yard take
  - {from: core/2, to: recorder/2}
  - {from: core/9, to: studio}
streams:
  gate: {source: studio, transport: rtp, port: 5004, video: {bitrate: 500 Mb/s}, receivers: [recorder]}
  yard: {source: studio, transport: rtp, port: 5006, video: {bitrate: 500 Mb/s}, receivers: [recorder]}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: store}, 9: {speed: 10 Gb/s}}}
  recorder: {kind: server, ports: {1-2: {speed: 1 Gb/s, lag: bond0}}}
  studio: {kind: server, speed: 10 Gb/s}
cables:
  - {from: core/1, to: recorder/1}
  - {from: core/2, to: recorder/2}
  - {from: core/9, to: studio}
streams:
  gate: {source: studio, transport: rtp, port: 5004, video: {bitrate: 100 Mb/s}, receivers: [recorder]}
  yard: {source: studio, transport: rtp, port: 5006, video: {bitrate: 100 Mb/s}, receivers: [recorder]}
`,
  },
];
