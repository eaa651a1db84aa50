/** Whether each outlet and receiver behind an amplifier would have enough without it. */

import type { Device } from '../site/model.ts';
import { sumOfLevels } from '../standards/television/level.ts';
import type { Point } from './reception.ts';
import type { Television } from './television.ts';
import { type Judged, judgedWith, passes } from './what-if.ts';

/** The least level, dBµV, and the least margin, dB, behind the amplifier if it were taken out. */
export interface Without {
  readonly level: number;
  readonly margin: number;
}

/** `undefined` where a signal would be too weak or too strong, or nothing is behind the amplifier. */
export function isEnoughWithout({ reception }: Television, amplifier: Device, margin: number): Without | undefined {
  const { outlets, receivers } = reception;
  let least: Without | undefined;
  for (const { points } of [...outlets, ...receivers])
    for (const point of points) {
      if (!passes(point, amplifier)) continue;
      const without = pointWithout(point, amplifier);
      const { window } = point;
      if (without.margin === undefined || without.margin < margin) return undefined;
      if (window !== undefined && (without.level < window.min || without.level > window.max)) return undefined;
      least = {
        level: Math.min(least?.level ?? Infinity, without.level),
        margin: Math.min(least?.margin ?? Infinity, without.margin),
      };
    }
  if (least === undefined) return undefined;
  const isTooMuch = receivers.some(({ points, maxInput }) => {
    const levels = points.map((point) =>
      passes(point, amplifier) ? pointWithout(point, amplifier).level : point.signal.level,
    );
    return sumOfLevels(levels) > maxInput;
  });
  return isTooMuch ? undefined : least;
}

function pointWithout(point: Point, amplifier: Device): Judged {
  return judgedWith(
    point,
    point.signal.steps.filter(({ by }) => !('device' in by && by.device === amplifier)),
  );
}
