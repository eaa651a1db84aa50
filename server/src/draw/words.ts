/** How much room text takes, and how it is made to fit. */

import { visible } from '../text/visible.ts';
import type { Look, Words } from './drawing.ts';

/** Nothing in a picture is smaller, px. */
export const SMALLEST = 11;

/** What a character is taken to be wide, in its size: about that of a digit, so that most texts need less. */
const WIDTH = 0.62;

export function widthOf(text: string, size: number): number {
  return Math.ceil([...text].length * WIDTH * size);
}

/** The text, or its beginning and end around an ellipsis where it is wider than `most`. */
export function shortened(text: string, most: number, size: number): string {
  const characters = [...text];
  const room = Math.max(1, Math.floor(most / (WIDTH * size)));
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
