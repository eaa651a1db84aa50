/** Announcements heard in a capture, from a file or as it comes in. */

import { Heard } from '../audit/announcements/heard.ts';
import { Unreadable } from '../audit/unreadable.ts';
import { type Waiting, reading, slicesOf } from './input.ts';

/** Bytes: announcements of a day take some megabytes. */
const LARGEST = 1_000_000_000;

/**
 * @param chunks the bytes of a capture that is not in a file, in pieces of any length
 * @throws CannotDo where it cannot be read, or is no capture
 */
export async function heardIn(
  file: string,
  waiting: Waiting = {},
  chunks: AsyncIterable<unknown> = slicesOf(file, LARGEST, waiting),
): Promise<Heard> {
  const heard = new Heard();
  await reading(file, async () => {
    for await (const chunk of chunks) {
      heard.push(chunk as Uint8Array);
      // The rest cannot be read.
      if (heard.isBroken) break;
    }
    const problem = heard.end();
    if (problem !== undefined && heard.first === undefined) throw new Unreadable(`${problem}.`);
  });
  return heard;
}
