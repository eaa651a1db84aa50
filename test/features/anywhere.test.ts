// Whatever is asked wherever, in text that ends anywhere, is answered.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { complete } from '../../server/src/features/completion/completion.ts';
import { folds } from '../../server/src/features/folding.ts';
import { inlayHints } from '../../server/src/features/inlay-hints.ts';
import { lenses } from '../../server/src/features/lenses.ts';
import { definition, references } from '../../server/src/features/names/definition.ts';
import { rename } from '../../server/src/features/names/rename.ts';
import { selections } from '../../server/src/features/selection.ts';
import { documentSymbols } from '../../server/src/features/symbols.ts';
import { nameTokens } from '../../server/src/features/tokens.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { check } from '../../server/src/check.ts';
import { applyEdits } from '../../server/src/site/edit.ts';
import { type SiteText, spanOf } from '../../server/src/site/folder.ts';
import { folderOf } from '../site.ts';

const ALL = { streams: true, cables: true, cablesFrom: 0, volumes: true, ranges: true };

/** Asks for all that an editor asks for, and holds each answer to lie in the file. */
function askAt(checked: Checked, file: SiteText, offset: number): void {
  const isInside = (start: number, end: number): boolean => 0 <= start && start <= end && end <= file.text.length;
  const found = complete(checked, file, offset, { schemaFeatures: true });
  if (found !== undefined) {
    const { start, end } = spanOf(file, found.at);
    assert.ok(
      isInside(start, end) && start <= offset && offset <= end,
      `completion at ${offset} replaces ${start}-${end}`,
    );
    assert.ok(!file.text.slice(start, end).includes('\n'), `completion at ${offset} stays in its line`);
    for (const { label, insert } of found.offers)
      assert.ok(label !== '' && !(insert ?? label).includes('undefined'), `${label} at ${offset}`);
  }
  definition(checked, file, offset);
  references(checked, file, offset, true);
  const renamed = rename(checked, file, offset, 'another-name');
  if ('edits' in renamed)
    applyEdits(
      file,
      renamed.edits.filter(({ at }) => at.piece.file.uri === file.uri),
    );
  for (const { start, end } of selections(file, offset)) assert.ok(isInside(start, end), `selection at ${offset}`);
}

function askOf(checked: Checked, file: SiteText): void {
  for (const { first, last } of folds(file)) assert.ok(first < last);
  documentSymbols(file);
  nameTokens(checked, file);
  inlayHints(checked, file, 0, file.text.length, ALL);
  lenses(checked, file);
}

for (const sample of ['harrow-lane', 'first-draft']) {
  const folder = new URL(`../../samples/${sample}/`, import.meta.url);
  const texts = Object.fromEntries(
    readdirSync(folder)
      .filter((name) => name.endsWith('.site.yaml'))
      .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
  );

  describe(`In the sample ${sample}`, () => {
    for (const [uri, text] of Object.entries(texts)) {
      it(`every place of ${uri} is answered`, () => {
        const checked = check(folderOf(texts));
        const file = checked.files.find((candidate) => candidate.uri === uri);
        assert.ok(file !== undefined);
        for (let offset = 0; offset <= text.length; offset += 7) askAt(checked, file, offset);
        askOf(checked, file);
      });

      it(`${uri} that ends anywhere is answered at its end`, () => {
        const site = folderOf(texts);
        let checked: Checked | undefined;
        for (let length = text.length; length >= 0; length -= 61) {
          site.set(uri, text.slice(0, length));
          checked = check(site, checked);
          const file = checked.files.find((candidate) => candidate.uri === uri);
          assert.ok(file !== undefined);
          askAt(checked, file, length);
          askOf(checked, file);
        }
      });
    }
  });
}
