/**
 * Session descriptions: written strictly and read leniently.
 *
 * Sources: RFC 8866 §5 (fields and their order), §5.2 (origin), §5.7 (connection), §5.8 (bandwidth), §5.14 (media), §6
 * (attributes), §9 (grammar); RFC 4570 §3 (source filter); RFC 3605 §2.1 (`rtcp`). All read but RFC 3605, from memory.
 */

export interface SessionDescription {
  readonly origin: Origin;
  readonly name: string;
  readonly information?: string;
  /** For all media without a connection of their own. */
  readonly connection?: Connection;
  readonly attributes: readonly Attribute[];
  readonly media: readonly MediaDescription[];
}

/** All but the version identify a session; a modified description has a higher version (§5.2). */
export interface Origin {
  readonly username: string;
  /** Decimal, as is the version; of 63 bits at most, as some receivers expect (RFC 3264 §5, from memory). */
  readonly sessionId: string;
  readonly version: string;
  /** An IPv4 or IPv6 address, or a host's full name. */
  readonly address: string;
}

export interface Connection {
  readonly address: string;
  /** Only of IPv4 multicast, where it is required. */
  readonly ttl?: number;
}

export interface Attribute {
  readonly name: string;
  readonly value?: string;
}

export interface MediaDescription {
  readonly medium: string;
  readonly port: number;
  readonly protocol: string;
  readonly formats: readonly string[];
  readonly connection?: Connection;
  /** kbit/s at most, with the headers of IP, UDP and RTP (`b=AS`, §5.8). */
  readonly bandwidth?: number;
  readonly attributes: readonly Attribute[];
}

/**
 * The description as text, in the order of §5. The session has no end (`t=0 0`).
 *
 * @throws RangeError for a field that cannot be written: a line end in a text, a space in a word
 */
export function writeDescription(description: SessionDescription): string {
  const { origin, name, information, connection, attributes, media } = description;
  const lines = [
    'v=0',
    originLine(origin),
    `s=${text(name)}`,
    ...(information === undefined ? [] : [`i=${text(information)}`]),
    ...(connection === undefined ? [] : [connectionLine(connection)]),
    't=0 0',
    ...attributes.map(attributeLine),
    ...media.flatMap(mediaLines),
  ];
  return lines.map((line) => `${line}\r\n`).join('');
}

/** The `o=` line, which also withdraws the announcement of a session. */
export function originLine({ username, sessionId, version, address }: Origin): string {
  return `o=${word(username)} ${digits(sessionId)} ${digits(version)} IN ${addressType(address)} ${word(address)}`;
}

function mediaLines({
  medium,
  port,
  protocol,
  formats,
  connection,
  bandwidth,
  attributes,
}: MediaDescription): string[] {
  return [
    `m=${word(medium)} ${port} ${protocol.split('/').map(word).join('/')} ${formats.map(word).join(' ')}`,
    ...(connection === undefined ? [] : [connectionLine(connection)]),
    ...(bandwidth === undefined ? [] : [`b=AS:${bandwidth}`]),
    ...attributes.map(attributeLine),
  ];
}

function connectionLine({ address, ttl }: Connection): string {
  return `c=IN ${addressType(address)} ${word(address)}${ttl === undefined ? '' : `/${ttl}`}`;
}

function attributeLine({ name, value }: Attribute): string {
  return `a=${word(name)}${value === undefined ? '' : `:${text(value)}`}`;
}

function addressType(address: string): 'IP4' | 'IP6' {
  return address.includes(':') ? 'IP6' : 'IP4';
}

/** Anything without NUL and line ends (`byte-string` in §9). */
function text(value: string): string {
  if (value === '' || /[\0\r\n]/.test(value))
    throw new RangeError(`${JSON.stringify(value)} cannot stand in a line of a description`);
  return value;
}

/** Printable ASCII without space. */
function word(value: string): string {
  if (!/^[!-~]+$/.test(value)) throw new RangeError(`${JSON.stringify(value)} is no word of a description`);
  return value;
}

function digits(value: string): string {
  if (!/^\d{1,19}$/.test(value)) throw new RangeError(`${value} is no number of a session`);
  return value;
}

/**
 * Reads a description. Lines may end in LF alone (§5), and unknown fields are skipped.
 *
 * @returns what is wrong, as a clause, where the text is no description
 */
export function readDescription(content: string): SessionDescription | { readonly unreadable: string } {
  const lines = content.split(/\r?\n/).filter((line) => line !== '');
  if (lines[0] !== 'v=0') return { unreadable: 'it does not start with v=0' };
  const read: Reading = { attributes: [], media: [] };
  for (const line of lines.slice(1)) {
    const problem = readLine(line, read);
    if (problem !== undefined) return { unreadable: problem };
  }
  const { origin, name, information, connection, attributes, media } = read;
  if (origin === undefined) return { unreadable: 'it has no o= line' };
  if (name === undefined) return { unreadable: 'it has no s= line' };
  return {
    origin,
    name,
    attributes,
    media,
    ...(information === undefined ? {} : { information }),
    ...(connection === undefined ? {} : { connection }),
  };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

interface ReadMedia extends Writable<MediaDescription> {
  attributes: Attribute[];
}

interface Reading {
  origin?: Origin;
  name?: string;
  information?: string;
  connection?: Connection;
  readonly attributes: Attribute[];
  readonly media: ReadMedia[];
}

/** Adds a line to what was read; returns what is wrong with the line. */
function readLine(line: string, read: Reading): string | undefined {
  const [type, value] = [line.slice(0, 2), line.slice(2)];
  const part = read.media.at(-1) ?? read;
  switch (type) {
    case 'o=': {
      const origin = readOrigin(value);
      if (origin === undefined) return 'its o= line is not of six words';
      read.origin = origin;
      return undefined;
    }
    case 's=':
      read.name = value;
      return undefined;
    case 'i=':
      if (part === read) read.information = value;
      return undefined;
    case 'c=': {
      const connection = readConnection(value);
      if (connection === undefined) return 'its c= line names no address';
      part.connection = connection;
      return undefined;
    }
    case 'b=': {
      const kilobits = /^AS:(\d{1,9})$/.exec(value)?.[1];
      if (kilobits !== undefined && part !== read) (part as ReadMedia).bandwidth = Number(kilobits);
      return undefined;
    }
    case 'a=': {
      const colon = value.indexOf(':');
      part.attributes.push(
        colon < 0 ? { name: value } : { name: value.slice(0, colon), value: value.slice(colon + 1) },
      );
      return undefined;
    }
    case 'm=': {
      const media = readMedia(value);
      if (media === undefined) return 'its m= line is not of a medium, a port, a protocol and formats';
      read.media.push(media);
      return undefined;
    }
    default:
      return /^[a-z]=/.test(line) ? undefined : 'it has a line that is no field';
  }
}

function readOrigin(value: string): Origin | undefined {
  const [username, sessionId, version, , , address, ...more] = value.split(' ');
  if (
    username === undefined ||
    sessionId === undefined ||
    version === undefined ||
    address === undefined ||
    more.length > 0
  )
    return undefined;
  return { username, sessionId, version, address };
}

function readConnection(value: string): Connection | undefined {
  const written = /^IN IP[46] ([^ /]+)(?:\/(\d{1,3}))?(?:\/\d+)?$/.exec(value);
  const [, address, ttl] = written ?? [];
  if (address === undefined) return undefined;
  return ttl === undefined || value.startsWith('IN IP6') ? { address } : { address, ttl: Number(ttl) };
}

function readMedia(value: string): ReadMedia | undefined {
  const [, medium, port, protocol, formats] = /^(\S+) (\d{1,5})(?:\/\d+)? (\S+) (\S.*)$/.exec(value) ?? [];
  if (medium === undefined || protocol === undefined || formats === undefined || Number(port) > 65_535)
    return undefined;
  return { medium, port: Number(port), protocol, formats: formats.split(' '), attributes: [] };
}

/** The connection of a medium: its own, or that of the session. */
export function connectionOf({ connection }: SessionDescription, media: MediaDescription): Connection | undefined {
  return media.connection ?? connection;
}

/** The `rtpmap` of a format: `H264/90000`. */
export function mappingOf({ attributes }: MediaDescription, format: string): string | undefined {
  const found = attributes.find(({ name, value }) => name === 'rtpmap' && value?.startsWith(`${format} `) === true);
  return found?.value?.slice(format.length + 1);
}

/** The sources that a medium accepts, if it has a filter; its own overrides that of the session (RFC 4570 §3). */
export function sourcesOf(session: SessionDescription, media: MediaDescription): readonly string[] | undefined {
  const filter = [...media.attributes, ...session.attributes].find(({ name }) => name === 'source-filter');
  const [, sources] = /^\s*incl IN (?:IP4|IP6|\*) \S+ (\S.*)$/.exec(filter?.value ?? '') ?? [];
  return sources?.split(' ');
}
