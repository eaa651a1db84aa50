/** The gain in carrier to noise if the first amplifier stood at the aerial. */

import type { Device } from '../site/model.ts';
import { noiseFigureOf } from '../standards/television/noise.ts';
import type { Point } from './reception.ts';
import { judgedWith } from './what-if.ts';

export interface Moved {
  /** The first amplifier on the way. */
  readonly amplifier: Device;
  /** dB in front of it. */
  readonly lossInFront: number;
  /** dB of carrier to noise, counting only the noise on the way. */
  readonly gained: number;
  /** dB of carrier to noise beyond what is needed, there. */
  readonly margin: number | undefined;
}

/** `undefined` where there is no amplifier on the way of the signal. */
function amplifiedFirst(point: Point): Moved | undefined {
  return movedTo(point, 0);
}

/** The same with the amplifier in front of a part that the signal passes earlier. */
export function amplifiedBefore(point: Point, part: Device): Moved | undefined {
  return movedTo(
    point,
    point.signal.steps.findIndex(({ by }) => 'device' in by && by.device === part),
  );
}

/** dB of carrier to noise that are worth moving an amplifier for. */
const WORTH = 3;

/** The gain of moving the first amplifier to the aerial, where the point lacks margin and the gain is worth it. */
export function worthMoving(point: Point, margin: number): Moved | undefined {
  if (point.margin === undefined || point.margin >= margin) return undefined;
  const moved = amplifiedFirst(point);
  return moved !== undefined && moved.gained >= WORTH ? moved : undefined;
}

function movedTo(point: Point, index: number): Moved | undefined {
  const { steps } = point.signal;
  const own = steps.findIndex(({ by }) => 'device' in by && by.device.kind === 'amplifier');
  const step = steps[own];
  if (step === undefined || !('device' in step.by) || index < 0 || index > own) return undefined;
  const inFront = steps.slice(0, own);
  const there = [...steps.slice(0, index), step, ...steps.slice(index, own), ...steps.slice(own + 1)];
  return {
    amplifier: step.by.device,
    lossInFront: -inFront.reduce((sum, { gain }) => sum + gain, 0),
    gained: noiseFigureOf(steps) - noiseFigureOf(there),
    margin: judgedWith(point, there).margin,
  };
}
