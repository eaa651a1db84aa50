/** What each stream consists of: the video and audio that it declares, and the rest from the stream that it carries. */

import type { Audio, Media, MediaRate, Site, Stream, Video } from './model.ts';

export interface ResolvedMedia {
  readonly media: (stream: Stream) => Media;
  /** Streams that carry themselves, directly or through others. */
  readonly carriedInCircle: readonly Stream[];
}

const NOTHING: Media = { video: undefined, audio: undefined, broadcast: undefined };

/** `broadcastOf` gives the rate of what a stream sends on from the air. */
export function resolveMedia(
  streams: ReadonlyMap<string, Stream>,
  broadcastOf: (stream: Stream) => MediaRate | undefined,
): ResolvedMedia {
  const byStream = new Map<Stream, Media>();
  const carriedInCircle: Stream[] = [];
  const carriedBy = ({ carries }: Stream): Stream | undefined =>
    carries === undefined ? undefined : streams.get(carries);
  // A loop, not a recursion: a chain may be as long as the site.
  for (const stream of streams.values()) {
    const chain = new Set<Stream>();
    let end: Stream | undefined = stream;
    while (end !== undefined && !byStream.has(end) && !chain.has(end)) {
      chain.add(end);
      end = carriedBy(end);
    }
    // Streams in a circle carry nothing on.
    if (end !== undefined && chain.has(end)) carriedInCircle.push(...[...chain].slice([...chain].indexOf(end)));
    let carried = (end === undefined ? undefined : byStream.get(end)) ?? NOTHING;
    for (const link of [...chain].reverse())
      byStream.set(link, (carried = mergeMedia(link, carried, broadcastOf(link))));
  }
  const media = (stream: Stream): Media => {
    const resolved = byStream.get(stream);
    if (resolved === undefined) throw new Error(`${stream.name} is not a stream of this site`);
    return resolved;
  };
  return { media, carriedInCircle };
}

function mergeMedia({ video, audio }: Stream, carried: Media, broadcast: MediaRate | undefined): Media {
  return {
    video: mergeVideo(video, carried.video),
    audio: mergeAudio(audio, carried.audio),
    // A stream that declares video or audio of its own is encoded anew.
    broadcast: broadcast ?? (video === undefined && audio === undefined ? carried.broadcast : undefined),
  };
}

/** Key by key: what the stream does not declare stays as in the carried stream. */
function mergeVideo(own: Video | undefined, carried: Video | undefined): Video | undefined {
  if (own === undefined || carried === undefined) return own ?? carried;
  return {
    codec: own.codec ?? carried.codec,
    width: own.width ?? carried.width,
    height: own.height ?? carried.height,
    frameRate: own.frameRate ?? carried.frameRate,
    rate: own.rate ?? carried.rate,
    keyframeInterval: own.keyframeInterval ?? carried.keyframeInterval,
  };
}

function mergeAudio(own: Audio | undefined, carried: Audio | undefined): Audio | undefined {
  if (own === undefined || carried === undefined) return own ?? carried;
  // Another codec samples at a rate of its own.
  const recoded = own.codec !== undefined && own.codec !== carried.codec;
  return {
    codec: own.codec ?? carried.codec,
    rate: own.rate ?? carried.rate,
    sampleRate: own.sampleRate ?? (recoded ? undefined : carried.sampleRate),
    channels: own.channels ?? carried.channels,
  };
}

/** Whether the rate of a stream is known: of the whole, or of each of its media, of which it has at least one. */
export function isRateKnown({ media }: Pick<Site, 'media'>, stream: Stream): boolean {
  if (stream.muxRate !== undefined) return true;
  const { video, audio, broadcast } = media(stream);
  if (broadcast !== undefined) return true;
  if (video === undefined) return audio?.rate !== undefined;
  return video.rate !== undefined && (audio === undefined || audio.rate !== undefined);
}
