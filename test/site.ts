/** Sites from texts, checked. */

import { type Edit, applyEdits, byFile } from '../server/src/site/edit.ts';
import { SiteFolder } from '../server/src/site/folder.ts';
import { fileOf } from '../server/src/site/item.ts';
import { check } from '../server/src/rules/check.ts';
import type { Diagnostic } from '../server/src/rules/rule.ts';
import { Lines } from '../server/src/text/lines.ts';
import type { Found } from './marks.ts';

export type Texts = Readonly<Record<string, string>>;

export function folderOf(texts: Texts): SiteFolder {
  const folder = new SiteFolder();
  for (const [uri, text] of Object.entries(texts)) folder.set(uri, text);
  return folder;
}

export function diagnosticsOf(texts: Texts): readonly Diagnostic[] {
  return check(folderOf(texts)).diagnostics;
}

/** Where a finding stands in its file, as marks say it; one over several lines goes on past the end of its first. */
export function foundIn(text: string, { at, rule, message }: Diagnostic): Found {
  const lines = new Lines(text);
  const start = at.piece.start + at.start;
  const { line, character } = lines.position(start);
  return { line, start: character, end: character + at.end - at.start, rule: rule.id, message };
}

export function foundByFile(texts: Texts, diagnostics: readonly Diagnostic[]): Map<string, Found[]> {
  const found = new Map(Object.keys(texts).map((uri): [string, Found[]] => [uri, []]));
  for (const diagnostic of diagnostics) {
    const { uri } = fileOf(diagnostic.at);
    found.get(uri)?.push(foundIn(texts[uri] ?? '', diagnostic));
  }
  return found;
}

export function edited(texts: Texts, edits: readonly Edit[]): Texts {
  const changed = [...byFile(edits)].map(([uri, own]) => [uri, applyEdits(texts[uri] ?? '', own)] as const);
  return { ...texts, ...Object.fromEntries(changed) };
}
