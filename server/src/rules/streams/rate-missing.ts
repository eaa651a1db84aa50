import { namePlace, placeOf } from '../../site/item.ts';
import { isRateKnown } from '../../site/media.ts';
import type { Site, Stream } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const rateMissing: Rule = {
  id: 'rate-missing',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A stream has no bit rate, so its load is missing.',
  why: `Without a rate the stream is missing from the load of every link and the size of every recording, and the site looks
better than it is. Declare \`bitrate\` under \`video\` and \`audio\` as set in the camera, or \`mux-rate\` for a
transport stream that comes as it is.`,
  check({ site }: RuleContext, report: Report): void {
    const reported = new Set<Stream>();
    const circles = new Set(site.carriedInCircle);
    for (const stream of site.streams) {
      if ((stream.receivers.length === 0 && stream.group === undefined) || isRateKnown(site, stream)) continue;
      const first = originOf(site, stream, circles);
      if (first === undefined || reported.has(first) || isOffAir(site, first)) continue;
      reported.add(first);
      findings(first, report);
    }
  },
};

/** Whether its rate comes from an unknown service or multiplex, which is reported there. */
function isOffAir({ serviceByName, multiplexByName }: Site, { service, multiplex }: Stream): boolean {
  return (
    (service !== undefined && !serviceByName.has(service)) ||
    (multiplex !== undefined && !multiplexByName.has(multiplex))
  );
}

/** The original stream along `carries`; `undefined` in a circle, or where one is not declared. */
function originOf(site: Site, stream: Stream, circles: ReadonlySet<Stream>): Stream | undefined {
  let at: Stream | undefined = stream;
  while (at?.carries !== undefined) {
    if (circles.has(at)) return undefined;
    at = site.streamByName.get(at.carries);
  }
  return at;
}

function findings({ item, name, video, audio, transport, muxRate }: Stream, report: Report): void {
  if (muxRate !== undefined) return;
  const acceptAt = [name];
  // Another rule reports a faulty rate.
  const isWritten = (part: string): boolean =>
    item.mentions.some(({ keyPath: [first, key] }) => first === part && key === 'bitrate');
  const loss = 'so its load is missing on links and disks';
  if (video !== undefined && video.rate === undefined && !isWritten('video')) {
    report({
      at: placeOf(item, ['video'], 'key'),
      acceptAt,
      message: `No bit rate is known for the video of ${asName(name)}, ${loss}. Declare its bitrate, as set in the camera.`,
    });
  }
  if (audio !== undefined && audio.rate === undefined && !isWritten('audio')) {
    report({
      at: placeOf(item, ['audio'], 'key'),
      acceptAt,
      message: `No bit rate is known for the audio of ${asName(name)}, ${loss}. Declare its bitrate.`,
    });
  }
  if (video === undefined && audio === undefined) {
    const what =
      transport === 'ts-udp' || transport === 'ts-rtp' ? 'a mux-rate, or video with a bitrate' : 'video with a bitrate';
    report({
      at: namePlace(item),
      acceptAt,
      message: `No bit rate is known for ${asName(name)}, ${loss}. Declare ${what}.`,
    });
  }
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264}, receivers: [recorder]}
#                                                            ^^^^^ No bit rate is known for the video of paddock
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [kitchen-screen]}
# ^^ No bit rate is known for tv
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 25 Mb/s, receivers: [kitchen-screen]}
  news: {source: headend, service: nwes, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [kitchen-screen]}
`,
  },
];
