/** What an amplifier would gain if it stood at the aerial. */

import type { Device } from '../site/model.ts';
import { noiseFigureOf } from '../standards/television/noise.ts';
import type { Point } from './reception.ts';
import { judgedWith } from './what-if.ts';

export interface Moved {
  /** The first on the way. */
  readonly amplifier: Device;
  /** dB in front of it. */
  readonly lossInFront: number;
  /** dB of carrier to noise, by the noise of the way alone. */
  readonly gained: number;
  /** dB of carrier to noise beyond what is needed, there. */
  readonly margin: number | undefined;
}

/** `undefined` where there is no amplifier on the way of the signal. */
function amplifiedFirst(point: Point): Moved | undefined {
  return movedTo(point, 0);
}

/** With the amplifier in front of a part that the signal passes before it. */
export function amplifiedBefore(point: Point, part: Device): Moved | undefined {
  return movedTo(
    point,
    point.signal.steps.findIndex(({ by }) => 'device' in by && by.device === part),
  );
}

/** dB of carrier to noise that are worth moving an amplifier for. */
const WORTH = 3;

/** What moving the first amplifier to the aerial gains, where it is short of a margin and that is worth it. */
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
