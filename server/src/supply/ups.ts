/** The load of a UPS, and how long it feeds that when the mains fails. */

import type { Device, Ups } from '../site/model.ts';
import {
  ASSUMED_DEPTH,
  ASSUMED_EFFICIENCY,
  ASSUMED_HEALTH,
  type Battery,
  energyFor,
  hoursOf,
  peukertEnergyFor,
  peukertHours,
} from '../standards/battery.ts';
import { HOUR } from '../standards/time-units.ts';
import type { DevicePower } from './device-power.ts';

export interface UpsFigures {
  readonly device: Device;
  readonly ups: Ups;
  /** mW at most. */
  readonly load: number;
  /** mVA at most. */
  readonly apparent: number;
  /** ms at that load; `undefined` where the battery is undeclared, or there is no load. */
  readonly runtime: number | undefined;
  /** ms if each powered device takes as much as its class allows. */
  readonly runtimeByClass: number | undefined;
  /** ms by the label alone: a new battery, fully discharged. */
  readonly runtimeOfLabel: number | undefined;
  /** ms of a new lead-acid battery by Peukert, at this rate of discharge. */
  readonly runtimePeukert: number | undefined;
  /** The devices that it feeds without declared watts: the real load is greater. */
  readonly undeclared: readonly Device[];
}

export function upsFigures(device: Device, ups: Ups, draw: DevicePower): UpsFigures {
  const battery = batteryOf(ups);
  const load = draw.given.most;
  const time = (hours: (of: Battery) => number, at: number): number | undefined =>
    battery === undefined || at === 0 ? undefined : hours(battery) * HOUR;
  const planned = (at: number): number | undefined =>
    time((of) => {
      const steady = hoursOf(of, at);
      return ups.chemistry === 'lead-acid' ? Math.min(steady, peukertHours(of, at)) : steady;
    }, at);
  return {
    device,
    ups,
    load,
    apparent: draw.apparent,
    runtime: planned(load),
    runtimeByClass: planned(draw.given.byClass),
    runtimeOfLabel: time((of) => hoursOf({ ...of, depth: 1e4, health: 1e4 }, load), load),
    runtimePeukert: ups.chemistry === 'lead-acid' ? time((of) => peukertHours(of, load), load) : undefined,
    undeclared: draw.undeclared,
  };
}

/** Its battery, with common practice for undeclared shares; `undefined` where its energy is undeclared. */
export function batteryOf({ battery, ...shares }: Ups): Battery | undefined {
  if (battery === undefined) return undefined;
  return { energy: battery, ...sharesOf(shares) };
}

/** mWh that its battery, when new, would need to last a time in ms. */
export function batteryFor({ ups, load }: UpsFigures, milliseconds: number): number {
  const shares = sharesOf(ups);
  const hours = milliseconds / HOUR;
  const steady = energyFor(hours, load, shares);
  return ups.chemistry === 'lead-acid' ? Math.max(steady, peukertEnergyFor(hours, load, shares)) : steady;
}

function sharesOf({ efficiency, depth, health }: Omit<Ups, 'battery'>): Omit<Battery, 'energy'> {
  return {
    efficiency: efficiency ?? ASSUMED_EFFICIENCY,
    depth: depth ?? ASSUMED_DEPTH,
    health: health ?? ASSUMED_HEALTH,
  };
}
