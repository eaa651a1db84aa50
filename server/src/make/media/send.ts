/** How FFmpeg sends a stream on: to its group, or a copy to each receiver. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import { receiverRoute } from '../../site/receiver.ts';
import type { Audio, Device, Media, Stream } from '../../site/model.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { RTP_HEADER } from '../../standards/rtp.ts';
import { PACKET, PACKETS_PER_DATAGRAM } from '../../standards/transport-stream.ts';
import type { Refusal } from '../output.ts';
import { CARRIER_NAMES, type Carrier, ENCODERS, takes } from './ability.ts';
import type { Destination } from './destination.ts';
import { sessionsOf } from './session.ts';
import { PACKET_SIZE } from '../../network/rates.ts';

/** Where it goes: one to each receiver or group, and to each medium where these go by themselves. */
export function sendOf(plan: Plan, stream: Stream, carried: Stream, host: Device): readonly Destination[] | Refusal {
  const to = destinations(plan, stream, host);
  if ('message' in to) return to;
  const media = plan.site.mediaOf(stream);
  const before = plan.site.mediaOf(carried);
  const carrier = stream.transport === 'rtp' ? 'rtp' : 'mpegts';
  const refused = unsendable(stream, carried, media, before, carrier);
  if (refused !== undefined) return refused;
  const encoding: Encoding = { video: videoArguments(media), audio: audioArguments(media, before) };
  return to.flatMap((target) =>
    stream.transport === 'rtp' ? asRtp(stream, media, encoding, target) : asTransportStream(stream, encoding, target),
  );
}

interface Target {
  readonly address: string;
  /** The host's own, by which it leaves. */
  readonly local: string;
  readonly ttl: number | undefined;
}

interface Encoding {
  readonly video: readonly string[];
  readonly audio: readonly string[];
}

function destinations(plan: Plan, stream: Stream, host: Device): readonly Target[] | Refusal {
  const { item, name, group, port, transport, ttl } = stream;
  if (transport === undefined)
    return { at: headOf(item), message: `${name} does not say how it is sent. Say its transport.` };
  if (transport === 'rtsp') {
    const message =
      `${host.name} cannot send ${name} by RTSP: FFmpeg asks for RTSP streams, and serves none. Take the transport rtp or ts-udp, by ` +
      `which it sends a copy to each receiver, or let them ask the source of ${stream.carries ?? 'it'} themselves.`;
    return { at: placeOf(item, ['transport']), message };
  }
  if (port === undefined) return { at: headOf(item), message: `${name} has no port yet. Say it.` };
  if (group !== undefined) {
    if (!isMulticast(group))
      return {
        at: placeOf(item, ['group']),
        message: `${formatAddress(group)} is no multicast group. Take one of 239.255.0.0/16.`,
      };
    const local = plan.network.delivery(stream).leaves?.address;
    if (local !== undefined) return [{ address: formatAddress(group), local: formatAddress(local), ttl }];
    return {
      at: placeOf(item, ['egress']),
      message: `${host.name} has no address at the port by which ${name} leaves, so it cannot be sent there for certain. Say the address of the port.`,
    };
  }
  const targets: Target[] = [];
  for (const receiver of stream.receivers) {
    const device = plan.site.deviceByName.get(receiver);
    const address =
      device === undefined
        ? undefined
        : plan.network.interfaces.of(device).find((at) => at.address !== undefined)?.address;
    const local = address === undefined ? undefined : plan.network.interfaces.towards(host, address)?.by.address;
    if (address === undefined || local === undefined) {
      return {
        at: placeOf(item, receiverRoute(stream, receiver)),
        message: `${host.name} cannot send ${name} to ${receiver}: the address of one of them is not known. Say it.`,
      };
    }
    if (device !== host) targets.push({ address: formatAddress(address), local: formatAddress(local), ttl: undefined });
  }
  return targets.length > 0
    ? targets
    : {
        at: headOf(item),
        message: `${name} has neither a group nor a receiver, so there is nowhere to send it. Say one.`,
      };
}

function unsendable(
  stream: Stream,
  carried: Stream,
  media: Media,
  before: Media,
  carrier: Carrier,
): Refusal | undefined {
  const { item, name } = stream;
  const { video, audio } = media;
  if (video === undefined && audio === undefined)
    return { at: headOf(item), message: `${name} has neither video nor audio. Say what ${carried.name} consists of.` };
  if (video?.codec !== before.video?.codec) {
    return {
      at: placeOf(item, ['video', 'codec']),
      message: `${name} is to be ${video?.codec ?? 'video'}, and ${carried.name} is ${before.video?.codec ?? 'without video'}: video is copied as it is, not encoded again. Say the same codec.`,
    };
  }
  if (!takes(carrier, 'video', video?.codec)) {
    return {
      at: placeOf(item, ['transport']),
      message: `FFmpeg does not send ${video?.codec ?? 'it'} in ${CARRIER_NAMES[carrier]}, so ${name} cannot be sent. Have the camera send H.264 or H.265.`,
    };
  }
  if (audio === undefined) return undefined;
  if (before.audio === undefined)
    return {
      at: placeOf(item, ['audio']),
      message: `${name} is to have audio, and ${carried.name} has none. Take it out, or say the audio of ${carried.name}.`,
    };
  if (!takes(carrier, 'audio', audio.codec)) {
    return {
      at: placeOf(item, ['audio']),
      message: `FFmpeg does not send ${audio.codec ?? 'it'} in ${CARRIER_NAMES[carrier]}, so ${name} cannot be sent. Declare audio of ${name} that it does: aac.`,
    };
  }
  return undefined;
}

/**
 * Cameras say their parameter sets in the description that they hand out on asking. Whoever joins a group has not asked,
 * so they go out again before each keyframe.
 */
function videoArguments({ video }: Media): readonly string[] {
  if (video === undefined) return [];
  const repeated = video.codec === 'h264' || video.codec === 'h265' || video.codec === undefined;
  return ['-map', '0:v:0', '-c:v', 'copy', ...(repeated ? ['-bsf:v', 'dump_extra'] : [])];
}

/** As it is, or as the site declares it anew. */
function audioArguments({ audio }: Media, before: Media): readonly string[] {
  if (audio === undefined) return [];
  const map = ['-map', '0:a:0'];
  if (sameSound(audio, before.audio)) return [...map, '-c:a', 'copy'];
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

function sameSound(a: Audio, b: Audio | undefined): boolean {
  return (
    b !== undefined &&
    a.codec === b.codec &&
    a.sampleRate === b.sampleRate &&
    a.channels === b.channels &&
    a.rate?.nominal === b.rate?.nominal
  );
}

/**
 * For a receiver that does not answer, because it is off, Linux holds back up to 212,992 bytes (unres_qlen_bytes, by its
 * ip-sysctl.rst). FFmpeg must have room for more on its way out: else it waits, three seconds at a time, and what it held
 * comes late when the receiver is on again. Linux doubles what it is asked for, gives no more than twice net.core.wmem_max
 * (socket(7)), and calls a socket with half of it taken full.
 */
const ROOM = ['buffer_size', '425984'] as const;

/** A session to each medium. */
function asRtp(stream: Stream, media: Media, { video, audio }: Encoding, target: Target): Destination[] {
  const size = (stream.packetSize ?? PACKET_SIZE) + RTP_HEADER;
  return sessionsOf(stream, media).map(({ medium, port, rtcp, payload }) => ({
    media: medium === 'video' ? video : audio,
    format: 'rtp',
    options: [ROOM, ...(payload === undefined ? [] : [['payload_type', String(payload.number)] as const])],
    to: `rtp://${target.address}:${port}?rtcpport=${rtcp}&${way(target, size)}`,
  }));
}

/** Whole packets of the transport stream, seven to a datagram where the site says nothing else. */
function asTransportStream(stream: Stream, { video, audio }: Encoding, target: Target): Destination {
  const { muxRate, port = 0, packetSize = PACKETS_PER_DATAGRAM * PACKET } = stream;
  const size = Math.max(1, Math.floor(packetSize / PACKET)) * PACKET;
  const media = [...video, ...audio];
  if (stream.transport === 'ts-udp') {
    const constant = muxRate === undefined ? [] : [['muxrate', String(muxRate)] as const];
    return {
      media,
      format: 'mpegts',
      options: [ROOM, ...constant],
      to: `udp://${target.address}:${port}?${way(target, size)}`,
    };
  }
  const constant = muxRate === undefined ? [] : [['mpegts_muxer_options', `muxrate=${muxRate}`] as const];
  return {
    media,
    format: 'rtp_mpegts',
    options: [ROOM, ...constant],
    to: `rtp://${target.address}:${port}?rtcpport=${port + 1}&${way(target, size + RTP_HEADER)}`,
  };
}

function way({ local, ttl }: Target, size: number): string {
  return `${ttl === undefined ? '' : `ttl=${ttl}&`}localaddr=${local}&pkt_size=${size}`;
}
