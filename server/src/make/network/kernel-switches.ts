/**
 * Settings of the kernel that a host needs to work as planned (ip-sysctl, read): for two cards in one network, for
 * packets that arrive on another card than the one that leads back, and for forwarding.
 */

import type { Interface } from '../../network/interface.ts';
import { type RoutingContext, trace } from '../../network/trace.ts';
import { addressedInterface } from '../../network/unicast.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Stream, isRtsp } from '../../site/model.ts';
import { type HostInterface, type HostNetwork, ofPlan } from './host-network.ts';

export interface KernelSwitch {
  /** Below /proc/sys, with slashes: the name of an interface may have a dot. */
  readonly key: string;
  readonly value: number;
  readonly why: string;
}

/** The note for a host that needs no setting. */
export const NO_SWITCH =
  'Needs no setting of the kernel: rp_filter, arp_ignore, arp_announce and ip_forward may be as they are.';

export function kernelSwitches(plan: Plan, { device, interfaces }: HostNetwork): KernelSwitch[] {
  const found = new Map<string, KernelSwitch>();
  const set = (key: string, value: number, why: string): void => {
    const before = found.get(key);
    // Of two values the lower counts: 0, no check of the way back, serves both.
    if (before === undefined || value < before.value) found.set(key, { key, value, why });
  };
  for (const at of sharing(plan, device)) {
    const own = ofPlan(interfaces, at);
    if (own === undefined) continue;
    const why = 'two cards in one network: each answers for its own address alone';
    set(ofCard(own, 'arp_ignore'), 1, why);
    set(ofCard(own, 'arp_announce'), 2, why);
    set(ofCard(own, 'rp_filter'), 2, 'two cards in one network: the way back leads to one of them');
  }
  for (const { at, back } of arrivals(plan, device)) {
    const own = ofPlan(interfaces, at);
    if (own === undefined || back === at) continue;
    if (back !== undefined) {
      set(ofCard(own, 'rp_filter'), 2, 'streams come in here, and the way back to their source is another');
      continue;
    }
    const why = 'streams come in from a source to which no route leads back';
    set('net/ipv4/conf/all/rp_filter', 0, why);
    set(ofCard(own, 'rp_filter'), 0, why);
  }
  if (!device.routing && plan.network.interfaces.forwards(device)) set('net/ipv4/ip_forward', 1, 'it is a gateway');
  return [...found.values()];
}

function ofCard({ name }: HostInterface, key: string): string {
  return `net/ipv4/conf/${name}/${key}`;
}

/** Interfaces that have an address in a network in which another port of the host has one too. */
function sharing({ network }: Plan, device: Device): Interface[] {
  const own = network.interfaces.of(device).filter(({ address }) => address !== undefined);
  return own.filter(({ domain, port }) => own.some((other) => other.domain === domain && other.port !== port));
}

interface Arrival {
  readonly at: Interface;
  /** The interface by which the host would answer; `undefined` where it cannot. */
  readonly back: Interface | undefined;
}

/** The interfaces at which streams arrive at a host, and acknowledgements of its own streams. */
function arrivals(plan: Plan, device: Device): Arrival[] {
  const { network, site } = plan;
  const context: RoutingContext = { ...network, deviceByName: site.deviceByName };
  const last = (from: Device, to: Interface): { at: Interface; source: Interface } | undefined => {
    const { legs, stopped } = trace(context, from, to);
    const [first, end] = [legs[0], legs.at(-1)];
    const isLost = first === undefined || end === undefined || stopped !== undefined;
    return isLost ? undefined : { at: end.to, source: first.from };
  };
  const answer = (source: Interface): Interface | undefined => network.interfaces.towards(device, source)?.by;
  return network.deliveries.flatMap(({ stream, source, leaves, reaches }): Arrival[] => {
    if (source === undefined) return [];
    const { group } = stream;
    if (group !== undefined) {
      const at = reaches.includes(device.name) ? network.interfaces.towardsGroup(device, group)?.by : undefined;
      return at === undefined || leaves === undefined || source === device ? [] : [{ at, back: answer(leaves) }];
    }
    return reaches.flatMap((name) => {
      const receiver = site.deviceByName.get(name);
      const from = receiver === device ? source : source === device && isAnswered(stream) ? receiver : undefined;
      const to = from === undefined ? undefined : addressedInterface(network, device, from);
      const came = from === undefined || to === undefined || from === device ? undefined : last(from, to);
      return came === undefined ? [] : [{ at: came.at, back: answer(came.source) }];
    });
  });
}

function isAnswered({ transport }: Stream): boolean {
  return isRtsp(transport);
}
