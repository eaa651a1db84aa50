/**
 * All output goes through here. Names of files and text of a site may contain control characters that a terminal, or
 * the log of a CI service, acts on: they are made visible. Our own colours stay.
 */

import { constants } from 'node:os';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { visibleLines } from '../text/visible.ts';
import { OWN_ESCAPE } from './colour.ts';

/** Prints a result, on standard output. */
export function print(text: string): void {
  process.stdout.write(shown(text));
}

/** Prints a message, on standard error. */
export function printMessage(text: string): void {
  process.stderr.write(shown(text));
}

/** Replaces the current line on standard error; only for a terminal. */
export function replaceLine(line: string): void {
  process.stderr.write(`\r\u001b[K${shown(line)}`);
}

function shown(text: string): string {
  return text.split(OWN_ESCAPE).map(visibleLines).join('\u001b');
}

let done = '';
let end = (status: number): void => process.exit(status);

/** Sets a sentence that says what was already written, for the message where standard output cannot be written. */
export function sayAtFailure(sentence: string): void {
  done = sentence;
}

/** Sets how a command that runs until it is stopped ends when nothing can be printed any more. */
export function endOrderlyBy(orderly: () => void): void {
  end = (status) => {
    process.exitCode = status;
    orderly();
  };
}

/** The exit status as after SIGPIPE (POSIX, 2.8.2 of Shell Command Language). */
const BY_SIGPIPE = 128 + constants.signals.SIGPIPE;

/** Called once: ends the process in good order, and without a stack, when nothing can be printed any more. */
export function endWhereClosed(): void {
  process.stdout.on('error', (error) => {
    const code = codeOf(error);
    if (code === undefined) throw error;
    // The reader, such as `head`, has closed the pipe on purpose: no message is needed.
    if (code === 'EPIPE' && done === '') return end(BY_SIGPIPE);
    printMessage(`plumbline: Standard output cannot be written: ${reasonOf(code)}. ${done}`.trimEnd() + '\n');
    end(2);
  });
  process.stderr.on('error', (error) => {
    if (codeOf(error) === undefined) throw error;
    end(2);
  });
}
