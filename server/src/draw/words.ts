/** How much room text takes, and how it is made to fit. */

import { visible } from '../text/visible.ts';
import type { Look, Words } from './drawing.ts';

/** Nothing in a picture is smaller, px. */
export const SMALLEST = 11;

/** What a character is taken to be wide, in its size: about that of a digit, so that most texts need less. */
const WIDTH = 0.62;
const STRONG = 0.7;

/** How wide a text is, px; no text of this size is wider. */
export function widthOf(text: string, size: number, strong = false): number {
  return Math.ceil(cellsOf(text) * (strong ? STRONG : WIDTH) * size);
}

/** Of a text with nothing but these, each character is a cell. */
const PLAIN = /^[\u0020-\u024f]*$/;
/** As wide as they are high, by their script (Unicode 16, UAX #11: wide and full width), and pictographs. */
const WIDE =
  /[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\p{sc=Bopomofo}\p{sc=Yi}\u3000-\u303f\uff01-\uff60\uffe0-\uffe6\p{RI}\u20e3]|\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f/u;
const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** What a reader takes for a character: a letter with its marks, a flag, a family. */
function charactersOf(text: string): string[] {
  return PLAIN.test(text) ? [...text] : Array.from(graphemes.segment(text), ({ segment }) => segment);
}

/** Cells that a text takes: two of a wide character, as in a terminal. */
function cellsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  return charactersOf(text).reduce((sum, character) => sum + cellsOfOne(character), 0);
}

function cellsOfOne(character: string): number {
  return WIDE.test(character) ? 2 : 1;
}

/** The text, or its beginning and end around an ellipsis where it is wider than `most`. */
export function shortened(text: string, most: number, size: number, strong = false): string {
  const room = Math.max(1, Math.floor(most / ((strong ? STRONG : WIDTH) * size)));
  if (cellsOf(text) <= room) return text;
  const characters = charactersOf(text);
  const head = taken(characters, Math.ceil((room - 1) / 2));
  const tail = taken(characters.toReversed(), room - 1 - Math.ceil((room - 1) / 2));
  return `${head.join('')}…${tail.toReversed().join('')}`;
}

/** As many of the first ones as have room. */
function taken(characters: readonly string[], cells: number): string[] {
  let left = cells;
  const end = characters.findIndex((character) => (left -= cellsOfOne(character)) < 0);
  return characters.slice(0, end === -1 ? undefined : end);
}

/** Text at a point; `most` is the room that it has. */
export function words(
  text: string,
  x: number,
  y: number,
  given: Partial<Pick<Words, 'look' | 'anchor' | 'size' | 'strong' | 'most'>> = {},
): Words {
  const look: Look = 'plain';
  return { mark: 'words', text: visible(text, 1000), x, y, look, anchor: 'start', size: 12, ...given };
}

/** A space that does not stand between a figure and its unit. */
const BREAK = / (?<!\d )| (?=\S{5})/;

/** The text in lines no wider than `most`, broken at its spaces; a word that is wider alone is left to be shortened. */
export function wrapped(text: string, most: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of visible(text, 1000).split(BREAK)) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
