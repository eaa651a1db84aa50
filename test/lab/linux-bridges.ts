/**
 * Switches as bridges of the kernel, beside those of Open vSwitch: one to each network of a switch, as not every kernel
 * has VLANs on bridges, so for sites without tags. They differ where the standard leaves it open (RFC 4541 §2.1): such
 * a bridge floods all groups until somebody asks, and then sends those that nobody joined to router ports alone.
 */

import type { Plan } from '../../server/src/plan.ts';
import { interfaceOf } from './addresses.ts';
import type { Counted } from './counters.ts';
import { numberOf } from './numbers.ts';
import { run } from './run.ts';
import type { Attachment } from './switches.ts';

/** The shell commands that make all bridges of a site in the namespace of the switches. */
export function linuxBridgeCommands(plan: Plan, attachments: readonly Attachment[]): string[] {
  const commands: string[] = [];
  const { topology } = plan.network;
  for (const device of plan.site.devices.filter(({ bridging }) => bridging)) {
    if (device.spanningTree) throw new Error(`${device.name}: spanning tree is for the switches of Open vSwitch`);
    const made = new Set<string>();
    const join = (name: string, network: string): void => {
      const bridge = `b${numberOf(`${device.name} ${network}`)}`;
      if (!made.has(bridge))
        commands.push(
          `ip link add ${bridge} type bridge mcast_snooping ${device.snooping ? 1 : 0} mcast_querier 0`,
          `ip link set ${bridge} up`,
        );
      made.add(bridge);
      commands.push(`ip link set ${name} master ${bridge}`);
    };
    for (const port of device.ports) {
      const link = topology.linkAt(port);
      if (link?.untagged === undefined) continue;
      if (link.tagged.length > 0) throw new Error(`${device.name}/${port.name} carries tags`);
      join(interfaceOf(port), link.untagged.name);
      if (port.routerPort) commands.push(`ip link set ${interfaceOf(port)} type bridge_slave mcast_router 2`);
    }
    for (const { name, domain, device: at } of attachments) if (at === device) join(name, domain.name);
  }
  return commands;
}

/** The counters of their ports, by name of the interface. */
export async function countedByLinux(namespace: string): Promise<Map<string, Counted>> {
  const shown = JSON.parse(await run('ip', ['-n', namespace, '-j', '-s', 'link'])) as {
    ifname: string;
    stats64: { rx: { bytes: number }; tx: { bytes: number } };
  }[];
  return new Map(
    shown.map(({ ifname, stats64: { rx, tx } }) => [ifname, { received: rx.bytes, sent: tx.bytes }] as const),
  );
}
