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

/**
 * The only name that can be meant: one character off, or two of a longer one, and no digit, since another digit makes
 * another thing; so does another letter of a short word. Capitals, hyphens and the like count for nothing.
 */
export function onlyNear(text: string, near: readonly Near[]): string | undefined {
  const same = near.filter(({ name }) => lettersOf(name) === lettersOf(text));
  const most = text.length < 5 ? 0 : text.length < 6 ? 1 : 2;
  const [close, ...others] = same.length > 0 ? same : near.filter((candidate) => candidate.distance <= 2);
  if (close === undefined || others.length > 0 || digitsOf(close.name) !== digitsOf(text)) return undefined;
  return close.distance <= most || same.length > 0 ? close.name : undefined;
}

/** What tells words apart, however they are written. */
export function lettersOf(text: string): string {
  return text.toLowerCase().replace(/[\s._-]/g, '');
}

function digitsOf(text: string): string {
  return text.replace(/\D/g, '');
}
