/** The parts of a site that do not fit the schema. */

import { perObject } from '../memo.ts';
import type { Piece } from '../text/cut.ts';
import type { KeyPath } from '../text/syntax.ts';
import { type Item, contentOf, placeOf } from './item.ts';
import type { Site } from './model.ts';
import type { ShapeProblem } from './validate.ts';

export interface ItemProblem<P extends ShapeProblem['problem']> {
  readonly item: Item;
  readonly problem: ShapeProblem & { readonly problem: P };
}

/** All problems of one sort, each place once however often an alias repeats it. */
export function* shapeProblems<P extends ShapeProblem['problem']>(site: Site, sort: P): Iterable<ItemProblem<P>> {
  let seen = new Set<string>();
  let piece: Piece | undefined;
  for (const item of site.faulty) {
    if (item.problems.length === 0) continue;
    if (item.piece !== piece) seen = new Set();
    piece = item.piece;
    for (const problem of item.problems) {
      if (!isSort(problem, sort)) continue;
      if (contentOf(piece).tree.anchors.length > 0) {
        const { start, end } = placeOf(item, problem.keyPath);
        const key = `${start}-${end} ${'key' in problem ? problem.key : ''}`;
        if (seen.has(key)) continue;
        seen.add(key);
      }
      yield { item, problem };
    }
  }
}

function isSort<P extends ShapeProblem['problem']>(
  problem: ShapeProblem,
  sort: P,
): problem is ShapeProblem & { readonly problem: P } {
  return problem.problem === sort;
}

/** Whether the value at the key path, or one around it, has a shape problem already. */
export function hasShapeProblem({ problems }: Item, keyPath: KeyPath): boolean {
  return problems.length > 0 && isWithin(misshapen(problems), keyPath);
}

const misshapen = perObject((problems: readonly ShapeProblem[]) => keyPathsOf(problems));

/** Key paths as a tree of their steps: an item may have thousands of problems, and each of its values is looked up. */
interface Steps {
  isEnd: boolean;
  readonly next: Map<KeyPath[number], Steps>;
}

/** The key paths of values that do not fit; a missing key or a repeated element does not make a value unfit. */
export function keyPathsOf(problems: readonly ShapeProblem[]): Steps {
  const root: Steps = { isEnd: false, next: new Map() };
  for (const { problem, keyPath } of problems) {
    if (problem === 'missing-key' || problem === 'repeated') continue;
    let at = root;
    for (const step of keyPath) {
      const next: Steps = at.next.get(step) ?? { isEnd: false, next: new Map() };
      at.next.set(step, next);
      at = next;
    }
    at.isEnd = true;
  }
  return root;
}

/** Whether one of the key paths leads to the same value as `keyPath`, or to one around it. */
export function isWithin(keyPaths: Steps, keyPath: KeyPath): boolean {
  let at: Steps | undefined = keyPaths;
  for (const step of keyPath) {
    if (at === undefined || at.isEnd) break;
    at = at.next.get(step);
  }
  return at?.isEnd ?? false;
}
