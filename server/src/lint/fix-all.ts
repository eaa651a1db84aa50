/** Applies fixes to a site, round by round, until none is left. */

import { type Edit, type Fix, editedTexts } from '../site/edit.ts';
import { leastWhere } from '../text/bisect.ts';
import type { Piece } from '../text/cut.ts';
import type { SiteFolder } from '../site/folder.ts';
import type { Checked } from './check.ts';
import type { Diagnostic } from './rule.ts';

/** A fix may reveal another finding; after so many rounds without gain, two fixes undo each other. */
const ROUNDS = 10;

/** The most entries checked in all rounds: a hundred rounds of a site of a thousand devices. The rest is reported. */
const MOST_CHECKED = 400_000;

/** Entries of a site that is checked once only, as that takes seconds. */
const LARGE = 10_000;

/** The most fixes that are applied at once, which takes a second. */
export const MOST_FIXES = 5000;

export interface Fixed {
  readonly texts: ReadonlyMap<string, string>;
  /** How many fixes were applied. */
  readonly fixes: number;
  /** Whether more may be left, which another call would apply. */
  readonly goesOn: boolean;
  /** The site with the new texts. */
  readonly checked: () => Checked;
}

/** The fix of a diagnostic that is applied, if any is. */
export type ChooseFix = (diagnostic: Diagnostic) => Fix | undefined;

export const safeFix: ChooseFix = ({ fixes }) => fixes?.('safe').find(({ safe }) => safe);

/** Checks the site: all that the rules find, or so much of it as can be fixed at once. */
type CheckToFix = (folder: SiteFolder, found: 'all' | 'some', previous?: Checked) => Checked;

/** Changes the texts of `folder`, and returns the new ones. */
export function fixAllBy(check: CheckToFix, folder: SiteFolder, choose: ChooseFix): Fixed {
  let fixes = 0;
  let least = Infinity;
  let checked: Checked | undefined;
  let isCurrent = false;
  for (let idle = 0, entries = 0; idle < ROUNDS && entries < MOST_CHECKED && fixes < MOST_FIXES; idle++) {
    checked = check(folder, 'some', checked);
    let chosen = chosenOf(checked, choose, MOST_FIXES - fixes);
    if (chosen.fixes === 0 && [...checked.runs.values()].some(({ isCut }) => isCut)) {
      checked = check(folder, 'all', checked);
      chosen = chosenOf(checked, choose, MOST_FIXES - fixes);
    }
    fixes += chosen.fixes;
    isCurrent = chosen.fixes === 0;
    if (isCurrent) break;
    if (chosen.due < least) idle = 0;
    least = Math.min(least, chosen.due);
    for (const [uri, text] of editedTexts(folder.files, chosen.edits)) folder.set(uri, text);
    const { length } = checked.plan.site.items;
    entries += length > LARGE ? MOST_CHECKED : length;
  }
  const last = checked;
  return {
    texts: new Map(folder.files.map(({ uri, text }) => [uri, text])),
    fixes,
    goesOn: !isCurrent,
    checked: () => (isCurrent && last !== undefined ? last : check(folder, 'some', last)),
  };
}

/** The fixes of a round: how many, how many there would be if none touched another, and their edits. */
interface Round {
  readonly fixes: number;
  readonly due: number;
  readonly edits: readonly Edit[];
}

function chosenOf({ diagnostics }: Checked, choose: ChooseFix, most: number): Round {
  const chosen: Chosen = new Map();
  const taken = new Set<string>();
  let [fixes, due] = [0, 0];
  for (const diagnostic of diagnostics) {
    if (fixes === most) break;
    const fix = choose(diagnostic);
    if (fix === undefined) continue;
    due++;
    // Two that would both take the next free address are fixed one after the other.
    if (overlaps(chosen, fix.edits) || (!fix.safe && taken.has(fix.title))) continue;
    taken.add(fix.title);
    for (const edit of fix.edits) take(chosen, edit);
    fixes++;
  }
  return { fixes, due, edits: [...chosen.values()].flat() };
}

/** A fix that touches a place which another fix changes waits for the next round. */
function overlaps(chosen: Chosen, edits: readonly Edit[]): boolean {
  return edits.some(({ at }) => {
    const own = chosen.get(at.piece) ?? [];
    const before = own[firstBehind(own, at.end) - 1];
    return before !== undefined && before.at.end >= at.start;
  });
}

/** Edits that do not touch each other, by their piece and in the order of its text. */
type Chosen = Map<Piece, Edit[]>;

function take(chosen: Chosen, edit: Edit): void {
  const own = chosen.get(edit.at.piece);
  if (own === undefined) chosen.set(edit.at.piece, [edit]);
  else own.splice(firstBehind(own, edit.at.start), 0, edit);
}

function firstBehind(edits: readonly Edit[], offset: number): number {
  return leastWhere(0, edits.length, (index) => (edits[index]?.at.start ?? 0) > offset);
}
