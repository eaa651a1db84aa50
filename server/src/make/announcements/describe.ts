/** The session description of a stream, for its receivers. */

import type { Plan } from '../../plan.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Media, Stream } from '../../site/model.ts';
import { senderOf } from '../../site/sender.ts';
import { aacLevel, audioSpecificConfig } from '../../standards/aac.ts';
import { fnv1a, folded } from '../../standards/fnv.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import type { PayloadType } from '../../standards/rtp.ts';
import {
  type Attribute,
  type Connection,
  type MediaDescription,
  type SessionDescription,
  writeDescription,
} from '../../standards/sdp.ts';
import { headerBytes } from '../../network/rates.ts';
import { visible } from '../../text/visible.ts';
import { type RtpSession, rtpSessions } from '../media/rtp-sessions.ts';
import { emptyRule, portRule } from '../cause.ts';
import type { Refusal } from '../output.ts';
import { sdpText } from '../quoting/sdp.ts';
import { textAt } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

/** Whether a stream needs a description: it is sent in datagrams to a receiver or a group. RTSP has its own. */
export function describable({ transport, group, receivers }: Stream): boolean {
  const inDatagrams = transport === 'rtp' || transport === 'ts-rtp' || transport === 'ts-udp';
  return inDatagrams && (group !== undefined || receivers.length > 0);
}

/** The receivers that get a description each: all of them where there is no group, else a single shared one. */
export function audiences({ group, receivers }: Stream): readonly (string | undefined)[] {
  return group === undefined && receivers.length > 1 ? receivers : [undefined];
}

/** Why there is no description of the stream; `undefined` where there is one. */
export function undescribable(plan: Plan, stream: Stream, receiver?: string): Refusal | undefined {
  const media = undescribedMedia(plan, stream);
  if (media !== undefined) return media;
  const connection = connectionTo(plan, stream, receiver);
  return 'message' in connection ? connection : undefined;
}

/**
 * The description of a stream, or why there is none. It has no parameter sets of the encoder: H.264 and H.265 must send
 * them in the stream.
 *
 * The version is a hash of the content, so that the same site gives the same bytes. RFC 8866 §5.2 asks for a higher
 * version with each change; that takes a clock, and the announcer, which has one, raises it.
 *
 * @param receiver whose copy it describes, where each has one of its own
 */
export function describe(
  plan: Plan,
  stream: Stream,
  receiver?: string,
): { readonly description: SessionDescription } | { readonly refused: Refusal } {
  const refused = undescribedMedia(plan, stream);
  if (refused !== undefined) return { refused };
  const connection = connectionTo(plan, stream, receiver);
  if ('message' in connection) return { refused: connection };
  const source = sourceAddress(plan, stream);
  const about = textAt(stream.item.data, ['description']);
  const information = about === undefined ? undefined : sdpText(about);
  const unversioned: SessionDescription = {
    origin: {
      username: '-',
      sessionId: sessionId(plan, stream),
      version: '0',
      address: formatAddress(source ?? 0),
    },
    name: stream.name,
    ...(information === undefined ? {} : { information }),
    connection,
    attributes: [
      {
        name: 'tool',
        value: `plumbline make sdp ${stream.name}, of the site ${visible(plan.site.name ?? 'without a name', 60)}`,
      },
      ...(source === undefined ? [] : [sourceFilter(connection, source)]),
      { name: 'recvonly' },
    ],
    media: describedMedia(plan, stream),
  };
  const version = String(folded(fnv1a(writeDescription(unversioned)), 32));
  return { description: { ...unversioned, origin: { ...unversioned.origin, version } } };
}

/** The address by which the stream leaves; where the site has no cable there, the only address of the source. */
function sourceAddress(plan: Plan, stream: Stream): number | undefined {
  const leaves = plan.network.delivery(stream).leaves;
  if (leaves !== undefined) return leaves.address;
  const addresses = senderOf(plan.site, stream)?.ports.flatMap((port) => port.addresses) ?? [];
  return addresses.length === 1 ? addresses[0]?.address : undefined;
}

/** An id that stays the same as long as the site and the stream keep their names. */
function sessionId({ site }: Plan, { name }: Stream): string {
  return String(fnv1a(`${site.name ?? ''}\n${name}`) >> 1n);
}

/** A host accepts only packets from this sender; without IGMPv3 on the path it drops the others (RFC 4570 §3). */
function sourceFilter({ address }: Connection, source: number): Attribute {
  return { name: 'source-filter', value: ` incl IN IP4 ${address} ${formatAddress(source)}` };
}

/** The group, or the one receiver. */
function connectionTo(plan: Plan, stream: Stream, audience: string | undefined): Connection | Refusal {
  const { item, name, group, ttl } = stream;
  if (group !== undefined) {
    if (isMulticast(group)) return { address: formatAddress(group), ttl };
    return {
      rule: 'group-not-multicast',
      at: placeOf(item, ['group']),
      message: `${asName(name)} is sent to ${formatAddress(group)}, which is no multicast group. Take one of 239.255.0.0/16.`,
    };
  }
  const receiver = audience ?? stream.receivers[0];
  if (receiver === undefined)
    return {
      rule: 'no-receivers',
      at: namePlace(item),
      message: `${asName(name)} has neither a group nor a receiver, so there is no address to describe. Say one.`,
    };
  const device = plan.site.deviceByName.get(receiver);
  const { domains } = plan.network.delivery(stream);
  const own = device === undefined ? [] : plan.network.interfaces.of(device);
  const address = (own.find(({ domain }) => domains.includes(domain)) ?? own[0])?.address;
  if (address !== undefined) return { address: formatAddress(address) };
  return {
    rule: device === undefined ? 'unknown-name' : 'not-made',
    at: placeOf(item, ['receivers']),
    message: `${asName(name)} is sent to ${asName(receiver)}, whose address the site does not say. Say its \`address\`, or give the stream a group.`,
  };
}

function undescribedMedia(plan: Plan, stream: Stream): Refusal | undefined {
  const media = plan.site.media(stream);
  const { item, name, port, transport } = stream;
  if (port === undefined)
    return {
      rule: portRule(stream),
      at: namePlace(item),
      message: `${asName(name)} has no port yet, so nobody can be told where to listen. Say its port.`,
    };
  if (transport === 'ts-udp') return undefined;
  const sessions = rtpSessions(stream, media);
  if (sessions.length === 0)
    return {
      rule: emptyRule(plan, stream),
      at: namePlace(item),
      message: `${asName(name)} has neither video nor audio to describe. Say what it consists of.`,
    };
  for (const session of sessions) {
    const { payload } = session;
    const refused = payload === undefined ? noCodec(stream, session) : indescribable(stream, media, payload);
    if (refused !== undefined) return refused;
  }
  return undefined;
}

/** The media of a stream that can be described. */
function describedMedia(plan: Plan, stream: Stream): readonly MediaDescription[] {
  const { port = 0, transport } = stream;
  if (transport === 'ts-udp') {
    // RFC 8866 §5.14 allows media straight in UDP, but no standard describes a transport stream there: FFmpeg takes the
    // payload type that RTP has for it, and nothing else.
    return [
      {
        medium: 'video',
        port,
        protocol: 'udp',
        formats: ['33'],
        ...bandwidth(plan, stream, 'transport stream'),
        attributes: [{ name: 'rtpmap', value: '33 MP2T/90000' }],
      },
    ];
  }
  const media = plan.site.media(stream);
  return rtpSessions(stream, media).flatMap((session) =>
    session.payload === undefined ? [] : [mediaDescription(plan, stream, media, session, session.payload)],
  );
}

function noCodec({ item, name }: Stream, { medium }: RtpSession): Refusal {
  return {
    rule: 'not-made',
    at: placeOf(item, [medium]),
    message: `${asName(name)} does not say the codec of its ${medium}, without which nobody can decode it. Say its \`codec\`.`,
  };
}

/** JPEG in RTP counts pixels in eights, in a byte (RFC 2435 §3.1.5, §3.1.6, from memory). */
const LARGEST_JPEG = 255 * 8;

function indescribable(
  { item, name }: Stream,
  { video, audio }: Media,
  { name: encoding }: PayloadType,
): Refusal | undefined {
  if (encoding === 'JPEG' && Math.max(video?.width ?? 0, video?.height ?? 0) > LARGEST_JPEG) {
    const message =
      `${asName(name)} is JPEG of ${video?.width}x${video?.height}, and RTP carries it up to ` +
      `${LARGEST_JPEG}x${LARGEST_JPEG}. Take H.264, or a smaller picture.`;
    return { rule: 'not-made', isAsked: true, at: placeOf(item, ['video', 'size']), message };
  }
  if (!['MPEG4-GENERIC', 'L16', 'ac3'].includes(encoding)) return undefined;
  const at = placeOf(item, ['audio']);
  const { sampleRate, channels } = audio ?? {};
  if (sampleRate === undefined || channels === undefined) {
    return {
      rule: 'not-made',
      at,
      message:
        `${asName(name)} does not say ${sampleRate === undefined ? 'the sample rate' : 'how many channels'} of its ` +
        `${encoding === 'MPEG4-GENERIC' ? 'AAC' : encoding.toUpperCase()}, which a session description must say. Give ` +
        '`sample-rate` and `channels`.',
    };
  }
  if (encoding === 'MPEG4-GENERIC' && audioSpecificConfig(sampleRate, channels) === undefined) {
    return {
      rule: 'not-made',
      isAsked: true,
      at,
      message:
        `${asName(name)} is AAC of ${sampleRate} Hz and ${channels} channels, for which AAC has no number. Take 48 kHz or ` +
        'another usual rate, and 1 to 6 or 8 channels.',
    };
  }
  return undefined;
}

function mediaDescription(
  plan: Plan,
  stream: Stream,
  media: Media,
  session: RtpSession,
  payload: PayloadType,
): MediaDescription {
  const { medium, port, rtcp } = session;
  const transportStream = stream.transport === 'ts-rtp';
  const parameters = transportStream ? undefined : formatParameters(media, payload);
  const frameRate = transportStream || medium === 'audio' ? undefined : media.video?.frameRate;
  return {
    medium,
    port,
    protocol: 'RTP/AVP',
    formats: [String(payload.number)],
    ...bandwidth(plan, stream, transportStream ? 'transport stream' : medium),
    attributes: [
      { name: 'rtpmap', value: `${payload.number} ${mapping(payload)}` },
      ...(parameters === undefined ? [] : [{ name: 'fmtp', value: `${payload.number} ${parameters}` }]),
      ...(frameRate === undefined ? [] : [{ name: 'framerate', value: String(frameRate) }]),
      // On an odd port a receiver cannot guess it (RFC 8866 §5.14, RFC 3605).
      ...(port % 2 === 0 ? [] : [{ name: 'rtcp', value: String(rtcp) }]),
    ],
  };
}

/** A single channel is left out, except for AAC, whose receivers expect it. */
function mapping({ name, clockRate, channels }: PayloadType): string {
  const said = channels !== undefined && (channels > 1 || name === 'MPEG4-GENERIC');
  return `${name}/${clockRate}${said ? `/${channels}` : ''}`;
}

/**
 * RFC 6184 §8.1, RFC 3640 §4.1, RFC 7587 §6.1, without what the site does not declare, such as the profile of H.264.
 */
function formatParameters({ audio }: Media, { name, clockRate, channels }: PayloadType): string | undefined {
  switch (name) {
    case 'H264':
      return 'packetization-mode=1';
    case 'MPEG4-GENERIC': {
      const config = audioSpecificConfig(clockRate, channels ?? 0) ?? '';
      const level = aacLevel(clockRate, channels ?? 0);
      return (
        `streamtype=5; profile-level-id=${level}; mode=AAC-hbr; sizeLength=13; indexLength=3; indexDeltaLength=3; ` +
        `config=${config}`
      );
    }
    case 'opus':
      return audio?.channels === 2 ? 'sprop-stereo=1' : undefined;
    default:
      return undefined;
  }
}

/** The peak rate in whole kbit/s, rounded up, with all headers above Ethernet. */
function bandwidth(plan: Plan, stream: Stream, what: string): { readonly bandwidth?: number } {
  const run = plan.network.rates(stream).runs.find((candidate) => candidate.what === what);
  if (run === undefined) return {};
  const bits = run.perSecond.peak * (headerBytes(run) + run.media.peak) * 8;
  return { bandwidth: Math.ceil(bits / 1000) };
}
