/** Reception at a connector: level against window, carrier to noise against the needed ratio. */

import { perObject } from '../memo.ts';
import type { Connector, Device, Site } from '../site/model.ts';
import type { Multiplex } from '../site/television/facts.ts';
import { intermodulationRatio } from '../standards/television/amplifier.ts';
import { decibels, sumOfLevels } from '../standards/television/level.ts';
import { type Chain, combinedRatio, lengthened, manMadeNoise, noiseFloor } from '../standards/television/noise.ts';
import {
  TUNER_MAXIMUM,
  type Window,
  neededRatio,
  outletWindow,
  tunerNoiseFigure,
} from '../standards/television/reception.ts';
import { type System, type Transmission, isSatellite, noiseBandwidth } from '../standards/television/system.ts';
import type { AmplifierLoad } from './amplifiers.ts';
import { transmissionOf } from '../site/television/channel.ts';
import { type Signal, type Signals, isUnknown } from './signals.ts';

/** A multiplex at a connector, judged. Levels are dBµV, ratios dB; `undefined` where too little is declared. */
export interface Point {
  readonly signal: Signal;
  /** The noise figure of all parts from the source to here; a receiver's own counts at its connector. */
  readonly noiseFigure: number;
  /** The level of the thermal noise in its bandwidth. */
  readonly noiseFloor: number | undefined;
  readonly carrierToNoise: number | undefined;
  readonly needed: number | undefined;
  /** How much more carrier to noise there is than needed. */
  readonly margin: number | undefined;
  /** The window of levels, at an outlet. */
  readonly window: Window | undefined;
}

/** A tuner's or a screen's connector, with all that arrives there. */
export interface Receiver {
  readonly at: Connector;
  /** The power of all signals together. */
  readonly composite: number;
  readonly maxInput: number;
  /** The systems that it receives there; `undefined` where undeclared. */
  readonly systems: readonly System[] | undefined;
  readonly points: readonly Point[];
}

export interface Reception {
  readonly outlets: readonly { readonly at: Connector; readonly points: readonly Point[] }[];
  readonly receivers: readonly Receiver[];
  /** The points at any connector, also where signals only pass. */
  readonly pointsAt: (connector: Connector) => readonly Point[];
}

type Facts = Pick<Site, 'devices' | 'channelPlan' | 'policies'>;

export function receptionOf(site: Facts, signals: Signals, amplifiers: ReadonlyMap<Device, AmplifierLoad>): Reception {
  const needsOf = perObject((multiplex: Multiplex) => needs(site, multiplex));
  const pointsAt = perObject((connector: Connector): readonly Point[] =>
    signals.at(connector).map((signal) => pointOf(signal, needsOf(signal.multiplex), amplifiers)),
  );
  return {
    outlets: site.devices
      .filter(({ kind }) => kind === 'outlet')
      .flatMap(({ connectorByName }) => connectorByName.get('tv') ?? [])
      .map((at) => ({ at, points: pointsAt(at) })),
    receivers: site.devices
      .filter(isReceiver)
      .flatMap(({ connectorByName }) => [...connectorByName.values()])
      .map((at) => ({
        at,
        composite: sumOfLevels(signals.at(at).flatMap((signal) => (isUnknown(signal) ? [] : [signal.level]))),
        maxInput: at.device.coaxInputs.get(at.name)?.maxInput ?? allowedTogether(signals.at(at), needsOf),
        systems: systemsAt(at),
        points: pointsAt(at),
      })),
    pointsAt,
  };
}

/** The default largest input of a receiver: each signal at the top of an outlet's window, but at least the usual. */
function allowedTogether(signals: readonly Signal[], needsOf: (multiplex: Multiplex) => Needs): number {
  const most = signals.flatMap(({ multiplex }) => needsOf(multiplex).window?.max ?? []);
  return Math.max(TUNER_MAXIMUM, sumOfLevels(most));
}

/** The systems of the connector, or of the tuners that listen at it. */
export function systemsAt({ device, name }: Connector): readonly System[] | undefined {
  const own = device.coaxInputs.get(name)?.systems;
  if (own !== undefined) return own;
  const units = device.tuners.filter(({ input }) => input === name);
  // A tuner that does not declare its systems takes any.
  if (units.length === 0 || units.some(({ systems }) => systems.length === 0)) return undefined;
  return units.flatMap(({ systems }) => systems);
}

/** Whether a point is judged, and of a system that the receiver has: one that it cannot show is no loss. */
export function isReceived({ systems }: Receiver, { signal, margin }: Point): boolean {
  const { system } = signal.multiplex;
  return margin !== undefined && (systems === undefined || system === undefined || systems.includes(system));
}

export function isReceiver({ kind }: Device): boolean {
  return kind === 'tuner' || kind === 'display';
}

/** What a multiplex needs, wherever it arrives. */
interface Needs extends Pick<Point, 'noiseFloor' | 'needed' | 'window'> {
  readonly transmission: Transmission | undefined;
}

function needs(site: Facts, multiplex: Multiplex): Needs {
  const transmission = transmissionOf(site, multiplex);
  const bandwidth = transmission === undefined ? 0 : noiseBandwidth(transmission);
  return {
    transmission,
    noiseFloor: bandwidth > 0 ? noiseFloor(bandwidth) : undefined,
    needed: transmission === undefined ? undefined : neededRatio(transmission),
    window: windowAt(site, transmission),
  };
}

const NOTHING = { carrierToNoise: undefined, margin: undefined, window: undefined };

function pointOf(
  signal: Signal,
  { transmission, noiseFloor: floor, needed, window }: Needs,
  amplifiers: ReadonlyMap<Device, AmplifierLoad>,
): Point {
  const noiseFigure = decibels(chainTo(signal, transmission).factor);
  if (isUnknown(signal)) return { signal, noiseFigure, noiseFloor: floor, needed, ...NOTHING };
  const carrierToNoise = floor === undefined ? undefined : ratioAt(signal, noiseFigure, floor, amplifiers);
  return {
    signal,
    noiseFigure,
    noiseFloor: floor,
    carrierToNoise,
    needed,
    margin: carrierToNoise === undefined || needed === undefined ? undefined : carrierToNoise - needed,
    window: signal.at.device.kind === 'outlet' ? window : undefined,
  };
}

/** The chain of a signal, with the receiver at its end if there is one. */
function chainTo({ chain, at }: Signal, transmission: Transmission | undefined): Chain {
  if (!isReceiver(at.device) || transmission === undefined) return chain;
  const own = at.device.coaxInputs.get(at.name)?.noiseFigure;
  return lengthened(chain, { gain: 0, noiseFigure: own ?? tunerNoiseFigure(transmission.system) });
}

/** Carrier to noise: thermal and man-made noise, the ratio metered at the source, and the distortion of amplifiers. */
function ratioAt(
  { multiplex, source, frequency, level, steps }: Signal,
  noiseFigure: number,
  floor: number,
  amplifiers: ReadonlyMap<Device, AmplifierLoad>,
): number {
  const atSource = level - steps.reduce((sum, { gain }) => sum + gain, 0);
  const { system } = multiplex;
  // Neither a dish nor a cable picks up man-made noise.
  const isQuiet = system === 'dvb-c' || system === 'j83b' || (system !== undefined && isSatellite(system));
  const noise = atSource - floor - noiseFigure - (isQuiet ? 0 : manMadeNoise(frequency));
  const metered = source.device.aerial?.quality.get(multiplex.name);
  const ratios = metered === undefined ? [noise] : [noise, metered];
  for (const { by } of steps) {
    const headroom = 'device' in by ? amplifiers.get(by.device)?.headroom : undefined;
    if (headroom !== undefined) ratios.push(intermodulationRatio(headroom));
  }
  return combinedRatio(ratios);
}

function windowAt({ policies }: Facts, transmission: Transmission | undefined): Window | undefined {
  const standard = transmission === undefined ? undefined : outletWindow(transmission);
  if (standard === undefined || transmission === undefined) return undefined;
  const own = policies.aerialSystem.outletLevel.get(transmission.system);
  const { levelReserve } = policies.aerialSystem;
  const [min, max] = [own?.min ?? standard.min, own?.max ?? standard.max];
  // A rule reports a window that ends before it begins; no level would fit it.
  return min > max ? undefined : { min: min + levelReserve, max: max - levelReserve };
}
