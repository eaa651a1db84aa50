/** Writes a range of ports as an entry for each, with its comments. */

import { portCopies } from '../../../site/port-copies.ts';
import { portEntriesAt } from '../../../site/port-entries.ts';
import type { RefactoringCursor, Offered, Refactoring } from './refactoring.ts';

/** The most ports that are written out. */
const MAX_PORTS = 256;

export const expandPorts: Refactoring = ({ file, offset }: RefactoringCursor): Offered[] => {
  const found = portEntriesAt(file, offset);
  if (found?.at.numbers === undefined) return [];
  const { item, mapping, at } = found;
  const { first, last } = found.at.numbers;
  const copies = portCopies(item, at, mapping.flow);
  if (first === last || last - first >= MAX_PORTS || copies === undefined) return [];
  const each = Array.from({ length: last - first + 1 }, (_, above) => copies.copy(first + above, first + above));
  return [
    {
      title: `Write ${first}-${last} as an entry for each port`,
      kind: 'rewrite',
      makesFiles: false,
      change: () => ({
        edits: [{ at: { piece: item.piece, start: at.start, end: at.end }, text: copies.joined(each) }],
        made: new Map(),
      }),
    },
  ];
};
