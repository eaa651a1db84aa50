/** Fills in each value of a site that is `auto`, and lists what was filled in and what is left. */

import type { Blank } from '../../network/blanks.ts';
import { leftBlanks } from '../../report/answer/left.ts';
import { check } from '../../check.ts';
import type { Checked } from '../../lint/check.ts';
import { type Edit, editedTexts, setValue } from '../../site/edit.ts';
import { SiteFolder, type SiteText } from '../../site/folder.ts';
import { type Place, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { count, list } from '../../text/words.ts';
import { lineEdits } from './line-edits.ts';

/** A value that was filled in or left. */
export interface FillLine {
  /** A place in the text after the edits. */
  readonly at: Place;
  /** `gate-cam: address 192.168.20.4`, or why it is left. */
  readonly words: string;
}

export interface FilledIn {
  /** Edits of the files as they are now. */
  readonly edits: readonly Edit[];
  /** The files after the edits; the places of the lines are in these. */
  readonly files: readonly SiteText[];
  /** One sentence, or two. */
  readonly summary: string;
  readonly filled: readonly FillLine[];
  readonly left: readonly FillLine[];
}

export function fillIn({ files }: Checked): FilledIn {
  const folder = new SiteFolder();
  for (const { uri, text, unreadable } of files) {
    if (unreadable === undefined) folder.set(uri, text);
    else folder.setUnreadable(uri, unreadable);
  }
  const filled: Blank[] = [];
  let { plan } = check(folder);
  // A value that is filled in may show which network another device is in, so this goes round until none is left.
  for (;;) {
    const due = plan.blanks.filter(({ value }) => value !== undefined);
    if (due.length === 0) break;
    filled.push(...due);
    const edits = due.map(({ item, keyPath, value = '' }) => setValue(item, keyPath, value));
    for (const [uri, text] of editedTexts(folder.files, edits)) folder.set(uri, text);
    ({ plan } = check(folder));
  }
  return {
    edits: files.flatMap((file) => lineEdits(file, folder.get(file.uri)?.text ?? file.text)),
    files: folder.files,
    summary: summaryOf(filled, plan.blanks),
    filled: filled.flatMap((blank) => filledLine(plan.site, blank)),
    left: leftBlanks(plan),
  };
}

/** The line for a value in the text after the edits, where its item stands elsewhere. */
function filledLine({ items }: Site, { item, keyPath, what, value, vlan }: Blank): FillLine[] {
  const now = items.find(({ section, name }) => section === item.section && name === item.name);
  if (now === undefined) return [];
  const where = vlan === undefined ? '' : ` in ${vlan.name}`;
  return [{ at: placeOf(now, keyPath), words: `${item.name}: ${what} ${value}${where}` }];
}

function summaryOf(filled: readonly Blank[], left: readonly Blank[]): string {
  if (filled.length === 0 && left.length === 0) return 'There is nothing to fill in: no value of this site is ‘auto’.';
  const done = filled.length === 0 ? 'Nothing could be filled in.' : `Filled in ${counted(filled)}.`;
  if (left.length === 0) return done;
  return `${done} ${counted(left)} ${left.length === 1 ? 'is' : 'are'} left as ‘auto’.`;
}

const NOUNS = [
  ['address', 'addresses'],
  ['group', 'groups'],
  ['port', 'ports'],
] as const;

function counted(blanks: readonly Blank[]): string {
  return list(
    NOUNS.flatMap(([noun, plural]) => {
      const number = blanks.filter(({ what }) => what === noun).length;
      return number === 0 ? [] : [count(number, noun, plural)];
    }),
  );
}
