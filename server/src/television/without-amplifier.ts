/** What would be without an amplifier: whether each outlet and receiver behind it would still have enough. */

import type { Device } from '../site/model.ts';
import { ratioOf, sumOfLevels } from '../standards/television/level.ts';
import { noiseFigureOf } from '../standards/television/noise.ts';
import type { Point } from './reception.ts';
import type { Television } from './television.ts';

/** The least level, dBµV, and the least margin, dB, behind the amplifier if it were taken out. */
export interface Without {
  readonly level: number;
  readonly margin: number;
}

/** `undefined` where something would be missing, too much, or nothing is behind it. */
export function isEnoughWithout({ reception }: Television, amplifier: Device, margin: number): Without | undefined {
  const { outlets, receivers } = reception;
  const behind = [...outlets, ...receivers].flatMap(({ points }) => points.filter((point) => passes(point, amplifier)));
  if (behind.length === 0) return undefined;
  let least: Without = { level: Infinity, margin: Infinity };
  for (const point of behind) {
    const without = pointWithout(point, amplifier);
    const { window } = point;
    if (without === undefined || without.margin < margin) return undefined;
    if (window !== undefined && (without.level < window.min || without.level > window.max)) return undefined;
    least = { level: Math.min(least.level, without.level), margin: Math.min(least.margin, without.margin) };
  }
  const isTooMuch = receivers.some(({ points, maxInput }) => {
    const levels = points.map((point) =>
      passes(point, amplifier) ? pointWithout(point, amplifier)?.level : point.signal.level,
    );
    return sumOfLevels(levels.map((level) => level ?? -Infinity)) > maxInput;
  });
  return isTooMuch ? undefined : least;
}

function passes({ signal }: Point, amplifier: Device): boolean {
  return signal.steps.some(({ by }) => 'device' in by && by.device === amplifier);
}

/** Noise grows by the difference of the noise figures of the chains with and without it. */
function pointWithout({ signal, margin, noiseFigure }: Point, amplifier: Device): Without | undefined {
  if (margin === undefined) return undefined;
  const isAmplifier = ({ by }: (typeof signal.steps)[number]): boolean => 'device' in by && by.device === amplifier;
  const gain = signal.steps.filter(isAmplifier).reduce((sum, step) => sum + step.gain, 0);
  // What is behind the last step is the receiver's own noise, which weighs more without the gain in front.
  const chain = noiseFigureOf(signal.steps);
  const total = signal.steps.reduce((sum, step) => sum + step.gain, 0);
  const own = 1 + (ratioOf(noiseFigure) - ratioOf(chain)) * ratioOf(total);
  const rest = [...signal.steps.filter((step) => !isAmplifier(step)), { gain: 0, noiseFigure: 10 * Math.log10(own) }];
  return { level: signal.level - gain, margin: margin - (noiseFigureOf(rest) - noiseFigure) };
}
