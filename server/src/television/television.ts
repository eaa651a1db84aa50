/** The aerial system, computed: from the aerial to the screen. */

import { lastResult } from '../memo.ts';
import type { Connector, Device, Site } from '../site/model.ts';
import { type AmplifierLoad, amplifierLoads } from './amplifiers.ts';
import { type LnbCable, lnbCables } from './lnb-cable.ts';
import { type Tuning, tuningOf } from './occasions.ts';
import { type Reception, receptionOf } from './reception.ts';
import { type DirectCurrent, directCurrentOf } from './direct-current.ts';
import { type CoaxRun, coaxRuns, runsByConnector } from './run.ts';
import { type Signals, signalsOf } from './signals.ts';
import { type BusLoad, busLoads } from './usb.ts';

export interface Television extends Radio {
  /** Which tuner takes what on each occasion. */
  readonly tuning: Tuning;
  readonly buses: readonly BusLoad[];
}

/** The results for coax alone. */
interface Radio {
  readonly runs: readonly CoaxRun[];
  readonly signals: Signals;
  readonly amplifiers: readonly AmplifierLoad[];
  /** `undefined` for an amplifier that nothing passes. */
  readonly amplifier: (device: Device) => AmplifierLoad | undefined;
  readonly reception: Reception;
  /** By connector of a receiver. */
  readonly lnbCables: ReadonlyMap<Connector, LnbCable>;
  readonly directCurrent: DirectCurrent;
}

export function televisionOf(site: Site): Television {
  return televisioner()(site);
}

/** As `televisionOf`, for a site that is edited. */
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
    ): Radio => {
      const signals = signalsOf({ devices, multiplexes, channelPlan }, runs);
      const amplifiers = amplifierLoads(devices, signals);
      const byDevice = new Map(amplifiers.map((load) => [load.device, load]));
      const reception = receptionOf({ devices, channelPlan, policies }, signals, byDevice);
      const runAt = runsByConnector(runs);
      return {
        runs,
        signals,
        amplifiers,
        amplifier: (device) => byDevice.get(device),
        reception,
        lnbCables: lnbCables(devices, runAt),
        directCurrent: directCurrentOf(devices, runAt),
      };
    },
  );
  const tune = lastResult(
    (
      radio: Radio,
      facts: Heard,
      occasions: Site['occasions'],
      streams: Site['streams'],
      recordings: Site['recordings'],
    ): Tuning => tuningOf({ occasions, streams, recordings, ...facts }, radio.reception, radio.lnbCables),
  );
  const plug = lastResult((facts: Heard, streams: Site['streams'], media: Site['media']) =>
    busLoads({ streams, media, ...facts }),
  );
  const whole = lastResult((radio: Radio, tuning: Tuning, buses: readonly BusLoad[]): Television => ({
    tuning,
    buses,
    ...radio,
  }));
  const heard = lastResult(
    (
      devices: Site['devices'],
      deviceByName: Site['deviceByName'],
      multiplexByName: Site['multiplexByName'],
      serviceByName: Site['serviceByName'],
      channelPlan: Site['channelPlan'],
    ): Heard => ({ devices, deviceByName, multiplexByName, serviceByName, channelPlan }),
  );
  const isOnCoax = lastResult((devices: Site['devices']) =>
    devices.some(
      ({ connectorByName, tuners, buses }) => connectorByName.size > 0 || tuners.length > 0 || buses.length > 0,
    ),
  );
  const nothing = lastResult((channelPlan: Site['channelPlan'], policies: Site['policies']): Television => {
    const radio = receive([], [], [], channelPlan, policies);
    const facts = heard([], NO_NAMES, NO_NAMES, NO_NAMES, channelPlan);
    return whole(radio, tune(radio, facts, [], [], []), []);
  });
  return (site) => {
    // Most sites have no television, and their edits cost nothing here.
    if (site.multiplexes.length === 0 && site.occasions.length === 0 && !isOnCoax(site.devices))
      return nothing(site.channelPlan, site.policies);
    const { cables, deviceByName, devices, multiplexes, multiplexByName, channelPlan, policies } = site;
    const { serviceByName, occasions, streams, recordings, media } = site;
    const radio = receive(runsOf(cables, deviceByName), devices, multiplexes, channelPlan, policies);
    const facts = heard(devices, deviceByName, multiplexByName, serviceByName, channelPlan);
    return whole(radio, tune(radio, facts, occasions, streams, recordings), plug(facts, streams, media));
  };
}

const NO_NAMES: ReadonlyMap<string, never> = new Map<string, never>();

/** The tuners, and what is on air. */
type Heard = Pick<Site, 'devices' | 'deviceByName' | 'multiplexByName' | 'serviceByName' | 'channelPlan'>;
