// What is wrong with a picture as something to look at: boxes over each other, lines through boxes, words out of them.
import type { Area, Picture, Stretch } from './picture.ts';

/** A picture's faults, in words; none where it can be read. */
export function faults({ boxes, words, stretches }: Picture): string[] {
  const found: string[] = [];
  boxes.forEach((one, index) => {
    for (const other of boxes.slice(index + 1))
      if (overlap(one, other) && !holds(one, other) && !holds(other, one))
        found.push(`box ${one.what} over box ${other.what}`);
  });
  // A box in another is a part of it: what runs through the outer one is enough to tell.
  const outer = boxes.filter((box) => !boxes.some((other) => other !== box && holds(other, box)));
  for (const stretch of stretches)
    for (const box of outer) if (runsThrough(stretch, box)) found.push(`line ${stretch.what} through box ${box.what}`);
  for (const word of words) {
    const holding = boxes.filter((box) => overlap(box, word));
    if (holding.length > 0 && !holding.some((box) => holds(box, word)))
      found.push(`words ${word.what} out of their box`);
  }
  words.forEach((one, index) => {
    for (const other of words.slice(index + 1))
      if (overlap(one, other)) found.push(`words ${one.what} over words ${other.what}`);
  });
  return found;
}

/** Lines of a picture that look like one, in words: of those that lead from box to box. */
export function merged({ stretches }: Picture): string[] {
  return stretches.flatMap((one, index) =>
    stretches
      .slice(index + 1)
      .filter((other) => runAlong(one, other))
      .map((other) => `line ${one.what} along line ${other.what}`),
  );
}

/** Rounding to hundredths of a pixel, twice. */
const SLACK = 0.02;

function overlap(a: Area, b: Area): boolean {
  return a.left < b.right - SLACK && b.left < a.right - SLACK && a.top < b.bottom - SLACK && b.top < a.bottom - SLACK;
}

function holds(outer: Area, inner: Area): boolean {
  return (
    outer.left <= inner.left + SLACK &&
    outer.right >= inner.right - SLACK &&
    outer.top <= inner.top + SLACK &&
    outer.bottom >= inner.bottom - SLACK
  );
}

/** Where a line begins in the bend of the one before, bends are taken as corners. */
const BEND = 8 + SLACK;

/** Whether two upright or level stretches share a part; they may cross. */
function runAlong(one: Stretch, other: Stretch): boolean {
  return ([0, 1] as const).some((axis) => {
    const across = 1 - axis;
    if ([one, other].some(({ from, to }) => Math.abs((from[across] ?? 0) - (to[across] ?? 0)) > SLACK)) return false;
    if (Math.abs((one.from[across] ?? 0) - (other.from[across] ?? 0)) > 1) return false;
    const [a, b] = [one, other].map(({ from, to }) => [from[axis], to[axis]].sort((x, y) => x - y));
    return Math.min(a?.[1] ?? 0, b?.[1] ?? 0) - Math.max(a?.[0] ?? 0, b?.[0] ?? 0) > BEND;
  });
}

/** Whether a stretch has a part inside a box; what ends at its edge has none. */
function runsThrough({ from: [x1, y1], to: [x2, y2] }: Stretch, { left, right, top, bottom }: Area): boolean {
  // Clipped by the sides of the box, one after another (Liang and Barsky, 1984, from memory).
  let enters = 0;
  let leaves = 1;
  for (const [step, room] of [
    [x1 - x2, x1 - left],
    [x2 - x1, right - x1],
    [y1 - y2, y1 - top],
    [y2 - y1, bottom - y1],
  ] as const) {
    if (step === 0 && room <= SLACK) return false;
    const at = room / step;
    if (step < 0) enters = Math.max(enters, at);
    else if (step > 0) leaves = Math.min(leaves, at);
  }
  return (leaves - enters) * Math.hypot(x2 - x1, y2 - y1) > 10 * SLACK;
}
