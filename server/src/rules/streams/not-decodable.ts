import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Place, placeOf } from '../../site/item.ts';
import type { Decodes, Device, Media, Stream } from '../../site/model.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { few, list, asName } from '../../text/words.ts';

export const notDecodable: Rule = {
  id: 'not-decodable',
  severity: 'error',
  showAfter: 'item',
  summary: 'A screen receives a stream that it cannot decode.',
  why: `The packets arrive, and the screen stays black, silent, or says that it does not support the format. Let the
camera or the server encode what the screen decodes, send the screen another stream, or complete \`decodes\` from the
screen's papers.`,
  source: 'common practice',
  check({ site }: RuleContext, report: Report): void {
    const found = new Map<string, Undecoded[]>();
    for (const stream of site.streams) {
      for (const receiver of stream.receivers) {
        const device = site.deviceByName.get(receiver);
        if (device === undefined || !isLimited(device.decodes)) continue;
        const problems = problemsOf(device.decodes, site.media(stream));
        if (problems.length === 0) continue;
        const key = `${receiver}: ${problems.join('; ')}`;
        found.set(key, [...(found.get(key) ?? []), { stream, device, problems }]);
      }
    }
    // Several streams that a screen cannot decode for the same reason are one finding.
    for (const [first, ...others] of found.values()) if (first !== undefined) report(findingOf(first, others));
  },
};

interface Undecoded {
  readonly stream: Stream;
  readonly device: Device;
  readonly problems: readonly string[];
}

function findingOf({ stream, device, problems }: Undecoded, others: readonly Undecoded[]): Finding {
  const { name } = device;
  const place = (of: Stream): Place => placeOf(of.item, receiverKeyPath(of, name));
  return {
    at: place(stream),
    message:
      `${asName(name)} cannot show ${few([stream, ...others.map((one) => one.stream)].map((one) => one.name))}: ` +
      `${problems.join('; ')}. Change the encoding, or send ${asName(name)} another stream.`,
    acceptAt: [name, stream.name, ...others.map((one) => one.stream.name)],
    related: [
      { at: placeOf(device.item, ['decodes']), message: `what ${asName(name)} decodes` },
      ...others.map((one) => ({ at: place(one.stream), message: `${one.stream.name} likewise` })),
    ],
  };
}

function isLimited({ video, audio, picture }: Decodes): boolean {
  return video !== undefined || audio !== undefined || picture !== undefined;
}

function problemsOf(decodes: Decodes, { video, audio }: Media): string[] {
  const { picture } = decodes;
  const problems: string[] = [];
  for (const [medium, codec, known] of [
    ['video', video?.codec, decodes.video],
    ['audio', audio?.codec, decodes.audio],
  ] as const) {
    if (codec !== undefined && known !== undefined && !known.includes(codec))
      problems.push(`its ${medium} is ${codec}, and it decodes ${list(known)}`);
  }
  const { width, height } = video ?? {};
  if (picture !== undefined && width !== undefined && height !== undefined && exceeds(picture, width, height))
    problems.push(
      `its picture is ${width}x${height}, and ${picture.width}x${picture.height} is the largest it decodes`,
    );
  return problems;
}

/** Whether the picture exceeds a decoder's limit, which holds for both orientations. */
function exceeds({ width, height }: { width: number; height: number }, ofWidth: number, ofHeight: number): boolean {
  return Math.max(ofWidth, ofHeight) > Math.max(width, height) || Math.min(ofWidth, ofHeight) > Math.min(width, height);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  kitchen-screen: {kind: display, decodes: {video: [h264, mpeg2], audio: [aac, mp2], picture: 1920x1080}}
streams:
  paddock-live:
    source: recorder
    transport: rtp
    port: 5004
    group: 239.192.20.31
    video: {codec: h265, size: 3840x2160, bitrate: 8 Mb/s}
    receivers: [kitchen-screen, office-pc]
#               ^^^^^^^^^^^^^^ kitchen-screen cannot show paddock-live: its video is h265, and it decodes h264 and mpeg2; its picture is 3840x2160, and 1920x1080
`,
    good: `
devices:
  kitchen-screen: {kind: display, decodes: {video: [h264, mpeg2], audio: [aac, mp2], picture: 1920x1080}}
streams:
  paddock-live:
    source: recorder
    transport: rtp
    port: 5004
    group: 239.192.20.31
    video: {codec: h264, size: 1920x1080, bitrate: 4 Mb/s}
    receivers: [kitchen-screen, office-pc]
`,
  },
  {
    bad: `
devices:
  kitchen-screen: {kind: display, decodes: {audio: [aac]}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, audio: {codec: pcma, bitrate: 64 kb/s}, receivers: [kitchen-screen]}
#                                                                                                          ^^^^^^^^^^^^^^ its audio is pcma, and it decodes aac
`,
    good: `
devices:
  kitchen-screen: {kind: display, decodes: {video: [h264]}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, audio: {codec: pcma, bitrate: 64 kb/s}, receivers: [kitchen-screen]}
`,
  },
];
