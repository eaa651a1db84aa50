/** Two hosts on one cable, each a network namespace: one that sends to groups, one that joins them. */

import { HostProgram } from './host-program.ts';
import { plainFrames } from './hosts.ts';
import { Place } from './place.ts';
import { run, runIn } from './run.ts';

export class TwoHosts {
  readonly place = new Place();

  /**
   * The sender's addresses, each in a network of /24; the receiver is 192.168.20.61. Call `end` also where this fails.
   */
  async build(addresses: readonly string[], receiverBesides: readonly string[] = []): Promise<void> {
    const { place } = this;
    await place.addNamespaces(['sender', 'receiver']);
    const [sender, receiver] = [place.namespace('sender'), place.namespace('receiver')];
    await run('ip', ['link', 'add', 'eth', 'netns', sender, 'type', 'veth', 'peer', 'name', 'eth', 'netns', receiver]);
    await this.setUp(sender, addresses);
    await this.setUp(receiver, ['192.168.20.61', ...receiverBesides]);
  }

  private setUp(namespace: string, addresses: readonly string[]): Promise<void> {
    return runIn(namespace, [
      'for i in all default; do echo 1 >/proc/sys/net/ipv6/conf/$i/disable_ipv6; done',
      'ip link set lo up',
      plainFrames('eth'),
      'ip link set eth up',
      ...addresses.map((address) => `ip address add ${address}/24 dev eth`),
      'ip route add 224.0.0.0/4 dev eth',
    ]);
  }

  send(program: string, ...args: readonly string[]): HostProgram {
    return new HostProgram(this.place, this.place.namespace('sender'), program, args);
  }

  receive(program: string, ...args: readonly string[]): HostProgram {
    return new HostProgram(this.place, this.place.namespace('receiver'), program, args);
  }

  end(): void {
    this.place.clear();
  }
}
