/** Counters of a lab's hosts and switches, written as `plumbline audit counters` reads them. */

import type { Device } from '../../server/src/site/model.ts';
import { FCS } from '../../server/src/standards/ethernet.ts';
import { interfaceOf } from './addresses.ts';
import type { Lab } from './lab.ts';

/** The time at which something was asked is between the question and the answer. */
async function timed<T>(ask: () => Promise<T>): Promise<{ time: number; answer: T }> {
  const asked = Date.now();
  const answer = await ask();
  return { time: (asked + Date.now()) / 2000, answer };
}

/** The output of the documented command, with the site's names of interfaces. */
export async function lineOf(lab: Lab, host: Device): Promise<string> {
  const { time, answer } = await timed(() => lab.links(host));
  const names = new Map(host.ports.map((port) => [interfaceOf(port), port.name]));
  const links = JSON.parse(answer) as { ifname: string }[];
  const named = links.map((link) => ({ ...link, ifname: names.get(link.ifname) ?? link.ifname }));
  return JSON.stringify({ time, device: host.name, links: named });
}

/** The first line of a table of `octetsOf`. */
export const TABLE = 'time,device,ifName,ifHCInOctets,ifHCOutOctets';

/** Open vSwitch counts without the check sequence, the Interfaces MIB on Ethernet with it: 4 octets a frame. */
export async function octetsOf(lab: Lab, device: Device): Promise<string[]> {
  const { time, answer } = await timed(() => lab.ports(device));
  const lines = /port\s+"?([\w.]+)"?: rx pkts=(\d+), bytes=(\d+)[^\n]*\n\s+tx pkts=(\d+), bytes=(\d+)/g;
  return [...answer.matchAll(lines)].flatMap(([, name, received, receivedBytes, sent, sentBytes]) => {
    const port = device.ports.find((one) => interfaceOf(one) === name);
    if (port === undefined) return [];
    const octets = (bytes: string | undefined, frames: string | undefined): number =>
      Number(bytes) + FCS * Number(frames);
    return [[time, device.name, port.name, octets(receivedBytes, received), octets(sentBytes, sent)].join()];
  });
}
