/** How hard each amplifier works. */

import type { Connector, Device } from '../site/model.ts';
import { derating } from '../standards/television/amplifier.ts';
import { type Signal, type Signals, isUnknown } from './signals.ts';

/** Levels in dBµV; `undefined` where its largest output is undeclared. */
export interface AmplifierLoad {
  readonly device: Device;
  readonly strongest: Signal;
  /** Multiplexes that pass it. */
  readonly carriers: number;
  /** The largest output with so many carriers. */
  readonly limit: number | undefined;
  /** dB between the strongest output and the limit. */
  readonly headroom: number | undefined;
}

/** The load of each amplifier that a signal passes, in the order of the devices. */
export function amplifierLoads(devices: readonly Device[], signals: Signals): AmplifierLoad[] {
  return devices
    .filter(({ kind }) => kind === 'amplifier')
    .flatMap((device) => {
      const out = device.connectorByName.get('out');
      return out === undefined ? [] : (loadAt(device, out, signals) ?? []);
    });
}

function loadAt(device: Device, out: Connector, signals: Signals): AmplifierLoad | undefined {
  const passing = signals.at(out).filter((signal) => !isUnknown(signal));
  const strongest = passing.reduce<Signal | undefined>(
    (most, signal) => (most === undefined || signal.level > most.level ? signal : most),
    undefined,
  );
  if (strongest === undefined) return undefined;
  const carriers = passing.length;
  const most = device.aerial?.maxOutput;
  const limit = most === undefined ? undefined : most - derating(carriers);
  return { device, strongest, carriers, limit, headroom: limit === undefined ? undefined : limit - strongest.level };
}
