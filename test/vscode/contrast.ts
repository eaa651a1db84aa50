// The contrast of text with its background, in a rendered page.
import type { Locator } from 'playwright-core';

/** The least contrast of text, and that of large text: WCAG 2.2, success criterion 1.4.3. */
const LEAST = 4.5;
const LEAST_LARGE = 3;
/** Pixels from which text is large: 18 points. */
const LARGE = 24;

interface DrawnText {
  readonly words: string;
  readonly colour: string;
  readonly size: number;
  /** The backgrounds of the element and all around it, from the inside out. */
  readonly grounds: readonly string[];
}

/** Texts of a page with too little contrast, each with the ratio. */
export async function faintTexts(body: Locator): Promise<string[]> {
  const faint = (await textsIn(body)).flatMap(({ words, colour, size, grounds }) => {
    const ground = [...grounds].reverse().reduce<Colour>((below, own) => over(parse(own), below), WHITE);
    const ratio = contrast(over(parse(colour), ground), ground);
    return ratio < (size >= LARGE ? LEAST_LARGE : LEAST) ? [`${ratio.toFixed(2)} ${words}`] : [];
  });
  return [...new Set(faint)];
}

function textsIn(body: Locator): Promise<DrawnText[]> {
  return body.evaluate((root) => {
    const view = root.ownerDocument.defaultView;
    const found: DrawnText[] = [];
    if (view === null) return found;
    const texts = root.ownerDocument.createTreeWalker(root, 4 /* text nodes */);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const words = node.data.trim();
      const holder = node.parentElement;
      if (words === '' || holder === null || holder.getClientRects().length === 0) continue;
      const { color: colour, fontSize, visibility } = view.getComputedStyle(holder);
      if (visibility === 'hidden') continue;
      const grounds: string[] = [];
      for (let one = holder; one !== null; one = one.parentElement)
        grounds.push(view.getComputedStyle(one).backgroundColor);
      found.push({ words: words.slice(0, 40), colour, size: parseFloat(fontSize), grounds });
    }
    return found;
  });
}

/** 0 to 255, and how much of it covers what is below, 0 to 1. */
interface Colour {
  readonly parts: readonly number[];
  readonly cover: number;
}

const WHITE: Colour = { parts: [255, 255, 255], cover: 1 };

/** As a browser computes it: `rgb(…)`, `rgba(…)` or `color(srgb …)`. */
function parse(text: string): Colour {
  const [red = 0, green = 0, blue = 0, cover = 1] = (text.match(/[\d.]+/g) ?? []).map(Number);
  const scale = text.startsWith('color(srgb') ? 255 : 1;
  return { parts: [red * scale, green * scale, blue * scale], cover };
}

function over({ parts, cover }: Colour, below: Colour): Colour {
  return { parts: parts.map((part, index) => part * cover + (below.parts[index] ?? 0) * (1 - cover)), cover: 1 };
}

/** WCAG 2.2, contrast ratio. */
function contrast(one: Colour, other: Colour): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** WCAG 2.2, relative luminance. */
function luminance({ parts }: Colour): number {
  const [red = 0, green = 0, blue = 0] = parts
    .map((part) => part / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
