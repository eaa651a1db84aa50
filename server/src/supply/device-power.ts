/** The power that each device draws itself, and that it takes in with all that it feeds. */

import { memberLinkAt } from '../network/link.ts';
import { type PoeFeed, powerClassOf } from '../network/poe.ts';
import type { Topology } from '../network/wiring.ts';
import type { Device } from '../site/model.ts';
import { loopOhms, powerAtPort } from '../standards/poe.ts';
import type { Feeding } from './feeding.ts';

/** Ten-thousandths; common practice, 85 to 90 %. */
export const ASSUMED_POE_EFFICIENCY = 8800;
/** The power factor of supplies that correct it; common practice. */
export const ASSUMED_POWER_FACTOR = 0.95;

/** mW, not rounded. */
export interface Watts {
  readonly most: number;
  /** Midway between idle and most, where both are declared. */
  readonly mean: number;
  /** The most, with PoE classes in place of the declared watts of powered devices: the cautious figure. */
  readonly byClass: number;
}

export interface DevicePower {
  readonly own: Watts;
  /** Where its own watts come from; `undeclared` counts as nothing. */
  readonly basis: 'declared' | 'class' | 'undeclared' | 'none';
  /** Its input power, with all that it feeds. */
  readonly taken: Watts;
  /** The power that it passes on: the load of a UPS, the PoE output of a switch. */
  readonly given: Watts;
  /** mVA that it passes on, by the power factors of the devices that it feeds. */
  readonly apparent: number;
  /** The device itself and those that it feeds, where their watts are undeclared. */
  readonly undeclared: readonly Device[];
}

const NOTHING: Watts = { most: 0, mean: 0, byClass: 0 };

/** The draw of each device. */
export function devicePowers(
  devices: readonly Device[],
  feeding: Feeding,
  linkAt: Topology['linkAt'],
): Map<Device, DevicePower> {
  const draws = new Map<Device, DevicePower>();
  const pending = [...devices].reverse();
  // The devices that it feeds come first; a loop, as a chain of devices may be deeper than the stack.
  for (let device = pending.at(-1); device !== undefined; device = pending.at(-1)) {
    const waiting = draws.has(device) ? [] : feeding.fedBy(device).filter((one) => !draws.has(one));
    if (waiting.length > 0) {
      pending.push(...waiting);
      continue;
    }
    pending.pop();
    if (!draws.has(device)) draws.set(device, devicePower(device, feeding, linkAt, draws));
  }
  return draws;
}

function devicePower(
  device: Device,
  feeding: Feeding,
  linkAt: Topology['linkAt'],
  draws: ReadonlyMap<Device, DevicePower>,
): DevicePower {
  const { own, basis } = ownPowerOf(device, feeding);
  const efficiency = (device.ownPower?.poeEfficiency ?? ASSUMED_POE_EFFICIENCY) / 1e4;
  let given = NOTHING;
  let byPlug = NOTHING;
  let apparent = 0;
  const undeclared: Device[] = basis === 'undeclared' ? [device] : [];
  for (const one of feeding.fedBy(device)) {
    const draw = draws.get(one);
    const fed = feeding.of(one);
    if (draw === undefined) continue;
    undeclared.push(...draw.undeclared);
    if (fed.by === 'poe') {
      given = sum(given, wattsAtPort(fed.feed, draw.taken, linkAt));
    } else if (fed.by === 'source') {
      byPlug = sum(byPlug, draw.taken);
      apparent += draw.taken.most / (one.ownPower?.powerFactor ?? ASSUMED_POWER_FACTOR);
    }
  }
  const taken = sum(sum(own, byPlug), scaled(given, 1 / efficiency));
  return { own, basis, taken, given: sum(given, byPlug), apparent, undeclared };
}

/** mW that leave the port of the switch so that a device gets what it takes behind its cable. */
export function wattsAtPort(feed: PoeFeed, taken: Watts, linkAt: Topology['linkAt']): Watts {
  const ohms = ohmsOf(feed, linkAt);
  const real = (milliwatts: number): number => powerAtPort(milliwatts, ohms) ?? feed.allotted;
  return { most: real(taken.most), mean: real(taken.mean), byClass: feed.allotted };
}

/** The loop resistance of the cable to a powered device; 0 for a cable without a length. */
function ohmsOf({ from, class: own }: PoeFeed, linkAt: Topology['linkAt']): number {
  const link = linkAt(from);
  const length = link === undefined ? undefined : memberLinkAt(link, from)?.cable.length;
  return length === undefined ? 0 : loopOhms(length / 1000, own.class);
}

function ownPowerOf(device: Device, feeding: Feeding): Pick<DevicePower, 'own' | 'basis'> {
  const { idle, most } = device.ownPower ?? { idle: undefined, most: undefined };
  const greatest = most ?? idle;
  if (greatest !== undefined) {
    const mean = ((idle ?? greatest) + greatest) / 2;
    return { own: { most: greatest, mean, byClass: greatest }, basis: 'declared' };
  }
  const fed = feeding.of(device);
  if (fed.by === 'host' || !needsPower(device)) return { own: NOTHING, basis: 'none' };
  const powered = device.ports.find(({ pd }) => pd !== undefined);
  if (powered?.pd?.milliwatts !== undefined) return { own: same(powered.pd.milliwatts), basis: 'declared' };
  const own = powered === undefined ? undefined : powerClassOf(powered);
  return own === undefined ? { own: NOTHING, basis: 'undeclared' } : { own: same(own.pdMilliwatts), basis: 'class' };
}

/** Kinds whose watts matter; parts of an aerial system take only a few. */
const POWERED: readonly (string | undefined)[] = [
  'switch',
  'router',
  'access-point',
  'media-converter',
  'server',
  'camera',
  'display',
  'computer',
  'tuner',
  'internet',
];

/** Whether it draws power, declared or not. */
function needsPower({ kind }: Device): boolean {
  return POWERED.includes(kind);
}

function same(milliwatts: number): Watts {
  return { most: milliwatts, mean: milliwatts, byClass: milliwatts };
}

function sum(a: Watts, b: Watts): Watts {
  return { most: a.most + b.most, mean: a.mean + b.mean, byClass: a.byClass + b.byClass };
}

function scaled({ most, mean, byClass }: Watts, factor: number): Watts {
  return { most: most * factor, mean: mean * factor, byClass: byClass * factor };
}

/** mW that devices in one place turn into heat there: their input without what leaves by their ports. */
export function heatOf(draw: (device: Device) => DevicePower, devices: readonly Device[]): number {
  return devices.reduce((sum, device) => {
    const { taken, given } = draw(device);
    return sum + taken.most - given.most;
  }, 0);
}
