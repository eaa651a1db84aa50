/** The effect of a part of an aerial system on signals that pass it. */

import type { Device } from '../site/model.ts';
import type { AerialPart, ByFrequency } from '../site/television/facts.ts';
import { idealThroughLoss, typicalSplit } from '../standards/television/splitting.ts';
import type { FrequencyRange } from '../text/quantity.ts';

/** Typical losses of parts that declare none, dB; from memory, see the reference. */
const TYPICAL: Partial<Readonly<Record<NonNullable<Device['kind']>, number>>> = {
  'filter': 1.5,
  'outlet': 1,
  'power-inserter': 0.5,
  'isolator': 1,
  'earth-block': 0.5,
  'combiner': 1,
  'diplexer': 1.5,
};
/** The loss inside a tap beyond the ideal division, dB. */
const TAP_EXCESS = 1;

/**
 * The halves of a diplexer, and the inputs of a multiswitch, Hz: television, and the first intermediate frequency of a
 * satellite.
 */
const TELEVISION: FrequencyRange = { from: 5e6, to: 862e6 };
const SATELLITE: FrequencyRange = { from: 950e6, to: 2400e6 };

/** The effect on the way from one connector of a part to another. */
export interface Passage {
  readonly gain: number;
  readonly noiseFigure: number;
  /** The loss is not declared but typical. */
  readonly assumed: boolean;
}

/** The connectors by which a signal leaves that comes in by another. Passive parts work both ways. */
export function waysOn(device: Device, by: string): readonly string[] {
  const names = [...device.connectorByName.keys()];
  switch (device.kind) {
    case 'amplifier':
      return by === 'in' ? ['out'] : [];
    case 'attenuator':
    case 'filter':
    case 'equaliser':
    case 'isolator':
    case 'earth-block':
    case 'power-inserter':
    case 'outlet':
      return names.filter((name) => name !== by);
    case 'splitter':
      return by === 'in' ? names.filter((name) => name !== 'in') : ['in'];
    case 'tap':
      return by === 'in' ? names.filter((name) => name !== 'in') : ['in'];
    case 'combiner':
    case 'diplexer':
      return by === 'out' ? names.filter((name) => name !== 'out') : ['out'];
    case 'multiswitch':
      return by.startsWith('out-') ? [] : names.filter((name) => name.startsWith('out-'));
    default:
      return [];
  }
}

/** `undefined` where the frequency does not pass. */
export function passage(device: Device, by: string, to: string, frequency: number): Passage | undefined {
  const part = device.aerial;
  if (part === undefined || !passes(device, part, by, to, frequency)) return undefined;
  if (device.kind === 'amplifier')
    return { gain: Math.abs(part.gain ?? 0), noiseFigure: part.noiseFigure ?? 0, assumed: part.gain === undefined };
  const given = device.kind === 'tap' && (by.startsWith('tap') || to.startsWith('tap')) ? part.tapLoss : part.loss;
  const own = given === undefined ? typicalLoss(device, part, frequency) : valueAt(given, frequency);
  const loss =
    // A loss with a wrong sign, which is reported, counts as meant. A multiswitch may have gain.
    (device.kind === 'multiswitch' ? own : Math.abs(own)) + (device.kind === 'equaliser' ? sloped(part, frequency) : 0);
  // A loss below 0 adds no less noise than none.
  return { gain: -loss, noiseFigure: Math.max(loss, 0), assumed: given === undefined };
}

function passes(device: Device, part: AerialPart, by: string, to: string, frequency: number): boolean {
  if (part.frequencies !== undefined && !isInBand(part.frequencies, frequency)) return false;
  if (device.kind === 'combiner') {
    const range = device.coaxInputs.get(by === 'out' ? to : by)?.passes;
    return range === undefined || isInBand(range, frequency);
  }
  if (device.kind === 'diplexer') {
    const half = by === 'out' ? to : by;
    return isInBand(half === 'in-sat' ? SATELLITE : TELEVISION, frequency);
  }
  if (device.kind === 'multiswitch') return isInBand(by === 'tv' ? TELEVISION : SATELLITE, frequency);
  return true;
}

export function isInBand({ from, to }: FrequencyRange, frequency: number): boolean {
  return frequency >= from && frequency <= to;
}

function typicalLoss({ kind }: Device, { ways, tapLoss }: AerialPart, frequency: number): number {
  if (kind === 'splitter') return typicalSplit(ways, frequency);
  if (kind === 'tap') return idealThroughLoss(tapLoss === undefined ? 10 : valueAt(tapLoss, frequency)) + TAP_EXCESS;
  return (kind === undefined ? undefined : TYPICAL[kind]) ?? 0;
}

/** The loss of an equaliser by its slope: all of it at the lowest frequency, none at the highest. */
function sloped({ slope = 0, frequencies }: AerialPart, frequency: number): number {
  const { from, to } = frequencies ?? TELEVISION;
  return slope * Math.min(1, Math.max(0, (to - frequency) / (to - from)));
}

/** Interpolates between the two nearest frequencies; beyond the outermost ones their value holds. */
export function valueAt(values: ByFrequency, frequency: number): number {
  if (typeof values === 'number') return values;
  const next = values.findIndex(([at]) => at >= frequency);
  const [first, last] = [values[0], values.at(-1)];
  if (next <= 0) return (next === 0 ? first : last)?.[1] ?? 0;
  const [low, high] = [values[next - 1], values[next]];
  if (low === undefined || high === undefined) return last?.[1] ?? 0;
  return low[1] + ((high[1] - low[1]) * (frequency - low[0])) / (high[0] - low[0]);
}
