/** The announcements in a capture: each session with its last description, and when it was heard. */

import type { CapturedFrame } from '../../standards/capture-format.ts';
import { CaptureReader } from '../../standards/capture.ts';
import { datagramIn, isKnownLink } from '../../standards/datagram.ts';
import { SAP_PORT, decodeAnnouncement } from '../../standards/sap.ts';
import { type Origin, type SessionDescription, readDescription } from '../../standards/sdp.ts';

export interface HeardSession {
  /** The address of the announcer. */
  readonly announcer: string;
  /** The group that it was announced on. */
  readonly on: number;
  /** The last announced description. */
  description: SessionDescription;
  hash: number;
  /** Bytes of the packet. */
  size: number;
  count: number;
  /** Milliseconds since 1970. */
  last: number;
  /** The two shortest times between packets of the same text, in milliseconds. */
  shortest: readonly [number, number];
  /** The longest time between two packets, in milliseconds. */
  longest: number;
  /** When it was withdrawn, unless it was announced again. */
  withdrawn: number | undefined;
}

/** No house has so many; the limit keeps a flood from filling the memory. */
const MAX_SESSIONS = 10_000;

export class Heard {
  readonly sessions = new Map<string, HeardSession>();
  /** Number of packets on the port of announcements. */
  packets = 0;
  /** The number of packets that were not read, by reason. */
  readonly unread = new Map<string, number>();
  first: number | undefined;
  last: number | undefined;
  private readonly capture = new CaptureReader();

  push(chunk: Uint8Array): void {
    for (const frame of this.capture.push(chunk)) this.frame(frame);
  }

  /** Whether the capture is damaged, so that nothing further can be read. */
  get isBroken(): boolean {
    return this.capture.isBroken;
  }

  /** @returns why the capture cannot be read to its end, if so */
  end(): string | undefined {
    return this.capture.end();
  }

  /** Milliseconds from the first to the last packet of the capture. */
  get span(): number {
    return this.first === undefined || this.last === undefined ? 0 : this.last - this.first;
  }

  private frame(frame: CapturedFrame): void {
    const { time } = frame;
    if (time === undefined) return this.notRead('they have no time');
    this.first = Math.min(this.first ?? time, time);
    this.last = Math.max(this.last ?? time, time);
    if (!isKnownLink(frame.linkType)) return this.notRead(`frames of link type ${frame.linkType} are not known`);
    const datagram = datagramIn(frame);
    if (datagram?.destinationPort !== SAP_PORT) return;
    this.packets++;
    if (datagram.cut) return this.notRead('they were not captured whole (tcpdump -s 0 does)');
    const packet = decodeAnnouncement(datagram.payload);
    if ('unreadable' in packet) return this.notRead('they are no announcements');
    const { deletion, hash, source, payload } = packet;
    if (typeof payload !== 'string') return this.notRead(`they are ${payload.sealed}`);
    if (deletion) return this.withdraw(source, hash, payload, time);
    const description = readDescription(payload);
    if ('unreadable' in description) return this.notRead(`of one, ${description.unreadable}`);
    this.announce(
      { announcer: source, on: datagram.destination, description, hash, size: datagram.payload.length },
      time,
    );
  }

  private announce(said: Pick<HeardSession, 'announcer' | 'on' | 'description' | 'hash' | 'size'>, time: number): void {
    const key = keyOf(said.announcer, said.on, said.description.origin);
    const known = this.sessions.get(key);
    if (known === undefined) {
      if (this.sessions.size === MAX_SESSIONS) return this.notRead(`there are more than ${MAX_SESSIONS} sessions`);
      this.sessions.set(key, {
        ...said,
        count: 1,
        last: time,
        shortest: [Infinity, Infinity],
        longest: 0,
        withdrawn: undefined,
      });
      return;
    }
    const gap = time - known.last;
    // A changed session, or one that was withdrawn, is announced at once.
    if (known.hash === said.hash && known.withdrawn === undefined) {
      const [nearest, next] = known.shortest;
      known.shortest = gap < nearest ? [gap, nearest] : [nearest, Math.min(next, gap)];
    }
    if (known.withdrawn === undefined) known.longest = Math.max(known.longest, gap);
    Object.assign(known, said, { count: known.count + 1, last: time, withdrawn: undefined });
  }

  /** A deletion gives the session's o= line, and the announcer and hash of its announcement. */
  private withdraw(announcer: string, hash: number, payload: string, time: number): void {
    for (const session of this.sessions.values()) {
      if (session.announcer !== announcer) continue;
      if (session.hash === hash || payload.startsWith(`o=${originWords(session.description.origin)}`))
        session.withdrawn = time;
    }
  }

  private notRead(why: string): void {
    if (this.unread.has(why) || this.unread.size < 100) this.unread.set(why, (this.unread.get(why) ?? 0) + 1);
  }
}

function keyOf(announcer: string, on: number, { username, sessionId, address }: Origin): string {
  return `${announcer} ${on} ${username} ${sessionId} ${address}`;
}

/** The origin without its version: a deletion may have an earlier one. */
function originWords({ username, sessionId }: Origin): string {
  return `${username} ${sessionId} `;
}
