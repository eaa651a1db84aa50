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
