/** How a figure grows with each further camera, and up to how many it keeps within its limit. */

import type { LimitFigure } from './figures.ts';

/** The figures of the site with so many more cameras. */
export type FiguresWith = (number: number) => ReadonlyMap<string, LimitFigure>;

/** The most further cameras that are planned. */
export const MOST_PLANNED = 256;

/** The number of further cameras at which growth is checked, if nothing stops it before. */
const FAR = 12;

/** Sums of shares of the air are not whole numbers. */
const ROUNDING = 1e-9;

/** How many more cameras a figure allows, and what the first of them adds. */
export interface Bearing {
  readonly more: number | undefined;
  readonly each: number;
}

/** A figure that grows. */
interface Growing {
  readonly name: string;
  readonly base: LimitFigure;
  /** The figure with one more camera, and what each further one adds. */
  readonly first: number;
  readonly step: number;
}

/**
 * How many more cameras each growing figure allows by itself; `undefined` where its limit is not known.
 *
 * Loads are sums, so they grow by the same amount with each copy, at the latest from the second on. This is checked
 * against a site of many more cameras; where it does not hold, the number is found by planning such sites.
 */
export function bearable(figuresWith: FiguresWith): Map<LimitFigure, Bearing> {
  const byFirst = growing(figuresWith(0), figuresWith(1));
  const far = farOf(byFirst);
  const there = figuresWith(far);
  const isStraight = (of: Growing): boolean => {
    const expected = amountWith(of, far);
    return Math.abs((there.get(of.name)?.amount ?? NaN) - expected) <= ROUNDING * expected;
  };
  const isSteady = byFirst.every(isStraight);
  const bears = (of: Growing): number | undefined => {
    const { most, amount } = of.base;
    if (most === undefined) return undefined;
    if (amount > most) return 0;
    if (isStraight(of)) return quotient(of, most);
    return greatest((number) => (figuresWith(number).get(of.name)?.amount ?? 0) <= most, MOST_PLANNED);
  };
  const found = new Map<LimitFigure, Bearing>();
  for (const of of isSteady ? byFirst : growing(figuresWith(0), figuresWith(1), figuresWith(2)))
    found.set(of.base, { more: bears(of), each: of.first - of.base.amount });
  return found;
}

function growing(
  none: ReadonlyMap<string, LimitFigure>,
  one: ReadonlyMap<string, LimitFigure>,
  two?: ReadonlyMap<string, LimitFigure>,
): Growing[] {
  return [...none].flatMap(([name, base]) => {
    const first = one.get(name)?.amount ?? base.amount;
    const step = two === undefined ? first - base.amount : (two.get(name)?.amount ?? first) - first;
    return step > 0 ? [{ name, base, first, step }] : [];
  });
}

/** The number of cameras to check growth with: one more than the limits allow, within reason. */
function farOf(all: readonly Growing[]): number {
  const numbers = all.flatMap((of) => (of.base.most === undefined ? [] : [quotient(of, of.base.most) + 1]));
  return Math.max(3, Math.min(FAR, Math.max(...numbers)));
}

function amountWith({ base, first, step }: Growing, number: number): number {
  return number === 0 ? base.amount : first + (number - 1) * step;
}

function quotient(of: Growing, most: number): number {
  if (of.first > most) return 0;
  let number = Math.max(1, Math.floor((most - of.first) / of.step) + 1);
  // It may be one off, as numbers are rounded.
  while (amountWith(of, number) > most) number--;
  while (amountWith(of, number + 1) <= most) number++;
  return number;
}

/** The greatest number up to `most` for which `holds` is true: it is true for 0 and false above a first false one. */
export function greatest(holds: (number: number) => boolean, most: number, guess = 1): number {
  let low = 0;
  let high = most + 1;
  let step = 1;
  let next = Math.max(1, Math.min(guess, most));
  while (high - low > 1) {
    const isHeld = holds(next);
    if (isHeld) low = next;
    else high = next;
    const ahead = isHeld ? next + step : next - step;
    step *= 2;
    next = ahead > low && ahead < high ? ahead : Math.floor((low + high) / 2);
  }
  return low;
}
