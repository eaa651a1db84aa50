/** How much room text takes, and how it is made to fit. */

import { visible } from '../text/visible.ts';
import type { Look, Words } from './drawing.ts';

/** Nothing in a picture is smaller, px. */
export const SMALLEST = 11;

/** What a character is taken to be wide, in its size: about that of a digit, so that most texts need less. */
const WIDTH = 0.62;
const STRONG = 0.7;

export function widthOf(text: string, size: number, strong = false): number {
  return Math.ceil([...text].length * (strong ? STRONG : WIDTH) * size);
}

/** The text, or its beginning and end around an ellipsis where it is wider than `most`. */
export function shortened(text: string, most: number, size: number, strong = false): string {
  const characters = [...text];
  const room = Math.max(1, Math.floor(most / ((strong ? STRONG : WIDTH) * size)));
  if (characters.length <= room) return text;
  const head = Math.ceil((room - 1) / 2);
  const tail = room - 1 - head;
  return `${characters.slice(0, head).join('')}…${characters.slice(characters.length - tail).join('')}`;
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

/** The text in lines no wider than `most`, broken at its spaces; a word that is wider alone is left to be shortened. */
export function wrapped(text: string, most: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of visible(text, 1000).split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
