/** A group on which sessions are announced: what others announce there, and a way to announce there too. */

import { type Socket, createSocket } from 'node:dgram';
import { fnv1a } from '../standards/fnv.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { type Pace, SAP_PORT, baseInterval, decodeAnnouncement, implicitTimeout } from '../standards/sap.ts';

/** No house announces so many; whoever floods the group fills no memory. */
const MOST_HEARD = 10_000;

export interface SapGroupOptions {
  readonly group: number;
  /** The address of the interface to announce and listen by. */
  readonly interface: string;
  readonly ttl: number;
  readonly pace: Pace;
  /** Told of what the system refuses later on; the group goes on. */
  readonly trouble: (message: string) => void;
}

export class SapGroup {
  readonly address: string;
  private readonly options: SapGroupOptions;
  private readonly listener: Socket;
  private readonly sender: Socket;
  /** When each announcement of another announcer was last heard, in milliseconds of the process's clock. */
  private readonly heard = new Map<string, number>();
  private freeAt = 0;

  private constructor(options: SapGroupOptions) {
    this.options = options;
    this.address = formatAddress(options.group);
    this.listener = createSocket({ type: 'udp4', reuseAddr: true });
    this.sender = createSocket({ type: 'udp4', reuseAddr: true });
    this.listener.on('message', (packet) => this.hear(packet));
  }

  /** @throws the system's error where the address is none of this machine, or the port is taken */
  static async join(options: SapGroupOptions): Promise<SapGroup> {
    const made = new SapGroup(options);
    try {
      // Bound to the group, a socket gets what is sent to that group alone; Windows has no such thing.
      await bound(made.listener, {
        port: SAP_PORT,
        ...(process.platform === 'win32' ? {} : { address: made.address }),
      });
      made.listener.addMembership(made.address, options.interface);
      await bound(made.sender, { port: 0, address: options.interface });
      made.sender.setMulticastInterface(options.interface);
      made.sender.setMulticastTTL(options.ttl);
      for (const socket of [made.listener, made.sender]) socket.on('error', (error) => options.trouble(error.message));
      return made;
    } catch (error) {
      made.close();
      throw error;
    }
  }

  /** How many sessions others announce here. */
  count(): number {
    const now = performance.now();
    const timeout = implicitTimeout(baseInterval(this.heard.size, 0, this.options.pace)) * 1000;
    for (const [key, last] of this.heard) if (now - last > timeout) this.heard.delete(key);
    return this.heard.size;
  }

  /** The milliseconds to wait before a packet more keeps the group within its bandwidth; they are taken by asking. */
  reserve(size: number): number {
    const now = performance.now();
    const start = Math.max(now, this.freeAt);
    this.freeAt = start + (size * 8 * 1000) / this.options.pace.bandwidth;
    return start - now;
  }

  send(packet: Uint8Array): Promise<void> {
    return new Promise((resolve) => {
      this.sender.send(packet, SAP_PORT, this.address, (error) => {
        if (error !== null) this.options.trouble(`nothing can be sent to ${this.address}: ${error.message}`);
        resolve();
      });
    });
  }

  /** What this process sent comes back too; nobody else has its address and one of its hashes. */
  isOwn: (hash: number) => boolean = () => false;

  private hear(packet: Uint8Array): void {
    const read = decodeAnnouncement(packet);
    if ('unreadable' in read) return;
    const { source, hash, payload, deletion } = read;
    if (source === this.options.interface && this.isOwn(hash)) return;
    // Announcers of the first version set no hash, and are told apart by what they say (§3.1).
    const key = `${source} ${hash}${hash === 0 && typeof payload === 'string' ? ` ${fnv1a(payload)}` : ''}`;
    if (deletion) this.heard.delete(key);
    else if (this.heard.has(key) || this.heard.size < MOST_HEARD) this.heard.set(key, performance.now());
  }

  close(): void {
    for (const socket of [this.listener, this.sender]) socket.close();
  }
}

function bound(socket: Socket, to: { readonly port: number; readonly address?: string }): Promise<void> {
  return new Promise((resolve, reject) => {
    socket.once('error', reject);
    socket.bind({ ...to, exclusive: false }, () => {
      socket.off('error', reject);
      resolve();
    });
  });
}
