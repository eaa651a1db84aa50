/** What a fix writes of a name is quoted where YAML would read something else. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { parseDocument } from 'yaml';
import { type Use, usesOf } from '../../server/src/features/names/uses.ts';
import { check } from '../../server/src/check.ts';
import { ruleFiles } from '../../server/generate/rule-files.ts';
import { type Edit, scalarText } from '../../server/src/site/edit.ts';
import { placeOf } from '../../server/src/site/item.ts';
import { readMarks } from '../marks.ts';
import { type Texts, edited, folderOf } from '../site.ts';

const FILE = 'harrow-lane.site.yaml';

/** Not names that anyone would give, but YAML in quotes allows them: the other it takes for no text (YAML 1.2.2 §10.3.2). */
const AWKWARD = ['[x](y): #, {z}', 'null'];

const parses = (texts: Texts): boolean => parseDocument(texts[FILE] ?? '', { uniqueKeys: false }).errors.length === 0;

/** A name may be a part of a scalar, as in `device/port`. */
function calledBy(name: string, { item, route, part, within }: Use): Edit {
  const at = placeOf(item, route, part);
  const written = at.piece.text.slice(at.start, at.end);
  const { start, end } = within ?? { start: 0, end: written.length };
  return { at, text: scalarText(`${written.slice(0, start)}${name}${written.slice(end)}`, true) };
}

/** The site with one of its things called otherwise, wherever it is mentioned. */
function renamed(texts: Texts, to: string): Texts[] {
  const checked = check(folderOf(texts));
  const { site } = checked.plan;
  return (['devices', 'vlans', 'streams', 'volumes', 'recordings'] as const).flatMap((kind) =>
    site[kind].map(({ name }) => {
      const edits: Edit[] = usesOf(checked, { kind, name }).map((use) => calledBy(to, use));
      return edited(texts, edits);
    }),
  );
}

const misread = (texts: Texts): number =>
  check(folderOf(texts)).diagnostics.filter(({ rule }) => rule.id === 'wrong-type').length;

const files = await ruleFiles();

describe('Fixes where a name needs quotes', () => {
  for (const { rule, examples } of files) {
    it(`of ${rule.id} leave text that is read as it is meant`, () => {
      for (const { bad } of examples) {
        const plain = { [FILE]: readMarks(bad, false).text };
        if (!parses(plain)) continue;
        for (const texts of AWKWARD.flatMap((name) => renamed(plain, name)).filter(parses)) {
          const { diagnostics } = check(folderOf(texts));
          for (const fix of diagnostics
            .filter((found) => found.rule === rule)
            .flatMap((found) => found.fixes?.() ?? [])) {
            const after = edited(texts, fix.edits);
            assert.ok(
              parses(after) && misread(after) <= misread(texts),
              `“${fix.title}” makes of\n${texts[FILE]}\n${after[FILE]}`,
            );
          }
        }
      }
    });
  }
});
