/**
 * Reads the files that a person names for an audit: ordinary files only, no larger than a file of the kind can be, in
 * slices with time for other work in between.
 */

import { type Stats, constants } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { Unreadable } from '../audit/unreadable.ts';
import { visible } from '../text/visible.ts';
import { bytes } from '../text/words.ts';
import { CannotDo, Stopped } from './cannot-do.ts';
import { codeOf, codeOfSystem, reasonOf } from './failures.ts';

/** How a reading is stopped, and how its progress is reported. */
export interface Waiting {
  /** Stops the reading. */
  readonly signal?: AbortSignal | undefined;
  /** Takes the progress now and then, in words. */
  readonly progress?: ((words: string) => void) | undefined;
}

/** Bytes that are read at once: some milliseconds of work. */
const SLICE = 1 << 18;

/** UTF-16 units: longer than any line of a valid file. */
const LONGEST_LINE = 16_000_000;

/** Hands each line of a file of at most `most` bytes to `take`, with its number. */
export async function eachLine(
  path: string,
  most: number,
  take: (line: string, number: number) => void,
  waiting: Waiting = {},
): Promise<void> {
  await reading(path, async () => {
    const utf8 = new TextDecoder('utf-8', { fatal: true });
    let rest = '';
    let number = 0;
    const whole = (line: string): void => take(line.endsWith('\r') ? line.slice(0, -1) : line, ++number);
    const cut = (text: string): void => {
      const [first = '', ...others] = text.split('\n');
      rest += first;
      for (const other of others) {
        whole(rest);
        rest = other;
      }
      if (rest.length > LONGEST_LINE)
        throw new Unreadable(`Line ${number + 1} is longer than ${LONGEST_LINE} characters.`);
    };
    for await (const slice of slicesOf(path, most, waiting)) cut(utf8.decode(slice, { stream: true }));
    cut(utf8.decode());
    if (rest !== '') whole(rest);
  });
}

/** The text of a file of at most `most` bytes. */
export async function wholeText(path: string, most: number, waiting: Waiting = {}): Promise<string> {
  return reading(path, async () => {
    const slices: Uint8Array[] = [];
    for await (const slice of slicesOf(path, most, waiting)) slices.push(slice);
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(slices));
  });
}

/**
 * The bytes of an ordinary file of at most `most`, slice by slice.
 *
 * @throws CannotDo where it is no ordinary file; Stopped; Unreadable where it is larger; the system's errors
 */
export async function* slicesOf(
  path: string,
  most: number,
  { signal, progress }: Waiting = {},
): AsyncGenerator<Buffer> {
  const stop = stoppedBy(signal);
  let file: FileHandle | undefined;
  try {
    // A pipe answers only when somebody writes to it, and a device may act on being opened.
    mustBeOrdinary(path, await stop.race(stat(path)));
    const opening = open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    opening.then((late) => (signal?.aborted === true ? late.close() : undefined), codeOfSystem);
    file = await stop.race(opening);
    const { size } = mustBeOrdinary(path, await stop.race(file.stat()));
    if (size > most) throw tooLarge(most);
    for (let read = 0; ;) {
      const { buffer, bytesRead } = await stop.race(file.read(Buffer.allocUnsafe(SLICE), 0, SLICE));
      if (bytesRead === 0) return;
      // The file may grow, and files of /proc have no size.
      read += bytesRead;
      if (read > most) throw tooLarge(most);
      yield buffer.subarray(0, bytesRead);
      progress?.(`${bytes(read)} of ${bytes(Math.max(size, read))}`);
    }
  } finally {
    stop.forget();
    const closing = file?.close();
    // A file whose disk does not answer is closed when it does.
    if (signal?.aborted !== true) await closing;
  }
}

function mustBeOrdinary(path: string, there: Stats): Stats {
  if (there.isFile()) return there;
  const why = there.isDirectory()
    ? reasonOf('EISDIR')
    : 'it is no ordinary file, and nothing else is read. Write it to one first';
  throw new CannotDo(`${visible(path, 200)} cannot be read: ${why}.`);
}

function tooLarge(most: number): Unreadable {
  return new Unreadable(`it has more than ${bytes(most)}, which is more than is read. Give less at a time.`);
}

interface Stop {
  /** The same promise, which fails with Stopped as soon as the signal fires. */
  race<T>(promise: Promise<T>): Promise<T>;
  forget(): void;
}

function stoppedBy(signal: AbortSignal | undefined): Stop {
  if (signal === undefined) return { race: (promise) => promise, forget: () => undefined };
  let fail = (): void => undefined;
  const stopped = new Promise<never>((_, reject) => (fail = () => reject(new Stopped('It was stopped.'))));
  stopped.catch(() => undefined);
  if (signal.aborted) fail();
  else signal.addEventListener('abort', fail, { once: true });
  return {
    race: (promise) => Promise.race([promise, stopped]),
    forget: () => signal.removeEventListener('abort', fail),
  };
}

/** Runs a reading of a file, and adds the file's name to its errors. */
export async function reading<T>(path: string, read: () => Promise<T>): Promise<T> {
  const name = visible(path, 200);
  try {
    return await read();
  } catch (error) {
    if (error instanceof Unreadable) throw new CannotDo(`${name}: ${error.message}`);
    const code = codeOf(error);
    if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA')
      throw new CannotDo(`${name} cannot be read: it is not UTF-8 text.`);
    if (code !== undefined) throw new CannotDo(`${name} cannot be read: ${reasonOf(code)}.`);
    throw error;
  }
}
