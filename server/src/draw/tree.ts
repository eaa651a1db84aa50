/**
 * Places a tree: what follows a box is to its right, level with it, and what belongs to it below, indented. Where that
 * gets too wide, all stands below what it follows from.
 */

import type { Point } from './drawing.ts';

/** A box that is to be placed, with what follows from it. */
export interface Branch<T> {
  readonly value: T;
  readonly width: number;
  readonly height: number;
  /** Room for what is written at the line that leads to it. */
  readonly lead: number;
  /** Lines of text there. */
  readonly said: number;
  /** One column to the right, the first level with this one. */
  readonly next: readonly Branch<T>[];
  /** In the same column. */
  readonly below: readonly Branch<T>[];
}

export interface PlacedBranch<T> {
  readonly value: T;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Lines of text at the line that leads to it. */
  readonly said: number;
  readonly next: readonly PlacedBranch<T>[];
  readonly below: readonly PlacedBranch<T>[];
}

export interface Tree<T> {
  readonly roots: readonly PlacedBranch<T>[];
  readonly right: number;
  readonly bottom: number;
  /**
   * What follows a box is below it: the line to it begins at the foot of the box, `INDENT / 2` from its left. What leads
   * on alone is straight below, and has the same left; others are further right.
   */
  readonly isFolded: boolean;
}

/** Between boxes of a column. */
const GAP = 14;

/** Of the corners of lines. The next line down begins that far above the end of the last, where its bend begins. */
export const ROUND = 8;

/** What leads into a box: its line bends here, right of the box before. */
export const BUS = 16;

/** Below the top of a box: where lines lead into it, and out of it. */
export const LEVEL = 14;

/** Of text beside a line. */
const LINE = 15;

/** By how much what belongs to a box is to the right of it. */
export const INDENT = 22;

/**
 * What is added moves only what is below it, and columns to its right where it is the widest of its own.
 *
 * @param most px; a tree that is wider is folded
 */
export function placed<T>(roots: readonly Branch<T>[], left: number, top: number, most = Infinity): Tree<T> {
  const columns = columnsOf(roots, left);
  if (columns.right > most) return folded(roots, left, top);
  let bottom = top;

  /** @returns the box, and where all that follows from it ends */
  const place = (branch: Branch<T>, depth: number, indent: number, y: number): [PlacedBranch<T>, number] => {
    const { value, width, height, said } = branch;
    const stack = (all: readonly Branch<T>[], at: number, by: number, start: number): [PlacedBranch<T>[], number] => {
      let free = start;
      const boxes = all.map((one) => {
        const [box, end] = place(one, at, by, free);
        free = end + GAP;
        return box;
      });
      return [boxes, free - GAP];
    };
    const [next, nextEnd] = stack(branch.next, depth + 1, 0, y);
    const own = Math.max(y + height, nextEnd);
    const [below, end] = stack(branch.below, depth, indent + INDENT, own + GAP);
    const last = Math.max(own, end);
    bottom = Math.max(bottom, last);
    return [{ value, x: (columns.x[depth] ?? left) + indent, y, width, height, said, next, below }, last];
  };

  let free = top;
  const all = roots.map((root) => {
    const [box, end] = place(root, 0, 0, free);
    free = end + 2 * GAP;
    return box;
  });
  return { roots: all, right: columns.right, bottom, isFolded: false };
}

/**
 * Each box below what it follows from, and right of the line that leads to it. Of several that follow, the only one that
 * leads on comes last, so that a chain of any length is no wider than its parts.
 */
function folded<T>(roots: readonly Branch<T>[], left: number, top: number): Tree<T> {
  let [right, free] = [left, top];
  const place = ({ value, width, height, said, ...branch }: Branch<T>, x: number): PlacedBranch<T> => {
    const y = free;
    right = Math.max(right, x + width);
    free = y + height + GAP;
    const lead = Math.max(INDENT / 2, ...branch.next.map((one) => one.lead));
    const leading = branch.next.filter((one) => one.next.length + one.below.length > 0);
    const [straight] = leading.length === 1 ? leading : branch.next.length === 1 ? branch.next : [];
    const aside = branch.next.filter((one) => one !== straight);
    const next = aside.map((one) => place(one, x + INDENT / 2 + lead));
    if (straight !== undefined) {
      free += straight.said * LINE + 8 - GAP;
      right = Math.max(right, x + INDENT / 2 + straight.lead);
      next.push(place(straight, x));
    }
    const below = branch.below.map((one) => place(one, x + INDENT));
    return { value, x, y, width, height, said, next, below };
  };
  const all = roots.map((root) => {
    const box = place(root, left);
    free += GAP;
    return box;
  });
  return { roots: all, right, bottom: free - 2 * GAP, isFolded: true };
}

/** Where each column begins, and where the last one ends. */
function columnsOf<T>(roots: readonly Branch<T>[], left: number): { x: readonly number[]; right: number } {
  const widths: number[] = [];
  const leads: number[] = [];
  const measure = ({ width, lead, next, below }: Branch<T>, depth: number, indent: number): void => {
    widths[depth] = Math.max(widths[depth] ?? 0, indent + width);
    leads[depth] = Math.max(leads[depth] ?? 0, lead);
    for (const one of next) measure(one, depth + 1, 0);
    for (const one of below) measure(one, depth, indent + INDENT);
  };
  for (const root of roots) measure(root, 0, 0);
  const x: number[] = [];
  let right = left;
  widths.forEach((width, depth) => {
    right += leads[depth] ?? 0;
    x[depth] = right;
    right += width;
  });
  return { x, right };
}

/** The line to a box that follows another, and where what is written at it stands. */
export interface Lead<T> {
  readonly to: PlacedBranch<T>;
  readonly points: readonly Point[];
  readonly left: number;
  readonly room: number;
  /** Base line of the first line of text: over a level line, or beside an upright one. */
  readonly first: number;
  /** Of the second one, which others follow. */
  readonly second: number;
}

/** Of each box that follows, and where the line to what is below begins. */
export function leadsOf<T>(box: PlacedBranch<T>, isFolded: boolean): { leads: Lead<T>[]; foot: number } {
  const foot = box.y + box.height;
  const start = { x: box.x + box.width, y: box.y + LEVEL };
  const bend = isFolded ? box.x + INDENT / 2 : start.x + BUS;
  const left = bend + 6;
  let from = isFolded ? foot : start.y;
  const leads = box.next.map((to): Lead<T> => {
    const end = { x: to.x, y: to.y + LEVEL };
    if (isFolded && to.x === box.x) {
      const top = from;
      from = to.y;
      const first = to.y - to.said * LINE + 7;
      return {
        to,
        points: [
          { x: bend, y: top },
          { x: bend, y: to.y },
        ],
        left,
        room: Infinity,
        first,
        second: first + LINE,
      };
    }
    const points = end.y === start.y ? [start, end] : [{ x: bend, y: from }, { x: bend, y: end.y }, end];
    from = end.y === start.y ? end.y : end.y - ROUND;
    return { to, points, left, room: to.x - 10 - left, first: end.y - 5, second: end.y + 14 };
  });
  return { leads, foot: isFolded && box.next.length > 0 ? from : foot };
}
