/** The sockets and the clock that an announcer works by. */

import { type Socket, createSocket } from 'node:dgram';
import type { AnnouncerTools, GroupSocket } from '../announce/tools.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { SAP_PORT } from '../standards/sap.ts';

export interface SapOptions {
  /** The address of the interface to announce and listen by. */
  readonly interface: string;
  readonly ttl: number;
  /** Takes later errors of the system; the group goes on. */
  readonly report: (line: string) => void;
}

export function announcerTools(options: SapOptions): AnnouncerTools {
  return {
    join: (group, receive) => joinGroup(formatAddress(group), options, receive),
    now: () => performance.now(),
    random: () => Math.random(),
    after: (milliseconds, then) => {
      const timer = setTimeout(then, milliseconds);
      return () => clearTimeout(timer);
    },
  };
}

async function joinGroup(
  address: string,
  { interface: at, ttl, report }: SapOptions,
  receive: (packet: Uint8Array) => void,
): Promise<GroupSocket> {
  const listener = createSocket({ type: 'udp4', reuseAddr: true });
  const sender = createSocket({ type: 'udp4', reuseAddr: true });
  const close = (): void => {
    for (const socket of [listener, sender]) socket.close();
  };
  listener.on('message', receive);
  try {
    // Bound to the group, a socket gets what is sent to that group alone; Windows has no such thing.
    await bound(listener, { port: SAP_PORT, ...(process.platform === 'win32' ? {} : { address }) });
    listener.addMembership(address, at);
    await bound(sender, { port: 0, address: at });
    sender.setMulticastInterface(at);
    sender.setMulticastTTL(ttl);
    for (const socket of [listener, sender]) socket.on('error', (error) => report(error.message));
  } catch (error) {
    close();
    throw error;
  }
  const send = (packet: Uint8Array): Promise<void> =>
    new Promise((resolve) => {
      sender.send(packet, SAP_PORT, address, (error) => {
        if (error !== null) report(`nothing can be sent to ${address}: ${error.message}`);
        resolve();
      });
    });
  return { send, close };
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
