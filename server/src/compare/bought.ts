/** What is to be bought, and what is left over. */

import { type PurchaseGroup, type Purchases } from '../purchases/purchases.ts';

export interface BoughtLine {
  readonly group: PurchaseGroup;
  readonly what: string;
  readonly count: number;
}

export interface Bought {
  readonly buy: readonly BoughtLine[];
  readonly left: readonly BoughtLine[];
}

/** Groups of which a site needs more or fewer, without buying them. */
const NEEDS: readonly PurchaseGroup[] = ['switch port', 'panel port', 'rack unit'];

export function boughtOf(before: Purchases, after: Purchases): Bought {
  return { buy: more(after, before), left: more(before, after) };
}

/** The lines of which `all` has more than `than`. */
function more(all: Purchases, than: Purchases): BoughtLine[] {
  const others = new Map(than.lines.map(({ group, what, count }) => [`${group}\n${what}`, count]));
  return all.lines.flatMap(({ group, what, count }): BoughtLine[] => {
    const missing = count - (others.get(`${group}\n${what}`) ?? 0);
    return missing > 0 && !NEEDS.includes(group) ? [{ group, what, count: missing }] : [];
  });
}
