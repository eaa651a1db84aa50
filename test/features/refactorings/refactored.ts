/** Refactorings applied to texts, and what must hold of each. */

import assert from 'node:assert/strict';
import { parseAllDocuments } from 'yaml';
import type { Change, Offered } from '../../../server/src/features/actions/refactorings/refactoring.ts';
import { refactoringsAt } from '../../../server/src/features/actions/refactorings/refactorings.ts';
import { type Report, reportOf } from '../../../server/src/report/report.ts';
import { check } from '../../../server/src/check.ts';
import { perObject } from '../../../server/src/memo.ts';
import { atCursor } from '../../cursor.ts';
import { type Texts, edited, folderOf } from '../../site.ts';

/** What is offered at the `$0`. */
export function offeredAt(texts: Texts | string): Offered[] {
  return refactoringsAt(atCursor(texts));
}

export function titlesAt(texts: Texts | string): string[] {
  return offeredAt(texts).map(({ title }) => title);
}

/** The texts without the cursor. */
export function plain(texts: Texts): Texts {
  return Object.fromEntries(Object.entries(texts).map(([uri, text]) => [uri, text.replace('$0', '')]));
}

/** Each refactoring that is offered anywhere in the texts, once, with the texts after it. */
export function* everyRefactoring(texts: Texts): Iterable<{ readonly offered: Offered; readonly after: Texts }> {
  const checked = checkedOf(texts);
  const seen = new Set<string>();
  for (const file of checked.files) {
    // Each word that stands before a colon is a place where a person may stop.
    for (const { index } of file.text.matchAll(/[\w-]+"?:/g)) {
      for (const offered of refactoringsAt({ checked, file, offset: index })) {
        const own = `${file.uri} ${offered.title}`;
        if (seen.has(own)) continue;
        seen.add(own);
        yield { offered, after: applied(texts, offered.change()) };
      }
    }
  }
}

/** The texts after the one refactoring whose title begins so. */
export function refactored(texts: Texts | string, title: string): Texts {
  const cursor = atCursor(texts);
  const offered = refactoringsAt(cursor);
  const [chosen, ...others] = offered.filter((each) => each.title.startsWith(title));
  assert.ok(
    chosen !== undefined && others.length === 0,
    `one ${title} among: ${offered.map((each) => each.title).join('; ')}`,
  );
  const change = chosen.change();
  assert.equal(change.made.size > 0, chosen.makesFiles);
  return applied(cursor.texts, change);
}

export function applied(texts: Texts, { edits, made }: Change): Texts {
  for (const uri of made.keys()) assert.equal(texts[uri], undefined, `${uri} is not there yet`);
  return { ...edited(texts, edits), ...Object.fromEntries(made) };
}

/**
 * That the YAML is sound by the reader of the package yaml, no comment is lost, and no new error is found but of rules
 * that may find some.
 */
export function assertSound(before: Texts, after: Texts, mayBeFound = /^$/): void {
  for (const [uri, text] of Object.entries(after)) {
    assert.deepEqual(
      parseAllDocuments(text).flatMap(({ errors }) => errors.map(({ message }) => `${uri}: ${message}\n${text}`)),
      [],
    );
    assert.doesNotMatch(text, /\n(\r?\n){2}/, `${uri} has two blank lines in a row:\n${text}`);
    assert.doesNotMatch(text, /\n\r?\n$/, `${uri} ends with a blank line:\n${text}`);
  }
  const left = commentsOf(after);
  for (const comment of new Set(commentsOf(before))) assert.ok(left.includes(comment), `${comment} is kept`);
  const known = new Set(errorsOf(before));
  assert.deepEqual(
    errorsOf(after).filter((error) => !known.has(error) && !mayBeFound.test(error)),
    [],
  );
}

/** The same, and that all figures are as they were. */
export function assertSameSite(before: Texts, after: Texts): void {
  assertSound(before, after);
  assert.deepEqual(figuresOf(after), figuresOf(before));
}

function commentsOf(texts: Texts): string[] {
  return Object.values(texts).flatMap((text) =>
    [...text.matchAll(/(?:^|\s)(#[^\r\n]*)/g)].map(([, comment = '']) => comment.trim()),
  );
}

/** Many refactorings are compared with the same texts. */
const checkedOf = perObject((texts: Texts) => check(folderOf(texts)));

/** By what they are about: their figures may differ. */
function errorsOf(texts: Texts): string[] {
  return checkedOf(texts).diagnostics.flatMap(({ rule, severity, acceptAt }) =>
    severity === 'error' ? [`${rule.id}: ${acceptAt[0]}`] : [],
  );
}

export function reportFrom(texts: Texts): Report {
  return reportOf(checkedOf(texts).plan);
}

/** The report with its lists sorted, since the order of files is that of their names. */
export const figuresOf = perObject((texts: Texts): unknown => sorted(JSON.parse(JSON.stringify(reportFrom(texts)))));

function sorted(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (!Array.isArray(value))
    return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, sorted(entry)]));
  const byText = value.map(sorted).map((element) => [JSON.stringify(element), element] as const);
  return byText.sort(([one], [other]) => (one < other ? -1 : 1)).map(([, element]) => element);
}
