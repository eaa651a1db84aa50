/** How much room text takes, and how it is made to fit. */

import { visible } from '../text/visible.ts';
import type { Look, Words } from './drawing.ts';

/** Nothing in a picture is smaller, px. */
export const SMALLEST = 11;

/** The width assumed for a character, by font size: about that of a digit, so that most texts need less. */
const WIDTH = 0.62;
const STRONG = 0.7;

/**
 * Cells of the letters that are wider or narrower, by the advances of DejaVu Sans (version 2.37), the widest of the
 * usual system fonts; strong letters are to these as the cells are.
 */
const CELLS: ReadonlyMap<string, number> = new Map(
  [
    { cells: 0.71, letters: " !'(),-./:;I[\\]`fijlrt|·ıłІі" },
    { cells: 1.28, letters: '&ABCDGHKNOQRUVXZÐØĐΘΠΦΨΩАБВДИКЛНОПСХЦЧЭЯмы' },
    { cells: 1.66, letters: '#%+<=>@MW^m~w©¬®±¼½¾Ææ×÷œĦωМФЫжфшщю—…←↑→↓−≤≥' },
    { cells: 2, letters: 'ŒЖШЩЮ' },
  ].flatMap(({ cells, letters }) => [...letters].map((letter): [string, number] => [letter, cells])),
);

/** How wide a text is, px; hardly any text of this size is wider. */
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

/**
 * Cells that a text takes: one of each character, two of a wide one, as in a terminal; more where its letters are wider
 * than that all together.
 */
function cellsOf(text: string): number {
  const characters = charactersOf(text);
  let count = 0;
  let letters = 0;
  for (const character of characters) {
    const cells = cellsOfOne(character);
    count += cells;
    letters += cells === 1 ? cellsOfLetter(character) : cells;
  }
  return Math.max(count, letters);
}

function cellsOfOne(character: string): number {
  return !PLAIN.test(character) && WIDE.test(character) ? 2 : 1;
}

/** A letter with marks is as wide as without. */
function cellsOfLetter(character: string): number {
  return CELLS.get(character) ?? CELLS.get(character.normalize('NFD').charAt(0)) ?? 1;
}

/** The text, or its beginning and end around an ellipsis where it is wider than `maxWidth`. */
export function shortened(text: string, maxWidth: number, size: number, strong = false): string {
  const room = Math.max(1, maxWidth / ((strong ? STRONG : WIDTH) * size));
  if (cellsOf(text) <= room) return text;
  const characters = charactersOf(text);
  for (let cells = Math.floor(room) - 1; cells > 0; cells--) {
    const head = taken(characters, Math.ceil(cells / 2));
    const tail = taken(characters.toReversed(), Math.floor(cells / 2));
    const shown = `${head.join('')}…${tail.toReversed().join('')}`;
    if (cellsOf(shown) <= room) return shown;
  }
  return '…';
}

/** As many of the first ones as have room. */
function taken(characters: readonly string[], cells: number): string[] {
  let left = cells;
  const end = characters.findIndex((character) => (left -= cellsOfOne(character)) < 0);
  return characters.slice(0, end === -1 ? undefined : end);
}

/** Text at a point; `maxWidth` is the room that it has, in pixels. */
export function words(
  text: string,
  x: number,
  y: number,
  given: Partial<Pick<Words, 'look' | 'anchor' | 'size' | 'strong' | 'maxWidth'>> = {},
): Words {
  const look: Look = 'plain';
  return { mark: 'words', text: visible(text, 1000), x, y, look, anchor: 'start', size: 12, ...given };
}

/** A space at which a line may break: not one between a figure and its unit. */
const BREAK = / (?<!\d )| (?=\S{5})/;

/** The text in lines no wider than `maxWidth`, broken at its spaces; a word that is wider alone is left to be shortened. */
export function wrapped(text: string, maxWidth: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of visible(text, 1000).split(BREAK)) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= maxWidth) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
