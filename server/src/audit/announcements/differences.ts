/** Differences between an announced session and the planned description of its stream. */

import type { KeyPath } from '../../text/syntax.ts';
import { staticPayloadTypes } from '../../standards/rtp.ts';
import {
  type MediaDescription,
  type SessionDescription,
  connectionOf,
  mappingOf,
  sourcesOf,
} from '../../standards/sdp.ts';

export interface Difference {
  /** The key of the stream that it is about. */
  readonly keyPath: KeyPath;
  /** `group 239.192.20.42 instead of 239.192.20.41` */
  readonly what: string;
}

export function differences(planned: SessionDescription, said: SessionDescription): readonly Difference[] {
  const found: Difference[] = [];
  const add = (
    keyPath: KeyPath,
    name: string,
    is: string | number | undefined,
    should: string | number | undefined,
  ): void => {
    if (is !== should) found.push({ keyPath, what: `${name} ${is ?? 'not said'} instead of ${should ?? 'none'}` });
  };
  const missing = planned.media.filter((media) => match(said, planned, media) === undefined);
  for (const { medium } of missing) found.push({ keyPath: [medium], what: `no ${medium}` });
  if (said.media.length > planned.media.length) {
    const more = said.media.filter((media) => match(planned, said, media) === undefined).map(({ medium }) => medium);
    found.push({ keyPath: [], what: `${more.join(' and ') || 'media'} besides` });
  }
  for (const media of planned.media) {
    const other = match(said, planned, media);
    if (other === undefined) continue;
    const [to, toOther] = [connectionOf(planned, media), connectionOf(said, other)];
    const first = media === planned.media[0];
    // An address that is the same for all media is reported once.
    if (first || toOther?.address !== connectionOf(said, said.media[0] ?? other)?.address)
      add(['group'], 'group', toOther?.address, to?.address);
    if (first) add(['ttl'], 'TTL', toOther?.ttl, to?.ttl);
    if (first || other.port - (said.media[0]?.port ?? 0) !== media.port - (planned.media[0]?.port ?? 0)) {
      add(['port'], first ? 'port' : `${media.medium} on port`, other.port, media.port);
    }
    add(first ? ['transport'] : [], 'protocol', other.protocol, media.protocol);
    add([media.medium, 'codec'], media.medium, encoding(other), encoding(media));
    const [sources, ownSources] = [sourcesOf(said, other), sourcesOf(planned, media)];
    // A session without a filter accepts any source, which is right too.
    if (first && sources !== undefined && ownSources !== undefined)
      add(['source'], 'source', sources.join(' '), ownSources.join(' '));
  }
  return found;
}

/** The medium of the same kind at the same place among those of its kind. */
function match(
  session: SessionDescription,
  own: SessionDescription,
  media: MediaDescription,
): MediaDescription | undefined {
  const place = own.media.filter(({ medium }) => medium === media.medium).indexOf(media);
  return session.media.filter(({ medium }) => medium === media.medium)[place];
}

/**
 * The encoding of `rtpmap`, in capitals, as case has no meaning there (RFC 4855 §3, from memory), without a single
 * channel.
 */
function encoding(media: MediaDescription): string | undefined {
  const [format = ''] = media.formats;
  const known = staticPayloadTypes.find(({ number }) => String(number) === format);
  const said =
    mappingOf(media, format) ??
    (known === undefined ? undefined : `${known.name}/${known.clockRate}/${known.channels ?? 1}`);
  return said?.toUpperCase().replace(/\/1$/, '');
}
