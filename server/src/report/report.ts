/** What `plumbline report --format json` prints of the plan as it is; schemas/report.schema.json describes it. */

import type { Air } from '../network/airtime.ts';
import { type DirectionLoad, loadOf } from '../network/loads.ts';
import type { Delivery, Obstacle } from '../network/delivery.ts';
import type { Link } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import { obstacleWords } from '../network/obstacle-words.ts';
import type { PoeFigures } from '../network/poe.ts';
import type { Load, StreamRates } from '../network/rates.ts';
import { type Uplink, uplinksOf } from '../network/uplinks.ts';
import { type TrafficRoute, trafficAsStream, trafficRates } from '../network/traffic.ts';
import type { Plan } from '../plan.ts';
import { type Device, type Port, type Traffic, portName } from '../site/model.ts';
import { type RackReport, rackReport } from './rack.ts';
import { type RadioReport, radioReport } from './radio.ts';
import { record } from './record.ts';
import { type SupplyReport, supplyReport } from './supply/figures.ts';
import { formatAddress, isMulticast } from '../standards/ipv4.ts';
import { groupMac } from '../standards/multicast.ts';
import type { VolumeFigures } from '../storage/storage.ts';

/** Rates are whole bit/s, sizes bytes, power watts; `null` where the site declares too little. */
export interface Report {
  readonly site: string | null;
  /** One for each cable that joins two ports, in the order of the cables. */
  readonly links: readonly LinkReport[];
  readonly streams: readonly StreamReport[];
  readonly volumes: readonly VolumeReport[];
  readonly racks: readonly RackReport[];
  readonly poe: readonly PowerReport[];
  /** What feeds each device, and for how long without mains; null where the site declares nothing of it. */
  readonly power: SupplyReport | null;
  /** Access points that groups come to. */
  readonly air: readonly AirReport[];
  readonly rf: RadioReport;
  readonly traffic: readonly TrafficReport[];
  /** Lines to the Internet. */
  readonly uplinks: readonly UplinkReport[];
}

export interface LinkReport {
  /** `device/port`. */
  readonly from: string;
  readonly to: string;
  /** bit/s */
  readonly capacity: number | null;
  /** Where ports are aggregated: more than one. */
  readonly cables?: number;
  /** From `from` to `to`. */
  readonly forward: DirectionReport;
  readonly backward: DirectionReport;
  /** Spanning tree keeps it idle. */
  readonly blocked: boolean;
}

/** `frame` is without the check sequence, like most counters; `frameWithFcs` is with it. */
export interface WireReport {
  readonly line: Load;
  readonly frame: Load;
  readonly frameWithFcs: Load;
  readonly payload: Load;
}

export interface DirectionReport extends WireReport {
  /** By stream, with its replies to the source. */
  readonly streams: Readonly<Record<string, WireReport>>;
  /** Other traffic by its name, both ways together; missing where none crosses. */
  readonly traffic?: Readonly<Record<string, WireReport>>;
}

/** Other traffic than streams; rates of its way there and back, acknowledgements included. */
export interface TrafficReport {
  readonly name: string;
  readonly from: string | null;
  readonly to: string | null;
  readonly there: WireReport;
  readonly back: WireReport;
  /** Why it does not get there; null where it does. */
  readonly reason: string | null;
}

/** bit/s of frames with FCS, and the rate of the provider. */
export interface UplinkReport {
  readonly device: string;
  readonly down: UplinkDirection;
  readonly up: UplinkDirection;
}

interface UplinkDirection extends Load {
  readonly rate: number | null;
}

export interface StreamReport extends WireReport {
  readonly name: string;
  readonly group: string | null;
  readonly mac: string | null;
  /** Devices that it reaches, in the order of its receivers. */
  readonly reaches: readonly string[];
  readonly unreached: readonly string[];
  /** The reasons by device that it does not reach. */
  readonly reasons: Readonly<Record<string, string>>;
}

export interface VolumeReport {
  readonly name: string;
  readonly usableBytes: number | null;
  readonly bytesPerDay: number;
  readonly daysUntilFull: number | null;
  readonly recordings: Readonly<Record<string, { readonly bytesPerDay: number; readonly bytesKept: number | null }>>;
}

/** Shares of the time that groups take of an access point's air, in per cent. */
export interface AirReport {
  readonly device: string;
  /** bit/s that groups are sent at. */
  readonly basicRate: number;
  readonly share: Load;
  /** By stream. */
  readonly streams: Readonly<Record<string, Load>>;
}

export interface PowerReport {
  readonly device: string;
  readonly budget: number | null;
  readonly draw: number;
}

/** Whether a link carries anything. A blocked one can: its other end still sends what is flooded. */
export function isLoaded({ forward, backward }: LinkReport): boolean {
  return forward.line.peak > 0 || backward.line.peak > 0;
}

export function reportOf(plan: Plan): Report {
  const { site, network, storage, poe, air } = plan;
  return {
    site: site.name ?? null,
    links: network.topology.links.map((link) => linkReport(network, link)),
    streams: network.deliveries.map((delivery) => streamReport(delivery, network.rates(delivery.stream))),
    volumes: storage.volumes.map(volumeReport),
    racks: plan.racks.map(rackReport),
    poe: poe.map(poeReport),
    power: plan.supply().isDeclared ? supplyReport(plan) : null,
    air: air.map(airReport),
    rf: radioReport(plan),
    traffic: network.traffic.map(trafficReport),
    uplinks: uplinksOf(site.devices, network).map(uplinkReport),
  };
}

function linkReport(network: Network, link: Link): LinkReport {
  const direction = (out: Port): DirectionReport => ({
    ...wireReport(network.load(link, out)),
    ...trafficIn(network, link, out),
    streams: record(
      network
        .copies(link, out)
        .map((copies) => [copies.stream.name, wireReport(loadOf(copies, network.rates(copies.stream)))]),
    ),
  });
  return {
    from: portName(link.a),
    to: portName(link.b),
    capacity: link.capacity ?? null,
    ...(link.members.length > 1 && { cables: link.members.length }),
    forward: direction(link.a),
    backward: direction(link.b),
    blocked: link.blocked !== undefined,
  };
}

function trafficIn(network: Network, link: Link, out: Port): Pick<DirectionReport, 'traffic'> {
  const all = network.trafficCopies(link, out);
  if (all.length === 0) return {};
  return { traffic: record(all.map((copies) => [copies.traffic.name, wireReport(loadOf(copies, copies.rates))])) };
}

function trafficReport({ traffic, from, to, obstacle }: TrafficRoute): TrafficReport {
  const rates = trafficRates(traffic);
  const missing = from === undefined || to === undefined ? 'one of its ends is no device of the site' : null;
  return {
    name: traffic.name,
    from: traffic.from ?? null,
    to: traffic.to ?? null,
    there: wireReport(rates.untagged),
    back: wireReport(rates.reply.untagged),
    reason: obstacle === undefined || to === undefined ? missing : trafficObstacle(traffic, to, obstacle),
  };
}

function uplinkReport({ device, down, up }: Uplink): UplinkReport {
  const direction = ({ rate, load }: Uplink['up']): UplinkDirection => ({ rate: rate ?? null, ...copy(load) });
  return { device: device.name, down: direction(down), up: direction(up) };
}

function trafficObstacle(traffic: Traffic, to: Device, obstacle: Obstacle): string {
  const { what, remedy } = obstacleWords(obstacle, to.name, trafficAsStream(traffic, to));
  return `${what}; ${remedy}`;
}

function wireReport({ line, frame, frameWithFcs, payload }: DirectionLoad): WireReport {
  return { line: copy(line), frame: copy(frame), frameWithFcs: copy(frameWithFcs), payload: copy(payload) };
}

function copy({ nominal, peak }: Load): Load {
  return { nominal, peak };
}

function streamReport({ stream, reaches, unreached }: Delivery, rates: StreamRates): StreamReport {
  return {
    name: stream.name,
    group: stream.group === undefined ? null : formatAddress(stream.group),
    mac: stream.group === undefined || !isMulticast(stream.group) ? null : groupMac(stream.group),
    ...wireReport(rates.untagged),
    reaches,
    unreached: unreached.map(({ receiver }) => receiver),
    reasons: record(
      unreached.map(({ receiver, why }) => {
        const { what, remedy } = obstacleWords(why, receiver, stream);
        return [receiver, `${what}; ${remedy}`];
      }),
    ),
  };
}

function volumeReport({ volume, usableBytes, bytesPerDay, daysUntilFull, recordings }: VolumeFigures): VolumeReport {
  return {
    name: volume.name,
    usableBytes: usableBytes ?? null,
    bytesPerDay,
    daysUntilFull: daysUntilFull ?? null,
    recordings: record(
      recordings.map(({ recording, bytesPerDay: daily, bytesKept }) => [
        recording.name,
        { bytesPerDay: daily, bytesKept: bytesKept ?? null },
      ]),
    ),
  };
}

function poeReport({ device, budget, allotted }: PoeFigures): PowerReport {
  return { device: device.name, budget: budget === undefined ? null : budget / 1000, draw: allotted / 1000 };
}

function airReport({ device, share, streams }: Air): AirReport {
  return {
    device: device.name,
    basicRate: device.basicRate,
    share: inPercent(share),
    streams: record(streams.map(({ stream, share: own }) => [stream.name, inPercent(own)])),
  };
}

/** Shares in per cent, rounded to a hundredth. */
function inPercent({ nominal, peak }: Load): Load {
  return { nominal: Math.round(nominal * 1e4) / 100, peak: Math.round(peak * 1e4) / 100 };
}
