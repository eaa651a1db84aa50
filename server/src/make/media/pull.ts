/** How FFmpeg receives a stream on a host: its arguments up to `-i`, and the files that it needs. */

import type { Interface } from '../../network/interface.ts';
import { addressedInterface } from '../../network/unicast.ts';
import type { Plan } from '../../plan.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { type Device, type Stream, isRtsp } from '../../site/model.ts';
import { senderOf } from '../../site/sender.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { backlogOf } from '../../recordings/keyframes.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { RTSP_PORT } from '../../standards/rtp.ts';
import { undescribable } from '../announcements/describe.ts';
import { descriptionFile } from '../announcements/sdp.ts';
import { portRule } from '../cause.ts';
import { refusedName } from '../file-name.ts';
import type { MadeFile, Refusal } from '../output.ts';
import { LIST, WITH_CREDENTIALS, withCredentialsFile } from './scripts.ts';
import { SETTINGS } from './service.ts';

export interface Pull {
  /** The command up to the input: program, options, `-i` and the address. */
  readonly command: readonly string[];
  readonly files: readonly MadeFile[];
  /** The name of the file with user and password, where it needs one. */
  readonly credentials: string | undefined;
}

/** Seconds without a packet after which a stream counts as lost, or three pictures where that is longer. */
const TIMEOUT = 5;

/** Bytes that FFmpeg probes by default. */
const DEFAULT_PROBE_SIZE = 5_000_000;

export function pullOf(plan: Plan, stream: Stream, host: Device): Pull | Refusal {
  if (stream.transport === undefined) return untransported(stream, host);
  return isRtsp(stream.transport) ? overRtsp(plan, stream, host) : inDatagrams(plan, stream, host);
}

/** Why FFmpeg cannot receive the stream on the host; `undefined` where it can. */
export function unpullable(plan: Plan, stream: Stream, host: Device): Refusal | undefined {
  const { transport } = stream;
  if (transport === undefined) return untransported(stream, host);
  const address = isRtsp(transport) ? addressToAsk(plan, stream, host) : addressToListenAt(plan, stream, host);
  if (typeof address !== 'number') return address;
  if (isRtsp(transport)) return unnamedCredentials(stream);
  if (transport === 'ts-udp') return withoutPort(stream);
  return refusedName(stream.item) ?? undescribable(plan, stream, host.name);
}

function untransported({ item, name }: Stream, host: Device): Refusal {
  const message = `${name} does not say how it is sent, so ${host.name} cannot take it in. Say its transport.`;
  return { rule: 'transport-missing', at: namePlace(item), message };
}

const FFMPEG = ['/usr/bin/ffmpeg', '-nostdin', '-hide_banner', '-loglevel', 'error'];

/** Seconds of a stream that FFmpeg probes at most. */
export function probedSeconds(plan: Plan, stream: Stream): number {
  return backlogOf(plan.site.media(stream).video?.keyframeInterval) / 1000;
}

/**
 * FFmpeg must see a keyframe before it knows the picture, and then stops probing. It keeps what it has read, and passes
 * it on at once. As segments are cut by the clock, no two of them start in one second.
 */
function probing(plan: Plan, stream: Stream): readonly (readonly [string, string])[] {
  const { video } = plan.site.media(stream);
  const seconds = probedSeconds(plan, stream);
  const bytes = Math.ceil((2 * seconds * (video?.rate?.peak ?? 0)) / 8);
  return [
    ['analyzeduration', String(Math.round(seconds * 1_000_000))],
    ['probesize', String(Math.max(DEFAULT_PROBE_SIZE, bytes))],
    ['fpsprobesize', '0'],
  ];
}

function timeoutOf(plan: Plan, stream: Stream): number {
  const rate = plan.site.media(stream).video?.frameRate;
  return rate === undefined ? TIMEOUT : Math.max(TIMEOUT, Math.ceil(3 / rate));
}

function asOptions(pairs: readonly (readonly [string, string])[]): string[] {
  return pairs.flatMap(([name, value]) => [`-${name}`, value]);
}

function addressToAsk(plan: Plan, stream: Stream, host: Device): number | Refusal {
  const source = senderOf(plan.site, stream);
  if (source === host) {
    return {
      rule: 'not-made',
      isAsked: true,
      at: placeOf(stream.item, ['transport']),
      message: `${host.name} cannot ask itself for ${stream.name}. Take the stream that it carries, or give it a group.`,
    };
  }
  const address = source === undefined ? undefined : addressedInterface(plan.network, source, host)?.address;
  if (address !== undefined) return address;
  return {
    rule: source === undefined ? unknownSourceRule(stream) : 'not-made',
    at: placeOf(stream.item, ['source']),
    message:
      `${host.name} cannot ask for ${stream.name}: the address of ${stream.source ?? 'its source'} is not known. ` +
      'Say its `address`.',
  };
}

function overRtsp(plan: Plan, stream: Stream, host: Device): Pull | Refusal {
  const address = addressToAsk(plan, stream, host);
  if (typeof address !== 'number') return address;
  const unnamed = unnamedCredentials(stream);
  if (unnamed !== undefined) return unnamed;
  const url = `rtsp://${formatAddress(address)}:${stream.port ?? RTSP_PORT}${urlPath(stream.path ?? '/')}`;
  const options = [
    ['rtsp_transport', stream.transport === 'rtsp' ? 'tcp' : 'udp'],
    ['timeout', String(timeoutOf(plan, stream) * 1_000_000)],
    ...probing(plan, stream),
  ] as const;
  const { credentials } = stream;
  if (credentials === undefined)
    return { command: [...FFMPEG, ...asOptions(options), '-i', url], files: [], credentials };
  const list = ['-protocol_whitelist', 'pipe,rtsp,rtp,udp,tcp', '-f', 'concat', '-safe', '0', '-i', LIST];
  return {
    command: [
      WITH_CREDENTIALS,
      credentials,
      url,
      ...options.map(([name, value]) => `${name}=${value}`),
      '--',
      ...FFMPEG,
      ...list,
    ],
    files: [withCredentialsFile(host.name)],
    credentials,
  };
}

/** Credentials that are no valid name are ignored, and without them the camera would refuse the request. */
function unnamedCredentials({ item, name }: Stream): Refusal | undefined {
  if (!hasShapeProblem(item, ['credentials'])) return undefined;
  const isText = item.problems.some(({ problem, keyPath: [key] }) => problem === 'malformed' && key === 'credentials');
  return {
    rule: isText ? 'malformed-value' : 'wrong-type',
    at: placeOf(item, ['credentials']),
    message:
      `No file can be named after the credentials of ${name}: they are not of 1 to 63 letters, digits, - and _. ` +
      'Rename them.',
  };
}

/** Encodes all but the characters of a path and a query (RFC 3986 §3.3, §3.4), and what is percent-encoded already. */
function urlPath(path: string): string {
  return path.replace(/%(?![0-9A-Fa-f]{2})|[^A-Za-z0-9\-._~!$&()*+,;=:@/?%]+/g, (text) =>
    Array.from(new TextEncoder().encode(text), (byte) => `%${byte.toString(16).toUpperCase().padStart(2, '0')}`).join(
      '',
    ),
  );
}

/** The host's address at the interface by which it receives the stream. */
function addressToListenAt(plan: Plan, stream: Stream, host: Device): number | Refusal {
  const at = receivingInterface(plan, stream, host);
  if (at?.address !== undefined) return at.address;
  return {
    rule: at === undefined ? unreceivedRule(plan, stream, host) : 'not-made',
    at: namePlace(stream.item),
    message:
      `${host.name} has no address in a network that ${stream.name} is sent into, so it cannot take it in. Say ` +
      'its address, or its receivers and cables.',
  };
}

function withoutPort(stream: Stream): Refusal | undefined {
  if (stream.port !== undefined) return undefined;
  return {
    rule: portRule(stream),
    at: namePlace(stream.item),
    message: `${stream.name} has no port yet. Say its \`port\`.`,
  };
}

function inDatagrams(plan: Plan, stream: Stream, host: Device): Pull | Refusal {
  const address = addressToListenAt(plan, stream, host);
  if (typeof address !== 'number') return address;
  const local = formatAddress(address);
  const seconds = timeoutOf(plan, stream);
  if (stream.transport === 'ts-udp') {
    const unaddressed = withoutPort(stream);
    if (unaddressed !== undefined) return unaddressed;
    const { port, group } = stream;
    const to = group !== undefined && isMulticast(group) ? formatAddress(group) : local;
    const url = `udp://${to}:${port}?localaddr=${local}&timeout=${seconds * 1_000_000}&overrun_nonfatal=1`;
    return {
      command: [...FFMPEG, ...asOptions(probing(plan, stream)), '-f', 'mpegts', '-i', url],
      files: [],
      credentials: undefined,
    };
  }
  const described = descriptionFile(plan, stream, `${host.name}/sdp/`, host.name);
  const [refused] = described.refused;
  if (refused !== undefined) return refused;
  const options = [
    ['protocol_whitelist', 'file,rtp,udp'],
    ['localaddr', local],
    ['listen_timeout', String(seconds)],
    ...probing(plan, stream),
  ] as const;
  const path = `${SETTINGS}/sdp/${stream.name}.sdp`;
  return {
    command: [...FFMPEG, ...asOptions(options), '-f', 'sdp', '-i', path],
    files: described.files,
    credentials: undefined,
  };
}

function unknownSourceRule({ source }: Stream): string {
  return source === undefined ? 'missing-key' : 'unknown-name';
}

/** The rule that reports a host which does not get the stream; before the first cable there is none. */
function unreceivedRule({ site, network }: Plan, stream: Stream, host: Device): string {
  const { source, unreached } = network.delivery(stream);
  if (source === undefined) return unknownSourceRule(stream);
  if (source === host || site.cables.length === 0) return 'not-made';
  return unreached.some(({ receiver }) => receiver === host.name) ? 'unreached-receiver' : 'recorder-not-receiving';
}

/** The interface by which the host receives the stream; its own stream, by the one that sends it. */
function receivingInterface({ network }: Plan, stream: Stream, host: Device): Interface | undefined {
  const delivery = network.delivery(stream);
  if (delivery.source === host) return stream.group === undefined ? undefined : delivery.leaves;
  if (!delivery.reaches.includes(host.name)) return undefined;
  if (stream.group !== undefined) return network.interfaces.towardsGroup(host, stream.group)?.by;
  return delivery.source === undefined ? undefined : addressedInterface(network, host, delivery.source);
}
