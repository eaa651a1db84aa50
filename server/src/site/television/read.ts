/** Reads what items declare of television. What an item lacks or gets wrong is `undefined` here; rules report it. */

import type { System } from '../../standards/television/system.ts';
import { type FrequencyRange, decibelsOf, levelOf, quantity, readFrequencyRange } from '../../text/quantity.ts';
import type { Data } from '../../text/syntax.ts';
import { NONE } from '../../none.ts';
import { byNumber } from '../by-number.ts';
import { type Partly, asDeclared, strings } from '../declared-data.ts';
import type { Item } from '../item.ts';
import type { Connector, Device, DeviceKind } from '../model.ts';
import type * as Written from '../schema.generated/types.ts';
import {
  AERIAL_KINDS,
  type AerialKind,
  type AerialPart,
  type AerialPolicy,
  type Bus,
  type ByFrequency,
  type CoaxFacts,
  type CoaxInput,
  type Multiplex,
  type Occasion,
  type Service,
  type TunerUnit,
} from './facts.ts';

type DeviceData = Partly<Written.Device>;
type CoaxInputData = Exclude<NonNullable<Written.Device['inputs']>[string], string>;

export function isAerialKind(kind: DeviceKind | undefined): kind is AerialKind {
  return AERIAL_KINDS.some((aerialKind) => aerialKind === kind);
}

export function readAerialPart(kind: DeviceKind | undefined, data: DeviceData): AerialPart | undefined {
  if (!isAerialKind(kind)) return undefined;
  const powerPass = data['power-pass'];
  return {
    frequencies: readFrequencyRange(data.frequencies ?? data.passes),
    receives: byName(data.receives, levelOf),
    field: byName(data.field, levelOf),
    quality: byName(data.quality, decibelsOf),
    gain: decibelsOf(data.gain),
    noiseFigure: decibelsOf(data['noise-figure']),
    maxOutput: levelOf(data['max-output']),
    poweredBy: data['powered-by'],
    supply: quantity(data.supply, 'voltage'),
    current: quantity(data.current, 'current'),
    loss: readByFrequency(data.loss),
    tapLoss: readByFrequency(data['tap-loss']),
    slope: decibelsOf(data.slope),
    ways: typeof data.ways === 'number' ? data.ways : kind === 'tap' ? 1 : kind === 'multiswitch' ? 4 : 2,
    terminated: strings(data.terminated),
    isolation: decibelsOf(data.isolation),
    powerPass: typeof powerPass === 'boolean' || powerPass === undefined ? powerPass : strings(powerPass),
    mast:
      data.mast === undefined
        ? undefined
        : {
            outsideProtectedZone: data.mast['outside-protected-zone'] === true,
            earthed: quantity(data.mast.earthed, 'area'),
          },
    lnb: data.type ?? 'single',
  };
}

function byName<T>(data: unknown, read: (text: unknown) => T | undefined): Map<string, T> {
  const found = new Map<string, T>();
  if (typeof data !== 'object' || data === null) return found;
  for (const [name, text] of Object.entries(data)) {
    const value = read(text);
    if (value !== undefined) found.set(name, value);
  }
  return found;
}

function readByFrequency(data: unknown): ByFrequency | undefined {
  return typeof data === 'string' ? decibelsOf(data) : readCurve(data);
}

/** Points by frequency in Hz, ascending. */
function readCurve(data: unknown): (readonly [number, number])[] | undefined {
  const points = [...byName(data, decibelsOf)].flatMap(([text, value]): [number, number][] => {
    const frequency = quantity(text, 'frequency');
    return frequency === undefined ? [] : [[frequency, value]];
  });
  return points.length === 0 ? undefined : points.sort(([a], [b]) => a - b);
}

/** The connectors of a device, by its kind. */
export function readConnectors(device: Device, data: DeviceData): Connector[] {
  const own = (...names: readonly string[]): Connector[] => names.map((name) => ({ device, name, keyPath: [] }));
  const declared = Object.keys(data.inputs ?? {}).map((name) => ({ device, name, keyPath: ['inputs', name] }));
  const numbered = (name: string): string[] =>
    Array.from({ length: device.aerial?.ways ?? 0 }, (_, index) => `${name}-${index + 1}`);
  switch (device.kind) {
    case 'aerial':
      return own('out');
    case 'lnb':
      return own(...LNB_OUTPUTS[device.aerial?.lnb ?? 'single']);
    case 'amplifier':
    case 'attenuator':
    case 'filter':
    case 'equaliser':
    case 'isolator':
    case 'earth-block':
      return own('in', 'out');
    case 'splitter':
      return own('in', ...numbered('out'));
    case 'tap':
      return own('in', 'out', ...numbered('tap'));
    case 'combiner':
      return [...declared, ...own('out')];
    case 'diplexer':
      return own('in-tv', 'in-sat', 'out');
    case 'multiswitch':
      return own('vl', 'vh', 'hl', 'hh', 'tv', ...numbered('out'));
    case 'outlet':
      return own('in', 'tv');
    case 'power-inserter':
      return own('aerial', 'out');
    case 'display':
    case 'tuner':
      return declared;
    default:
      return [];
  }
}

const LNB_OUTPUTS: Readonly<Record<AerialPart['lnb'], readonly string[]>> = {
  single: ['out'],
  twin: ['out-1', 'out-2'],
  quad: ['out-1', 'out-2', 'out-3', 'out-4'],
  quattro: ['vl', 'vh', 'hl', 'hh'],
};

const NO_INPUTS: ReadonlyMap<string, CoaxInput> = new Map();

/** The coax inputs by connector. */
export function readCoaxInputs({ inputs }: DeviceData): ReadonlyMap<string, CoaxInput> {
  if (inputs === undefined) return NO_INPUTS;
  return new Map(
    Object.entries(inputs).map(([name, input]): [string, CoaxInput] => {
      const taken = asDeclared<CoaxInputData>((input ?? {}) as Data);
      return [
        name,
        {
          systems: taken.systems === undefined ? undefined : (strings(taken.systems) as System[]),
          noiseFigure: decibelsOf(taken['noise-figure']),
          maxInput: levelOf(taken['max-input']),
          supplies: quantity(taken.supplies, 'current'),
          supply: quantity(taken.supply, 'voltage'),
          passes: readFrequencyRange(input) satisfies FrequencyRange | undefined,
        },
      ];
    }),
  );
}

/** `names` reads a key such as `1-2` as the names that it declares. */
export function readTuners(data: DeviceData, names: (key: string) => string[]): readonly TunerUnit[] {
  if (data.tuners === undefined) return NONE;
  const inputs = Object.keys(data.inputs ?? {});
  const found = Object.entries(data.tuners).flatMap(([key, unit]) => {
    const { systems, input } = asDeclared<Written.TunerUnit>((unit ?? {}) as Data);
    return names(key).map((name) => ({
      name,
      keyPath: ['tuners', key],
      systems: strings(systems) as System[],
      input: input ?? (inputs.length === 1 ? inputs[0] : undefined),
    }));
  });
  // The first of two with the same name counts.
  return [...new Map(found.reverse().map((unit) => [unit.name, unit])).values()].reverse().sort(byNumber);
}

export function readBuses({ buses }: DeviceData): readonly Bus[] {
  if (buses === undefined) return NONE;
  return Object.entries(buses).flatMap(([name, bus]) =>
    bus?.kind === undefined ? [] : [{ name, kind: bus.kind, usable: quantity(bus.usable, 'bit-rate') }],
  );
}

export function readCoaxFacts(data: Partly<Written.Cable>): CoaxFacts {
  return { core: data.core, attenuation: readCurve(data.attenuation) };
}

export function readMultiplex(item: Item): Multiplex {
  const data = asDeclared<Written.Multiplex>(item.data);
  const { frame } = data;
  return {
    item,
    name: item.name,
    system: data.system,
    channel: data.channel,
    frequency: quantity(data.frequency, 'frequency'),
    bandwidth: quantity(data.bandwidth, 'frequency'),
    modulation: data.modulation,
    codeRate: data['code-rate'],
    guardInterval: data['guard-interval'],
    extended: data.extended === true,
    symbolRate: quantity(data['symbol-rate'], 'symbol-rate'),
    polarisation: data.polarisation,
    pilots: data.pilots === true,
    segments: data.segments,
    frame:
      frame?.size === undefined || frame.symbols === undefined || frame.blocks === undefined
        ? undefined
        : { size: frame.size, symbols: frame.symbols, blocks: frame.blocks },
    netRate: quantity(data['net-rate'], 'bit-rate'),
  };
}

export function readService(item: Item): Service {
  const data = asDeclared<Written.Service>(item.data);
  const { multiplex } = data;
  return {
    item,
    name: item.name,
    multiplexes: typeof multiplex === 'string' ? [multiplex] : strings(multiplex),
    rate: quantity(data.rate, 'bit-rate'),
    peakRate: quantity(data['peak-rate'], 'bit-rate'),
  };
}

export function readOccasion(item: Item): Occasion {
  const data = asDeclared<Written.Occasion>(item.data);
  return { item, name: item.name, services: strings(data.services), multiplexes: strings(data.multiplexes) };
}

/** The limits where a site declares none: common practice, and EN 60728-1 for the slope, from memory. */
export const AERIAL_DEFAULTS: AerialPolicy = { margin: 6, levelReserve: 0, slope: 12, outletLevel: new Map() };

export function readAerialPolicy(item: Item | undefined): AerialPolicy {
  if (item === undefined) return AERIAL_DEFAULTS;
  const data = asDeclared<NonNullable<Written.Policies['aerial-system']>>(item.data);
  return {
    margin: decibelsOf(data.margin) ?? AERIAL_DEFAULTS.margin,
    levelReserve: decibelsOf(data['level-reserve']) ?? AERIAL_DEFAULTS.levelReserve,
    slope: decibelsOf(data.slope) ?? AERIAL_DEFAULTS.slope,
    outletLevel: byName(data['outlet-level'], (window) => {
      const { min, max } = asDeclared<{ min: string; max: string }>((window ?? {}) as Data);
      return { min: levelOf(min), max: levelOf(max) };
    }),
  };
}
