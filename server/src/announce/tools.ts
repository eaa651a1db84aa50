/** The sockets, clock and timers that an announcer needs. */
export interface AnnouncerTools {
  /**
   * Joins a group on SAP's port.
   *
   * @param group an IPv4 multicast address
   * @param receive called with each packet that comes in on the group, our own included
   * @throws the system's error where the address does not belong to this machine, or the port is taken
   */
  join(group: number, receive: (packet: Uint8Array) => void): Promise<GroupSocket>;
  /** Milliseconds by a clock that never goes back. */
  now(): number;
  /** At random from 0 to 1. */
  random(): number;
  /** Calls `then` once after so many milliseconds. @returns a function that cancels it */
  after(milliseconds: number, then: () => void): () => void;
}

export interface GroupSocket {
  /** Resolves once the packet is sent or has failed; a failure is reported and does not throw. */
  send(packet: Uint8Array): Promise<void>;
  close(): void;
}
