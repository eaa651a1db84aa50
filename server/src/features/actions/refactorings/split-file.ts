/** Splits a file of several sections: each section that is not empty goes to the file of its name. */

import { list } from '../../../text/words.ts';
import { lineEdits } from '../line-edits.ts';
import { moveOf, without } from './move-section.ts';
import type { RefactoringCursor, Offered, Refactoring } from './refactoring.ts';
import { sectionAtKey } from './sections.ts';

/** Sections about the site as a whole stay together. */
const STAY = ['site', 'policies', 'lint'];

export const splitFile: Refactoring = ({ checked, file, offset }: RefactoringCursor): Offered[] => {
  const sections = sectionAtKey(file, offset)?.sections ?? [];
  const own = file.uri.slice(file.uri.lastIndexOf('/') + 1);
  const stays = sections.filter(
    ({ name, items }) => STAY.includes(name) || items.length === 0 || own === `${name}.site.yaml`,
  );
  // Something must stay in the file: its first section, where no other stays.
  const moved = sections.filter((section) => (stays.length === 0 ? section !== sections[0] : !stays.includes(section)));
  if (moved.length < 2) return [];
  const moves = moved.flatMap((section) => moveOf(checked, file, section) ?? []);
  if (moves.length < moved.length) return [];
  return [
    {
      title: `Split this file: ${list(moved.map(({ name }) => name))} to files of their own`,
      kind: 'rewrite',
      makesFiles: moves.some(({ target }) => target === undefined),
      change: () => ({
        edits: [
          ...lineEdits(file, without(file, sections, moved)),
          ...moves.flatMap(({ target, text }) => (target === undefined ? [] : lineEdits(target, text))),
        ],
        made: new Map(moves.filter(({ target }) => target === undefined).map(({ uri, text }) => [uri, text])),
      }),
    },
  ];
};
