/** Colour for a terminal; a file or another program gets plain text. */

import { isatty } from 'node:tty';
import pc from 'picocolors';

const { NO_COLOR: none, FORCE_COLOR: forced, TERM: terminal } = process.env;

/** As https://no-color.org has it; FORCE_COLOR is for a pager that shows colour, or a log that does. */
const wanted = !none && (forced ? forced !== '0' : isatty(1) && terminal !== 'dumb');

// picocolors by itself also colours where CI is set, and what a redirection on Windows writes.
export const colour = pc.createColors(wanted);
