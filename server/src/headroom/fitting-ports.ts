/** The free ports of a switch that a further camera can be plugged into. */

import type { BroadcastDomain } from '../network/vlan-membership.ts';
import { powerClassOf } from '../network/poe.ts';
import type { Plan } from '../plan.ts';
import { mediumAt } from '../site/cable.ts';
import { freePorts } from '../site/free/switch-port.ts';
import type { Device, Port } from '../site/model.ts';
import { portTypes } from '../standards/poe.ts';
import { list } from '../text/words.ts';
import type { Family } from './family.ts';

export interface FittingPorts {
  readonly fitting: readonly Port[];
  /** The other free ones: `2 of another network and 1 without enough power`; empty where there are none. */
  readonly others: string;
}

export function fittingPorts(plan: Plan, { port: own, domain }: Family, at: Device): FittingPorts {
  const untagged = untaggedAt(plan, at);
  const wanted = own === undefined ? undefined : powerClassOf(own)?.class;
  const fitting: Port[] = [];
  const why = { vlan: 0, power: 0, speed: 0, medium: 0 };
  for (const port of freePorts(plan.site, at)) {
    if (!port.forwards || port.lag !== undefined) continue;
    if (untagged(port) !== domain) why.vlan++;
    else if (mediumAt(port) !== undefined && mediumAt(port) !== ((own && mediumAt(own)) ?? 'copper')) why.medium++;
    else if (wanted !== undefined && (port.pse === undefined || portTypes[port.pse].maxClass < wanted)) why.power++;
    else if (port.speed !== undefined && own?.speed !== undefined && port.speed < own.speed) why.speed++;
    else fitting.push(port);
  }
  const words = [
    ...(why.vlan === 0 ? [] : [`${why.vlan} of another network`]),
    ...(why.power === 0 ? [] : [`${why.power} without enough power`]),
    ...(why.speed === 0 ? [] : [`${why.speed} too slow`]),
    ...(why.medium === 0 ? [] : [`${why.medium} for another medium`]),
  ];
  return { fitting, others: list(words) };
}

/** The network of a free port: the declared one, or that of the device's cabled transparent ports. */
function untaggedAt({ network, site }: Plan, at: Device): (port: Port) => BroadcastDomain | undefined {
  const { linkAt, domainOf } = network.topology;
  const isPlain = ({ vlan, native, trunk }: Port): boolean => (vlan ?? native ?? trunk) === undefined;
  const [shared] = at.ports.flatMap((port) => (isPlain(port) ? (linkAt(port)?.untagged ?? []) : []));
  return (port) => {
    if (isPlain(port)) return shared;
    const vlan = site.vlanByName.get(port.vlan ?? port.native ?? '');
    return vlan === undefined ? undefined : domainOf(vlan);
  };
}
