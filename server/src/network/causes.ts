/** Which faults of the wiring have which effects, so that each fault is reported once, where it can be mended. */

import { lastResult } from '../memo.ts';
import type { Device, Stream } from '../site/model.ts';
import { type AddressUse, isOutside } from './address-uses.ts';
import type { Delivery, Obstacle, Unreached } from './delivery.ts';
import type { TrafficRoute } from './traffic.ts';
import { type Fault, FaultSearch, type FaultStep } from './faults.ts';
import type { Link } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Wiring } from './wiring.ts';

/** A receiver that gets nothing of a stream. */
export interface CutOff {
  readonly stream: Stream;
  readonly unreached: Unreached;
}

/** A missing cable: nothing leads from one device to the other, however the ports are set. */
export interface Gap {
  readonly from: Device;
  readonly to: Device;
}

/** A fault of the wiring, an address in the wrong network, or a missing cable. */
export type Cause = Fault | AddressUse | Gap;

export interface Causes {
  /** The receivers that get nothing because of it. */
  readonly cutOffBy: (cause: Cause) => readonly CutOff[];
  /**
   * All effects of a cause, by identity: obstacles of deliveries and of traffic, unreached receivers, bridges without a
   * querier, VLANs whose querier is not in them, links that spanning tree keeps idle.
   */
  readonly entailedBy: (cause: Cause) => readonly object[];
  /** Whether one of the causes explains why a receiver gets nothing. */
  readonly explains: (unreached: Unreached) => boolean;
  /** The cable that is missing between a stream's source and a receiver. */
  readonly gapBefore: (unreached: Unreached) => Gap | undefined;
  /** Links that carry, at neither end, VLANs that are needed beyond them. */
  readonly lacking: () => ReadonlyMap<Link, ReadonlySet<BroadcastDomain>>;
}

type Wired = Pick<Wiring, 'site' | 'topology' | 'tree' | 'addressUses'>;

/** Searches for causes only when they are asked for. */
export function causesOf(wired: Wired, deliveries: readonly Delivery[], traffic: readonly TrafficRoute[]): Causes {
  let found: CauseSearch | undefined;
  const all = (): CauseSearch => (found ??= new CauseSearch(wired, deliveries, traffic));
  return {
    cutOffBy: (cause) => all().cutOff.get(cause) ?? [],
    entailedBy: (cause) => [...(all().entailed.get(cause) ?? [])],
    explains: (unreached) => all().explained.has(unreached),
    gapBefore: (unreached) => all().gapBefore.get(unreached),
    lacking: () => all().lacking,
  };
}

/** The gateway, by name, that should lead further but does not. */
function gatewayIn({ vlans }: Wired['site'], why: Obstacle): string[] {
  if (why.obstacle === 'no-route') return [why.gateway];
  if (why.obstacle !== 'no-gateway') return [];
  const { gateway } = vlans.find(({ name }) => name === why.network) ?? {};
  return gateway === undefined ? [] : [gateway];
}

/** Whether a device only forwards frames and so cannot be an end of a stream. */
function isBridgeAlone({ bridging, routing }: Device): boolean {
  return bridging && !routing;
}

class CauseSearch {
  readonly cutOff = new Map<Cause, CutOff[]>();
  readonly explained = new Set<Unreached>();
  readonly gapBefore = new Map<Unreached, Gap>();
  readonly entailed = new Map<Cause, Set<object>>();
  readonly lacking = new Map<Link, Set<BroadcastDomain>>();

  constructor(network: Wired, deliveries: readonly Delivery[], traffic: readonly TrafficRoute[]) {
    const { site } = network;
    // Most sites have nothing to search for.
    const wiring = lastResult(() => new FaultSearch(network));
    const gaps = lastResult(() => new Gaps(network));
    const outside = new Map<string, AddressUse[]>();
    for (const use of network.addressUses) {
      if (use.vlans.length === 0 || !isOutside(use, use.vlans)) continue;
      const uses = outside.get(use.device.name);
      if (uses === undefined) outside.set(use.device.name, [use]);
      else uses.push(use);
    }
    const between = (
      from: Device,
      to: Device,
      why: Obstacle,
    ): { readonly causes: Set<Cause>; readonly gap: Gap | undefined } => {
      const steps = isBridgeAlone(from) ? undefined : wiring().between(from, to);
      const addresses = [from.name, to.name, ...gatewayIn(site, why)].flatMap((name) => outside.get(name) ?? []);
      const gap = steps === undefined ? gaps().between(from, to) : undefined;
      return { causes: new Set<Cause>([...this.causesIn(steps), ...addresses]), gap };
    };
    for (const { from, to, obstacle } of traffic) {
      if (obstacle === undefined || from === undefined || to === undefined) continue;
      const { causes, gap } = between(from, to, obstacle);
      for (const cause of [...causes, ...(gap === undefined ? [] : [gap])]) this.entail(cause, obstacle);
    }
    for (const { stream, source, unreached: all } of deliveries) {
      for (const unreached of all) {
        const receiver = site.deviceByName.get(unreached.receiver);
        if (source === undefined || receiver === undefined || isBridgeAlone(receiver)) continue;
        if (unreached.why.obstacle === 'not-followed') continue;
        const { causes, gap } = between(source, receiver, unreached.why);
        if (causes.size > 0) this.explained.add(unreached);
        if (gap !== undefined) this.gapBefore.set(unreached, gap);
        for (const cause of causes) {
          const list = this.cutOff.get(cause);
          if (list === undefined) this.cutOff.set(cause, [{ stream, unreached }]);
          else list.push({ stream, unreached });
          this.entail(cause, unreached, unreached.why);
        }
      }
    }
    this.addQueriers(network, wiring, gaps);
    for (const link of network.topology.spanningTree.blocked) {
      for (const domain of [...(link.untagged === undefined ? [] : [link.untagged]), ...link.tagged]) {
        const steps = wiring().within(domain, link.a.device, link.b.device, link);
        if (steps?.every(({ kind }) => kind === 'differs') === true)
          for (const cause of this.causesIn(steps)) this.entail(cause, link);
      }
    }
  }

  private addQueriers(network: Wired, wiring: () => FaultSearch, gaps: () => Gaps): void {
    const { site } = network;
    for (const vlan of site.vlans) {
      const querier = vlan.querier === undefined ? undefined : site.deviceByName.get(vlan.querier);
      if (querier === undefined) continue;
      const domain = network.topology.domainOf(vlan);
      const tree = network.tree(domain);
      const parts = new Map<number, readonly FaultStep[] | undefined>();
      for (const bridge of tree.bridges.values()) {
        const { component } = bridge;
        if (tree.queried.has(component)) continue;
        if (!parts.has(component)) parts.set(component, wiring().within(domain, bridge.device, querier));
        const steps = parts.get(component);
        const gap = steps === undefined ? gaps().between(bridge.device, querier) : undefined;
        for (const cause of [...this.causesIn(steps), ...(gap === undefined ? [] : [gap])])
          this.entail(cause, bridge, vlan);
      }
    }
  }

  private causesIn(steps: readonly FaultStep[] | undefined): Set<Fault> {
    const causes = new Set<Fault>();
    for (const { fault, domain, kind } of steps ?? []) {
      causes.add(fault);
      if (kind !== 'lacks' || domain === undefined || !('cable' in fault)) continue;
      const domains = this.lacking.get(fault);
      if (domains === undefined) this.lacking.set(fault, new Set([domain]));
      else domains.add(domain);
    }
    return causes;
  }

  private entail(cause: Cause, ...effects: readonly object[]): void {
    let entailed = this.entailed.get(cause);
    if (entailed === undefined) this.entailed.set(cause, (entailed = new Set()));
    for (const effect of effects) entailed.add(effect);
  }
}

/** Parts of a site that no cable joins, and one missing cable between any two of them. */
class Gaps {
  private readonly parts = new Map<Device, number>();
  /** By part, its first switch, else its first device. */
  private readonly standingFor = new Map<number, Device>();
  private readonly wired: Wired;
  private readonly gaps = new Map<string, Gap>();

  constructor(wired: Wired) {
    this.wired = wired;
    const around = new Map<Device, Device[]>();
    const add = (at: Device, next: Device): void => {
      const neighbours = around.get(at);
      if (neighbours === undefined) around.set(at, [next]);
      else neighbours.push(next);
    };
    for (const { a, b } of wired.topology.links) {
      add(a.device, b.device);
      add(b.device, a.device);
    }
    let part = 0;
    for (const device of wired.site.devices) {
      if (this.parts.has(device)) continue;
      const queue = [device];
      for (const reached of queue) {
        if (this.parts.has(reached)) continue;
        this.parts.set(reached, part);
        queue.push(...(around.get(reached) ?? []));
      }
      part++;
    }
    for (const device of wired.site.devices) {
      const own = this.parts.get(device);
      if (own === undefined) continue;
      const before = this.standingFor.get(own);
      if (before === undefined || (before.kind !== 'switch' && device.kind === 'switch'))
        this.standingFor.set(own, device);
    }
  }

  /** The gap between the two devices, or between them and the gateway of a VLAN. */
  between(from: Device, to: Device): Gap | undefined {
    const [here, there] = [this.parts.get(from), this.parts.get(to)];
    if (here === undefined || there === undefined) return undefined;
    if (here !== there) return this.gap(here, there);
    for (const { gateway } of this.wired.site.vlans) {
      const router = gateway === undefined ? undefined : this.wired.site.deviceByName.get(gateway);
      const part = router === undefined ? undefined : this.parts.get(router);
      if (part !== undefined && part !== here) return this.gap(here, part);
    }
    return undefined;
  }

  private gap(a: number, b: number): Gap | undefined {
    const name = `${Math.min(a, b)} ${Math.max(a, b)}`;
    const before = this.gaps.get(name);
    if (before !== undefined) return before;
    const [from, to] = [this.standingFor.get(a), this.standingFor.get(b)];
    if (from === undefined || to === undefined) return undefined;
    const gap = { from, to };
    this.gaps.set(name, gap);
    return gap;
  }
}
