/** Announcements, heard from a capture in a file or as it comes in. */

import { createReadStream } from 'node:fs';
import { Heard } from '../audit/announcements/heard.ts';
import { Unreadable } from '../audit/unreadable.ts';
import { reading } from './input.ts';

/** @throws CannotDo where it cannot be read, or is no capture */
export async function heardIn(file: string, chunks: AsyncIterable<unknown> = createReadStream(file)): Promise<Heard> {
  const heard = new Heard();
  await reading(file, async () => {
    for await (const chunk of chunks) heard.push(chunk as Uint8Array);
    const problem = heard.end();
    if (problem !== undefined && heard.first === undefined) throw new Unreadable(`${problem}.`);
  });
  return heard;
}
