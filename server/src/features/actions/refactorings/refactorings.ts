/** All refactorings that are offered where the cursor stands. */

import { contractPorts } from './contract-ports.ts';
import { expandPorts } from './expand-ports.ts';
import { moveSection } from './move-section.ts';
import { reSend } from './re-send.ts';
import type { RefactoringCursor, Offered, Refactoring } from './refactoring.ts';
import { splitFile } from './split-file.ts';

const refactorings: readonly Refactoring[] = [moveSection, splitFile, expandPorts, contractPorts, reSend];

export function refactoringsAt(cursor: RefactoringCursor): Offered[] {
  return refactorings.flatMap((refactoring) => refactoring(cursor));
}
