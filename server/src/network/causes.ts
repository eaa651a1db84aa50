/** What follows from which fault of the wiring, so that each is told where it is to be mended and nowhere else. */

import type { Device, Stream } from '../site/model.ts';
import { type AddressUse, isOutside } from './address-uses.ts';
import type { Delivery, Obstacle, Unreached } from './delivery.ts';
import type { TrafficRoute } from './traffic.ts';
import { type Fault, FaultSearch, type Step } from './faults.ts';
import type { Link } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Wiring } from './wiring.ts';

/** A receiver that gets nothing of a stream. */
export interface CutOff {
  readonly stream: Stream;
  readonly unreached: Unreached;
}

/** A cable that is missing: nothing leads from one device to the other, whatever is set. */
export interface Gap {
  readonly from: Device;
  readonly to: Device;
}

/** Also an address that is in the wrong network. */
export type Cause = Fault | AddressUse | Gap;

export interface Causes {
  /** The receivers that get nothing because of it. */
  readonly cutOffBy: (cause: Cause) => readonly CutOff[];
  /**
   * All that follows from it, by identity: obstacles of deliveries and of traffic and who is unreached, bridges without
   * a querier, VLANs whose querier is not in them, links that spanning tree keeps idle.
   */
  readonly entailedBy: (cause: Cause) => readonly object[];
  /** Whether anything of that explains why a receiver gets nothing. */
  readonly explains: (unreached: Unreached) => boolean;
  /** The cable that is missing between a stream's source and a receiver. */
  readonly gapBefore: (unreached: Unreached) => Gap | undefined;
  /** Links that neither end lets a VLAN over that is needed beyond. */
  readonly lacking: () => ReadonlyMap<Link, ReadonlySet<BroadcastDomain>>;
}

type Wired = Pick<Wiring, 'site' | 'topology' | 'tree' | 'addressUses'>;

/** Looks for causes once somebody asks for them. */
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

/** The router that is meant to lead further, where it is none with an address there. */
function gatewayIn({ vlans }: Wired['site'], why: Obstacle): string[] {
  if (why.obstacle === 'no-route') return [why.gateway];
  if (why.obstacle !== 'no-gateway') return [];
  const { gateway } = vlans.find(({ name }) => name === why.network) ?? {};
  return gateway === undefined ? [] : [gateway];
}

/** Forwards frames and nothing else: it is no end of a stream. */
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
    const wiring = new FaultSearch(network);
    const gaps = new Gaps(network);
    const outside = new Map<string, AddressUse[]>();
    for (const use of network.addressUses) {
      if (use.vlans.length === 0 || !isOutside(use, use.vlans)) continue;
      const known = outside.get(use.device.name);
      if (known === undefined) outside.set(use.device.name, [use]);
      else known.push(use);
    }
    const between = (
      from: Device,
      to: Device,
      why: Obstacle,
    ): { readonly causes: Set<Cause>; readonly gap: Gap | undefined } => {
      const steps = isBridgeAlone(from) ? undefined : wiring.between(from, to);
      const addresses = [from.name, to.name, ...gatewayIn(site, why)].flatMap((name) => outside.get(name) ?? []);
      const gap = steps === undefined ? gaps.between(from, to) : undefined;
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
        const { causes, gap } = between(source, receiver, unreached.why);
        if (causes.size > 0) this.explained.add(unreached);
        if (gap !== undefined) this.gapBefore.set(unreached, gap);
        for (const cause of causes) {
          const known = this.cutOff.get(cause);
          if (known === undefined) this.cutOff.set(cause, [{ stream, unreached }]);
          else known.push({ stream, unreached });
          this.entail(cause, unreached, unreached.why);
        }
      }
    }
    this.addQueriers(network, wiring, gaps);
    for (const link of network.topology.spanningTree.blocked) {
      for (const domain of [...(link.untagged === undefined ? [] : [link.untagged]), ...link.tagged]) {
        const steps = wiring.within(domain, link.a.device, link.b.device, link);
        if (steps?.every(({ kind }) => kind === 'differs') === true)
          for (const cause of this.causesIn(steps)) this.entail(cause, link);
      }
    }
  }

  private addQueriers(network: Wired, wiring: FaultSearch, gaps: Gaps): void {
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
        const steps = parts.get(component);
        const gap = steps === undefined ? gaps.between(bridge.device, querier) : undefined;
        for (const cause of [...this.causesIn(steps), ...(gap === undefined ? [] : [gap])])
          this.entail(cause, bridge, vlan);
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

/** Parts of a site that no cable joins, and what is missing between them: one for two parts. */
class Gaps {
  private readonly parts = new Map<Device, number>();
  private readonly wired: Wired;
  private readonly known = new Map<string, Gap>();

  constructor(wired: Wired) {
    this.wired = wired;
    const around = new Map<Device, Device[]>();
    const add = (at: Device, next: Device): void => {
      const own = around.get(at);
      if (own === undefined) around.set(at, [next]);
      else own.push(next);
    };
    for (const { a, b } of wired.topology.links) {
      add(a.device, b.device);
      add(b.device, a.device);
    }
    let part = 0;
    for (const device of wired.site.devices) {
      if (this.parts.has(device)) continue;
      const queue = [device];
      for (const each of queue) {
        if (this.parts.has(each)) continue;
        this.parts.set(each, part);
        queue.push(...(around.get(each) ?? []));
      }
      part++;
    }
  }

  /** Between the two, or between them and the router that is the gateway of their VLANs. */
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

  private gap(one: number, other: number): Gap | undefined {
    const name = `${Math.min(one, other)} ${Math.max(one, other)}`;
    const known = this.known.get(name);
    if (known !== undefined) return known;
    const [from, to] = [this.standingFor(one), this.standingFor(other)];
    if (from === undefined || to === undefined) return undefined;
    const gap = { from, to };
    this.known.set(name, gap);
    return gap;
  }

  /** The first switch of a part, else its first device. */
  private standingFor(part: number): Device | undefined {
    const own = this.wired.site.devices.filter((device) => this.parts.get(device) === part);
    return own.find(({ kind }) => kind === 'switch') ?? own[0];
  }
}
