/** The lines to the Internet: their load in each direction, and the rates that the provider gives. */

import type { Device, Port } from '../site/model.ts';
import { type Link, oppositePort } from './link.ts';
import type { Network } from './network.ts';
import type { Load } from './rates.ts';

export interface Uplink {
  readonly device: Device;
  readonly down: UplinkWay;
  readonly up: UplinkWay;
}

export interface UplinkWay {
  readonly way: 'down' | 'up';
  /** bit/s; `undefined` where undeclared. */
  readonly rate: number | undefined;
  /** Frames with FCS: a provider counts packets with some framing, but no preamble and gap. */
  readonly load: Load;
  readonly link: Link;
  readonly out: Port;
}

/** The lines of all `internet` devices that have a cable, in their order. */
export function uplinksOf(devices: readonly Device[], network: Pick<Network, 'topology' | 'load'>): Uplink[] {
  return devices.flatMap((device) => {
    const [port] = device.ports;
    const link = device.kind !== 'internet' || port === undefined ? undefined : network.topology.linkAt(port);
    if (link === undefined || port === undefined) return [];
    const way = (which: 'down' | 'up', out: Port): UplinkWay => ({
      way: which,
      rate: device.line[which],
      load: network.load(link, out).frameWithFcs,
      link,
      out,
    });
    return [{ device, down: way('down', port), up: way('up', oppositePort(link, port)) }];
  });
}
