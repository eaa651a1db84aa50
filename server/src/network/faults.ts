/**
 * Finds the faults that keep two hosts, or two parts of a VLAN, apart.
 *
 * The graph joins parts of broadcast domains by the faults between them: a link whose ends have different VLANs, a link
 * that lacks a VLAN at both ends, a link that spanning tree keeps idle, a cable that ends nowhere. The cheapest path
 * shows what to mend; an obvious fault costs less than one that may be intended.
 */

import { perObject } from '../memo.ts';
import { contains } from '../standards/ipv4.ts';
import type { Item } from '../site/item.ts';
import { type Cable, type CableEnd, type Device, type Port, portAt } from '../site/model.ts';
import { NameSearch } from '../text/nearest.ts';
import { type Link, cablesOf, taggingOf, oppositePort, domainsSentBy } from './link.ts';
import { isTransparent } from './transparent-segments.ts';
import type { Topology, Wired, Wiring } from './wiring.ts';
import { type BroadcastDomain, domainsOf, hasVlans } from './vlan-membership.ts';

/** What is to be mended: a link, or a cable that joins nothing. */
export type Fault = Link | Item;

export interface FaultStep {
  readonly fault: Fault;
  /** The domain that must pass there; `undefined` where everything must. */
  readonly domain: BroadcastDomain | undefined;
  readonly kind: 'differs' | 'joins-nothing' | 'idle' | 'lacks';
}

const COST: Readonly<Record<FaultStep['kind'], number>> = { 'differs': 2, 'joins-nothing': 2, 'idle': 3, 'lacks': 4 };

/** A part of a broadcast domain, or a router. */
type Part = object;

interface Edge {
  readonly to: Part;
  /** `undefined` where frames pass already. */
  readonly step: FaultStep | undefined;
}

/** Parts with the least costly ways to them. */
type Ways = ReadonlyMap<Part, { readonly cost: number; readonly steps: readonly FaultStep[] }>;

export class FaultSearch {
  private readonly site: Wired;
  private readonly topology: Topology;
  private readonly tree: Wiring['tree'];
  private readonly domainPart = perObject((_: BroadcastDomain): Part => ({}));
  private readonly lonely = new Map<Device, Map<BroadcastDomain, Part>>();
  private readonly components = new Map<BroadcastDomain, Map<number, Part>>();
  private readonly edges = new Map<Part, Edge[]>();
  private readonly domainsAt = new Map<Device, Set<BroadcastDomain>>();
  /** Cables that join nothing, by the devices that they may be meant for. */
  private readonly loose = new Map<Device, { readonly item: Item; readonly end: Port | Device }[]>();
  private readonly from = perObject((device: Device): Ways => this.search(this.entries(device)));

  constructor({ site, topology, tree }: Pick<Wiring, 'site' | 'topology' | 'tree'>) {
    this.site = site;
    this.topology = topology;
    this.tree = tree;
    for (const domain of topology.domains) {
      for (const device of tree(domain).bridges.keys()) {
        const atDevice = this.domainsAt.get(device) ?? new Set();
        this.domainsAt.set(device, atDevice.add(domain));
      }
    }
    this.addLoose();
    for (const link of topology.links) if (link.a.forwards && link.b.forwards) this.addBetweenBridges(link);
    for (const router of site.devices)
      if (router.routing) for (const { to, step } of this.entries(router)) this.join(router, to, step);
  }

  /**
   * The steps to mend so that frames pass between two hosts; empty if they pass already, `undefined` if no cable leads
   * there.
   */
  between(a: Device, b: Device): readonly FaultStep[] | undefined {
    return this.least(this.from(a), this.entries(b));
  }

  /** As `between`, for a bridge and a device in one broadcast domain; `without` leaves out a link. */
  within(domain: BroadcastDomain, from: Device, to: Device, without?: Link): readonly FaultStep[] | undefined {
    const ends = to.bridging
      ? [{ to: this.part(to, domain), step: undefined }]
      : this.entries(to).filter(({ to: part, step }) => step !== undefined || this.isOf(part, domain));
    return this.least(this.search([{ to: this.part(from, domain), step: undefined }], without), ends);
  }

  private isOf(part: Part, domain: BroadcastDomain): boolean {
    return [...(this.components.get(domain)?.values() ?? [])].includes(part);
  }

  /** A bridge's part of a domain, which may be the bridge alone. */
  private part(device: Device, domain: BroadcastDomain): Part {
    const component = this.tree(domain).bridges.get(device)?.component;
    if (component === undefined)
      return kept(
        kept(this.lonely, device, () => new Map()),
        domain,
        () => ({}),
      );
    return kept(
      kept(this.components, domain, () => new Map()),
      component,
      () => ({}),
    );
  }

  private join(a: Part, b: Part, step: FaultStep | undefined): void {
    if (a === b) return;
    kept(this.edges, a, () => []).push({ to: b, step });
    kept(this.edges, b, () => []).push({ to: a, step });
  }

  private addBetweenBridges(link: Link): void {
    const { a, b } = link;
    const sent = new Set([...domainsOf(link.fromA), ...domainsOf(link.fromB)]);
    for (const domain of sent) {
      const kind = link.blocked !== undefined ? 'idle' : 'differs';
      if (link.blocked === undefined && taggingOf(link, domain) !== 'no') continue;
      if (isTransparent(a) !== isTransparent(b)) this.throughTransparent(link, domain);
      else this.join(this.part(a.device, domain), this.part(b.device, domain), { fault: link, domain, kind });
    }
    if (isTransparent(a) || isTransparent(b)) return;
    for (const vlan of this.site.vlans) {
      const domain = this.topology.domainOf(vlan);
      // A VLAN that is in one part needs no more links.
      if (sent.has(domain) || this.isInOnePart(domain)) continue;
      this.join(this.part(a.device, domain), this.part(b.device, domain), { fault: link, domain, kind: 'lacks' });
    }
  }

  /** A device without VLANs accepts any frame without a tag, so its own domains join the one of the link. */
  private throughTransparent(link: Link, domain: BroadcastDomain): void {
    const [inner, outer] = isTransparent(link.a) ? [link.a, link.b] : [link.b, link.a];
    for (const untagged of this.domainsAt.get(inner.device) ?? [])
      this.join(this.part(outer.device, domain), this.part(inner.device, untagged), {
        fault: link,
        domain,
        kind: 'differs',
      });
  }

  private readonly isInOnePart = perObject((domain: BroadcastDomain): boolean => {
    const { bridges } = this.tree(domain);
    const first = [...bridges.values()][0]?.component;
    return [...bridges.values()].every(({ component }) => component === first);
  });

  /** Where a host comes into the network. */
  private entries(host: Device): Edge[] {
    const found: Edge[] = [];
    for (const link of this.topology.inside)
      if (link.a.device === host)
        for (const domain of domainsOf(link)) found.push({ to: this.part(host, domain), step: undefined });
    for (const port of host.ports) {
      const link = port.forwards ? undefined : this.topology.linkAt(port);
      if (link === undefined) continue;
      const { device: far, forwards } = oppositePort(link, port);
      const at = (domain: BroadcastDomain): Part => (forwards ? this.part(far, domain) : this.domainPart(domain));
      for (const domain of domainsOf(link)) found.push({ to: at(domain), step: undefined });
      if (!forwards) continue;
      for (const domain of this.meantFor(port, link))
        if (taggingOf(link, domain) === 'no')
          found.push({ to: at(domain), step: { fault: link, domain, kind: 'differs' } });
    }
    for (const { item, end } of this.loose.get(host) ?? []) {
      const far = 'device' in end ? end.device : end;
      const step: FaultStep = { fault: item, domain: undefined, kind: 'joins-nothing' };
      for (const domain of this.domainsAt.get(far) ?? []) found.push({ to: this.part(far, domain), step });
    }
    return found;
  }

  /** The domains that a host has VLANs or addresses for; where it declares neither, all that its switch has. */
  private meantFor(port: Port, link: Link): Iterable<BroadcastDomain> {
    const { topology } = this;
    const found = new Set(hasVlans(port) ? domainsOf(topology.vlanMembershipOf(port)) : []);
    for (const { address, vlan: name } of port.addresses) {
      const vlan = this.site.vlans.find((candidate) =>
        name === undefined
          ? candidate.subnet !== undefined && contains(candidate.subnet, address)
          : candidate.name === name,
      );
      if (vlan !== undefined) found.add(topology.domainOf(vlan));
    }
    if (found.size > 0 || domainsOf(link).length > 0) return found;
    const far = oppositePort(link, port);
    const sent = domainsOf(domainsSentBy(link, far));
    return sent.length > 0 ? sent : (this.domainsAt.get(far.device) ?? []);
  }

  private addLoose(): void {
    const { site, topology } = this;
    const joining = new Set<Cable>(topology.links.flatMap(cablesOf).map(({ cable }) => cable));
    const uncabled = new Map(
      site.devices
        .filter(({ ports }) => !ports.some((port) => topology.linkAt(port) !== undefined))
        .map((device) => [device.name, device]),
    );
    const search = new NameSearch();
    const meant = (end: CableEnd | undefined): readonly (Port | Device)[] => {
      if (end === undefined) return [];
      const device = site.deviceByName.get(end.device);
      if (device !== undefined) return [portAt(site, end) ?? device];
      return search.near(end.device, uncabled).flatMap(({ name }) => uncabled.get(name) ?? []);
    };
    for (const cable of site.cables) {
      if (joining.has(cable)) continue;
      const { item } = cable;
      for (const a of meant(cable.from)) {
        for (const b of meant(cable.to)) {
          const [near, far] = [deviceOf(a), deviceOf(b)];
          if (near === far) continue;
          if (!near.bridging) kept(this.loose, near, () => []).push({ item, end: b });
          if (!far.bridging) kept(this.loose, far, () => []).push({ item, end: a });
          if (!near.bridging || !far.bridging) continue;
          for (const [domain, farDomain] of this.pairs(near, far))
            this.join(this.part(near, domain), this.part(far, farDomain), {
              fault: item,
              domain,
              kind: 'joins-nothing',
            });
        }
      }
    }
  }

  /** The domains that a cable between two bridges would join: equal ones, or any two if a bridge has no VLANs. */
  private pairs(a: Device, b: Device): [BroadcastDomain, BroadcastDomain][] {
    const [ofA, ofB] = [[...(this.domainsAt.get(a) ?? [])], [...(this.domainsAt.get(b) ?? [])]];
    const plain = [a, b].some(({ ports }) => ports.every(isTransparent));
    return plain
      ? ofA.flatMap((near) => ofB.map((far): [BroadcastDomain, BroadcastDomain] => [near, far]))
      : [...new Set([...ofA, ...ofB])].map((domain) => [domain, domain]);
  }

  private search(entries: readonly Edge[], without?: Link): Ways {
    const ways = new Map<Part, { cost: number; steps: readonly FaultStep[] }>();
    const open: { to: Part; cost: number; steps: readonly FaultStep[] }[] = [];
    const offer = (edge: Edge, cost: number, steps: readonly FaultStep[]): void => {
      const { step } = edge;
      if (step !== undefined && step.fault === without) return;
      const sum = cost + (step === undefined ? 0 : COST[step.kind]);
      const before = ways.get(edge.to);
      if (before !== undefined && before.cost <= sum) return;
      const way = { to: edge.to, cost: sum, steps: step === undefined ? steps : [...steps, step] };
      ways.set(edge.to, way);
      open.push(way);
    };
    for (const entry of entries) offer(entry, 0, []);
    while (open.length > 0) {
      let least = 0;
      for (let i = 1; i < open.length; i++) if ((open[i]?.cost ?? 0) < (open[least]?.cost ?? 0)) least = i;
      const [next] = open.splice(least, 1);
      if (next === undefined || (ways.get(next.to)?.cost ?? 0) < next.cost) continue;
      for (const edge of this.edges.get(next.to) ?? []) offer(edge, next.cost, next.steps);
    }
    return ways;
  }

  private least(ways: Ways, ends: readonly Edge[]): readonly FaultStep[] | undefined {
    let best: { readonly cost: number; readonly steps: readonly FaultStep[] } | undefined;
    for (const { to, step } of ends) {
      const way = ways.get(to);
      if (way === undefined) continue;
      const cost = way.cost + (step === undefined ? 0 : COST[step.kind]);
      if (best === undefined || cost < best.cost)
        best = { cost, steps: step === undefined ? way.steps : [...way.steps, step] };
    }
    return best?.steps;
  }
}

function deviceOf(end: Port | Device): Device {
  return 'device' in end ? end.device : end;
}

function kept<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) map.set(key, (value = make()));
  return value;
}
