/**
 * Faults of a session description that keep it from being announced.
 *
 * Sources, read: RFC 8866 §5 (order), §5.7 (connection, TTL), §5.14 (media), §6.6 (rtpmap), §9 (grammar); RFC 4570 §3
 * (source filter); RFC 3551 §6 (payload types).
 */

import { isMulticast, parseAddress } from './ipv4.ts';
import { staticPayloadTypes } from './rtp.ts';
import { type MediaDescription, type SessionDescription, connectionOf, mappingOf, readDescription } from './sdp.ts';

/** The fields of a session and of a medium in their order; those in capitals must be there. */
const SESSION = 'V O S i u e p c b T r z k a';
const MEDIA = 'M i c b k a';

/** What is wrong, as a clause; `undefined` where the description is as it must be. */
export function faultIn(content: string): string | undefined {
  const description = readDescription(content);
  if ('unreadable' in description) return description.unreadable;
  return orderFault(content) ?? sessionFault(description) ?? mediaFault(description);
}

function orderFault(content: string): string | undefined {
  const types = content.split(/\r?\n/).flatMap((line) => (line === '' ? [] : line.charAt(0)));
  const starts = [0, ...types.flatMap((type, index) => (type === 'm' ? index : [])), types.length];
  for (const [index, end] of starts.slice(1).entries()) {
    const fault = orderIn(types.slice(starts[index], end), index === 0 ? SESSION : MEDIA);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

function orderIn(types: readonly string[], order: string): string | undefined {
  const fields = order.split(' ');
  const place = fields.map((field) => field.toLowerCase());
  const missing = fields.find((field) => field !== field.toLowerCase() && !types.includes(field.toLowerCase()));
  if (missing !== undefined) return `it has no ${missing.toLowerCase()}= line (RFC 8866 §5)`;
  let before = 0;
  for (const type of types) {
    const at = place.indexOf(type);
    // Repeat times follow the time that they are of.
    const isAgain = type === 't' && place[before] === 'r';
    if (at === -1) continue;
    if (at < before && !isAgain)
      return `its ${type}= line comes after ${place[before] ?? ''}=, and the order is ${place.join(', ')} (RFC 8866 §5)`;
    before = at;
  }
  return undefined;
}

function sessionFault(description: SessionDescription): string | undefined {
  if (description.name.trim() === '' && description.name !== ' ') return 'its s= line is empty (RFC 8866 §5.3)';
  const connections = [description.connection, ...description.media.map(({ connection }) => connection)];
  for (const connection of connections) {
    const address = parseAddress(connection?.address ?? '');
    if (connection === undefined || address === undefined) continue;
    if (isMulticast(address) && connection.ttl === undefined)
      return `its c= line gives the group ${connection.address} no TTL: write ${connection.address}/1 (RFC 8866 §5.7)`;
    if (!isMulticast(address) && connection.ttl !== undefined)
      return `its c= line gives ${connection.address} a TTL, which only a group has (RFC 8866 §5.7)`;
  }
  return filterFault(description, description.attributes);
}

function mediaFault(description: SessionDescription): string | undefined {
  for (const media of description.media) {
    if (connectionOf(description, media) === undefined)
      return `its ${media.medium} has no c= line, and the session has none (RFC 8866 §5.7)`;
    const fault = payloadFault(media) ?? filterFault(description, media.attributes, media);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** A payload type of RTP must be one of RFC 3551 §6, or be mapped. */
function payloadFault(media: MediaDescription): string | undefined {
  if (!media.protocol.startsWith('RTP/')) return undefined;
  for (const format of media.formats) {
    if (!/^\d{1,3}$/.test(format) || Number(format) > 127)
      return `${format} is no payload type of RTP, which are 0 to 127 (RFC 8866 §5.14)`;
    const isStatic = staticPayloadTypes.some(({ number }) => number === Number(format)) || Number(format) < 35;
    if (!isStatic && mappingOf(media, format) === undefined)
      return `nothing says what payload type ${format} of its ${media.medium} is: add a=rtpmap:${format} (RFC 8866 §6.6)`;
  }
  return undefined;
}

/** A filter names a group of the description, and sources by their whole addresses. */
function filterFault(
  description: SessionDescription,
  attributes: SessionDescription['attributes'],
  media?: MediaDescription,
): string | undefined {
  for (const { value = '' } of attributes.filter(({ name }) => name === 'source-filter')) {
    const [mode, network, type, to, ...sources] = value.trim().split(/\s+/);
    const wrong = (what: string): string => `its source-filter ${what} (RFC 4570 §3)`;
    if (mode !== 'incl' && mode !== 'excl') return wrong('begins with neither incl nor excl');
    if (network !== 'IN' || !['IP4', 'IP6', '*'].includes(type ?? '') || to === undefined || sources.length === 0)
      return wrong('is not of IN, IP4 or IP6, a group and sources');
    const slashed = [to, ...sources].find((address) => address.includes('/'));
    if (slashed !== undefined) return wrong(`has ${slashed}: an address stands there without a prefix or a TTL`);
    if (type === 'IP4' && sources.some((source) => /^[\d.]+$/.test(source) && parseAddress(source) === undefined))
      return wrong('has a source that is no address');
    const groups = (media === undefined ? [description, ...description.media] : [media, description]).flatMap(
      ({ connection }) => connection?.address ?? [],
    );
    if (to !== '*' && groups.length > 0 && !groups.includes(to))
      return wrong(`is for ${to}, which is no address of a c= line`);
  }
  return undefined;
}
