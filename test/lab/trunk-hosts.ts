/**
 * Hosts that have a trunk: a small bridge handles tags in place of the network card, as not every kernel has VLAN
 * devices. The host has one interface for each VLAN and one for frames without a tag.
 */

import type { Plan } from '../../server/src/plan.ts';
import type { Port } from '../../server/src/site/model.ts';
import { type Addresses, interfaceOf } from './addresses.ts';
import { legs, taggedIds } from './hosts.ts';

/** A port of a host with a trunk, and its interfaces: their names at the host, at the card, and their tags. */
export interface Card {
  readonly port: Port;
  readonly ends: readonly { readonly atHost: string; readonly atCard: string; readonly tag: number | undefined }[];
}

export function cards(plan: Plan, addresses: Addresses): Card[] {
  return plan.site.devices
    .flatMap((device) => legs(plan, device))
    .flatMap((port) => {
      const tags = taggedIds(plan, addresses, port);
      if (tags.length === 0) return [];
      const name = interfaceOf(port);
      const card = `c${name}`;
      const ends = tags.map((tag) => ({ atHost: `${name}.${tag}`, atCard: `${card}.${tag}`, tag }));
      return [{ port, ends: [{ atHost: name, atCard: card, tag: undefined }, ...ends] }];
    });
}

/** For ovs-vsctl. Frames pass between the cable and one interface, by their tag. */
export function cardCommands({ port, ends }: Card): string[] {
  const bridge = `n${interfaceOf(port)}`;
  const commands = [
    '--',
    'add-br',
    bridge,
    '--',
    'set',
    'bridge',
    bridge,
    'datapath_type=netdev',
    'other_config:forward-bpdu=true',
  ];
  commands.push('--', 'add-port', bridge, interfaceOf(port));
  for (const { atCard, tag } of ends) commands.push('--', 'add-port', bridge, atCard, `tag=${tag ?? 0}`);
  return commands;
}
