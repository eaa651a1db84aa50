/** What an amplifier would gain if it stood at the aerial. */

import type { Device } from '../site/model.ts';
import { noiseFigureOf } from '../standards/television/noise.ts';
import type { Point } from './reception.ts';

export interface Moved {
  /** The first on the way. */
  readonly amplifier: Device;
  /** dB in front of it. */
  readonly lossInFront: number;
  /** dB of carrier to noise. */
  readonly gained: number;
}

/** `undefined` where there is no amplifier on the way of the signal. */
export function amplifiedFirst({ signal }: Point): Moved | undefined {
  const { steps } = signal;
  const index = steps.findIndex(({ by }) => 'device' in by && by.device.kind === 'amplifier');
  const step = steps[index];
  if (step === undefined || !('device' in step.by)) return undefined;
  const inFront = steps.slice(0, index);
  const now = noiseFigureOf(steps);
  const first = noiseFigureOf([step, ...inFront, ...steps.slice(index + 1)]);
  return {
    amplifier: step.by.device,
    lossInFront: -inFront.reduce((sum, { gain }) => sum + gain, 0),
    gained: now - first,
  };
}
