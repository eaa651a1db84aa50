/** Announces sessions by SAP (RFC 2974) for as long as their description files exist. */

import { sapGroupFor } from '../standards/multicast.ts';
import { isMulticast, parseAddress } from '../standards/ipv4.ts';
import { type Pace, SAP_LARGEST, baseInterval, encodeAnnouncement, messageHash, nextGap } from '../standards/sap.ts';
import { type Origin, type SessionDescription, connectionOf, originLine, readDescription } from '../standards/sdp.ts';
import { faultIn } from '../standards/sdp-faults.ts';
import { AnnouncementGroup } from './group.ts';
import type { AnnouncerTools } from './tools.ts';

export interface DescriptionFile {
  /** Path of the file. */
  readonly path: string;
  readonly text: string;
  /** When it was last written, in milliseconds since 1970. */
  readonly modified: number;
}

export interface AnnouncerOptions {
  /** The address of the interface to announce by. */
  readonly interface: string;
  readonly pace: Pace;
  /** Takes a line for each session that is announced, modified, withdrawn or refused. */
  readonly report: (line: string) => void;
}

/** Milliseconds. Node's timers fire at once when set for more than 24.8 days, so a longer wait is split. */
const LONGEST_WAIT = 86_400_000;

interface Session {
  readonly path: string;
  readonly name: string;
  /** The file's text. */
  readonly text: string;
  readonly origin: Origin;
  readonly hash: number;
  readonly packet: Uint8Array;
  readonly group: AnnouncementGroup;
  /** The word for the report of its first announcement. */
  readonly first: 'announced' | 'modified';
  /** When it was last announced, in milliseconds of the clock; `undefined` before the first time. */
  last: number | undefined;
  /** Cancels the next announcement. */
  cancel: () => void;
}

export class Announcer {
  private readonly options: AnnouncerOptions;
  private readonly tools: AnnouncerTools;
  private readonly groups = new Map<number, AnnouncementGroup>();
  /** Sessions by the path of their file. */
  private readonly sessions = new Map<string, Session>();
  /** The reasons why files are not announced, by path; each is reported once. */
  private readonly refused = new Map<string, string>();

  constructor(options: AnnouncerOptions, tools: AnnouncerTools) {
    this.options = options;
    this.tools = tools;
  }

  get count(): number {
    return this.sessions.size;
  }

  /** Takes the files that exist now: announces new ones, modifies changed ones and withdraws those that are gone. */
  async take(files: readonly DescriptionFile[]): Promise<void> {
    const there = new Set(files.map(({ path }) => path));
    for (const path of this.refused.keys()) if (!there.has(path)) this.refused.delete(path);
    for (const session of this.sessions.values()) if (!there.has(session.path)) await this.withdraw(session);
    for (const file of files) {
      const before = this.sessions.get(file.path);
      if (before?.text === file.text) continue;
      const refusal = await this.announce(file, before);
      if (refusal === undefined) this.refused.delete(file.path);
      else if (this.refused.get(file.path) !== refusal) {
        this.refused.set(file.path, refusal);
        const kept = before === undefined ? 'not announced' : 'announced as it was before';
        this.options.report(`${file.path}: ${refusal}; ${kept}`);
      }
    }
  }

  /** Withdraws everything and lets go of the network. */
  async stop(): Promise<void> {
    for (const session of this.sessions.values()) await this.withdraw(session);
    for (const group of this.groups.values()) group.close();
    this.groups.clear();
  }

  /** @returns why the file cannot be announced */
  private async announce(
    { path, text, modified }: DescriptionFile,
    before: Session | undefined,
  ): Promise<string | undefined> {
    const description = readDescription(text);
    if ('unreadable' in description) return description.unreadable;
    const fault = faultIn(text);
    if (fault !== undefined) return fault;
    const to = announcedOn(description);
    if (typeof to === 'string') return to;
    const { origin: written, name } = description;
    const others = [...this.sessions.values()].filter((other) => other !== before);
    const same = others.find(({ origin }) => identity(origin) === identity(written));
    if (same !== undefined) return `it is the same session as ${same.path}`;
    const isModified = before !== undefined && identity(before.origin) === identity(written);
    const origin = { ...written, version: versionOf(modified, isModified ? before.origin.version : undefined) };
    const announced = withOrigin(text, origin);
    const hash = messageHash(announced, new Set([...this.sessions.values()].map((other) => other.hash)));
    const packet = encodeAnnouncement(false, hash, parseAddress(this.options.interface) ?? 0, announced);
    const group = await this.group(to);
    const elsewhere = before !== undefined && before.group !== group;
    // A modified session is announced under another hash (§5): withdrawn first, it would stop for every listener.
    if (before !== undefined && (!isModified || elsewhere)) await this.withdraw(before);
    before?.cancel();
    const first = isModified && !elsewhere ? 'modified' : 'announced';
    const session: Session = { path, name, text, origin, hash, packet, group, first, last: undefined, cancel: nothing };
    this.sessions.set(path, session);
    if (packet.length > SAP_LARGEST)
      this.options.report(
        `${path}: ${packet.length} bytes are more than the ${SAP_LARGEST} that an announcement should have; some may not take it`,
      );
    // The first announcement goes out at once, so that a receiver need not wait five minutes for it.
    session.cancel = this.tools.after(group.reserve(packet.length), () => void this.send(session));
    return undefined;
  }

  private async send(session: Session): Promise<void> {
    const { name, first, group, hash, origin, packet } = session;
    if (session.last === undefined)
      this.options.report(
        `${name}: ${first} on ${group.address}, hash ${hex(hash)}, version ${origin.version}, ${packet.length} bytes`,
      );
    session.last = this.tools.now();
    this.plan(session);
    await group.send(packet);
  }

  /**
   * Sets the time of the next announcement. At that time it is computed again, from the sessions announced by then,
   * and the session waits on if it is later: so announcers that start together drift apart (§3.1).
   */
  private plan(session: Session): void {
    const due = this.due(session);
    const wait = Math.min(LONGEST_WAIT, Math.max(0, due - this.tools.now()));
    session.cancel = this.tools.after(wait, () => {
      if (this.due(session) <= this.tools.now()) void this.send(session);
      else this.plan(session);
    });
  }

  private due({ group, packet, last = this.tools.now() }: Session): number {
    const own = [...this.sessions.values()].filter((session) => session.group === group).length;
    const interval = baseInterval(own + group.count(), packet.length, this.options.pace);
    return last + 1000 * nextGap(interval, this.tools.random());
  }

  private async withdraw(session: Session): Promise<void> {
    session.cancel();
    this.sessions.delete(session.path);
    // A session that was never announced needs no deletion.
    if (session.last === undefined) return;
    const source = parseAddress(this.options.interface) ?? 0;
    await session.group.send(encodeAnnouncement(true, session.hash, source, `${originLine(session.origin)}\r\n`));
    this.options.report(`${session.name}: withdrawn`);
  }

  private async group(group: number): Promise<AnnouncementGroup> {
    let joined = this.groups.get(group);
    if (joined === undefined) {
      const isOwn = (source: string, hash: number): boolean =>
        source === this.options.interface && [...this.sessions.values()].some((session) => session.hash === hash);
      joined = await AnnouncementGroup.join({ group, pace: this.options.pace, isOwn }, this.tools);
      this.groups.set(group, joined);
    }
    return joined;
  }
}

function nothing(): void {}

/** The group that sessions of its scope are announced on, or why there is none. */
function announcedOn(description: SessionDescription): number | string {
  const addresses = description.media.map((media) => connectionOf(description, media)?.address);
  const group = parseAddress(addresses[0] ?? '');
  if (group === undefined || !isMulticast(group)) return 'it names no IPv4 multicast group';
  return sapGroupFor(group) ?? `no RFC says where sessions of the scope of ${addresses[0]} are announced`;
}

/** The part of the origin that stays the same when a session is modified (RFC 8866 §5.2). */
function identity({ username, sessionId, address }: Origin): string {
  return `${username} ${sessionId} ${address}`;
}

/** Seconds from 1900, where NTP counts from as RFC 8866 §5.2 recommends, to 1970. */
const NTP_EPOCH = 2_208_988_800;

/** The announced version: the time when the file was written, but always higher than before (RFC 8866 §5.2). */
function versionOf(modified: number, before: string | undefined): string {
  const written = Math.floor(modified / 1000) + NTP_EPOCH;
  return String(before === undefined ? written : Math.max(written, Number(before) + 1));
}

/** The text with another o= line, and CRLF at the end of each line. */
function withOrigin(text: string, origin: Origin): string {
  const lines = text.split(/\r?\n/).filter((line) => line !== '');
  return lines.map((line) => `${line.startsWith('o=') ? originLine(origin) : line}\r\n`).join('');
}

function hex(hash: number): string {
  return `0x${hash.toString(16).padStart(4, '0')}`;
}
