/**
 * Loss of parts that divide a signal.
 *
 * Sources: the ideal losses follow from the conservation of energy; typical ones are the trade's budget, from memory
 * and a trade forum.
 */

import { decibels, ratioOf } from './level.ts';

/** Loss to each output if nothing is lost inside, dB. */
export function idealSplit(ways: number): number {
  return decibels(ways);
}

/** Loss through the main line of a tap that takes `tapLoss` dB to its side, if nothing is lost inside, dB. */
export function idealThroughLoss(tapLoss: number): number {
  return -decibels(1 - ratioOf(-tapLoss));
}

/** The loss of a splitter to each output, dB, in the bands of television and of a satellite's first IF. */
interface TypicalSplit {
  readonly television: number;
  readonly satellite: number;
}

const TYPICAL: ReadonlyMap<number, TypicalSplit> = new Map([
  [2, { television: 4, satellite: 5 }],
  [3, { television: 6, satellite: 7 }],
  [4, { television: 8, satellite: 9 }],
  [6, { television: 10, satellite: 12 }],
  [8, { television: 12, satellite: 14 }],
]);

/** The loss of a splitter where undeclared; beyond the table it is 2 dB over the ideal one. */
export function typicalSplit(ways: number, frequency: number): number {
  const typical = TYPICAL.get(ways);
  if (typical === undefined) return idealSplit(ways) + (isSatelliteBand(frequency) ? 5 : 2);
  return isSatelliteBand(frequency) ? typical.satellite : typical.television;
}

/** The first intermediate frequency of a satellite receiver starts at 950 MHz. */
function isSatelliteBand(frequency: number): boolean {
  return frequency >= 950e6;
}
