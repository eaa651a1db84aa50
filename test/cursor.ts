/** A cursor `$0` in the text of a site. */

import assert from 'node:assert/strict';
import type { Checked } from '../server/src/lint/check.ts';
import { check } from '../server/src/check.ts';
import type { SiteText } from '../server/src/site/folder.ts';
import type { Place } from '../server/src/site/item.ts';
import { type Texts, folderOf, spanAt } from './site.ts';

export interface AtCursor {
  readonly checked: Checked;
  readonly file: SiteText;
  readonly offset: number;
  /** The texts without the mark. */
  readonly texts: Texts;
}

/** The file of `texts` that has the `$0`, and its place. */
export function atCursor(texts: Texts | string): AtCursor {
  const all = typeof texts === 'string' ? { 'file:///harrow-lane/all.site.yaml': texts } : texts;
  const [uri, marked] = Object.entries(all).find(([, text]) => text.includes('$0')) ?? [];
  assert.ok(uri !== undefined && marked !== undefined, 'a cursor is marked');
  const plain = { ...all, [uri]: marked.replace('$0', '') };
  const checked = check(folderOf(plain));
  const file = checked.files.find((candidate) => candidate.uri === uri);
  assert.ok(file !== undefined);
  return { checked, file, offset: marked.indexOf('$0'), texts: plain };
}

/** The characters at a place of a file, with the number of their line: `3: paddock-cam`. */
export function shown(place: Place, { text }: Pick<SiteText, 'text'>): string {
  const { start, end } = spanAt(place);
  return `${text.slice(0, start).split('\n').length}: ${text.slice(start, end)}`;
}
