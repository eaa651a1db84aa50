/** How a point would be judged if its signal came another way. */

import { decibels, ratioOf } from '../standards/television/level.ts';
import { type Stage, lossy, noiseFigureOf } from '../standards/television/noise.ts';
import type { Device } from '../site/model.ts';
import type { Point } from './reception.ts';

/** dBµV, and dB of carrier to noise beyond the needed ratio; `undefined` where too little is declared. */
export interface Judged {
  readonly level: number;
  readonly margin: number | undefined;
}

/** A point with other steps on its way. Noise changes by the difference of the noise figures; distortion stays. */
export function judgedWith({ signal, margin, noiseFigure }: Point, steps: readonly Stage[]): Judged {
  const gain = sumOfGains(signal.steps);
  // Behind the last step comes the receiver's own noise, which counts more with less gain in front.
  const own = 1 + (ratioOf(noiseFigure) - ratioOf(noiseFigureOf(signal.steps))) * ratioOf(gain);
  const changed = noiseFigureOf([...steps, { gain: 0, noiseFigure: decibels(own) }]);
  return {
    level: signal.level + sumOfGains(steps) - gain,
    margin: margin === undefined ? undefined : margin - (changed - noiseFigure),
  };
}

/** A point with an attenuator in front of a device on its way. */
export function attenuated(point: Point, device: Device, loss: number): Judged {
  const { steps } = point.signal;
  const index = steps.findIndex(({ by }) => 'device' in by && by.device === device);
  return judgedWith(point, [...steps.slice(0, index), lossy(loss), ...steps.slice(index)]);
}

export function passes({ signal }: Point, device: Device): boolean {
  return signal.steps.some(({ by }) => 'device' in by && by.device === device);
}

function sumOfGains(steps: readonly Stage[]): number {
  return steps.reduce((sum, { gain }) => sum + gain, 0);
}
