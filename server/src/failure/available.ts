/** The available pictures and recordings: streams that have a source and reach their receivers. */

import type { Delivery } from '../network/delivery.ts';
import type { Device, Recording, Site, Stream, Volume } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';

export interface Available {
  /** Names of the receivers that a stream reaches, with something to show. */
  readonly reaches: (stream: Stream) => ReadonlySet<string>;
  readonly recordings: ReadonlySet<Recording>;
  /** Whether there is anything to send. */
  readonly isFed: (stream: Stream) => boolean;
}

/** The streams and recordings that are asked for, in their site. */
export type Served = Pick<Site, 'streams' | 'recordings' | 'deviceByName' | 'streamByName' | 'volumeByName'>;

/** The devices and volumes that are out of order. */
export interface Dark {
  readonly devices: ReadonlySet<Device>;
  readonly volumes: ReadonlySet<Volume>;
  /** Whether a switch forgets that a receiver has joined, as the querier is gone. */
  readonly forgets?: (stream: Stream, receiver: string) => boolean;
}

/**
 * A delivery knows only the way of its stream. A stream that a server sends on needs the carried stream at the server,
 * which another server may send on in turn.
 */
export function availableIn(site: Served, delivery: (stream: Stream) => Delivery, dark: Dark): Available {
  const isDark = (name: string | undefined): boolean => {
    const device = name === undefined ? undefined : site.deviceByName.get(name);
    return device !== undefined && dark.devices.has(device);
  };
  const carriedBy = ({ carries }: Stream): Stream | undefined =>
    carries === undefined ? undefined : site.streamByName.get(carries);
  const keeps = (stream: Stream, receiver: string): boolean => dark.forgets?.(stream, receiver) !== true;
  const arrives = (stream: Stream, receiver: string): boolean =>
    delivery(stream).reaches.includes(receiver) && keeps(stream, receiver);
  const fed = new Map<Stream, boolean>();
  const isFed = (stream: Stream): boolean => {
    // A loop, not a recursion: a chain may be as long as the site. A circle carries nothing.
    const chain: Stream[] = [];
    let end: Stream | undefined = stream;
    for (; end !== undefined && !fed.has(end); end = carriedBy(end)) {
      fed.set(end, false);
      chain.push(end);
    }
    for (const one of chain.reverse()) {
      const sender = senderOf(site, one);
      const carried = carriedBy(one);
      const isThere = sender !== undefined && !dark.devices.has(sender) && !isDark(one.source);
      const isFilled =
        carried === undefined ||
        (fed.get(carried) === true && (carried.source === one.source || arrives(carried, sender?.name ?? '')));
      fed.set(one, isThere && isFilled);
    }
    return fed.get(stream) === true;
  };
  const receivers = new Map<Stream, ReadonlySet<string>>();
  for (const stream of site.streams)
    receivers.set(
      stream,
      new Set(isFed(stream) ? delivery(stream).reaches.filter((name) => !isDark(name) && keeps(stream, name)) : []),
    );
  const reaches = (stream: Stream): ReadonlySet<string> => {
    const found = receivers.get(stream);
    if (found === undefined) throw new Error(`${stream.name} is not a stream of this site`);
    return found;
  };
  const isRecorded = ({ stream, volume }: Recording): boolean => {
    const own = stream === undefined ? undefined : site.streamByName.get(stream);
    const to = volume === undefined ? undefined : site.volumeByName.get(volume);
    if (own === undefined || to?.host === undefined || dark.volumes.has(to) || isDark(to.host)) return false;
    return reaches(own).has(to.host) || (senderOf(site, own)?.name === to.host && isFed(own));
  };
  return { reaches, recordings: new Set(site.recordings.filter(isRecorded)), isFed };
}
