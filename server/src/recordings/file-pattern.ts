/** The times that the file pattern of a recording distinguishes. */

import {
  type Cycle,
  type TimeUnit,
  distinguishesRepeatedHour,
  isSpecifier,
  parsePattern,
  repeatsEvery,
  resolution,
} from '../standards/strftime.ts';
import { format } from '../standards/strftime-format.ts';
import { perObject } from '../memo.ts';
import type { Recording } from '../site/model.ts';
import { zonedTime } from '../standards/time-zone.ts';

export interface FilePattern {
  readonly pattern: string;
  readonly finest: TimeUnit | 'none';
  readonly cycle: Cycle | undefined;
  readonly tellsRepeatedHour: boolean;
  /** The path at one moment: two patterns with the same path name all files alike. */
  readonly path: string;
  /** Conversions that strftime does not know. */
  readonly unknown: readonly string[];
}

/** A moment at which every conversion shows something else. */
const MOMENT = zonedTime('+0545', Date.UTC(2046, 10, 29, 11, 53, 53));

/** `undefined` where the recording has no pattern. */
export const filePatternOf = perObject(({ file }: Recording) => (file === undefined ? undefined : read(file)));

function read(pattern: string): FilePattern {
  const finest = resolution(pattern);
  return {
    pattern,
    finest,
    cycle: finest === 'none' ? undefined : repeatsEvery(pattern),
    tellsRepeatedHour: distinguishesRepeatedHour(pattern),
    path: pathBy(pattern),
    unknown: parsePattern(pattern).flatMap((part) =>
      'literal' in part || isSpecifier(part.specifier) ? [] : part.text,
    ),
  };
}

export function pathBy(pattern: string): string {
  return format(pattern, MOMENT)
    .replace(/^(\.?\/)+/, '')
    .replace(/\/{2,}/g, '/');
}
