/** Free UDP ports: pairs of an even one for RTP and the odd one above for RTCP (RFC 3550 §11). */

import { perObject } from '../../memo.ts';
import { type Fix, fixOf, setValue } from '../edit.ts';
import type { Site, Stream } from '../model.ts';
import { RTP_PORT } from '../../standards/rtp.ts';

/** How a stream is sent, or is to be. */
export type Sending = Pick<Stream, 'transport' | 'group' | 'receivers'>;

/** Whether the stream is sent in UDP datagrams, to its group or to each receiver. */
export function isDatagrams({ transport }: Sending): boolean {
  return transport === 'rtp' || transport === 'ts-rtp' || transport === 'ts-udp';
}

export function isRtp({ transport }: Sending): boolean {
  return transport === 'rtp' || transport === 'ts-rtp';
}

/**
 * How many ports in a row the stream takes, its own first: RTP takes two, RTCP being on the second, and audio beside
 * video takes the next pair.
 */
export function portsTaken({ media }: Site, stream: Stream, as: Sending = stream): number {
  if (!isRtp(as)) return 1;
  const { video, audio } = media(stream);
  return as.transport === 'rtp' && video !== undefined && audio !== undefined ? 4 : 2;
}

/** Ports are numbers of 16 bits (RFC 768). */
export const LAST_PORT = 65_535;

/** The last of the ports that a stream takes; it may be above `LAST_PORT`. */
export function lastPortOf(site: Site, stream: Stream): number | undefined {
  return stream.port === undefined ? undefined : stream.port + portsTaken(site, stream) - 1;
}

/** Where its datagrams arrive: its group, or each of its receivers. */
export function destinations(stream: Sending): readonly (string | number)[] {
  return stream.group === undefined ? stream.receivers : [stream.group];
}

/** The streams of datagrams that arrive at each group and receiver. */
const streamsByDestination = perObject((streams: readonly Stream[]) => {
  const found = new Map<string | number, Stream[]>();
  for (const stream of streams.filter(isDatagrams))
    for (const destination of destinations(stream)) {
      const others = found.get(destination);
      if (others === undefined) found.set(destination, [stream]);
      else others.push(stream);
    }
  return found;
});

/**
 * The first even port at or above `from` that is free together with the next ports that the stream takes (at least
 * one): no other stream to the same group or receiver takes them. `undefined` where none is left. `as` is how the
 * stream is to be sent, if not as declared.
 */
export function nextFreePort(
  site: Site,
  stream: Stream,
  from: number = RTP_PORT,
  as: Sending = stream,
): number | undefined {
  for (const port of freePairs(site, stream, from, as)) return port;
  return undefined;
}

/** All such ports, ascending; the ranges that they begin do not overlap. */
export function* freePairs(
  site: Site,
  stream: Stream,
  from: number = RTP_PORT,
  as: Sending = stream,
): Generator<number> {
  const to = streamsByDestination(site.streams);
  const taken = new Set<number>();
  for (const other of destinations(as).flatMap((destination) => to.get(destination) ?? [])) {
    if (other === as || other.port === undefined) continue;
    for (let above = portsTaken(site, other) - 1; above >= 0; above--) taken.add(other.port + above);
  }
  const wanted = Math.max(2, portsTaken(site, stream, as));
  for (let port = from + (from % 2); port + wanted <= 65_536; port += 2) {
    let free = 0;
    while (free < wanted && !taken.has(port + free)) free++;
    if (free < wanted) continue;
    yield port;
    port += wanted + (wanted % 2) - 2;
  }
}

/** Moves a stream to the next free port above its own. */
export function nextFreePortFix(site: Site, stream: Stream): Fix[] {
  const free = nextFreePort(site, stream, stream.port);
  if (free === undefined) return [];
  return fixOf(`Use port ${free}, the next free pair`, setValue(stream.item, ['port'], String(free)));
}
