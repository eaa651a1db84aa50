/** The frame of a curve: a scale to the right and one upwards, with lines that lead the eye. */

import type { Line, Mark, Point } from './drawing.ts';
import { words } from './words.ts';

/** A mark of a scale. */
export interface Tick {
  readonly value: number;
  readonly text: string;
}

export interface Scale {
  /** It begins at `from` and ends at `to`. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly Tick[];
}

/** Where the curves are, px, and what of. */
export interface Axes {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly across: Scale;
  readonly up: Scale;
}

/** Room at the left for the words of the scale that goes up, and below for those of the other, px. */
export const LEFT = 86;
export const BELOW = 26;

export function pointIn({ left, top, width, height, across, up }: Axes, x: number, y: number): Point {
  return {
    x: left + (width * (x - across.from)) / (across.to - across.from),
    y: top + height - (height * (y - up.from)) / (up.to - up.from),
  };
}

export function axesMarks(axes: Axes): Mark[] {
  const { left, top, width, height, across, up } = axes;
  const line = (from: Point, to: Point, look: Line['look']): Mark => ({ mark: 'line', points: [from, to], look });
  const bottom = top + height;
  return [
    ...up.ticks.flatMap(({ value, text }): Mark[] => {
      const { y } = pointIn(axes, across.from, value);
      return [
        line({ x: left, y }, { x: left + width, y }, 'faded'),
        words(text, left - 8, y + 4, { anchor: 'end', size: 11, look: 'quiet', maxWidth: LEFT - 12 }),
      ];
    }),
    ...across.ticks.map(({ value, text }) => {
      const { x } = pointIn(axes, value, up.from);
      return words(text, x, bottom + 18, { anchor: 'middle', size: 11, look: 'quiet' });
    }),
    line({ x: left, y: top }, { x: left, y: bottom }, 'quiet'),
    line({ x: left, y: bottom }, { x: left + width, y: bottom }, 'quiet'),
  ];
}

/** At most so many steps up to `max`, each 1, 2 or 5 times a power of ten. */
export function evenStep(max: number, steps: number): number {
  if (max <= 0) return 1;
  const power = 10 ** Math.floor(Math.log10(max / steps));
  return ([1, 2, 5, 10].find((factor) => factor * power * steps >= max) ?? 10) * power;
}

/** From nothing up to the first even step at or above `max`. */
export function evenScale(max: number, steps: number, shown: (value: number) => string): Scale {
  const step = evenStep(max, steps);
  const count = Math.max(1, Math.ceil(max / step - 1e-9));
  const ticks = Array.from({ length: count + 1 }, (_, index) => ({ value: index * step, text: shown(index * step) }));
  return { from: 0, to: count * step, ticks };
}
