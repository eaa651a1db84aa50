// Contrast of two colours, as WCAG 2.2 defines it ("contrast ratio" and "relative luminance"; the threshold of sRGB is
// that of IEC 61966-2-1, 0.04045, as the note there has it).
import assert from 'node:assert/strict';

/** Red, green and blue from 0 to 1, of `#rrggbb`, `rgb(…)` or `color(srgb …)`. */
function channels(colour: string): number[] {
  const hex = /^#(..)(..)(..)$/.exec(colour);
  if (hex !== null) return hex.slice(1).map((part) => parseInt(part, 16) / 255);
  const numbers = (colour.match(/[\d.]+/g) ?? []).map(Number);
  assert.ok(numbers.length >= 3, `no colour: ${colour}`);
  return colour.startsWith('color(srgb') ? numbers.slice(0, 3) : numbers.slice(0, 3).map((part) => part / 255);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = channels(colour).map((part) =>
    part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** From 1 to 21. */
export function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  assert.ok(dark !== undefined && light !== undefined);
  return (light + 0.05) / (dark + 0.05);
}
