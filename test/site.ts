/** Sites from texts, checked. */

import assert from 'node:assert/strict';
import type { Edit } from '../server/src/site/edit.ts';
import { SiteFolder, type SiteText, spanOf } from '../server/src/site/folder.ts';
import { type Place, fileOf } from '../server/src/site/item.ts';
import { check } from '../server/src/check.ts';
import type { Diagnostic } from '../server/src/lint/rule.ts';
import type { Piece } from '../server/src/text/cut.ts';
import type { Span } from '../server/src/text/syntax.ts';
import { Lines } from '../server/src/text/lines.ts';
import type { Found } from './marks.ts';

export type Texts = Readonly<Record<string, string>>;

const files = new WeakMap<Piece, SiteText>();

export function folderOf(texts: Texts): SiteFolder {
  const folder = new SiteFolder();
  for (const [uri, text] of Object.entries(texts)) folder.set(uri, text);
  for (const file of folder.files) for (const piece of file.cut.pieces) files.set(piece, file);
  return folder;
}

/** Where a place of a site that `folderOf` read stands in its file. */
export function spanAt(place: Place): Span {
  const file = files.get(place.piece);
  // A place outside of all pieces counts from the start of its file.
  assert.ok(file !== undefined || 'text' in place.piece.file, 'the site was read by folderOf');
  return file === undefined ? { start: place.start, end: place.end } : spanOf(file, place);
}

export function diagnosticsOf(texts: Texts): readonly Diagnostic[] {
  return check(folderOf(texts)).diagnostics;
}

/** Where a finding stands in its file, as marks say it; one over several lines goes on past the end of its first. */
export function foundIn(text: string, { at, rule, message }: Diagnostic): Found {
  const lines = new Lines(text);
  const { start, end } = spanAt(at);
  const { line, character } = lines.position(start);
  return { line, start: character, end: character + end - start, rule: rule.id, message };
}

export function foundByFile(texts: Texts, diagnostics: readonly Diagnostic[]): Map<string, Found[]> {
  const found = new Map(Object.keys(texts).map((uri): [string, Found[]] => [uri, []]));
  for (const diagnostic of diagnostics) {
    const { uri } = fileOf(diagnostic.at);
    found.get(uri)?.push(foundIn(texts[uri] ?? '', diagnostic));
  }
  return found;
}

/** The texts after edits of a site that `folderOf` read. */
export function edited(texts: Texts, edits: readonly Edit[]): Texts {
  const changed = { ...texts };
  const inOrder = edits.map(({ at, text }) => ({ uri: fileOf(at).uri, ...spanAt(at), by: text }));
  for (const { uri, start, end, by } of inOrder.sort((a, b) => b.start - a.start || b.end - a.end)) {
    const before = changed[uri] ?? '';
    changed[uri] = before.slice(0, start) + by + before.slice(end);
  }
  return changed;
}
