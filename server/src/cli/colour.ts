/** Colour for a terminal; a file or another program gets plain text. */

import { randomUUID } from 'node:crypto';
import { isatty } from 'node:tty';
import pc from 'picocolors';
import { visibleLines } from '../text/visible.ts';

const { NO_COLOR: none, FORCE_COLOR: forced, TERM: terminal } = process.env;

/** NO_COLOR as defined by https://no-color.org; FORCE_COLOR is for a pager or a log that shows colour. */
const wanted = !none && (forced ? forced !== '0' : isatty(1) && terminal !== 'dumb');

// picocolors' own choice would also colour where CI is set, and redirected output on Windows.
const colours = pc.createColors(wanted);

/** Stands for the escape of a colour until it is printed; no text from a file can contain it. */
export const OWN_ESCAPE = `\u001b${randomUUID()}`;

function marked(coloured: (text: string) => string): (text: string) => string {
  return (text) => coloured(visibleLines(text)).replaceAll('\u001b', OWN_ESCAPE);
}

export const colour = {
  red: marked(colours.red),
  yellow: marked(colours.yellow),
  blue: marked(colours.blue),
  dim: marked(colours.dim),
  bold: marked(colours.bold),
};
