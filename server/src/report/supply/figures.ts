/** Power as `report --format json` and `plumbline power --format json` print it: watts, volt-amperes, seconds. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import type { CameraRuntime } from '../../supply/camera-runtimes.ts';
import { type Watts, heatOf } from '../../supply/device-power.ts';
import type { UpsFigures } from '../../supply/ups.ts';
import { ASSUMPTIONS } from './assumed.ts';

/** `null` where the site declares too little. */
export interface SupplyReport {
  /** What the site takes from the mains, as far as declared. */
  readonly total: WattsReport;
  /** In a year, at the mean. */
  readonly kilowattHours: number;
  /** Devices whose watts are undeclared and count as 0. */
  readonly undeclared: readonly string[];
  readonly devices: readonly SuppliedReport[];
  readonly ups: readonly UpsReport[];
  readonly cameras: readonly CameraReport[];
  /** The most heat of each rack, W. */
  readonly racks: readonly { readonly rack: string; readonly heat: number }[];
  readonly assumed: readonly string[];
}

export interface WattsReport {
  readonly mean: number;
  readonly most: number;
  /** The most, with PoE classes in place of declared watts. */
  readonly byClass: number;
}

export interface SuppliedReport {
  readonly device: string;
  readonly by: 'mains' | 'source' | 'poe' | 'host';
  /** What feeds it; null for a socket of the mains. */
  readonly from: string | null;
  readonly own: WattsReport | null;
  /** Its input power, with all that it feeds. */
  readonly taken: WattsReport;
  /** Seconds for which it goes on without mains. */
  readonly lasts: number | null;
}

export interface UpsReport {
  readonly device: string;
  readonly load: number;
  readonly apparent: number;
  readonly ratedPower: number | null;
  readonly rated: number | null;
  /** Seconds at that load. */
  readonly runtime: number | null;
  readonly runtimeByClass: number | null;
  /** Cameras that go on by it when the mains fails. */
  readonly cameras: readonly string[];
}

export interface CameraReport {
  readonly camera: string;
  readonly recorded: boolean;
  readonly lasts: number | null;
  /** The devices that it needs, from itself to the end of its pictures; on the last of their ways. */
  readonly needs: readonly string[];
  /** Seconds after which its pictures change to another way, as a switch on the way before loses power. */
  readonly anotherWayAfter: readonly number[];
  readonly endsAt: string | null;
}

export function supplyReport(plan: Plan): SupplyReport {
  const supply = plan.supply();
  const lives = plan.cameraRuntimes();
  return {
    total: wattsReport(supply.total),
    kilowattHours: kilowattHours(supply.total),
    undeclared: supply.undeclared.map(({ name }) => name),
    devices: plan.site.devices.filter((device) => takesPower(plan, device)).map((device) => supplied(plan, device)),
    ups: supply.upses.map((figures) => upsReport(plan, figures)),
    cameras: lives.map(cameraReport),
    racks: plan.racks.map(({ rack, placed, elsewhere }) => ({
      rack: rack.name,
      heat: heatOf(supply.power, [...placed.map(({ device }) => device), ...elsewhere]) / 1000,
    })),
    assumed: ASSUMPTIONS,
  };
}

/** A year of 8,760 h. */
export function kilowattHours({ mean }: Watts): number {
  return Math.round((mean * 8.76) / 100) / 10;
}

/** Whether the device matters for power. */
export function takesPower(plan: Plan, device: Device): boolean {
  const draw = plan.supply().power(device);
  return draw.basis !== 'none' || draw.taken.most > 0;
}

/** Cameras that go on for some time, and need this UPS for it. */
export function camerasOn(plan: Plan, { device }: Pick<UpsFigures, 'device'>): CameraRuntime[] {
  const { feeding } = plan.supply();
  const hangs = (one: Device): boolean => {
    for (let at = one; ;) {
      if (at === device) return true;
      const fed = feeding.of(at);
      if (fed.by === 'mains') return false;
      at = fed.device;
    }
  };
  return plan.cameraRuntimes().filter(({ lasts, chain }) => lasts !== 0 && chain.some(hangs));
}

function supplied({ supply }: Plan, device: Device): SuppliedReport {
  const { feeding, power, lasts } = supply();
  const fed = feeding.of(device);
  const { own, basis, taken } = power(device);
  return {
    device: device.name,
    by: fed.by,
    from: fed.by === 'mains' ? null : fed.device.name,
    own: basis === 'undeclared' ? null : wattsReport(own),
    taken: wattsReport(taken),
    lasts: seconds(lasts(device)),
  };
}

function upsReport(plan: Plan, figures: UpsFigures): UpsReport {
  const { device, ups, load, apparent, runtime, runtimeByClass } = figures;
  return {
    device: device.name,
    load: rounded(load),
    apparent: rounded(apparent),
    ratedPower: ups.ratedPower === undefined ? null : ups.ratedPower / 1000,
    rated: ups.rated === undefined ? null : ups.rated / 1000,
    runtime: seconds(runtime),
    runtimeByClass: seconds(runtimeByClass),
    cameras: camerasOn(plan, figures).map(({ camera }) => camera.name),
  };
}

function cameraReport({ camera, lasts, chain, endsAt, isRecorded, turns }: CameraRuntime): CameraReport {
  return {
    camera: camera.name,
    recorded: isRecorded,
    lasts: seconds(lasts),
    needs: chain.map(({ name }) => name),
    anotherWayAfter: turns.map((turn) => Math.floor(turn / 1000)),
    endsAt: endsAt?.name ?? null,
  };
}

function wattsReport({ mean, most, byClass }: Watts): WattsReport {
  return { mean: rounded(mean), most: rounded(most), byClass: rounded(byClass) };
}

/** mW as W, to a hundredth. */
function rounded(milliwatts: number): number {
  return Math.round(milliwatts / 10) / 100;
}

function seconds(milliseconds: number | undefined): number | null {
  return milliseconds === undefined ? null : Math.floor(milliseconds / 1000);
}
