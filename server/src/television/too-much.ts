/** Places with too much signal behind an amplifier, and the attenuator in front of it that mends them all. */

import type { Device } from '../site/model.ts';
import { intermodulationRatio } from '../standards/television/amplifier.ts';
import { attenuatorFor } from '../standards/television/attenuator.ts';
import { decibels, ratioOf } from '../standards/television/level.ts';
import { combinedRatio } from '../standards/television/noise.ts';
import type { Point, Receiver } from './reception.ts';
import type { Television } from './television.ts';
import { attenuated, passes } from './what-if.ts';

/** Whether a point lacks margin only because an amplifier on its way is above its limit. */
export function isShortByDistortion({ amplifier }: Television, point: Point, margin: number): boolean {
  const { carrierToNoise, needed, margin: left } = point;
  if (carrierToNoise === undefined || needed === undefined || left === undefined || left >= margin) return false;
  const over = point.signal.steps.flatMap(({ by }) => {
    const headroom = 'device' in by ? amplifier(by.device)?.headroom : undefined;
    return headroom === undefined || headroom >= 0 ? [] : [intermodulationRatio(headroom)];
  });
  if (over.length === 0) return false;
  return -decibels(ratioOf(-carrierToNoise) - ratioOf(-combinedRatio(over))) - needed >= margin;
}

export interface TooMuch {
  /** The loss of the attenuator, dB. */
  readonly loss: number;
  /** Points at outlets above their windows. */
  readonly points: readonly Point[];
  /** Overloaded receivers. */
  readonly receivers: readonly Receiver[];
  /** Points at receivers that lack carrier to noise because of distortion. */
  readonly distorted: readonly Point[];
}

/**
 * @param own dB that the amplifier itself is above its limit
 * @param margin dB of carrier to noise that must stay
 */
export function tooMuchBehind(television: Television, amplifier: Device, own: number, margin: number): TooMuch {
  const { reception } = television;
  const outlets = reception.outlets.flatMap(({ points }) => points).filter((point) => passes(point, amplifier));
  const receivers = reception.receivers.filter(
    ({ points }) => points.length > 0 && points.every((point) => passes(point, amplifier)),
  );
  const received = receivers.flatMap(({ points }) => points);
  const high = outlets.filter((point) => excessAt(point) > 0);
  const overloaded = receivers.filter((receiver) => excessOf(receiver) > 0);
  // The largest loss that leaves enough everywhere; places that it does not mend have another cause too.
  const losses = [own, ...high.map(excessAt), ...overloaded.map(excessOf)].map(attenuatorFor).sort((a, b) => b - a);
  const loss =
    losses.find(
      (one) =>
        outlets.every((point) => isStillEnough(point, amplifier, one, margin)) &&
        received.every((point) => isStillEnough(point, amplifier, one, margin)),
    ) ?? attenuatorFor(own);
  return {
    loss,
    points: high.filter((point) => excessAt(point) <= loss),
    receivers: overloaded.filter((receiver) => excessOf(receiver) <= loss),
    distorted: own > 0 ? received.filter((point) => isShortByDistortion(television, point, margin)) : [],
  };
}

/** dB above the window of an outlet. */
export function excessAt({ signal, window }: Point): number {
  return signal.level - (window?.max ?? Infinity);
}

/** dB above the largest input of a receiver. */
export function excessOf({ composite, maxInput }: Receiver): number {
  return composite - maxInput;
}

function isStillEnough(point: Point, amplifier: Device, loss: number, margin: number): boolean {
  const { level, margin: left = Infinity } = attenuated(point, amplifier, loss);
  const least = point.window?.min ?? -Infinity;
  const wasLow = point.signal.level < least;
  const wasShort = (point.margin ?? Infinity) < margin;
  return (wasLow || level >= least) && (wasShort || left >= margin);
}
