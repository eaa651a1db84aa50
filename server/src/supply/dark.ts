/** Which devices cause cameras to end too early when the mains fails. */

import type { Device } from '../site/model.ts';
import type { CameraRuntime } from './camera-runtimes.ts';
import type { Supply } from './supply.ts';

/** The end of the chain that feeds a device: a device at a socket of the mains, or a UPS. */
export function rootOf({ feeding }: Supply, device: Device): Device {
  for (let at = device; ;) {
    const fed = feeding.of(at);
    if (at.ups !== undefined || fed.by === 'mains') return at;
    if (fed.by === 'source' && fed.device.kind === 'circuit' && feeding.of(fed.device).by === 'mains') return at;
    at = fed.device;
  }
}

/** Cameras that end before `wanted` ms, by what ends too early on their way: a UPS, or a device at the mains. */
export function endingBefore(
  supply: Supply,
  lives: readonly CameraRuntime[],
  wanted: number,
): Map<Device, readonly CameraRuntime[]> {
  const found = new Map<Device, CameraRuntime[]>();
  for (const life of lives) {
    const early = life.chain.filter((device) => (supply.lasts(device) ?? wanted) < wanted);
    for (const root of new Set(early.map((device) => rootOf(supply, device)))) {
      // It names a source that feeds nothing, which is reported there.
      if (root.ownPower?.from !== undefined && root.ups === undefined && supply.feeding.of(root).by === 'mains')
        continue;
      const lived = found.get(root);
      if (lived === undefined) found.set(root, [life]);
      else lived.push(life);
    }
  }
  return found;
}

/** Cameras that have power when the mains fails, by what is dark at once on their way. */
export function darkAtOnce(supply: Supply, lives: readonly CameraRuntime[]): Map<Device, readonly CameraRuntime[]> {
  const fed = lives.filter(({ camera }) => (supply.lasts(camera) ?? 1) > 0);
  const dark = endingBefore(supply, fed, Number.MIN_VALUE);
  return dark;
}
