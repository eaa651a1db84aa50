/** What follows from which fault of the wiring, so that each is told where it is to be mended and nowhere else. */

import type { Device, Stream } from '../site/model.ts';
import { type AddressUse, isOutside } from './address-uses.ts';
import type { Delivery, Unreached } from './delivery.ts';
import { type Fault, MendedWiring, type Step } from './faults.ts';
import type { Link } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Wiring } from './wiring.ts';

/** A receiver that gets nothing of a stream. */
export interface CutOff {
  readonly stream: Stream;
  readonly unreached: Unreached;
}

/** Also an address that is in the wrong network. */
export type Cause = Fault | AddressUse;

export interface Causes {
  /** The receivers that get nothing because of it. */
  readonly cutOffBy: (cause: Cause) => readonly CutOff[];
  /**
   * All that follows from it, by identity: obstacles of deliveries and who is unreached, bridges without a querier, VLANs
   * whose querier is not in them, links that spanning tree keeps idle.
   */
  readonly entailedBy: (cause: Cause) => readonly object[];
  /** Whether anything of that explains why a receiver gets nothing. */
  readonly explains: (unreached: Unreached) => boolean;
  /** Links that neither end lets a VLAN over that is needed beyond. */
  readonly lacking: ReadonlyMap<Link, ReadonlySet<BroadcastDomain>>;
}

type Wired = Pick<Wiring, 'site' | 'topology' | 'tree' | 'addressUses'>;

/** Looks for causes once somebody asks for them. */
export function causesOf(wired: Wired, deliveries: readonly Delivery[]): Causes {
  let found: Found | undefined;
  const all = (): Found => (found ??= new Found(wired, deliveries));
  return {
    cutOffBy: (cause) => all().cutOff.get(cause) ?? [],
    entailedBy: (cause) => [...(all().entailed.get(cause) ?? [])],
    explains: (unreached) => all().explained.has(unreached),
    get lacking() {
      return all().lacking;
    },
  };
}

/** Forwards frames and nothing else: it is no end of a stream. */
function isBridgeAlone({ bridging, routing }: Device): boolean {
  return bridging && !routing;
}

class Found {
  readonly cutOff = new Map<Cause, CutOff[]>();
  readonly explained = new Set<Unreached>();
  readonly entailed = new Map<Cause, Set<object>>();
  readonly lacking = new Map<Link, Set<BroadcastDomain>>();

  constructor(network: Wired, deliveries: readonly Delivery[]) {
    const { site } = network;
    const wiring = new MendedWiring(network);
    const outside = new Map<string, AddressUse[]>();
    for (const use of network.addressUses) {
      if (use.port === undefined || !isOutside(use, use.vlans)) continue;
      const known = outside.get(use.device.name);
      if (known === undefined) outside.set(use.device.name, [use]);
      else known.push(use);
    }
    for (const { stream, source, unreached: all } of deliveries) {
      for (const unreached of all) {
        const receiver = site.deviceByName.get(unreached.receiver);
        if (source === undefined || receiver === undefined || isBridgeAlone(receiver)) continue;
        const steps = isBridgeAlone(source) ? undefined : wiring.between(source, receiver);
        const addresses = [...(outside.get(source.name) ?? []), ...(outside.get(receiver.name) ?? [])];
        const causes = new Set<Cause>([...this.causesIn(steps), ...addresses]);
        if (causes.size > 0) this.explained.add(unreached);
        for (const cause of causes) {
          const known = this.cutOff.get(cause);
          if (known === undefined) this.cutOff.set(cause, [{ stream, unreached }]);
          else known.push({ stream, unreached });
          this.entail(cause, unreached, unreached.why);
        }
      }
    }
    this.addQueriers(network, wiring);
    for (const link of network.topology.spanningTree.blocked) {
      for (const domain of [...(link.untagged === undefined ? [] : [link.untagged]), ...link.tagged]) {
        const steps = wiring.within(domain, link.a.device, link.b.device, link);
        if (steps?.every(({ kind }) => kind === 'differs') === true)
          for (const cause of this.causesIn(steps)) this.entail(cause, link);
      }
    }
  }

  private addQueriers(network: Wired, wiring: MendedWiring): void {
    const { site } = network;
    for (const vlan of site.vlans) {
      const querier = vlan.querier === undefined ? undefined : site.deviceByName.get(vlan.querier);
      if (querier === undefined) continue;
      const domain = network.topology.domainOf(vlan);
      const tree = network.tree(domain);
      const parts = new Map<number, readonly Step[] | undefined>();
      for (const bridge of tree.bridges.values()) {
        const { component } = bridge;
        if (tree.queried.has(component)) continue;
        if (!parts.has(component)) parts.set(component, wiring.within(domain, bridge.device, querier));
        for (const cause of this.causesIn(parts.get(component))) this.entail(cause, bridge, vlan);
      }
    }
  }

  private causesIn(steps: readonly Step[] | undefined): Set<Fault> {
    const causes = new Set<Fault>();
    for (const { fault, domain, kind } of steps ?? []) {
      causes.add(fault);
      if (kind !== 'lacks' || domain === undefined || !('cable' in fault)) continue;
      const known = this.lacking.get(fault);
      if (known === undefined) this.lacking.set(fault, new Set([domain]));
      else known.add(domain);
    }
    return causes;
  }

  private entail(cause: Cause, ...effects: readonly object[]): void {
    let known = this.entailed.get(cause);
    if (known === undefined) this.entailed.set(cause, (known = new Set()));
    for (const effect of effects) known.add(effect);
  }
}
