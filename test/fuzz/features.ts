/** The requests of an editor for a place or a file, each with the places in its answer. */

import assert from 'node:assert/strict';
import { acceptance } from '../../server/src/features/actions/accept.ts';
import { fixFile } from '../../server/src/features/actions/fix-file.ts';
import { refactoringsAt } from '../../server/src/features/actions/refactorings/refactorings.ts';
import { complete } from '../../server/src/features/completion/completion.ts';
import { folds } from '../../server/src/features/folding.ts';
import { hover } from '../../server/src/features/hover/hover.ts';
import { inlayHints } from '../../server/src/features/inlay-hints.ts';
import { lenses } from '../../server/src/features/lenses.ts';
import { ruleLinks } from '../../server/src/features/links.ts';
import { definition, highlights, references } from '../../server/src/features/names/definition.ts';
import { rename, renameable } from '../../server/src/features/names/rename.ts';
import { selections } from '../../server/src/features/selection.ts';
import { type SymbolNode, documentSymbols } from '../../server/src/features/symbols.ts';
import { nameTokens } from '../../server/src/features/tokens.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { type SiteText, placeInFile, spanOf } from '../../server/src/site/folder.ts';
import { type Place, fileOf } from '../../server/src/site/item.ts';

type AtAPlace = (checked: Checked, file: SiteText, offset: number) => readonly Place[];
type OfAFile = (checked: Checked, file: SiteText) => readonly Place[];

export const AT_A_PLACE: Readonly<Record<string, AtAPlace>> = {
  'hover': (checked, file, offset) => places(hover(checked, file, offset)),
  'completion': (checked, file, offset) => places(complete(checked, file, offset, { schemaFeatures: true })),
  'definition': (checked, file, offset) => {
    const found = definition(checked, file, offset);
    return found === undefined ? [] : [found.from, ...found.to];
  },
  'references': (checked, file, offset) => references(checked, file, offset, true),
  'highlights': (checked, file, offset) => highlights(checked, file, offset).map(({ at }) => at),
  'what can be renamed': (checked, file, offset) => {
    const found = renameable(checked, file, offset);
    return 'at' in found ? [found.at] : [];
  },
  'rename': (checked, file, offset) => {
    const found = rename(checked, file, offset, 'renamed-2');
    return 'edits' in found ? found.edits.map(({ at }) => at) : [];
  },
  'refactorings': (checked, file, offset) =>
    refactoringsAt({ checked, file, offset }).flatMap(({ change }) => change().edits.map(({ at }) => at)),
  'selection': (_checked, file, offset) => selections(file, offset).map((span) => placeInFile(file, span)),
};

export const OF_A_FILE: Readonly<Record<string, OfAFile>> = {
  'symbols': (_checked, file) => symbolPlaces(file, documentSymbols(file)),
  'folding': (_checked, file) => {
    folds(file);
    return [];
  },
  'inlay hints': (checked, file) =>
    inlayHints(checked, file, 0, file.text.length, {
      streams: true,
      cables: true,
      cablesFrom: 0,
      volumes: true,
      ranges: true,
    }).map(({ at }) => at),
  'lenses': (checked, file) => lenses(checked, file).map(({ at }) => at),
  'tokens': (checked, file) => nameTokens(checked, file).map(({ at }) => at),
  'links': (_checked, file) => ruleLinks(file).map(({ at }) => at),
  'safe fixes': (checked, file) => fixFile(checked, file, 'safe').map(({ at }) => at),
  'acceptance': (checked, file) =>
    checked.diagnostics
      .filter(({ at }) => fileOf(at).uri === file.uri)
      .slice(0, 3)
      .flatMap((diagnostic) => acceptance(checked, file, diagnostic)?.edit.at ?? []),
};

function places(found: { readonly at: Place } | undefined): readonly Place[] {
  return found === undefined ? [] : [found.at];
}

/** An editor refuses the whole outline where a name is not inside of what it names. */
function symbolPlaces(file: SiteText, nodes: readonly SymbolNode[]): Place[] {
  return nodes.flatMap(({ name, whole, at, children }) => {
    const [outer, inner] = [spanOf(file, whole), spanOf(file, at)];
    assert.ok(
      outer.start <= inner.start && inner.end <= outer.end,
      `the symbol ${name} is at ${inner.start}-${inner.end}, not in ${outer.start}-${outer.end}`,
    );
    return [whole, at, ...symbolPlaces(file, children)];
  });
}
