/** What of an item does not fit the schema, as far as it can be told beside a fault in its syntax. */

import type { SyntaxProblem } from '../../text/parse.ts';
import type { Piece } from '../../text/cut.ts';
import { type Item, type Place, contentOf, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import type { ShapeProblem } from '../../site/validate.ts';
import { dataAt } from '../../text/syntax.ts';

/** Whether the syntax of an item has no fault that leaves it half read; a key that stands twice does not. */
export function isSound(item: Item): boolean {
  const faults = faultsOf(item.piece);
  return faults.length === 0 || !faults.some((fault) => isIn(item, fault.start));
}

/** Whether a place is in an item that is half read: whatever looks wrong there may only be half typed. */
export function isHalfRead({ piece, start }: Place): boolean {
  if (faultsOf(piece).length === 0) return false;
  const items = contentOf(piece).items.filter((item) => isIn(item, start));
  return piece.role === 'item' || items.some((item) => !isSound(item));
}

function faultsOf(piece: Piece): readonly SyntaxProblem[] {
  const { problems } = contentOf(piece).tree;
  return problems.length === 0 ? problems : problems.filter(({ code }) => code !== 'duplicate-key');
}

/** An item ends where its text does, or behind its last character where another follows. */
function isIn({ piece, key, node }: Item, offset: number): boolean {
  return piece.role === 'item' || ((key ?? node).start <= offset && offset <= node.end + 1);
}

export interface Misfit<P extends ShapeProblem['problem']> {
  readonly item: Item;
  readonly problem: ShapeProblem & { readonly problem: P };
}

/** All problems of one sort, each place once however often an alias takes it over. */
export function* misfits<P extends ShapeProblem['problem']>(site: Site, sort: P): Iterable<Misfit<P>> {
  let told = new Set<string>();
  let piece: Piece | undefined;
  for (const item of site.faulty) {
    if (item.problems.length === 0) continue;
    if (item.piece !== piece) told = new Set();
    piece = item.piece;
    for (const problem of item.problems) {
      if (!isSort(problem, sort)) continue;
      if (contentOf(piece).tree.anchors.length > 0) {
        const { start, end } = placeOf(item, problem.route);
        const key = `${start}-${end} ${'key' in problem ? problem.key : ''}`;
        if (told.has(key)) continue;
        told.add(key);
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

/** Whether the shape of what stands at the route, or around it, is told as wrong already. */
export function isToldOf({ problems }: Item, route: readonly (string | number)[]): boolean {
  return problems.some(
    ({ problem, route: wrong }) =>
      problem !== 'missing-key' &&
      problem !== 'repeated' &&
      wrong.length <= route.length &&
      wrong.every((step, i) => step === route[i]),
  );
}

/** The first line of what stands at a place: a mark over many lines hides more than it shows. */
export function firstLine(place: Place): Place {
  const newline = place.piece.text.slice(place.start, place.end).search(/[\r\n]/);
  return newline === -1 ? place : { ...place, end: place.start + newline };
}

/** Names by which a finding in the item can be accepted. */
export function aboutItem(item: Item): string[] {
  if (item.name !== '') return [item.name];
  const ends = [dataAt(item.data, ['from']), dataAt(item.data, ['to'])];
  return ends.filter((end) => typeof end === 'string');
}
