import { formatAddress } from '../../standards/ipv4.ts';
import { setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { destinations, isDatagrams, isRtp, nextFreePort } from '../free/port.ts';
import type { Finding, Rule, Subject } from '../rule.ts';

export const rtcpOverlap: Rule = {
  id: 'rtcp-overlap',
  severity: 'error',
  summary: 'A stream is sent to the port that another one uses for RTCP.',
  why: `An RTP stream sends its reports, with the clock that ties sound and picture together, to the port above its own.
A second stream to that port of the same group or receiver is mixed with them. Take the next pair: an even port and the
odd one above.`,
  source: 'RFC 3550 §11, read',
  examples: [
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
  ],
  *check({ site }: Subject): Iterable<Finding> {
    const ports = new Set(site.streams.map(({ port }) => port));
    const rtcp = new Map<string, Stream>();
    for (const stream of site.streams) {
      if (stream.port === undefined || !ports.has(stream.port + 1) || !isRtp(stream)) continue;
      for (const destination of destinations(stream)) {
        const key = `${destination}:${stream.port + 1}`;
        if (!rtcp.has(key)) rtcp.set(key, stream);
      }
    }
    if (rtcp.size === 0) return;
    for (const stream of site.streams) {
      const { item, name, port } = stream;
      if (port === undefined || !isDatagrams(stream)) continue;
      const to = destinations(stream).find((destination) => rtcp.has(`${destination}:${port}`));
      const other = rtcp.get(`${to}:${port}`);
      if (to === undefined || other === undefined) continue;
      const where = typeof to === 'number' ? formatAddress(to) : to;
      yield {
        at: placeOf(item, ['port']),
        message:
          `${port} is the RTCP port of ${other.name} to ${where}, which takes ${port - 1} and ${port}. Take ` +
          'another pair.',
        about: [name],
        related: [{ at: placeOf(other.item, ['port']), message: `the port of ${other.name}` }],
        fixes: () => {
          const free = nextFreePort(site, stream, port);
          return free === undefined
            ? []
            : [
                {
                  title: `Use port ${free}, the next free pair`,
                  safe: false,
                  edits: [setValue(item, ['port'], String(free))],
                },
              ];
        },
      };
    }
  },
};
