/** Names that a misspelled one may mean. */

import { distance } from 'fastest-levenshtein';

export interface Near {
  readonly name: string;
  /** Characters to add, remove or change, ignoring case. */
  readonly distance: number;
}

/** Names that are offered at most. */
const OFFERED = 3;

/** Characters that differ, where two neighbours in each other's place count as one. */
function steps(one: string, other: string): number {
  const apart = distance(one, other);
  if (apart !== 2 || one.length !== other.length) return apart;
  const at = [...one].findIndex((letter, index) => letter !== other[index]);
  return one[at] === other[at + 1] && one[at + 1] === other[at] ? 1 : apart;
}

/** The nearest first, without those that have little in common with the text. */
export function nearest(text: string, names: Iterable<string>): Near[] {
  const most = text.length < 4 ? 1 : text.length < 8 ? 2 : 3;
  const lower = text.toLowerCase();
  const found: Near[] = [];
  for (const name of names) {
    if (Math.abs(name.length - text.length) > most || name === text) continue;
    const apart = steps(lower, name.toLowerCase());
    if (apart <= most) found.push({ name, distance: apart });
  }
  return found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : 1)).slice(0, OFFERED);
}

/** Names that a search in a whole site compares in all; it is over in less than a second. */
const MOST_COMPARED = 2_000_000;

/**
 * Looks for many names among those that there are. Where a site has thousands of both it finds nothing any more in the
 * end: nobody reads as many hints.
 */
export class NameSearch {
  private left = MOST_COMPARED;
  private readonly found = new Map<ReadonlyMap<string, unknown>, Map<string, Near[]>>();

  /** The nearest of the names that are keys. */
  near(text: string, names: ReadonlyMap<string, unknown>): Near[] {
    const known = this.found.get(names) ?? new Map<string, Near[]>();
    this.found.set(names, known);
    const near = known.get(text) ?? (this.mayCompare(names) ? nearest(text, names.keys()) : []);
    known.set(text, near);
    return near;
  }

  /** Whether it is the beginning of one of the keys. */
  begins(text: string, names: ReadonlyMap<string, unknown>): boolean {
    return this.mayCompare(names) && begins(text, names.keys());
  }

  private mayCompare(names: ReadonlyMap<string, unknown>): boolean {
    this.left -= names.size;
    return this.left >= 0;
  }
}

/** Whether it is the beginning of one of the words. */
export function begins(text: string, words: Iterable<string>): boolean {
  for (const word of words) if (word.startsWith(text) && word !== text) return true;
  return false;
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
