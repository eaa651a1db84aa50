/** Names that a misspelled one may mean. */

import { distance } from 'fastest-levenshtein';

export interface Near {
  readonly name: string;
  /** Characters to add, remove or change, ignoring case. */
  readonly distance: number;
}

/** Names that are offered at most. */
const OFFERED = 3;

/** The nearest first, without those that have little in common with the text. */
export function nearest(text: string, names: Iterable<string>): Near[] {
  const most = text.length < 4 ? 1 : text.length < 8 ? 2 : 3;
  const lower = text.toLowerCase();
  const found: Near[] = [];
  for (const name of names) {
    if (Math.abs(name.length - text.length) > most || name === text) continue;
    const apart = distance(lower, name.toLowerCase());
    if (apart <= most) found.push({ name, distance: apart });
  }
  return found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : 1)).slice(0, OFFERED);
}

/** The only name that is at most two characters off, none of them a digit: another digit makes another thing. */
export function onlyNear(text: string, near: readonly Near[]): string | undefined {
  const [close, ...others] = near.filter((candidate) => candidate.distance <= 2);
  return close !== undefined && others.length === 0 && digitsOf(close.name) === digitsOf(text) ? close.name : undefined;
}

function digitsOf(text: string): string {
  return text.replace(/\D/g, '');
}
