/**
 * Places boxes and the lines between them, as a tree from left to right. Each column holds the boxes of one depth; the
 * children of a box are to its right, from its top down. Lines run in the gutters between columns and in lanes between
 * boxes, so that none crosses a box. Many children without children of their own take several columns. Where the screen
 * has no room for another column, the children of the last one begin again at the left, below everything else.
 *
 * All steps place into the same columns, lanes and gutters, so they are in one file.
 */

import type { Point } from './drawing.ts';

/** A box to be placed. */
export interface Standing {
  readonly width: number;
  readonly height: number;
  /** Pixels below its top: where the line from its parent ends. */
  readonly entry: number;
  readonly children: readonly Hanging[];
}

export interface Hanging {
  readonly box: Standing;
  /** Pixels below the top of its parent: where the line to it begins. */
  readonly exit: number;
}

/** A line beside the tree. */
export interface Crossing {
  readonly from: { readonly box: Standing; readonly at: number };
  readonly to: { readonly box: Standing; readonly at: number };
}

export interface Arrangement {
  readonly places: ReadonlyMap<Standing, Point & { readonly width: number }>;
  /** The line to each box from its parent. */
  readonly lines: ReadonlyMap<Standing, readonly Point[]>;
  /** In the order of the crossings. */
  readonly crossings: readonly (readonly Point[])[];
  readonly width: number;
  readonly height: number;
}

const GAP = 24;
/** Between lines that run side by side; less where there are so many that their gutter would get wider than this. */
const TRACK = 10;
const WIDEST = 300;
const NARROWEST = 2;
const MARGIN = 16;

/** A picture as high as this is still seen whole. */
const TALL = 1000;
/** A picture that is wider is not seen at once. */
const WIDE = 1280;
/** Of columns that may have room in that, and of those that a picture has whatever its width. */
const MOST = 6;
const FEWEST = 2;

export function arranged(roots: readonly Standing[], crossings: readonly Crossing[]): Arrangement {
  let deepest = MOST;
  let best = new Arranging(roots, crossings, { deepest, columns: 1 });
  while (best.width > WIDE && deepest > FEWEST)
    best = new Arranging(roots, crossings, { deepest: --deepest, columns: 1 });
  // As few columns as keep it in sight; never more than it is worth.
  for (let columns = 2; columns < deepest && best.height > TALL && best.height > best.width; columns++) {
    const next = new Arranging(roots, crossings, { deepest, columns });
    if (next.height < best.height && next.width <= WIDE) best = next;
  }
  return best.arrangement();
}

/** A box in its column. */
interface Spot {
  readonly column: number;
  readonly y: number;
  /** The lane of its line, for a box beyond the first column of its siblings. */
  readonly lane: number | undefined;
}

/** The children of a box of the last column, which begin again at the left. */
interface Carried {
  readonly from: Standing;
  readonly hanging: Hanging;
  /** Above it: where its line comes back. */
  readonly lane: number;
}

interface Limits {
  /** Columns that there are. */
  readonly deepest: number;
  /** For boxes without others behind them that hang on one. */
  readonly columns: number;
}

class Arranging {
  readonly height: number;
  readonly width: number;
  private readonly spots = new Map<Standing, Spot>();
  private readonly columnWidths: number[] = [];
  /** By gutter, which is right of the column of its number: lines of the tree side by side, and others. */
  private readonly tracks: number[] = [];
  private readonly extra: number[] = [];
  /** Of the others, by gutter, how many have their track. */
  private readonly used: number[] = [];
  private readonly limits: Limits;
  private readonly crossings: readonly Crossing[];
  private readonly roots: readonly Standing[];
  private readonly carried: Carried[] = [];
  private readonly waiting: Omit<Carried, 'lane'>[] = [];
  private readonly bottom: number;

  constructor(roots: readonly Standing[], crossings: readonly Crossing[], limits: Limits) {
    this.roots = roots;
    this.crossings = crossings;
    this.limits = limits;
    let y = MARGIN;
    for (const root of roots) y = this.place(root, 0, y, undefined) + GAP;
    // In the order in which they came to wait; more come while these are placed.
    for (let next = 0; next < this.waiting.length;) {
      const row = this.rowFrom(next);
      next += row.length;
      y = this.placeCarried(row, y) + GAP;
    }
    this.bottom = y - GAP;
    if (this.carried.length > 0) this.extra[limits.deepest - 1] = this.carried.length;
    let lanes = 0;
    for (const { from, to } of crossings) {
      const [left, right] = this.inOrder(from.box, to.box);
      this.extra[left] = (this.extra[left] ?? 0) + 1;
      if (right > left + 1) {
        this.extra[right - 1] = (this.extra[right - 1] ?? 0) + 1;
        lanes++;
      }
    }
    this.height = this.bottom + (lanes === 0 ? 0 : GAP + lanes * TRACK) + MARGIN;
    this.width = this.left(this.columnWidths.length) + MARGIN;
  }

  arrangement(): Arrangement {
    const places = new Map<Standing, Point & { width: number }>();
    for (const [box, { column, y }] of this.spots)
      places.set(box, { x: this.left(column), y, width: this.columnWidths[column] ?? box.width });
    const lines = new Map<Standing, readonly Point[]>();
    for (const root of this.roots) this.lead(root, lines);
    for (const one of this.carried) {
      lines.set(one.hanging.box, this.back(one));
      this.lead(one.hanging.box, lines);
    }
    return { places, lines, crossings: this.crossed(), width: this.width, height: this.height };
  }

  /** @returns the bottom of its children */
  private place(box: Standing, column: number, y: number, lane: number | undefined): number {
    this.spots.set(box, { column, y, lane });
    this.columnWidths[column] = Math.max(this.columnWidths[column] ?? 0, box.width);
    const room = this.limits.deepest - 1 - column;
    if (room === 0) {
      for (const hanging of box.children) this.waiting.push({ from: box, hanging });
      return y + box.height;
    }
    this.tracks[column] = Math.max(this.tracks[column] ?? 0, box.children.length);
    let end = y + box.height;
    let next = y;
    const put = (child: Standing): void => {
      const after = this.place(child, column + 1, next, undefined);
      end = Math.max(end, after);
      next = after + GAP;
    };
    const leaves = box.children.filter(({ box: child }) => child.children.length === 0);
    const columns = Math.min(this.limits.columns, room);
    if (columns === 1 || leaves.length < 3) {
      for (const { box: child } of box.children) put(child);
      return end;
    }
    for (const { box: child } of box.children) if (child.children.length > 0) put(child);
    for (let index = 0; index < leaves.length; index += columns) {
      const row = leaves.slice(index, index + columns);
      // Lanes of those beyond the first column run above the row.
      const top = next + (row.length - 1) * TRACK;
      let rowEnd = top;
      row.forEach(({ box: child }, at) => {
        const after = this.place(child, column + 1 + at, top, at === 0 ? undefined : top - GAP / 2 - (at - 1) * TRACK);
        if (at > 0) this.tracks[column + at] = Math.max(this.tracks[column + at] ?? 0, 1);
        rowEnd = Math.max(rowEnd, after);
      });
      end = Math.max(end, rowEnd);
      next = rowEnd + GAP;
    }
    return end;
  }

  /** The next boxes to place side by side: more than one only where they have no children. */
  private rowFrom(first: number): readonly Omit<Carried, 'lane'>[] {
    const most = this.waiting.slice(first, first + this.limits.deepest);
    const end = most.findIndex(({ hanging: { box } }) => box.children.length > 0);
    return most.slice(0, end === -1 ? undefined : Math.max(1, end));
  }

  /** Their lanes run above the row, that of the first one above the others. @returns where the row ends */
  private placeCarried(row: readonly Omit<Carried, 'lane'>[], y: number): number {
    const top = y + (row.length - 1) * TRACK + GAP / 2;
    const ends = row.map((one, column) => {
      this.carried.push({ ...one, lane: y + column * TRACK });
      if (column > 0) this.tracks[column - 1] = Math.max(this.tracks[column - 1] ?? 0, 1);
      return this.place(one.hanging.box, column, top, undefined);
    });
    return Math.max(...ends);
  }

  private spot(box: Standing): Spot {
    const spot = this.spots.get(box);
    if (spot === undefined) throw new Error('a line of a box that hangs nowhere');
    return spot;
  }

  private inOrder(one: Standing, other: Standing): [number, number] {
    const [a, b] = [this.spot(one).column, this.spot(other).column];
    return a <= b ? [a, b] : [b, a];
  }

  private lineCount(gutter: number): number {
    return (this.tracks[gutter] ?? 0) + (this.extra[gutter] ?? 0);
  }

  private step(gutter: number): number {
    return Math.max(NARROWEST, Math.min(TRACK, WIDEST / Math.max(1, this.lineCount(gutter))));
  }

  /** How wide a gutter is; none where no line runs in it. */
  private gutter(gutter: number): number {
    const count = this.lineCount(gutter);
    return count === 0 ? 0 : 2 * GAP + (count - 1) * this.step(gutter);
  }

  /** Of a column; of the one after the last, the edge of the picture. */
  private left(column: number): number {
    let x = MARGIN + (this.carried.length === 0 ? 0 : GAP);
    for (let at = 0; at < column; at++) x += (this.columnWidths[at] ?? 0) + this.gutter(at);
    return x;
  }

  private rightOf(box: Standing): number {
    const { column } = this.spot(box);
    return this.left(column) + (this.columnWidths[column] ?? 0);
  }

  /** Where a line of a gutter runs; those of the tree first. */
  private track(gutter: number, index: number): number {
    return this.left(gutter) + (this.columnWidths[gutter] ?? 0) + GAP + index * this.step(gutter);
  }

  private lead(box: Standing, lines: Map<Standing, readonly Point[]>): void {
    const { column, y } = this.spot(box);
    if (column === this.limits.deepest - 1) return;
    const start = this.rightOf(box);
    const aimOf = (child: Standing): number => {
      const spot = this.spot(child);
      return spot.lane ?? spot.y + child.entry;
    };
    const leadsUp = ({ box: child, exit }: Hanging): boolean => aimOf(child) < y + exit;
    // Those that lead up take tracks further right the later they begin, and those that lead down further left.
    const up = box.children.filter(leadsUp);
    const byTrack = [...up, ...box.children.filter((one) => !leadsUp(one)).toReversed()];
    const tracks = new Map(byTrack.map((hanging, index) => [hanging, this.track(column, index)]));
    for (const hanging of box.children) {
      const { box: child, exit } = hanging;
      const spot = this.spot(child);
      const from = { x: start, y: y + exit };
      const end = { x: this.left(spot.column), y: spot.y + child.entry };
      const aim = aimOf(child);
      const x = tracks.get(hanging) ?? start;
      const down = [from, { x, y: from.y }, { x, y: aim }];
      if (spot.lane === undefined) lines.set(child, from.y === end.y ? [from, end] : [...down, end]);
      else {
        const turn = this.track(spot.column - 1, 0);
        lines.set(child, [...down, { x: turn, y: aim }, { x: turn, y: end.y }, end]);
      }
      this.lead(child, lines);
    }
  }

  /** The next free track of a gutter beside those of the tree. */
  private beside(gutter: number): number {
    const index = this.used[gutter] ?? 0;
    this.used[gutter] = index + 1;
    return this.track(gutter, (this.tracks[gutter] ?? 0) + index);
  }

  /** Down beside the last column, back to the left above the box, and into it. */
  private back({ from, hanging: { box, exit }, lane }: Carried): readonly Point[] {
    const start = { x: this.rightOf(from), y: this.spot(from).y + exit };
    const { column, y } = this.spot(box);
    const end = { x: this.left(column), y: y + box.entry };
    const down = this.beside(this.limits.deepest - 1);
    // Beside a row nothing else takes the first track of its gutters.
    const turn = column === 0 ? MARGIN + GAP / 2 : this.track(column - 1, 0);
    return [start, { x: down, y: start.y }, { x: down, y: lane }, { x: turn, y: lane }, { x: turn, y: end.y }, end];
  }

  private crossed(): Point[][] {
    let lane = this.bottom + GAP;
    return this.crossings.map(({ from, to }) => {
      const isOrdered = this.spot(from.box).column <= this.spot(to.box).column;
      const [first, second] = isOrdered ? [from, to] : [to, from];
      const [left, right] = this.inOrder(from.box, to.box);
      const start = { x: this.rightOf(first.box), y: this.spot(first.box).y + first.at };
      const endY = this.spot(second.box).y + second.at;
      const x = this.beside(left);
      if (left === right) {
        const end = { x: this.rightOf(second.box), y: endY };
        return [start, { x, y: start.y }, { x, y: endY }, end];
      }
      const end = { x: this.left(right), y: endY };
      if (right === left + 1) return [start, { x, y: start.y }, { x, y: endY }, end];
      const far = this.beside(right - 1);
      const y = lane;
      lane += TRACK;
      return [start, { x, y: start.y }, { x, y }, { x: far, y }, { x: far, y: endY }, end];
    });
  }
}
