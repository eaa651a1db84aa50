import { type Fix, fixOf, remove, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Stream, isRtsp } from '../../site/model.ts';
import { nextFreePort } from '../../site/free/port.ts';
import { RTP_PORT, RTSP_PORT } from '../../standards/rtp.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const transportMismatch: Rule = {
  id: 'transport-mismatch',
  severity: 'error',
  showAfter: 'item',
  summary: 'A key of a stream does not fit its transport.',
  why: `\`rtsp\` means RTP inside the TCP connection of one receiver, and TCP has no multicast: such a stream cannot
have a group. A multiplex rate is that of a transport stream; with \`rtp\` or \`rtsp\`, video and audio are sent as
they are and it has no effect.`,
  source: 'RFC 2326 §10.12 (interleaving), from memory; RFC 2250 §2, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, transport, group, muxRate } = stream;
      const acceptAt = [name];
      if (isRtsp(transport) && group !== undefined) {
        report({
          at: placeOf(item, ['transport']),
          message:
            `${transport} is sent ${transport === 'rtsp' ? 'in TCP ' : ''}to one receiver at a time, so it has no group. Send it as rtp, or ` +
            'remove the group.',
          acceptAt,
          related: [{ at: placeOf(item, ['group']), message: 'its group' }],
          fixes: () => [
            asRtp(stream, nextFreePort(site, stream, RTP_PORT, { ...stream, transport: 'rtp' })),
            ...without(stream, 'group', 'Remove the group'),
          ],
        });
      } else if (muxRate !== undefined && (isRtsp(transport) || transport === 'rtp')) {
        report({
          at: placeOf(item, ['mux-rate'], 'key'),
          severity: 'warning',
          message:
            `${transport} has no multiplex, so the mux-rate has no effect. Remove it, or send a transport stream: ` +
            'ts-rtp or ts-udp.',
          acceptAt,
          fixes: () => without(stream, 'mux-rate', 'Remove the mux-rate'),
        });
      }
    }
  },
};

function asRtp({ item, port }: Stream, free: number | undefined): Fix {
  const edits = [setValue(item, ['transport'], 'rtp')];
  if (port === RTSP_PORT && free !== undefined) edits.push(setValue(item, ['port'], String(free)));
  return { title: 'Send it as rtp', safe: false, edits };
}

function without({ item }: Stream, key: string, title: string): Fix[] {
  const edit = remove(item, [key]);
  return fixOf(title, edit);
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtsp, port: 554, group: 239.192.20.31}
#                                             ^^^^ rtsp is sent in TCP to one receiver at a time, so it has no group
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554}
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31}
`,
  },
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31, mux-rate: 8 Mb/s}
#                                                                                    ^^^^^^^^ rtp has no multiplex
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: ts-rtp, port: 5004, group: 239.192.20.31, mux-rate: 8 Mb/s}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31}
`,
  },
];
