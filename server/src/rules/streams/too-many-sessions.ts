import { rtspAddressOf } from '../../site/rtsp-address.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { grouped } from '../../grouped.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type Site, type Stream, isRtsp } from '../../site/model.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { count, list, asName } from '../../text/words.ts';

export const tooManySessions: Rule = {
  id: 'too-many-sessions',
  severity: 'error',
  showAfter: 'item',
  summary: 'More receivers pull from a device than it serves at once.',
  why: `A camera sends a copy for each session, and refuses one too many: whoever comes last, perhaps the recorder after a
restart, gets nothing. Let a server pull the stream once and send it on, or take a receiver out. A
screen with \`decoders\` counts for as many streams as it shows at a time.`,
  source: 'common practice; the figure stands in the papers of the device',
  check({ site }: RuleContext, report: Report): void {
    const pulled = site.streams.filter(({ transport, source }) => source !== undefined && isPulled(transport));
    for (const [source, streams] of grouped(pulled, (stream) => stream.source)) {
      const device = source === undefined ? undefined : site.deviceByName.get(source);
      if (device?.sessions === undefined) continue;
      const sessions = sessionsOf(site, device, streams);
      const number = [...sessions.values()].reduce((sum, each) => sum + each, 0);
      if (number <= device.sessions) continue;
      const same = sharing(streams);
      const apart = sessionsOf(
        site,
        device,
        streams.filter((stream) => !same.includes(stream)),
      );
      const isMended = [...apart.values()].reduce((sum, each) => sum + each, 0) <= device.sessions;
      const who = [...sessions].map(([name, each]) => (each === 1 ? name : `${name} (${each})`));
      report({
        at: placeOf(device.item, ['sessions']),
        message:
          `${asName(device.name)} serves ${count(device.sessions, 'session')} at once, but ${list(who)} pull ${number}: ` +
          'whoever comes last gets nothing. Let a server pull it once and send it on.',
        acceptAt: [device.name, ...streams.map(({ name }) => name)],
        // A consequence of duplicate streams that use up sessions, which are reported.
        effects: isMended ? same : [],
        related: streams.flatMap((stream) =>
          stream.receivers.map((receiver) => ({
            at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
            message: `${asName(receiver)} pulls ${asName(stream.name)}`,
          })),
        ),
      });
    }
  },
};

/** Streams with the same address as an earlier one. */
function sharing(streams: readonly Stream[]): Stream[] {
  return [...grouped(streams, rtspAddressOf).values()].flatMap((alike) => alike.slice(1));
}

function isPulled(transport: Stream['transport']): boolean {
  return isRtsp(transport);
}

/** How many sessions each receiver has at a time. */
function sessionsOf(site: Site, source: Device, streams: readonly Stream[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { receivers } of streams)
    for (const name of receivers) if (name !== source.name) found.set(name, (found.get(name) ?? 0) + 1);
  for (const [name, number] of found) {
    const decoders = site.deviceByName.get(name)?.decoders;
    if (decoders !== undefined) found.set(name, Math.min(number, decoders));
  }
  return found;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31, sessions: 2}
#                                                            ^ gate-cam serves 2 sessions at once, but recorder, kitchen-screen and stable-screen pull 3
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, receivers: [recorder, kitchen-screen, stable-screen]}
`,
    good: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31, sessions: 2}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, receivers: [recorder]}
  gate-live: {source: recorder, carries: gate, transport: rtp, port: 5004, group: 239.192.20.31, receivers: [kitchen-screen, stable-screen]}
`,
  },
];
