import { portName } from '../../site/model.ts';
import { bitRate } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** bit/s: the slowest port that is still sold; common practice, no source. */
const SLOW = 100_000_000;

export const speedUnknown: Rule = {
  id: 'speed-unknown',
  severity: 'information',
  summary: 'More crosses a cable than a port of 100 Mb/s carries, and neither of its ends has a speed.',
  why: `Without a speed nobody knows whether a link carries its load. Many cameras, screens and small switches have ports of
100 Mb/s, and what needs more is lost there. Give \`speed\` at the ports of both ends; the data sheets have it.`,
  check({ site, network }: RuleContext, report: Report): void {
    const least = Math.min(site.policies.linkLoad.warn, site.policies.linkLoad.limit);
    for (const link of network.topology.links) {
      if (link.capacity !== undefined) continue;
      const { a, b } = link;
      const peak = Math.max(network.load(link, a).line.peak, network.load(link, b).line.peak);
      if (peak * 10_000 <= least * SLOW) continue;
      report({
        at: placeOfEnd(link, a),
        message:
          `Neither ${portName(a)} nor ${portName(b)} has a speed, so nobody knows whether the link bears the ` +
          `${bitRate(peak)} that cross it; a port of ${bitRate(SLOW)} would not. Give them \`speed\`.`,
        acceptAt: acceptAtPorts(a, b),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {}, 2: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
#          ^^^^^^ Neither core/1 nor paddock-cam/eth has a speed
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 80 Mb/s}, receivers: [recorder]}
`,
    good: `
devices:
  core: {kind: switch, ports: {1: {}, 2: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 80 Mb/s}, receivers: [recorder]}
`,
  },
];
