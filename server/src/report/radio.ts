/** Television in the report: reception on coax, and the load of amplifiers. */

import type { Plan } from '../plan.ts';
import { type Connector, connectorName } from '../site/model.ts';
import { type Point, isReceiver } from '../television/reception.ts';
import { type OccasionReport, occasionReport } from './occasions.ts';

/** Levels are dBµV at 75 Ω, ratios dB, frequencies Hz, not rounded; `null` where the site declares too little. */
export interface RadioReport {
  /** One for each multiplex at each connector that it reaches. */
  readonly points: readonly PointReport[];
  readonly amplifiers: readonly AmplifierReport[];
  readonly occasions: readonly OccasionReport[];
}

export interface PointReport {
  /** `device/connector`. */
  readonly at: string;
  /** Whether it is an outlet or a receiver, or the signal only passes. */
  readonly place: 'outlet' | 'receiver' | 'way';
  readonly multiplex: string;
  /** On the coax. */
  readonly frequency: number;
  readonly level: number;
  /** The noise figure of all parts from the aerial to here. */
  readonly noiseFigure: number;
  readonly carrierToNoise: number | null;
  readonly needed: number | null;
  readonly margin: number | null;
}

export interface AmplifierReport {
  readonly name: string;
  /** The level of the strongest multiplex at its output. */
  readonly strongest: number;
  readonly limit: number | null;
  readonly headroom: number | null;
}

export function radioReport({ site, television: { reception, amplifiers, tuning } }: Plan): RadioReport {
  return {
    points: site.devices.flatMap(({ connectorByName }) =>
      [...connectorByName.values()].flatMap(reception.pointsAt).map(pointReport),
    ),
    amplifiers: amplifiers.map(({ device, strongest, limit, headroom }) => ({
      name: device.name,
      strongest: strongest.level,
      limit: limit ?? null,
      headroom: headroom ?? null,
    })),
    occasions: site.occasions.map((occasion) => occasionReport(occasion, tuning.of(occasion))),
  };
}

function pointReport({ signal, noiseFigure, carrierToNoise, needed, margin }: Point): PointReport {
  return {
    at: connectorName(signal.at),
    place: placeOf(signal.at),
    multiplex: signal.multiplex.name,
    frequency: signal.frequency,
    level: signal.level,
    noiseFigure,
    carrierToNoise: carrierToNoise ?? null,
    needed: needed ?? null,
    margin: margin ?? null,
  };
}

function placeOf({ device, name }: Connector): PointReport['place'] {
  if (device.kind === 'outlet' && name === 'tv') return 'outlet';
  return isReceiver(device) ? 'receiver' : 'way';
}
