/** How a point would be judged if its signal came another way. */

import { decibels, ratioOf } from '../standards/television/level.ts';
import { type Stage, lossy, noiseFigureOf } from '../standards/television/noise.ts';
import type { Device } from '../site/model.ts';
import type { Point } from './reception.ts';

/** dBµV, and dB of carrier to noise beyond what is needed; `undefined` where too little is said. */
export interface Judged {
  readonly level: number;
  readonly margin: number | undefined;
}

/** With other steps on the way. Noise changes by the difference of the noise figures; distortion stays as it is. */
export function judgedWith({ signal, margin, noiseFigure }: Point, steps: readonly Stage[]): Judged {
  const gain = sumOfGains(signal.steps);
  // What is behind the last step is the receiver's own noise, which weighs more with less gain in front.
  const own = 1 + (ratioOf(noiseFigure) - ratioOf(noiseFigureOf(signal.steps))) * ratioOf(gain);
  const changed = noiseFigureOf([...steps, { gain: 0, noiseFigure: decibels(own) }]);
  return {
    level: signal.level + sumOfGains(steps) - gain,
    margin: margin === undefined ? undefined : margin - (changed - noiseFigure),
  };
}

/** With an attenuator in front of a device on the way. */
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
