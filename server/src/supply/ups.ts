/** What hangs on a UPS, and for how long it feeds that when the mains fails. */

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
import type { Draw } from './draw.ts';

export interface UpsFigures {
  readonly device: Device;
  readonly ups: Ups;
  /** mW at most. */
  readonly load: number;
  /** mVA at most. */
  readonly apparent: number;
  /** ms at that load; `undefined` where the battery is not said, or nothing hangs on it. */
  readonly runtime: number | undefined;
  /** ms where each powered device takes what its class may. */
  readonly runtimeByClass: number | undefined;
  /** ms of the label alone: a new battery, emptied wholly. */
  readonly runtimeOfLabel: number | undefined;
  /** ms of a new lead-acid battery that is emptied so fast. */
  readonly runtimePeukert: number | undefined;
  /** What hangs on it and says nothing of its watts, so that the load is greater than is known. */
  readonly unsaid: readonly Device[];
}

export function upsFigures(device: Device, ups: Ups, draw: Draw): UpsFigures {
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
    unsaid: draw.unsaid,
  };
}

/** Its battery, with common practice for what is not said; `undefined` where nothing is said of what it holds. */
export function batteryOf({ battery, ...shares }: Ups): Battery | undefined {
  if (battery === undefined) return undefined;
  return { energy: battery, ...sharesOf(shares) };
}

/** mWh, as new, that its battery would have to hold to last so many ms. */
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
