/** Colour for a terminal; a file or another program gets plain text. */

import { randomUUID } from 'node:crypto';
import { isatty } from 'node:tty';
import pc from 'picocolors';
import { visibleLines } from '../text/visible.ts';

const { NO_COLOR: none, FORCE_COLOR: forced, TERM: terminal } = process.env;

/** As https://no-color.org has it; FORCE_COLOR is for a pager that shows colour, or a log that does. */
const wanted = !none && (forced ? forced !== '0' : isatty(1) && terminal !== 'dumb');

// picocolors by itself also colours where CI is set, and what a redirection on Windows writes.
const colours = pc.createColors(wanted);

/** Stands for the escape in front of a colour until it is printed: no text that was read can have it. */
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
