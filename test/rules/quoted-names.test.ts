/** What a fix writes of a name is quoted where YAML would read something else. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { parseDocument } from 'yaml';
import { type Use, usesOf } from '../../server/src/features/names/uses.ts';
import { check, ruleById } from '../../server/src/check.ts';
import { checkBy } from '../../server/src/lint/check.ts';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { rules } from '../../server/src/rules/index.generated.ts';
import { ruleFiles } from '../../server/generate/rule-files.ts';
import { type Edit, type Fix, scalarText } from '../../server/src/site/edit.ts';
import { placeOf } from '../../server/src/site/item.ts';
import { readMarks } from '../marks.ts';
import { type Texts, edited, folderOf } from '../site.ts';

const FILE = 'harrow-lane.site.yaml';

/**
 * Not names that anyone would give, but YAML in quotes allows them: the other it takes for no text (YAML 1.2.2
 * §10.3.2).
 */
const AWKWARD = ['[x](y): #, {z}', 'null'];

const parses = (texts: Texts): boolean => parseDocument(texts[FILE] ?? '', { uniqueKeys: false }).errors.length === 0;

/** A name may be a part of a scalar, as in `device/port`. */
function calledBy(name: string, { item, keyPath, part, within }: Use): Edit {
  const at = placeOf(item, keyPath, part);
  const written = at.piece.text.slice(at.start, at.end);
  const { start, end } = within ?? { start: 0, end: written.length };
  return { at, text: scalarText(`${written.slice(0, start)}${name}${written.slice(end)}`, true) };
}

/** The site with one of its things called otherwise, wherever it is mentioned; by each of the names. */
function renamed(texts: Texts, names: readonly string[]): Texts[] {
  const checked = check(folderOf(texts));
  const { site } = checked.plan;
  return (['devices', 'vlans', 'streams', 'volumes', 'recordings'] as const).flatMap((kind) =>
    site[kind].flatMap(({ name }) => {
      const uses = usesOf(checked, { kind, name });
      return names.map((to) =>
        edited(
          texts,
          uses.map((use) => calledBy(to, use)),
        ),
      );
    }),
  );
}

const files = await ruleFiles();

/** What a rule finds, whether or not another finds the cause of it. */
function foundBy(id: string, texts: Texts): readonly Diagnostic[] {
  const one = rules.filter((rule) => rule.id === id);
  // What finds an acceptance that matches nothing has to know what all others find.
  if (one.length === 0) return check(folderOf(texts)).diagnostics.filter(({ rule }) => rule.id === id);
  return checkBy({ rules: one, acceptanceRules: [], ids: new Set(ruleById.keys()) }, folderOf(texts)).diagnostics;
}

const fixesOf = (id: string, texts: Texts): readonly Fix[] =>
  foundBy(id, texts).flatMap((found) => found.fixes?.() ?? []);

const misread = (texts: Texts): number => foundBy('wrong-type', texts).length;

describe('Fixes where a name needs quotes', () => {
  for (const { rule, examples } of files) {
    it(`of ${rule.id} leave text that is read as it is meant`, () => {
      for (const { bad } of examples) {
        const plain = { [FILE]: readMarks(bad, false).text };
        if (!parses(plain) || fixesOf(rule.id, plain).length === 0) continue;
        for (const texts of renamed(plain, AWKWARD)) {
          const fixes = fixesOf(rule.id, texts);
          if (fixes.length === 0 || !parses(texts)) continue;
          const alreadyMisread = misread(texts);
          for (const fix of fixes) {
            const after = edited(texts, fix.edits);
            assert.ok(
              parses(after) && misread(after) <= alreadyMisread,
              `“${fix.title}” makes of\n${texts[FILE]}\n${after[FILE]}`,
            );
          }
        }
      }
    });
  }
});
