/** Power over Ethernet: what each switch must hold ready for the devices it feeds. */

import { type PowerClass, classFor, portTypes, powerClasses } from '../standards/poe.ts';
import type { Device, PoeType, Port } from '../site/model.ts';
import { mediumAt } from '../site/cable.ts';
import { type Member, oppositePort } from './link.ts';
import type { Topology } from './wiring.ts';

/** A powered device at a feeding port. */
export interface Feed {
  /** The port of the switch. */
  readonly from: Port;
  readonly type: PoeType;
  readonly to: Port;
  readonly class: PowerClass;
  /** What the switch allots: the class's power at its own port, or the port's most, where that is less; mW. */
  readonly allotted: number;
}

export interface PoeFigures {
  readonly device: Device;
  /** mW; `undefined` where none is declared. */
  readonly budget: number | undefined;
  /** What it allots to all of them; mW. */
  readonly allotted: number;
  readonly feeds: readonly Feed[];
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

function feedAt(from: Port, linkAt: Topology['linkAt']): Feed | undefined {
  const link = linkAt(from);
  if (link === undefined || from.feeds === undefined || !canCarryPower(link)) return undefined;
  const to = oppositePort(link, from);
  if (to.draws === undefined) return undefined;
  const own = classOf(to);
  if (own === undefined) return undefined;
  return {
    from,
    type: from.feeds,
    to,
    class: own,
    allotted: Math.min(own.pseMilliwatts, portTypes[from.feeds].pseMilliwatts),
  };
}

/** mW that arrive at the powered device behind 100 m of cable, at the most. */
export function powerArriving({ type, class: own }: Feed): number {
  return Math.min(own.pdMilliwatts, powerClasses[portTypes[type].maxClass]?.pdMilliwatts ?? 0);
}

/** Power goes over twisted pairs; a cable of unknown make is taken for one. */
export function carriesPower(cableType: string | undefined): boolean {
  return cableType === undefined || cableType.startsWith('cat');
}

/** Whether a link carries power: also where the type of its cable is not said, and its ports take glass. */
export function canCarryPower({ a, b, cable }: Member): boolean {
  if (!carriesPower(cable.type)) return false;
  return [a, b].every((port) => [undefined, 'copper'].includes(mediumAt(port)));
}

/** The class that a powered device declares, or that its greatest draw falls in; 0 where it says neither. */
export function classOf(port: Port): PowerClass | undefined {
  if (port.draws === undefined) return undefined;
  if (port.draws.class !== undefined) return powerClasses[port.draws.class];
  return port.draws.milliwatts === undefined ? powerClasses[0] : (classFor(port.draws.milliwatts) ?? powerClasses[8]);
}
