/** How FFmpeg sends a stream: to its group, or a copy to each receiver. */

import { addressedInterface } from '../../network/unicast.ts';
import type { Plan } from '../../plan.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { type Audio, type Device, type Media, type Stream, isRtsp } from '../../site/model.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { RTP_HEADER } from '../../standards/rtp.ts';
import { PACKET, PACKETS_PER_DATAGRAM, isOutsideTransportStream } from '../../standards/transport-stream.ts';
import { emptyRule, portRule } from '../cause.ts';
import type { Refusal } from '../output.ts';
import { CARRIER_NAMES, type Carrier, ENCODERS, supports } from './codec-support.ts';
import type { MediaDestination } from './destination.ts';
import { rtpSessions } from './rtp-sessions.ts';
import { PACKET_SIZE } from '../../network/rates.ts';

/** A relay: `stream` carries `input`, and `host` sends it. */
interface Relaying {
  readonly stream: Stream;
  readonly input: Stream;
  readonly host: Device;
}

/** A destination for the group or each receiver; where video and audio are separate, one for each. */
export function sendDestinations(plan: Plan, { stream, input, host }: Relaying): readonly MediaDestination[] | Refusal {
  const to = targetsOf(plan, stream, host);
  if ('message' in to) return to;
  const refused = unlike(plan, stream, input);
  if (refused !== undefined) return refused;
  const media = plan.site.media(stream);
  const original = plan.site.media(input);
  const encoding: Encoding = { video: videoArguments(media), audio: audioArguments(media, original) };
  return to.flatMap((target) =>
    stream.transport === 'rtp' ? asRtp(stream, media, encoding, target) : asTransportStream(stream, encoding, target),
  );
}

/** Why the host cannot send the stream; `undefined` where it can. */
export function unsendable(plan: Plan, { stream, input, host }: Relaying): Refusal | undefined {
  const to = targetsOf(plan, stream, host);
  return 'message' in to ? to : unlike(plan, stream, input);
}

interface Target {
  readonly address: number;
  /** The host's address that the stream is sent from. */
  readonly local: number;
  readonly ttl: number | undefined;
}

interface Encoding {
  readonly video: readonly string[];
  readonly audio: readonly string[];
}

function targetsOf(plan: Plan, stream: Stream, host: Device): readonly Target[] | Refusal {
  const { item, name, group, port, transport, ttl } = stream;
  if (transport === undefined)
    return {
      rule: 'transport-missing',
      at: namePlace(item),
      message: `${name} does not say how it is sent. Say its transport.`,
    };
  if (isRtsp(transport)) {
    const message =
      `No unit of ${host.name} is made for ${name}: FFmpeg asks for RTSP streams, and serves none. Let another program ` +
      'serve it, or take the transport rtp or ts-udp, by which FFmpeg sends a copy to each receiver.';
    return { rule: 'not-made', at: placeOf(item, ['transport']), message };
  }
  if (port === undefined)
    return { rule: portRule(stream), at: namePlace(item), message: `${name} has no port yet. Say its \`port\`.` };
  if (group !== undefined) {
    if (!isMulticast(group))
      return {
        rule: 'group-not-multicast',
        at: placeOf(item, ['group']),
        message: `${formatAddress(group)} is no multicast group. Take one of 239.255.0.0/16.`,
      };
    const local = plan.network.delivery(stream).leaves?.address;
    if (local !== undefined) return [{ address: group, local, ttl }];
    return {
      rule: 'not-made',
      at: placeOf(item, ['egress']),
      message:
        `${host.name} has no address at the port by which ${name} leaves, so it cannot be sent there for certain. ` +
        'Say the address of the port.',
    };
  }
  const targets: Target[] = [];
  for (const receiver of stream.receivers) {
    const device = plan.site.deviceByName.get(receiver);
    const at = device === undefined ? undefined : addressedInterface(plan.network, device, host);
    const address = at?.address;
    const local = at === undefined ? undefined : plan.network.interfaces.towards(host, at)?.by?.address;
    if (address === undefined || local === undefined) {
      return {
        rule: device === undefined ? 'unknown-name' : 'not-made',
        at: placeOf(item, receiverKeyPath(stream, receiver)),
        message: `${host.name} cannot send ${name} to ${receiver}: the address of one of them is not known. Say both addresses.`,
      };
    }
    if (device !== host) targets.push({ address, local, ttl: undefined });
  }
  return targets.length > 0
    ? targets
    : {
        rule: 'no-receivers',
        at: namePlace(item),
        message: `${name} has neither a group nor a receiver, so there is nowhere to send it. Say one.`,
      };
}

/** Why a stream cannot be made from its input; `undefined` where it can. */
function unlike(plan: Plan, stream: Stream, input: Stream): Refusal | undefined {
  const { video, audio } = plan.site.media(stream);
  const original = plan.site.media(input);
  const carrier = stream.transport === 'rtp' ? 'rtp' : 'mpegts';
  const { item, name } = stream;
  if (video === undefined && audio === undefined)
    return {
      rule: emptyRule(plan, stream),
      at: namePlace(item),
      message: `${name} has neither video nor audio. Say what ${input.name} consists of.`,
    };
  if (video?.codec !== original.video?.codec) {
    return {
      rule: 'not-made',
      at: placeOf(item, ['video', 'codec']),
      message:
        `${name} is to be ${video?.codec ?? 'video'}, and ${input.name} is ` +
        `${original.video?.codec ?? 'without video'}: FFmpeg copies video here and encodes none, so no unit is made ` +
        'for it. Take the same codec, or set up an encoder by hand.',
    };
  }
  if (!supports(carrier, 'video', video?.codec)) {
    return {
      rule: unsupportedRule(carrier, video?.codec),
      at: placeOf(item, ['transport']),
      message:
        `FFmpeg does not send ${video?.codec ?? 'it'} in ${CARRIER_NAMES[carrier]}, so ${name} cannot be sent. Have ` +
        'the camera send H.264 or H.265.',
    };
  }
  if (audio === undefined) return undefined;
  if (original.audio === undefined)
    return {
      rule: 'not-made',
      isAsked: true,
      at: placeOf(item, ['audio']),
      message: `${name} is to have audio, and ${input.name} has none. Take it out, or say the audio of ${input.name}.`,
    };
  if (!supports(carrier, 'audio', audio.codec)) {
    return {
      rule: unsupportedRule(carrier, audio.codec),
      at: placeOf(item, ['audio']),
      message:
        `FFmpeg does not send ${audio.codec ?? 'it'} in ${CARRIER_NAMES[carrier]}, so ${name} cannot be sent. ` +
        `Declare audio of ${name} that it does: aac.`,
    };
  }
  return undefined;
}

/** A codec that transport streams cannot carry is a mistake in the site; a limit of FFmpeg alone is not. */
function unsupportedRule(carrier: Carrier, codec: string | undefined): string {
  return carrier === 'mpegts' && isOutsideTransportStream(codec) ? 'transport-codec' : 'not-made';
}

/**
 * A camera sends its parameter sets in the description that RTSP asks for. A member of a group asks for none, so they
 * are sent again before each keyframe.
 */
function videoArguments({ video }: Media): readonly string[] {
  if (video === undefined) return [];
  const repeated = video.codec === 'h264' || video.codec === 'h265' || video.codec === undefined;
  return ['-map', '0:v:0', '-c:v', 'copy', ...(repeated ? ['-bsf:v', 'dump_extra'] : [])];
}

/** Copies the audio, or encodes it again where the site declares other audio. */
function audioArguments({ audio }: Media, original: Media): readonly string[] {
  if (audio === undefined) return [];
  const map = ['-map', '0:a:0'];
  if (isSameAudio(audio, original.audio)) return [...map, '-c:a', 'copy'];
  const { codec = '', rate, sampleRate, channels } = audio;
  const fixed = codec === 'pcma' || codec === 'pcmu' || codec === 'l16' || codec === 'g722';
  return [
    ...map,
    '-c:a',
    ENCODERS[codec] ?? 'copy',
    ...(rate === undefined || fixed ? [] : ['-b:a', String(rate.nominal)]),
    ...(sampleRate === undefined ? [] : ['-ar', String(sampleRate)]),
    ...(channels === undefined ? [] : ['-ac', String(channels)]),
  ];
}

function isSameAudio(a: Audio, b: Audio | undefined): boolean {
  return (
    b !== undefined &&
    a.codec === b.codec &&
    a.sampleRate === b.sampleRate &&
    a.channels === b.channels &&
    a.rate?.nominal === b.rate?.nominal
  );
}

/**
 * For a receiver that is off and does not answer, Linux queues up to 212,992 bytes (unres_qlen_bytes in its
 * ip-sysctl.rst). FFmpeg's socket buffer must be larger: else FFmpeg waits, three seconds at a time, and packets come
 * late once the receiver is on again. Linux doubles the size that is asked for, gives no more than twice
 * net.core.wmem_max (socket(7)), and treats a socket as full when half of it is used.
 */
const SEND_BUFFER = ['buffer_size', '425984'] as const;

/** An RTP session for each medium. */
function asRtp(stream: Stream, media: Media, { video, audio }: Encoding, target: Target): MediaDestination[] {
  const size = (stream.packetSize ?? PACKET_SIZE) + RTP_HEADER;
  return rtpSessions(stream, media).map(({ medium, port, rtcp, payload }) => ({
    mapping: medium === 'video' ? video : audio,
    format: 'rtp',
    options: [SEND_BUFFER, ...(payload === undefined ? [] : [['payload_type', String(payload.number)] as const])],
    to: `rtp://${formatAddress(target.address)}:${port}?rtcpport=${rtcp}&${urlOptions(target, size)}`,
  }));
}

/** Whole transport stream packets, seven in a datagram where the site does not declare another size. */
function asTransportStream(stream: Stream, { video, audio }: Encoding, target: Target): MediaDestination {
  const { muxRate, port = 0, packetSize = PACKETS_PER_DATAGRAM * PACKET } = stream;
  const size = Math.max(1, Math.floor(packetSize / PACKET)) * PACKET;
  const mapping = [...video, ...audio];
  if (stream.transport === 'ts-udp') {
    const constant = muxRate === undefined ? [] : [['muxrate', String(muxRate)] as const];
    return {
      mapping,
      format: 'mpegts',
      options: [SEND_BUFFER, ...constant],
      to: `udp://${formatAddress(target.address)}:${port}?${urlOptions(target, size)}`,
    };
  }
  const constant = muxRate === undefined ? [] : [['mpegts_muxer_options', `muxrate=${muxRate}`] as const];
  return {
    mapping,
    format: 'rtp_mpegts',
    options: [SEND_BUFFER, ...constant],
    to: `rtp://${formatAddress(target.address)}:${port}?rtcpport=${port + 1}&${urlOptions(target, size + RTP_HEADER)}`,
  };
}

function urlOptions({ local, ttl }: Target, size: number): string {
  return `${ttl === undefined ? '' : `ttl=${ttl}&`}localaddr=${formatAddress(local)}&pkt_size=${size}`;
}
