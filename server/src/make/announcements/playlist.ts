/**
 * What a screen or a computer can show, as a playlist: XSPF, version 1, the open format of Xiph.Org.
 *
 * Sources: the specification (elements and their order) from memory, its wiki "XSPF v1 Notes and Errata" (order,
 * relative locations), read.
 */

import type { Plan } from '../../plan.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { type Device, type Stream, isRtsp } from '../../site/model.ts';
import { senderOf } from '../../site/sender.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { RTSP_PORT } from '../../standards/rtp.ts';
import { portRule } from '../cause.ts';
import { audiences } from './describe.ts';
import { refusedName } from '../file-name.ts';
import { header } from '../header.ts';
import { type Made, type Output, type Refusal, together } from '../output.ts';
import { xmlText } from '../quoting/xml.ts';
import { textAt } from '../../text/syntax.ts';

export const playlist: Output = {
  kind: 'playlist',
  title: 'Playlist of a screen (XSPF)',
  summary: 'the streams that a screen or a computer receives, as a playlist in an open format',
  subjects: (plan) => viewers(plan, streamsByReceiver(plan)).map(({ name }) => name),
  make(plan, subject) {
    const streams = streamsByReceiver(plan);
    return together(
      viewers(plan, streams)
        .filter(({ name }) => subject === undefined || name === subject)
        .map((viewer) => playlistOf(plan, viewer, streams.get(viewer.name) ?? [])),
    );
  },
};

function streamsByReceiver({ site }: Plan): ReadonlyMap<string, readonly Stream[]> {
  const found = new Map<string, Stream[]>();
  for (const stream of site.streams)
    for (const receiver of stream.receivers) {
      const own = found.get(receiver);
      if (own === undefined) found.set(receiver, [stream]);
      else own.push(stream);
    }
  return found;
}

function viewers({ site }: Plan, streams: ReadonlyMap<string, readonly Stream[]>): readonly Device[] {
  return site.devices.filter(({ kind, name }) => (kind === 'display' || kind === 'computer') && streams.has(name));
}

function playlistOf(plan: Plan, viewer: Device, streams: readonly Stream[]): Made {
  const unnamed = refusedName(viewer.item);
  if (unnamed !== undefined) return { files: [], refused: [unnamed], notes: [] };
  const refused: Refusal[] = [];
  const tracks: string[] = [];
  const described: string[] = [];
  for (const stream of streams) {
    const location = locationOf(plan, viewer, stream);
    if (typeof location !== 'string') {
      refused.push(location);
      continue;
    }
    if (stream.transport === 'rtp') described.push(location);
    const about = textAt(stream.item.data, ['description']);
    tracks.push(
      '    <track>',
      `      <location>${xmlText(location)}</location>`,
      `      <title>${xmlText(about ?? stream.name)}</title>`,
      ...(about === undefined ? [] : [`      <annotation>${xmlText(stream.name)}</annotation>`]),
      '    </track>',
    );
  }
  if (tracks.length === 0) return { files: [], refused, notes: [] };
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<playlist version="1" xmlns="http://xspf.org/ns/0/">',
    `  <title>${xmlText(`${plan.site.name ?? 'Streams'}: ${viewer.name}`)}</title>`,
    `  <annotation>${xmlText(header(plan.site, `make playlist ${viewer.name}`).join(' '))}</annotation>`,
    '  <trackList>',
    ...tracks,
    '  </trackList>',
    '</playlist>',
  ];
  const notes =
    described.length === 0
      ? []
      : ['playlist: the .sdp files that it names are made by `make sdp`, and belong beside it.'];
  return { files: [{ path: `${viewer.name}.xspf`, text: `${lines.join('\n')}\n` }], refused, notes };
}

/** Streams that no playlist can name. */
export function unlisted(plan: Plan): readonly Refusal[] {
  const streams = streamsByReceiver(plan);
  return viewers(plan, streams).flatMap((viewer) =>
    (streams.get(viewer.name) ?? []).flatMap((stream) => {
      const location = locationOf(plan, viewer, stream);
      return typeof location === 'string' ? [] : [location];
    }),
  );
}

/**
 * A transport stream describes itself, so its group is enough; other RTP needs its session description beside the list.
 * A camera or a server that is asked by RTSP may want a user and a password, which made files never contain.
 */
function locationOf(plan: Plan, viewer: Device, stream: Stream): string | Refusal {
  const { item, name, transport, group, port } = stream;
  if (transport === 'rtp')
    return refusedName(item) ?? `${audiences(stream).length > 1 ? `${viewer.name}/` : ''}${name}.sdp`;
  if (isRtsp(transport)) return rtspAddress(plan, viewer, stream);
  if (transport === undefined || port === undefined) {
    return {
      rule: transport === undefined ? 'transport-missing' : portRule(stream),
      at: namePlace(item),
      message:
        `${name} has no ${transport === undefined ? 'transport' : 'port'}, so nobody can be told where to listen. ` +
        `Say its \`${transport === undefined ? 'transport' : 'port'}\`.`,
    };
  }
  return listenAt(transport, group, port);
}

/** The address by which anybody can listen to a group; `undefined` where no address can express that. */
export function groupLocation({ transport, group, port }: Stream): string | undefined {
  if (group === undefined || port === undefined || (transport !== 'ts-rtp' && transport !== 'ts-udp')) return undefined;
  return listenAt(transport, group, port);
}

/** Without a source before the @, the address is one to listen on; without a group, any address of the viewer. */
function listenAt(transport: string, group: number | undefined, port: number): string {
  return `${transport === 'ts-rtp' ? 'rtp' : 'udp'}://@${group === undefined ? '' : formatAddress(group)}:${port}`;
}

function rtspAddress(plan: Plan, viewer: Device, { item, name, source, port, path }: Stream): string | Refusal {
  const device = senderOf(plan.site, { source });
  const own = device === undefined ? [] : plan.network.interfaces.of(device);
  const at =
    own.find(({ domain }) => plan.network.interfaces.in(viewer, domain) !== undefined) ??
    own.find(({ address }) => address !== undefined);
  if (at?.address === undefined) {
    return {
      rule: 'not-made',
      at: placeOf(item, ['source']),
      message: `${name} is asked for at ${source}, whose address the site does not say. Say its \`address\`.`,
    };
  }
  const encoded = encodedPath(path ?? '');
  if (encoded === undefined)
    return {
      rule: 'malformed-value',
      at: placeOf(item, ['path']),
      message: `The path of ${name} has half a character in it and makes no address.`,
    };
  return `rtsp://${formatAddress(at.address)}${port === undefined || port === RTSP_PORT ? '' : `:${port}`}${encoded}`;
}

/** Percent-encoded (RFC 3986 §2.1), except for per cent signs that encode already. */
function encodedPath(path: string): string | undefined {
  if (/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(path)) return undefined;
  return encodeURI(path)
    .replace(/%25(?=[0-9A-Fa-f]{2})/g, '%')
    .replace(/[[\]']/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);
}
