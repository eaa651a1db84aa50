/** What each device draws, and what it takes from whatever feeds it with all that hangs on it. */

import { memberAt } from '../network/link.ts';
import { type Feed, classOf } from '../network/poe.ts';
import type { Topology } from '../network/wiring.ts';
import type { Device } from '../site/model.ts';
import { loopOhms, powerAtPort } from '../standards/poe.ts';
import type { Feeding } from './feeding.ts';

/** Ten-thousandths; common practice, 85 to 90 %. */
export const ASSUMED_POE_EFFICIENCY = 8800;
/** Of supplies that correct it; common practice. */
export const ASSUMED_POWER_FACTOR = 0.95;

/** mW, in fractions too. */
export interface Watts {
  readonly most: number;
  /** Between idle and most, where both are said. */
  readonly mean: number;
  /** The most, with what PoE classes may take in place of what is said of powered devices: the cautious end. */
  readonly byClass: number;
}

export interface Draw {
  readonly own: Watts;
  /** Where its own watts come from; `unsaid` counts as nothing. */
  readonly basis: 'declared' | 'class' | 'unsaid' | 'none';
  /** With all that hangs on it, as it comes in. */
  readonly taken: Watts;
  /** What it hands on: of a UPS its load, of a switch what leaves by its ports. */
  readonly given: Watts;
  /** mVA of what it hands on, by the power factors of what hangs on it; of a UPS its load. */
  readonly apparent: number;
  /** Of it and of all that hangs on it, those whose watts are not said. */
  readonly unsaid: readonly Device[];
}

const NOTHING: Watts = { most: 0, mean: 0, byClass: 0 };

/** Asked for by device; each is computed once. */
export function drawsOf(devices: readonly Device[], feeding: Feeding, linkAt: Topology['linkAt']): Map<Device, Draw> {
  const draws = new Map<Device, Draw>();
  const pending = [...devices].reverse();
  // What hangs on a device comes first; a chain of devices may be longer than the stack is deep.
  for (let device = pending.at(-1); device !== undefined; device = pending.at(-1)) {
    const waiting = draws.has(device) ? [] : feeding.fedBy(device).filter((one) => !draws.has(one));
    if (waiting.length > 0) {
      pending.push(...waiting);
      continue;
    }
    pending.pop();
    if (!draws.has(device)) draws.set(device, drawOf(device, feeding, linkAt, draws));
  }
  return draws;
}

function drawOf(device: Device, feeding: Feeding, linkAt: Topology['linkAt'], draws: ReadonlyMap<Device, Draw>): Draw {
  const { own, basis } = ownDraw(device, feeding);
  const efficiency = (device.ownPower?.poeEfficiency ?? ASSUMED_POE_EFFICIENCY) / 1e4;
  let given = NOTHING;
  let byPlug = NOTHING;
  let apparent = 0;
  const unsaid: Device[] = basis === 'unsaid' ? [device] : [];
  for (const one of feeding.fedBy(device)) {
    const draw = draws.get(one);
    const fed = feeding.of(one);
    if (draw === undefined) continue;
    unsaid.push(...draw.unsaid);
    if (fed.by === 'poe') {
      given = sum(given, atPort(fed.feed, draw.taken, linkAt));
    } else if (fed.by === 'source') {
      byPlug = sum(byPlug, draw.taken);
      apparent += draw.taken.most / (one.ownPower?.powerFactor ?? ASSUMED_POWER_FACTOR);
    }
  }
  const taken = sum(sum(own, byPlug), scaled(given, 1 / efficiency));
  return { own, basis, taken, given: sum(given, byPlug), apparent, unsaid };
}

/** mW that leave the port of the switch for what a device takes behind its cable. */
export function atPort(feed: Feed, taken: Watts, linkAt: Topology['linkAt']): Watts {
  const ohms = ohmsOf(feed, linkAt);
  const real = (milliwatts: number): number => powerAtPort(milliwatts, ohms) ?? feed.allotted;
  return { most: real(taken.most), mean: real(taken.mean), byClass: feed.allotted };
}

/** Of the cable that a powered device hangs on, there and back; of a cable without a length none. */
function ohmsOf({ from, class: own }: Feed, linkAt: Topology['linkAt']): number {
  const link = linkAt(from);
  const length = link === undefined ? undefined : memberAt(link, from)?.cable.length;
  return length === undefined ? 0 : loopOhms(length / 1000, own.class);
}

function ownDraw(device: Device, feeding: Feeding): Pick<Draw, 'own' | 'basis'> {
  const { idle, most } = device.ownPower ?? { idle: undefined, most: undefined };
  const greatest = most ?? idle;
  if (greatest !== undefined) {
    const mean = ((idle ?? greatest) + greatest) / 2;
    return { own: { most: greatest, mean, byClass: greatest }, basis: 'declared' };
  }
  const fed = feeding.of(device);
  if (fed.by === 'host' || !needsPower(device)) return { own: NOTHING, basis: 'none' };
  const powered = device.ports.find(({ draws }) => draws !== undefined);
  if (powered?.draws?.milliwatts !== undefined) return { own: same(powered.draws.milliwatts), basis: 'declared' };
  const own = powered === undefined ? undefined : classOf(powered);
  return own === undefined ? { own: NOTHING, basis: 'unsaid' } : { own: same(own.pdMilliwatts), basis: 'class' };
}

/** Kinds whose watts are of weight; parts of an aerial system take a few. */
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

/** Whether it draws something, said or not. */
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

/** mW that devices which share a place turn into heat there: what they draw, without what leaves by their ports. */
export function heatOf(draw: (device: Device) => Draw, devices: readonly Device[]): number {
  return devices.reduce((sum, device) => {
    const { taken, given } = draw(device);
    return sum + taken.most - given.most;
  }, 0);
}
