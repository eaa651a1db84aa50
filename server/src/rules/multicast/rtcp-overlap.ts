import { formatAddress } from '../../standards/ipv4.ts';
import { placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { destinations, isDatagrams, isRtp, nextFreePortFix, portsTaken } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

/** Uses of ports by their distance above the stream's port; audio beside video has the next pair. */
const USES = ['port', 'RTCP port', 'audio port', 'RTCP port of the audio'];

export const rtcpOverlap: Rule = {
  id: 'rtcp-overlap',
  severity: 'error',
  showAfter: 'value',
  summary: 'A stream is sent to the port that another one uses for RTCP or audio.',
  why: `An RTP stream sends its reports, with the clock that ties sound and picture together, to the port above its own,
and audio beside video to the next pair. A second stream to one of these of the same group or receiver is mixed with
them. Take the next pair that is free: an even port and the odd one above.`,
  source: 'RFC 3550 §11, read',
  check({ site }: RuleContext, report: Report): void {
    const ports = new Set(site.streams.map(({ port }) => port));
    const taken = new Map<string, Stream>();
    for (const stream of site.streams) {
      const { port } = stream;
      if (port === undefined || !isRtp(stream)) continue;
      for (let above = 1; above < portsTaken(site, stream); above++) {
        if (!ports.has(port + above)) continue;
        for (const destination of destinations(stream)) {
          const key = `${destination}:${port + above}`;
          if (!taken.has(key)) taken.set(key, stream);
        }
      }
    }
    if (taken.size === 0) return;
    for (const stream of site.streams) {
      const { item, name, port } = stream;
      if (port === undefined || !isDatagrams(stream)) continue;
      const isTaken = (destination: string | number): boolean =>
        (taken.get(`${destination}:${port}`) ?? stream) !== stream;
      const to = destinations(stream).find(isTaken);
      const other = taken.get(`${to}:${port}`);
      if (to === undefined || other?.port === undefined) continue;
      const where = typeof to === 'number' ? formatAddress(to) : to;
      const last = other.port + portsTaken(site, other) - 1;
      report({
        at: placeOf(item, ['port']),
        message:
          `${port} is the ${USES[port - other.port] ?? ''} of ${asName(other.name)} to ${where}, which takes ${other.port} ` +
          `${last === other.port + 1 ? 'and' : 'to'} ${last}. Take another pair.`,
        acceptAt: [name],
        related: [{ at: placeOf(other.item, ['port']), message: `the port of ${asName(other.name)}` }],
        fixes: () => nextFreePortFix(site, stream),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.31, port: 5005, receivers: [kitchen-screen]}
#                                                                               ^^^^ 5005 is the RTCP port of paddock-live to 239.192.20.31
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.32, port: 5005, receivers: [kitchen-screen]}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.31, port: 5006, receivers: [kitchen-screen]}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5005, receivers: [recorder]}
#                                                ^^^^ 5005 is the RTCP port of paddock to recorder
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5006, receivers: [recorder]}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264}, audio: {codec: pcma}, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5006, receivers: [recorder]}
#                                                ^^^^ 5006 is the audio port of paddock to recorder, which takes 5004 to 5007
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264}, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5006, receivers: [recorder]}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264}, audio: {codec: pcma}, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5008, receivers: [recorder]}
`,
  },
];
