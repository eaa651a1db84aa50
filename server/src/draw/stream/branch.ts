/** The way of streams as a tree: who sends, what it passes, whom it reaches, and where it ends. */

import type { Copy, Obstacle, Unreached } from '../../network/delivery.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import type { Network } from '../../network/network.ts';
import { visitUnwanted, type FloodingCause } from '../../network/unwanted.ts';
import type { BroadcastDomain } from '../../network/vlan-membership.ts';
import { copiesOfStream } from '../../network/copies-of-stream.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type Stream, portName } from '../../site/model.ts';
import { naturally } from '../../text/natural-order.ts';

/** A device on the way, or where the way ends. */
export interface StreamStop {
  readonly device: Device;
  /** What it has to do with the stream that comes to it. */
  readonly role: 'sends' | 'passes' | 'receives' | 'gets it unasked' | 'does not take it' | 'gets nothing';
  /** Why it is not reached, where it is a receiver that is not. */
  readonly missed: { readonly stream: Stream; readonly why: Obstacle } | undefined;
  readonly hops: readonly Hop[];
  /** Receivers that get nothing, as the way to them ends here. */
  readonly lost: readonly StreamStop[];
  /** Streams that it sends itself. */
  readonly sends: readonly Sent[];
}

/** Copies of a stream along a link, and what follows. */
export interface Hop {
  readonly stream: Stream;
  readonly link: Link;
  readonly out: Port;
  readonly domain: BroadcastDomain;
  readonly copies: number;
  /** What it leads to: a receiver, or else where the way to one ends, or else nobody who wants it. */
  readonly leadsTo: 'receiver' | 'end' | 'nobody';
  /** Why it is sent to nobody. */
  readonly cause: FloodingCause | undefined;
  readonly to: StreamStop;
}

/** A stream from where it is sent. */
export interface Sent {
  readonly stream: Stream;
  readonly hops: readonly Hop[];
  /** Receivers that get nothing, as the way to them ends where it begins. */
  readonly lost: readonly StreamStop[];
  /** It reaches the device that sends it. */
  readonly toItself: boolean;
}

/** Which streams that a receiver sends on are shown, and of them the way to which one of their receivers; else to all. */
export type Onward = (
  receiver: Device,
  stream: Stream,
) => readonly { readonly stream: Stream; readonly only?: Device | undefined }[];

/** @param only the one receiver that is asked about; all where it is not given */
export function sentOf(plan: Plan, stream: Stream, onward: Onward, only?: Device): Sent {
  return new Growing(plan, stream, onward, only).sent();
}

interface Edge extends Omit<Copy, 'reply'> {
  copies: number;
}

class Growing {
  private readonly edges = new Map<Device, Edge[]>();
  private readonly taken = new Set<Edge>();
  private readonly anchored = new Map<Device, Unreached[]>();
  private readonly plan: Plan;
  private readonly stream: Stream;
  private readonly onward: Onward;
  private readonly only: Device | undefined;

  constructor(plan: Plan, stream: Stream, onward: Onward, only: Device | undefined) {
    this.plan = plan;
    this.stream = stream;
    this.onward = onward;
    this.only = only;
    for (const copy of copiesOfStream(plan.network, plan.site, stream)) if (!copy.reply) this.add(copy);
  }

  sent(): Sent {
    const { network } = this.plan;
    const { source, leaves, unreached, reaches } = network.delivery(this.stream);
    if (source === undefined) return { stream: this.stream, hops: [], lost: [], toItself: false };
    const shown = unreached.filter(({ receiver }) => this.only === undefined || receiver === this.only.name);
    for (const one of shown) {
      const end = this.endOf(one, source);
      this.anchored.set(end, [...(this.anchored.get(end) ?? []), one]);
    }
    const hops = this.hopsFrom(source, leaves?.domain, undefined);
    const lost = (this.anchored.get(source) ?? []).map((one) => this.lostStop(one));
    return { stream: this.stream, hops, lost, toItself: reaches.includes(source.name) };
  }

  private add({ link, out, domain }: Copy): void {
    const list = this.edges.get(out.device) ?? [];
    this.edges.set(out.device, list);
    const same = list.find((one) => one.link === link && one.out === out && one.domain === domain);
    if (same === undefined) list.push({ link, out, domain, copies: 1 });
    else same.copies++;
  }

  /** @param by the port that it came in by; none at the source */
  private hopsFrom(device: Device, domain: BroadcastDomain | undefined, by: Port | undefined): Hop[] {
    const isPassed = by?.forwards === true;
    const hops: Hop[] = [];
    for (const edge of this.edges.get(device) ?? []) {
      // A switch passes it on in the VLAN that it came in by; a router, and who sends it, into any.
      if (this.taken.has(edge) || (isPassed && (edge.domain !== domain || edge.link === this.linkAt(by)))) continue;
      this.taken.add(edge);
      if (this.plan.network.topology.inside.includes(edge.link))
        hops.push(...this.hopsFrom(device, edge.domain, oppositePort(edge.link, edge.out)));
      else hops.push(...this.hop(edge));
    }
    return hops.sort(byOrder);
  }

  private linkAt(port: Port): Link | undefined {
    return this.plan.network.topology.linkAt(port);
  }

  private hop({ link, out, domain, copies }: Edge): Hop[] {
    const into = oppositePort(link, out);
    const { device } = into;
    const { network } = this.plan;
    const isTaken = isTakenAt(network, link, into, domain);
    const hops = isTaken ? this.hopsFrom(device, domain, into) : [];
    const unreached = isTaken ? (this.anchored.get(device) ?? []) : [];
    // A device that comes twice on the way tells of it where it comes last.
    this.anchored.delete(device);
    const isReceiver = isTaken && !into.forwards && network.delivery(this.stream).reaches.includes(device.name);
    if (this.only !== undefined && !isTowards(this.only, device, hops, unreached)) return [];
    const leadsTo =
      isReceiver || hops.some((one) => one.leadsTo === 'receiver')
        ? 'receiver'
        : unreached.length > 0 || hops.some((one) => one.leadsTo === 'end')
          ? 'end'
          : 'nobody';
    const role = !isTaken
      ? 'does not take it'
      : isReceiver
        ? 'receives'
        : hops.length > 0 || (into.forwards && leadsTo !== 'nobody')
          ? 'passes'
          : 'gets it unasked';
    const to: StreamStop = {
      device,
      role,
      missed: undefined,
      hops,
      lost: unreached.map((one) => this.lostStop(one)),
      sends: isReceiver ? this.sentOnBy(device) : [],
    };
    const cause = leadsTo === 'nobody' ? this.causeOf(link, out) : undefined;
    return [{ stream: this.stream, link, out, domain, copies, leadsTo, cause, to }];
  }

  private lostStop(one: Unreached): StreamStop {
    const device = this.plan.site.deviceByName.get(one.receiver);
    if (device === undefined) throw new Error(`${one.receiver} is not a device of this site`);
    return {
      device,
      role: 'gets nothing',
      missed: { stream: this.stream, why: one.why },
      hops: [],
      lost: [],
      sends: this.sentOnBy(device),
    };
  }

  private sentOnBy(device: Device): Sent[] {
    return this.onward(device, this.stream).map(({ stream, only }) => sentOf(this.plan, stream, this.onward, only));
  }

  private causeOf(link: Link, out: Port): FloodingCause | undefined {
    let found: FloodingCause | undefined;
    visitUnwanted(this.plan.network, link, out, (stream, _, cause) => {
      if (stream === this.stream) found = cause;
    });
    return found;
  }

  /** The device on the way at which it ends for a receiver: the one that the reason names, or the nearest to it. */
  private endOf({ receiver, why }: Unreached, source: Device): Device {
    const { deviceByName } = this.plan.site;
    const onWay = new Set<Device>([source]);
    for (const list of this.edges.values()) for (const { link } of list) onWay.add(link.a.device).add(link.b.device);
    const named = 'bridge' in why ? why.bridge : 'gateway' in why ? why.gateway : 'router' in why ? why.router : '';
    const first = deviceByName.get(named);
    if (first !== undefined && onWay.has(first)) return first;
    const start = deviceByName.get(receiver);
    const seen = new Set(start === undefined ? [] : [start]);
    for (const device of seen) {
      if (device !== start && onWay.has(device)) return device;
      for (const port of device.ports) {
        const link = this.linkAt(port);
        if (link !== undefined && link.blocked === undefined) seen.add(oppositePort(link, port).device);
      }
    }
    return source;
  }
}

/** Whether what is sent into a link is taken at its other end. */
function isTakenAt({ tree }: Network, link: Link, into: Port, domain: BroadcastDomain): boolean {
  if (link.blocked !== undefined) return false;
  if (link.untagged !== domain && !link.tagged.includes(domain)) return false;
  return !into.forwards || tree(domain).bridges.has(into.device);
}

function isTowards(only: Device, device: Device, hops: readonly Hop[], unreached: readonly Unreached[]): boolean {
  return device === only || hops.length > 0 || unreached.some(({ receiver }) => receiver === only.name);
}

const ORDER: readonly Hop['leadsTo'][] = ['receiver', 'end', 'nobody'];

/** To receivers first; then by port. */
function byOrder(a: Hop, b: Hop): number {
  return ORDER.indexOf(a.leadsTo) - ORDER.indexOf(b.leadsTo) || naturally(portName(a.out), portName(b.out));
}
