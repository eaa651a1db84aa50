/** Power over Ethernet: the power that each switch allots to the devices that it feeds. */

import { type PowerClass, classFor, portTypes, powerClasses } from '../standards/poe.ts';
import type { Device, PoeType, Port } from '../site/model.ts';
import { mediumAt } from '../site/cable.ts';
import { type MemberLink, oppositePort } from './link.ts';
import type { Topology } from './wiring.ts';

/** A powered device at a feeding port. */
export interface PoeFeed {
  /** The port of the switch. */
  readonly from: Port;
  readonly type: PoeType;
  readonly to: Port;
  readonly class: PowerClass;
  /** The allotted power: that of the class at the switch's port, but no more than the port's type allows; mW. */
  readonly allotted: number;
}

export interface PoeFigures {
  readonly device: Device;
  /** mW; `undefined` where none is declared. */
  readonly budget: number | undefined;
  /** All allotted power; mW. */
  readonly allotted: number;
  readonly feeds: readonly PoeFeed[];
}

/** Every switch that has a budget or feeds something, in the order of the site. */
export function poeOf(devices: readonly Device[], linkAt: Topology['linkAt']): PoeFigures[] {
  return devices.flatMap((device) => {
    const feeds = device.ports.flatMap((port) => feedAt(port, linkAt) ?? []);
    if (device.poeBudget === undefined && feeds.length === 0) return [];
    const allotted = feeds.reduce((total, feed) => total + feed.allotted, 0);
    return [{ device, budget: device.poeBudget, allotted, feeds }];
  });
}

function feedAt(from: Port, linkAt: Topology['linkAt']): PoeFeed | undefined {
  const link = linkAt(from);
  if (link === undefined || from.pse === undefined || !canCarryPower(link)) return undefined;
  const to = oppositePort(link, from);
  if (to.pd === undefined) return undefined;
  const powerClass = powerClassOf(to);
  if (powerClass === undefined) return undefined;
  return {
    from,
    type: from.pse,
    to,
    class: powerClass,
    allotted: Math.min(powerClass.pseMilliwatts, portTypes[from.pse].pseMilliwatts),
  };
}

/** mW that the powered device can count on behind 100 m of cable. */
export function powerArriving({ type, class: powerClass }: PoeFeed): number {
  return Math.min(powerClass.pdMilliwatts, powerClasses[portTypes[type].maxClass]?.pdMilliwatts ?? 0);
}

/** Power goes over twisted pairs; a cable of undeclared type counts as twisted pair. */
export function carriesPower(cableType: string | undefined): boolean {
  return cableType === undefined || cableType.startsWith('cat');
}

/** Whether a link carries power: neither its cable nor its ports are of another medium than copper. */
export function canCarryPower({ a, b, cable }: MemberLink): boolean {
  if (!carriesPower(cable.type)) return false;
  return [a, b].every((port) => [undefined, 'copper'].includes(mediumAt(port)));
}

/** The class that a powered device declares, or that its greatest draw falls in; 0 where it declares neither. */
export function powerClassOf(port: Port): PowerClass | undefined {
  if (port.pd === undefined) return undefined;
  if (port.pd.class !== undefined) return powerClasses[port.pd.class];
  return port.pd.milliwatts === undefined ? powerClasses[0] : (classFor(port.pd.milliwatts) ?? powerClasses[8]);
}
