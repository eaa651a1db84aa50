/**
 * The share of each access point's airtime that multicast takes.
 *
 * An access point sends a group once into its cell, at its basic rate. Without snooping it sends every group that
 * arrives by cable. With snooping, or where it sends to each station on its own, it sends only what a station has
 * joined, and the site declares no stations.
 */

import { isMulticast } from '../standards/ipv4.ts';
import { isLinkLocalGroup } from '../standards/multicast.ts';
import { groupAirtime } from '../standards/wifi.ts';
import type { Device, Stream } from '../site/model.ts';
import { oppositePort } from './link.ts';
import { type Load, type PacketRun, headerBytes } from './rates.ts';
import type { Network } from './network.ts';

/** Shares of the time, 1 for all of it. */
export interface Air {
  readonly device: Device;
  readonly share: Load;
  /** In the order of the streams. */
  readonly streams: readonly AirStream[];
}

export interface AirStream {
  readonly stream: Stream;
  /** The number of the access point's VLANs in which it is sent. */
  readonly copies: number;
  readonly runs: readonly AirRun[];
  readonly share: Load;
}

export interface AirRun {
  readonly what: PacketRun['what'];
  /** Packets per second of one copy. */
  readonly perSecond: Load;
  /** Microseconds that a packet takes. */
  readonly time: Load;
}

/** The air of each access point that groups come to, in the order of the devices. */
export function airOf(network: Network, devices: readonly Device[]): Air[] {
  return devices.flatMap((device) => {
    if (device.kind !== 'access-point' || device.multicastToUnicast) return [];
    const streams = streamsAt(network, device);
    const sum = (part: keyof Load): number => streams.reduce((total, { share }) => total + share[part], 0);
    return streams.length === 0 ? [] : [{ device, streams, share: { nominal: sum('nominal'), peak: sum('peak') } }];
  });
}

function streamsAt(network: Network, device: Device): AirStream[] {
  const copies = new Map<Stream, number>();
  for (const port of device.ports) {
    const link = network.topology.linkAt(port);
    if (link === undefined || port === link.blocked) continue;
    for (const { stream, untagged, tagged } of network.copies(link, oppositePort(link, port))) {
      if (stream.group === undefined || !isMulticast(stream.group)) continue;
      if (untagged + tagged > 0 && isSentOn(network, device, stream, stream.group))
        copies.set(stream, (copies.get(stream) ?? 0) + untagged + tagged);
    }
  }
  return network.deliveries.flatMap(({ stream }) => {
    const count = copies.get(stream);
    return count === undefined ? [] : [inAir(network, device, stream, count)];
  });
}

function isSentOn(network: Network, device: Device, stream: Stream, group: number): boolean {
  if (!device.snooping || isLinkLocalGroup(group)) return true;
  if (device.unregistered === 'drop') return false;
  // A group that a host on one of its sockets has joined goes only there.
  return !network.delivery(stream).domains.some((domain) => {
    const bridge = network.tree(domain).bridges.get(device);
    const memberLinks = network.memberships.known(group, domain);
    return bridge !== undefined && (memberLinks?.get(bridge)?.size ?? 0) > 0;
  });
}

function inAir(network: Network, device: Device, stream: Stream, copies: number): AirStream {
  const runs = network.rates(stream).runs.map((run) => {
    const packet = (part: keyof Load): number => Math.ceil(headerBytes(run) + run.media[part]);
    const time = (part: keyof Load): number => groupAirtime(packet(part), device.basicRate);
    return { what: run.what, perSecond: run.perSecond, time: { nominal: time('nominal'), peak: time('peak') } };
  });
  const share = (part: keyof Load): number =>
    (copies * runs.reduce((total, { perSecond, time }) => total + perSecond[part] * time[part], 0)) / 1e6;
  return { stream, copies, runs, share: { nominal: share('nominal'), peak: share('peak') } };
}
