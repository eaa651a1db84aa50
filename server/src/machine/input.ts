/** What is given to an audit: files as people name them, read in pieces or at once. */

import { createReadStream, readFileSync, statSync } from 'node:fs';
import { Unreadable } from '../audit/unreadable.ts';
import { visible } from '../text/visible.ts';
import { CannotDo } from './cannot-do.ts';
import { codeOf, reasonOf } from './failures.ts';

/** UTF-16 units: longer than any line or file of its kind that is meant to be read. */
const LONGEST_LINE = 16_000_000;
const LARGEST = 256_000_000;

/**
 * Hands each line of a file to `take`, with its number. The file may be larger than memory.
 *
 * @throws CannotDo where it cannot be read, is no UTF-8, or `take` finds it unreadable
 */
export async function eachLine(path: string, take: (line: string, number: number) => void): Promise<void> {
  let rest = '';
  let number = 0;
  await reading(path, async () => {
    const utf8 = new TextDecoder('utf-8', { fatal: true });
    const cut = (text: string): void => {
      const lines = text.split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) take(line.endsWith('\r') ? line.slice(0, -1) : line, ++number);
      if (rest.length > LONGEST_LINE)
        throw new Unreadable(`Line ${number + 1} is longer than ${LONGEST_LINE} characters.`);
    };
    for await (const bytes of createReadStream(path)) cut(rest + utf8.decode(bytes as Uint8Array, { stream: true }));
    cut(rest + utf8.decode());
    if (rest !== '') take(rest.endsWith('\r') ? rest.slice(0, -1) : rest, ++number);
  });
}

/** @throws CannotDo where it cannot be read, is too large or no UTF-8 */
export async function wholeText(path: string): Promise<string> {
  return reading(path, () => {
    const { size } = statSync(path);
    if (size > LARGEST) throw new Unreadable(`it has ${size} bytes, and more than ${LARGEST} are not read`);
    return Promise.resolve(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)));
  });
}

/** Runs what reads a file; whatever is wrong with the file is told with its name. */
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
