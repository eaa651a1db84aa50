/** A comparison in words, for text and page alike. */

import { bitRate, percent } from '../text/words.ts';
import type { BoughtLine } from './bought.ts';
import type { LinkChange, PoeLoad } from './loads.ts';
import type { Pair } from './match.ts';
import type { WorkKind } from './work.ts';

/** `gate-cam`, or `gate-cam, now front-cam`. */
export function pairWords({ before, after }: Pair): string {
  if (before === null || after === null || before === after) return after ?? before ?? '';
  return `${before}, now ${after}`;
}

/** `21 d → 28 d`, `+ 28 d`, `− 21 d`. */
export function changeWords({ before, after }: Pair): string {
  if (before === null) return `+ ${after ?? ''}`;
  return after === null ? `− ${before}` : `${before} → ${after}`;
}

export function loadWords({ peak, capacity }: LinkChange['before']): string {
  return capacity === null || capacity === 0 ? bitRate(peak) : `${bitRate(peak)} (${percent(peak, capacity)})`;
}

export function poeWords(load: PoeLoad | null): string {
  if (load === null) return 'nothing';
  return `${load.draw} W of ${load.budget === null ? '?' : `${load.budget} W`}`;
}

export const WORK_WORDS: Readonly<Record<WorkKind, string>> = {
  install: 'Install',
  remove: 'Take away',
  rename: 'Rename',
  lay: 'Lay',
  pull: 'Pull out',
  move: 'Move',
  replace: 'Replace',
  relabel: 'Relabel',
  configure: 'Configure',
};

/** `2 × cable: cat6, 20 m` */
export function boughtWords({ group, what, count }: BoughtLine): string {
  return `${count} × ${group}: ${what}`;
}
