/**
 * All that is printed goes through here. Names of files and text of a site may hold what a terminal, or the log of a CI
 * service, acts on: it is made visible, whatever command prints it. Colours of our own stay.
 */

import { constants } from 'node:os';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { visibleLines } from '../text/visible.ts';
import { OWN_ESCAPE } from './colour.ts';

/** On standard output: what was asked for. */
export function print(text: string): void {
  process.stdout.write(shown(text));
}

/** On standard error: what else there is to say. */
export function tell(text: string): void {
  process.stderr.write(shown(text));
}

/** On standard error, over the line that is there; only for a terminal. */
export function tellOver(line: string): void {
  process.stderr.write(`\r\u001b[K${shown(line)}`);
}

function shown(text: string): string {
  return text.split(OWN_ESCAPE).map(visibleLines).join('\u001b');
}

let done = '';
let end = (status: number): void => process.exit(status);

/** Has it told, as a sentence, where standard output turns out to be closed: whoever runs what writes has to know. */
export function isDone(sentence: string): void {
  done = sentence;
}

/** Has what goes on until it is ended be ended in its own way where nothing can be printed any more. */
export function endBy(orderly: () => void): void {
  end = (status) => {
    process.exitCode = status;
    orderly();
  };
}

/** As if SIGPIPE had ended it (POSIX, 2.8.2 of Shell Command Language). */
const BY_SIGPIPE = 128 + constants.signals.SIGPIPE;

/** Called once: has the process end in good order, and without a stack, where nothing can be printed any more. */
export function endWhereClosed(): void {
  process.stdout.on('error', (error) => {
    const code = codeOf(error);
    if (code === undefined) throw error;
    // Who reads has had enough, as `head` has: nobody is left to be told.
    if (code === 'EPIPE' && done === '') return end(BY_SIGPIPE);
    tell(`plumbline: Standard output cannot be written: ${reasonOf(code)}. ${done}`.trimEnd() + '\n');
    end(2);
  });
  process.stderr.on('error', (error) => {
    if (codeOf(error) === undefined) throw error;
    end(2);
  });
}
