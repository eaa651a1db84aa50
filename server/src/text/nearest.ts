/** Names that a misspelled one may mean. */

import { distance } from 'fastest-levenshtein';

export interface Near {
  readonly name: string;
  /** Characters to add, remove or change, ignoring case. */
  readonly distance: number;
}

/** The most names that are offered. */
const OFFERED = 3;

/** Characters that differ; two neighbours that changed places count as one. */
function steps(a: string, b: string): number {
  const apart = distance(a, b);
  if (apart !== 2 || a.length !== b.length) return apart;
  const at = [...a].findIndex((letter, index) => letter !== b[index]);
  return a[at] === b[at + 1] && a[at + 1] === b[at] ? 1 : apart;
}

/** The nearest first, without those that have little in common with the text. */
export function nearest(text: string, names: Iterable<string>): Near[] {
  const max = text.length < 4 ? 1 : text.length < 8 ? 2 : 3;
  const lower = text.toLowerCase();
  const found: Near[] = [];
  for (const name of names) {
    if (Math.abs(name.length - text.length) > max || name === text) continue;
    const apart = steps(lower, name.toLowerCase());
    if (apart <= max) found.push({ name, distance: apart });
  }
  return found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : 1)).slice(0, OFFERED);
}

/** The most names that are compared for one site, which takes less than a second. */
const MOST_COMPARED = 2_000_000;

/**
 * Finds the names that misspelled ones may mean. On a site with thousands of both it stops at some point and finds no
 * more: nobody reads that many hints.
 */
export class NameSearch {
  private left = MOST_COMPARED;
  private readonly found = new Map<ReadonlyMap<string, unknown>, Map<string, Near[]>>();

  /** The nearest of the names that are keys. */
  near(text: string, names: ReadonlyMap<string, unknown>): Near[] {
    const byText = this.found.get(names) ?? new Map<string, Near[]>();
    this.found.set(names, byText);
    const near = byText.get(text) ?? (this.mayCompare(names) ? nearest(text, names.keys()) : []);
    byText.set(text, near);
    return near;
  }

  /** Whether the text is the beginning of one of the keys. */
  begins(text: string, names: ReadonlyMap<string, unknown>): boolean {
    return this.mayCompare(names) && begins(text, names.keys());
  }

  private mayCompare(names: ReadonlyMap<string, unknown>): boolean {
    this.left -= names.size;
    return this.left >= 0;
  }
}

/** Whether the text is the beginning of one of the words. */
export function begins(text: string, words: Iterable<string>): boolean {
  for (const word of words) if (word.startsWith(text) && word !== text) return true;
  return false;
}

/**
 * The only name that can be meant: no character off in a word of up to four, one in a word of five, two in a longer
 * one. The digits must be the same: another digit is another thing. Capitals, hyphens and the like do not count.
 */
export function onlyNear(text: string, near: readonly Near[]): string | undefined {
  const same = near.filter(({ name }) => lettersOf(name) === lettersOf(text));
  const max = text.length < 5 ? 0 : text.length < 6 ? 1 : 2;
  const [close, ...others] = same.length > 0 ? same : near.filter((candidate) => candidate.distance <= 2);
  if (close === undefined || others.length > 0 || digitsOf(close.name) !== digitsOf(text)) return undefined;
  return close.distance <= max || same.length > 0 ? close.name : undefined;
}

/** The characters that tell two names apart: no capitals, spaces, dots, hyphens or underscores. */
export function lettersOf(text: string): string {
  return text.toLowerCase().replace(/[\s._-]/g, '');
}

function digitsOf(text: string): string {
  return text.replace(/\D/g, '');
}
