/**
 * Binary search: the least whole number from `low` up to but not including `high` for which `holds` is true, or `high`.
 * Once it is true, it must stay true for all higher numbers.
 */
export function leastWhere(low: number, high: number, holds: (at: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
