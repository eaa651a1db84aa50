/** A group for announcements: counts those of other announcers, and says when there is room for one more packet. */

import { fnv1a } from '../standards/fnv.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { type Pace, baseInterval, decodeAnnouncement, implicitTimeout } from '../standards/sap.ts';
import type { AnnouncerTools, GroupSocket } from './tools.ts';

/** No house announces so many; the limit keeps a flood on the group from filling the memory. */
const MAX_HEARD = 10_000;

export interface GroupOptions {
  readonly group: number;
  readonly pace: Pace;
  /** Whether this process sent an announcement: its own packets come back too. */
  readonly isOwn: (source: string, hash: number) => boolean;
}

export class AnnouncementGroup {
  readonly address: string;
  private readonly options: GroupOptions;
  private readonly tools: AnnouncerTools;
  private socket: GroupSocket | undefined;
  /** When each announcement of another announcer was last heard, in milliseconds of the clock. */
  private readonly heard = new Map<string, number>();
  private freeAt = 0;

  private constructor(options: GroupOptions, tools: AnnouncerTools) {
    this.options = options;
    this.tools = tools;
    this.address = formatAddress(options.group);
  }

  /** @throws the system's error where the group cannot be joined */
  static async join(options: GroupOptions, tools: AnnouncerTools): Promise<AnnouncementGroup> {
    const group = new AnnouncementGroup(options, tools);
    group.socket = await tools.join(options.group, (packet) => group.hear(packet));
    return group;
  }

  /** How many sessions others announce here. */
  count(): number {
    const now = this.tools.now();
    const timeout = implicitTimeout(baseInterval(this.heard.size, 0, this.options.pace)) * 1000;
    for (const [key, last] of this.heard) if (now - last > timeout) this.heard.delete(key);
    return this.heard.size;
  }

  /**
   * Takes the next free turn for a packet.
   *
   * @returns the milliseconds until then, which keep to the group's bandwidth
   */
  reserve(size: number): number {
    const now = this.tools.now();
    const start = Math.max(now, this.freeAt);
    this.freeAt = start + (size * 8 * 1000) / this.options.pace.bandwidth;
    return start - now;
  }

  async send(packet: Uint8Array): Promise<void> {
    await this.socket?.send(packet);
  }

  close(): void {
    this.socket?.close();
  }

  private hear(packet: Uint8Array): void {
    const read = decodeAnnouncement(packet);
    if ('unreadable' in read) return;
    const { source, hash, payload, deletion } = read;
    if (this.options.isOwn(source, hash)) return;
    // Announcers of the first version set no hash, and are distinguished by their payload (§3.1).
    const key = `${source} ${hash}${hash === 0 && typeof payload === 'string' ? ` ${fnv1a(payload)}` : ''}`;
    if (deletion) this.heard.delete(key);
    else if (this.heard.has(key) || this.heard.size < MAX_HEARD) this.heard.set(key, this.tools.now());
  }
}
