/** Occasions in the report: which tuner takes what, and where tuners are too few. */

import type { Tuned } from '../television/occasions.ts';
import type { Asked } from '../television/wishes.ts';
import type { Occasion } from '../site/television/facts.ts';
import { record } from './record.ts';

/** Multiplexes by name, tuners as `device/tuner`. */
export interface OccasionReport {
  readonly name: string;
  /** By multiplex. */
  readonly assigned: Readonly<Record<string, string>>;
  /** Multiplexes that no tuner is left for. */
  readonly unmet: readonly string[];
  /** Multiplexes with too few tuners for all of them. */
  readonly short: readonly { readonly multiplexes: readonly string[]; readonly tuners: readonly string[] }[];
}

export function occasionReport({ name }: Occasion, { assigned, unmet, short }: Tuned): OccasionReport {
  const units = new Map<string, string[]>();
  for (const [{ multiplex }, unit] of assigned)
    units.set(multiplex.name, [...(units.get(multiplex.name) ?? []), unit.name]);
  return {
    name,
    // Where two devices must each take one multiplex, both are named.
    assigned: record([...units].map(([multiplex, names]) => [multiplex, names.join(', ')])),
    unmet: namesOf(unmet),
    short: short.map(({ asked, units: able }) => ({
      multiplexes: namesOf(asked),
      tuners: able.map((unit) => unit.name),
    })),
  };
}

function namesOf(asked: readonly Asked[]): string[] {
  return [...new Set(asked.map(({ multiplex }) => multiplex.name))];
}
