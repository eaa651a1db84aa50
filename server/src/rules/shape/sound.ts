/** What may be told of an item beside a fault in its syntax: nothing, since what is half typed looks wrong all over. */

import type { SyntaxProblem } from '../../text/parse.ts';
import type { Piece } from '../../text/cut.ts';
import { type Item, type Place, contentOf, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import type { ShapeProblem } from '../../site/validate.ts';

/** The faults of a piece that leave it half read; a key that stands twice does not. */
export function faultsOf(piece: Piece): SyntaxProblem[] {
  const { problems } = contentOf(piece).tree;
  return problems.length === 0 ? [] : problems.filter(({ code }) => code !== 'duplicate-key');
}

export function isSound({ piece, key, node }: Item): boolean {
  const faults = faultsOf(piece);
  if (faults.length === 0) return true;
  if (piece.role === 'item') return false;
  return !faults.some(({ start }) => (key ?? node).start <= start && start <= node.end + 1);
}

export interface Misfit<P extends ShapeProblem['problem']> {
  readonly item: Item;
  readonly problem: ShapeProblem & { readonly problem: P };
}

/** All problems of one sort, each place once however often an alias takes it over. */
export function* misfits<P extends ShapeProblem['problem']>(site: Site, sort: P): Iterable<Misfit<P>> {
  let told = new Set<string>();
  let piece: Piece | undefined;
  for (const item of site.items) {
    if (item.problems.length === 0 || !isSound(item)) continue;
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

function isSort<P extends ShapeProblem['problem']>(problem: ShapeProblem, sort: P): problem is ShapeProblem & { readonly problem: P } {
  return problem.problem === sort;
}

/** Whether the shape of what stands at the route, or around it, is told as wrong already. */
export function isToldOf({ problems }: Item, route: readonly (string | number)[]): boolean {
  return problems.some(({ problem, route: wrong }) =>
    problem !== 'missing-key' && problem !== 'repeated' && wrong.length <= route.length && wrong.every((step, i) => step === route[i]));
}

/** The first line of what stands at a place: a mark over many lines hides more than it shows. */
export function firstLine(place: Place): Place {
  const newline = place.piece.text.slice(place.start, place.end).search(/[\r\n]/);
  return newline === -1 ? place : { ...place, end: place.start + newline };
}

/** Names by which a finding in the item can be accepted. */
export function aboutItem(item: Item): string[] {
  if (item.name !== '') return [item.name];
  const ends = typeof item.data === 'object' && item.data !== null && !Array.isArray(item.data) ? [item.data['from'], item.data['to']] : [];
  return ends.filter((end) => typeof end === 'string');
}
