/** What of a site may be lost with some of its end hosts and volumes, while the network is as it was. */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { Recording, Site, Stream, Volume } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';

/** Streams and recordings, in no order. Of a camera all streams are among them, if one is. */
export interface Touched {
  readonly streams: readonly Stream[];
  readonly recordings: readonly Recording[];
}

/** @param hosts names of devices that are out of order */
export function touchedBy(site: Site, hosts: Iterable<string>, volumes: Iterable<Volume>): Touched {
  const index = indexOf(site);
  const streams = new Set<Stream>();
  const recordings = new Set<Recording>();
  const sources = new Set<string>();
  const take = (stream: Stream): void => {
    if (streams.has(stream)) return;
    streams.add(stream);
    for (const recording of index.recordingsOf.get(stream.name) ?? []) recordings.add(recording);
  };
  const takeOn = (volume: string): void => {
    for (const recording of index.recordingsOn.get(volume) ?? []) {
      recordings.add(recording);
      const own = recording.stream === undefined ? undefined : site.streamByName.get(recording.stream);
      if (own !== undefined) take(own);
    }
  };
  for (const { name } of volumes) takeOn(name);
  for (const host of hosts) {
    for (const stream of index.at.get(host) ?? []) take(stream);
    for (const { name } of index.volumesAt.get(host) ?? []) takeOn(name);
  }
  // It grows while it is gone over.
  for (const { name, source } of streams) {
    for (const stream of index.carriersOf.get(name) ?? []) take(stream);
    // Only a camera is lost or kept by all that it sends.
    if (source === undefined || sources.has(source) || site.deviceByName.get(source)?.kind !== 'camera') continue;
    sources.add(source);
    for (const stream of index.from.get(source) ?? []) take(stream);
  }
  return { streams: [...streams], recordings: [...recordings] };
}

const indexOf = perObject((site: Site) => {
  const { streams, recordings, volumes } = site;
  const at = new Map<string, Set<Stream>>();
  for (const stream of streams)
    for (const name of [stream.source, senderOf(site, stream)?.name, ...stream.receivers]) {
      if (name === undefined) continue;
      const own = at.get(name) ?? new Set<Stream>();
      at.set(name, own.add(stream));
    }
  return {
    /** That a device sends or receives. */
    at,
    from: grouped(streams, ({ source }) => source),
    carriersOf: grouped(streams, ({ carries }) => carries),
    recordingsOf: grouped(recordings, ({ stream }) => stream),
    recordingsOn: grouped(recordings, ({ volume }) => volume),
    volumesAt: grouped(volumes, ({ host }) => host),
  };
});
