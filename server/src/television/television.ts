/** The aerial system, computed: from the aerial to the screen. */

import { lastResult } from '../memo.ts';
import type { Device, Site } from '../site/model.ts';
import { type AmplifierLoad, amplifierLoads } from './amplifiers.ts';
import { type Reception, receptionOf } from './reception.ts';
import { type CoaxRun, coaxRuns } from './run.ts';
import { type Signals, signalsOf } from './signals.ts';

export interface Television {
  readonly runs: readonly CoaxRun[];
  readonly signals: Signals;
  readonly amplifiers: readonly AmplifierLoad[];
  /** `undefined` for an amplifier that nothing passes. */
  readonly amplifier: (device: Device) => AmplifierLoad | undefined;
  readonly reception: Reception;
}

export function televisionOf(site: Site): Television {
  return televisioner()(site);
}

/** The same for one site that is edited. */
export function televisioner(): (site: Site) => Television {
  const runsOf = lastResult((cables: Site['cables'], deviceByName: Site['deviceByName']) =>
    coaxRuns({ cables, deviceByName }),
  );
  const receive = lastResult(
    (
      runs: readonly CoaxRun[],
      devices: Site['devices'],
      multiplexes: Site['multiplexes'],
      channelPlan: Site['channelPlan'],
      policies: Site['policies'],
    ): Television => {
      const signals = signalsOf({ devices, multiplexes, channelPlan }, runs);
      const amplifiers = amplifierLoads(devices, signals);
      const byDevice = new Map(amplifiers.map((load) => [load.device, load]));
      const reception = receptionOf({ devices, channelPlan, policies }, signals, byDevice);
      return { runs, signals, amplifiers, amplifier: (device) => byDevice.get(device), reception };
    },
  );
  return ({ cables, deviceByName, devices, multiplexes, channelPlan, policies }) =>
    receive(runsOf(cables, deviceByName), devices, multiplexes, channelPlan, policies);
}
