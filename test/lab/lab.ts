/** A site that is built: its switches, cables and hosts, and their traffic. */

import { type Link, type MemberLink, cablesOf } from '../../server/src/network/link.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device, Port } from '../../server/src/site/model.ts';
import { Addresses, interfaceOf } from './addresses.ts';
import { count, countCables, countedByOpenVSwitch } from './counters.ts';
import { countedByLinux, linuxBridgeCommands } from './linux-bridges.ts';
import { OpenVSwitch, SWITCHES } from './daemons.ts';
import { canQuery } from '../../server/src/network/can-query.ts';
import { parseAddress } from '../../server/src/standards/ipv4.ts';
import { bareCommands, hostCommands, plainFrames, uncabled } from './hosts.ts';
import { type KernelRoute, kernelRoutes } from './kernel-routes.ts';
import { numberOf } from './numbers.ts';
import { HostProgram } from './host-program.ts';
import { Place } from './place.ts';
import { allOf, answer, run, runIn } from './run.ts';
import { aggregationSettled, olderSpanningTreeSettled, spanningTreeSettled } from './settled.ts';
import { type Attachment, bridgeCommands, bridgeOf, olderSpanningTree } from './switches.ts';
import { type Card, cardCommands, cards } from './trunk-hosts.ts';
import { type Asker, type Forwarder, type RunResult, type Traffic, TrafficProcess, trafficOf } from './traffic.ts';

/** The namespace of queriers that are switches, each attached to its switch by a port that is not counted. */
const QUERIERS = 'queriers';

export interface Window extends RunResult {
  /** Bytes by direction of link. */
  readonly counted: readonly number[];
}

export interface LabOptions {
  /** Bridges of the kernel instead of those of Open vSwitch. */
  readonly switches?: 'linux' | undefined;
  /** Hosts, by name, that are set up by something else than the lab. */
  readonly bare?: {
    readonly hosts: readonly string[];
    readonly setUp: (lab: Lab, host: Device) => Promise<void>;
  };
}

export class Lab {
  readonly traffic: Traffic;
  private readonly plan: Plan;
  private readonly place = new Place();
  private readonly addresses: Addresses;
  private readonly cards: readonly Card[];
  private daemons: OpenVSwitch | undefined;
  private process: TrafficProcess | undefined;

  private readonly options: LabOptions;

  constructor(plan: Plan, options: LabOptions = {}) {
    this.plan = plan;
    this.options = options;
    this.addresses = new Addresses(plan);
    this.cards = cards(plan, this.addresses);
    this.traffic = trafficOf(plan, this.addresses, (device) => this.namespaceOf(device));
  }

  /** Builds everything, lets everybody join and every pair talk once. Call `end` also where this fails. */
  async build(): Promise<void> {
    const { plan, place } = this;
    const hosts = plan.site.devices.filter((device) => plan.network.interfaces.of(device).length > 0);
    const attachments = this.attachments();
    await place.addNamespaces([SWITCHES, QUERIERS, ...hosts.map(hostName)]);
    const [daemons] = await allOf([
      this.options.switches === 'linux' ? Promise.resolve(undefined) : OpenVSwitch.start(place),
      this.addCables(attachments),
    ]);
    this.daemons = daemons;
    await allOf([
      daemons === undefined
        ? runIn(place.namespace(SWITCHES), linuxBridgeCommands(plan, attachments))
        : daemons.configure([
            ...bridgeCommands(plan, this.addresses, attachments),
            ...this.cards.flatMap(cardCommands),
          ]),
      ...hosts.map((host) => runIn(this.namespaceOf(host), this.hostCommands(host))),
    ]);
    for (const host of hosts) if (this.isBare(host)) await this.options.bare?.setUp(this, host);
    if (daemons !== undefined) await allOf([spanningTreeSettled(plan, daemons), aggregationSettled(plan, daemons)]);
    this.routes = kernelRoutes(plan, this.addresses, (device, address) => this.routeGet(device, address));
    this.process = new TrafficProcess(place);
    await this.process.setUp(this.traffic, this.askers(attachments), this.multicastRouters());
    this.refusedJoins = await this.process.meet();
  }

  private isBare(host: Device): boolean {
    return this.options.bare?.hosts.includes(host.name) === true;
  }

  /** A bare host has cards of their own names, which are down, and nothing else. */
  private hostCommands(host: Device): string[] {
    const { plan, addresses } = this;
    return this.isBare(host) ? bareCommands(plan, host) : hostCommands(plan, addresses, host);
  }

  /** Runs a program on a host, and returns its output even where it fails. */
  answer(device: Device, command: readonly string[]): ReturnType<typeof answer> {
    return answer(this.namespaceOf(device), command);
  }

  /** The kernel's answer to each receiver that could not join, in the order of `traffic.receptions`. */
  refusedJoins: readonly (string | null)[] = [];

  /** The route of each host for the packets of its streams, asked before any is sent. */
  routes: readonly KernelRoute[] = [];

  /** The route of a packet by a host's kernel: `ip route get`. */
  private routeGet(device: Device, address: string): string {
    const { status, out, err } = answer(this.namespaceOf(device), ['ip', 'route', 'get', address]);
    return (status === 0 ? out.split('\n')[0] : err.split('\n')[0])?.trim() ?? '';
  }

  /** Sends `seconds` of every stream and reads the counters. */
  async measure(seconds: number, scale: number): Promise<Window> {
    const { process } = this;
    if (process === undefined) throw new Error('the lab is not built');
    const before = await this.count();
    const result = await process.run(seconds, scale);
    const after = await this.count();
    return { ...result, counted: after.map((bytes, direction) => bytes - (before[direction] ?? 0)) };
  }

  /** Bytes by direction of link since the lab was built. */
  async count(): Promise<number[]> {
    const { daemons, plan } = this;
    const counted =
      daemons === undefined
        ? await countedByLinux(this.place.namespace(SWITCHES))
        : await countedByOpenVSwitch(plan, daemons);
    return count(plan, counted, ({ device }) => this.namespaceOf(device));
  }

  /** Bytes that have left by each cable of a link between two switches, from its first end or back. */
  async countCables(link: Link, position: 0 | 1): Promise<number[]> {
    if (this.daemons === undefined) throw new Error('the lab is not built');
    return countCables(this.plan, this.daemons, link, position);
  }

  /** The output of `ip -s -j link` on a host. */
  links(device: Device): Promise<string> {
    return run('ip', ['-n', this.namespaceOf(device), '-s', '-j', 'link']);
  }

  /** The counters of a switch's ports, as `ovs-ofctl --names dump-ports` prints them. */
  async ports(device: Device): Promise<string> {
    if (this.daemons === undefined) throw new Error('the lab is not built');
    return this.daemons.ofctl(['--names', 'dump-ports', bridgeOf(device)]);
  }

  /** The groups that a switch knows, and the ports that asked for them, as `ovs-appctl mdb/show` prints them. */
  async groups(device: Device): Promise<string> {
    if (this.daemons === undefined) throw new Error('the lab is not built');
    return this.daemons.appctl(['mdb/show', bridgeOf(device)]);
  }

  /** Cuts a cable: neither of its ends has a carrier any more, and both stay as they are set. */
  async cut({ a, b }: MemberLink): Promise<void> {
    // A pair of virtual ports loses the carrier at both ends once one of them is down: that of a switch, where there is one.
    const [end = a] = [a, b].filter(({ forwards }) => forwards);
    await run('ip', ['-n', this.cableEnd(end), 'link', 'set', interfaceOf(end), 'down']);
  }

  /** Lets switches forget members and routers that have been silent for so many seconds. */
  async forgetAfter(seconds: number): Promise<void> {
    const { daemons, plan } = this;
    if (daemons === undefined) throw new Error('the lab is not built');
    await daemons.configure(
      plan.site.devices
        .filter(({ bridging }) => bridging)
        .flatMap((device) => [
          '--',
          'set',
          'bridge',
          bridgeOf(device),
          `other_config:mcast-snooping-aging-time=${seconds}`,
        ]),
    );
  }

  /** Has the switches run the original spanning tree of IEEE 802.1D, not the rapid one, with its timers. */
  async speakOlderSpanningTree(): Promise<void> {
    const { daemons, plan } = this;
    if (daemons === undefined) throw new Error('the lab is not built');
    await daemons.configure(plan.site.devices.filter(({ bridging }) => bridging).flatMap(olderSpanningTree));
    await olderSpanningTreeSettled(plan, daemons);
  }

  /** Starts a program on a host; it ends with the lab, if it has not ended before. */
  start(device: Device, program: string, args: readonly string[]): HostProgram {
    return new HostProgram(this.place, this.namespaceOf(device), program, args);
  }

  /** A folder that is gone when the lab is. */
  get folder(): string {
    return this.place.folder;
  }

  end(): void {
    this.place.clear();
  }

  private namespaceOf(device: Device): string {
    return this.place.namespace(device.bridging && !device.routing ? SWITCHES : hostName(device));
  }

  /** The namespace that a cable ends in. */
  private cableEnd(port: Port): string {
    return port.forwards || this.cards.some((card) => card.port === port)
      ? this.place.namespace(SWITCHES)
      : this.namespaceOf(port.device);
  }

  /** A pair of virtual ports to each cable, and one to each switch that asks. */
  private async addCables(attachments: readonly Attachment[]): Promise<void> {
    const { links, inside } = this.plan.network.topology;
    const switches = this.place.namespace(SWITCHES);
    const queriers = this.place.namespace(QUERIERS);
    const pairs = [...links, ...inside]
      .flatMap(cablesOf)
      .map(({ a, b }) => [interfaceOf(a), this.cableEnd(a), interfaceOf(b), this.cableEnd(b)] as const);
    for (const { port, ends } of this.cards) {
      for (const { atHost, atCard } of ends) pairs.push([atCard, switches, atHost, this.namespaceOf(port.device)]);
    }
    for (const { name } of attachments) pairs.push([name, switches, name, queriers]);
    // The other end of a card without a cable stays down, so that there is no carrier.
    for (const device of this.plan.site.devices) {
      for (const port of uncabled(this.plan, device))
        pairs.push([`x${interfaceOf(port)}`, queriers, interfaceOf(port), this.namespaceOf(device)]);
    }
    const batch = pairs.map(([a, atA, b, atB]) => `link add ${a} netns ${atA} type veth peer name ${b} netns ${atB}\n`);
    await run('ip', ['-batch', '-'], { input: batch.join('') });
    const here = pairs.flatMap(([a, atA, b, atB]) => [
      ...(atA === switches ? [a] : []),
      ...(atB === switches ? [b] : []),
    ]);
    const quiet = 'for i in all default; do echo 1 >/proc/sys/net/ipv6/conf/$i/disable_ipv6; done';
    const up = (name: string): string[] => [plainFrames(name), `ip link set ${name} up`];
    await allOf([
      runIn(switches, [quiet, ...here.flatMap(up)]),
      runIn(queriers, [quiet, ...attachments.flatMap(({ name }) => up(name))]),
    ]);
  }

  /** One to each VLAN whose named querier is a switch in it. */
  private attachments(): Attachment[] {
    const { network, site } = this.plan;
    return network.topology.domains.flatMap((domain, index) => {
      const device = site.deviceByName.get(domain.vlan?.querier ?? '');
      const isThere = device !== undefined && canQuery(device) && network.tree(domain).bridges.has(device);
      // One that routes asks by its own interface.
      return isThere && network.interfaces.in(device, domain) === undefined
        ? [{ device, name: `q${index}`, domain }]
        : [];
    });
  }

  /**
   * Everyone who may ask for memberships: the named queriers, and each multicast router in each of its networks. They
   * elect among themselves who does.
   */
  private askers(attachments: readonly Attachment[]): Asker[] {
    const { plan, addresses } = this;
    return plan.network.topology.domains.flatMap((domain) => {
      const candidates = attachments
        .filter((attachment) => attachment.domain === domain)
        .map(({ name, device }) => ({
          namespace: this.place.namespace(QUERIERS),
          interface: name,
          source: addresses.ofSwitch(device, domain),
        }));
      for (const device of plan.site.devices) {
        const isRouter = device.routing && device.multicastRouting;
        if ((device.name !== domain.vlan?.querier && !isRouter) || !canQuery(device)) continue;
        const at = plan.network.interfaces.in(device, domain);
        if (at !== undefined)
          candidates.push({
            namespace: this.namespaceOf(device),
            interface: addresses.nameOf(at),
            source: addresses.of(at),
          });
      }
      const byAddress = (one: { readonly source: string }): number => parseAddress(one.source) ?? 0;
      candidates.sort((a, b) => byAddress(a) - byAddress(b));
      return candidates.map((asker, index) => ({ ...asker, delay: index * 0.15 }));
    });
  }

  private multicastRouters(): Forwarder[] {
    return this.plan.site.devices
      .filter(({ routing, multicastRouting }) => routing && multicastRouting)
      .flatMap((device) => {
        const interfaces = this.plan.network.interfaces
          .of(device)
          .map((at) => ({ name: this.addresses.nameOf(at), address: this.addresses.of(at) }));
        return interfaces.length === 0 ? [] : [{ namespace: this.namespaceOf(device), interfaces }];
      });
  }
}

function hostName(device: Device): string {
  return `h${numberOf(device.name)}`;
}
