import { MAX_PAYLOAD } from '../../standards/ethernet.ts';
import { IPV4_HEADER, UDP_HEADER } from '../../standards/internet.ts';
import { RTP_HEADER } from '../../standards/rtp.ts';
import { PACKET } from '../../standards/transport-stream.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { isDatagrams, isRtp } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const packetSize: Rule = {
  id: 'packet-size',
  severity: 'warning',
  showAfter: 'value',
  summary: 'The packets of a stream do not fit into an Ethernet frame, or split a transport stream packet.',
  why: `An Ethernet frame carries ${MAX_PAYLOAD} bytes. A larger datagram is cut into fragments: with one of them lost
the rest is of no use, and many devices drop fragments altogether. A datagram of a transport stream holds whole
packets of ${PACKET} bytes, seven as a rule. What is computed here does not count fragments.`,
  source: 'IEEE 802.3 (1500 bytes of data), RFC 791 §3.2 (fragments), RFC 2250 §2 (whole packets); from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, packetSize: size, transport } = stream;
      if (size === undefined || size === 0 || !isDatagrams(stream)) continue;
      const headers = IPV4_HEADER + UDP_HEADER + (isRtp(stream) ? RTP_HEADER : 0);
      const unit = transport === 'rtp' ? 1 : PACKET;
      const fits = size + headers <= MAX_PAYLOAD;
      if (fits && size % unit === 0) continue;
      const most = Math.floor((MAX_PAYLOAD - headers) / unit) * unit;
      const better = Math.min(most, Math.max(unit, Math.floor(size / unit) * unit));
      report({
        at: placeOf(item, ['packet-size']),
        message: fits
          ? `${size} B is not a multiple of ${unit} B, so it would split a transport stream packet. Use ` +
            `${better} B.`
          : `With ${headers} B of headers a packet of ${size} B is more than the ${MAX_PAYLOAD} B that a frame ` +
            `carries, and is cut into fragments. Take ${most} B or less.`,
        acceptAt: [name],
        fixes: () => fixOf(`Write ${better} B`, setValue(item, ['packet-size'], `${better} B`)),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, packet-size: 1500 B}
#                                                                                                 ^^^^^^ With 40 B of headers a packet of 1500 B is more than the 1500 B that a frame carries
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, packet-size: 1460 B}
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.32, port: 5004, packet-size: 1316 B}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, packet-size: 1460 B}
`,
  },
  {
    bad: `
streams:
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.32, port: 5004, packet-size: 1400 B}
#                                                                                                  ^^^^^^ 1400 B is not a multiple of
`,
    fixed: `
streams:
  paddock-tv: {source: recorder, transport: ts-udp, group: 239.192.20.32, port: 5004, packet-size: 1316 B}
`,
  },
];
