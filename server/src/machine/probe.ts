/** Reads a file that ffprobe wrote. */

import { type Probed, readProbe } from '../audit/probe/ffprobe.ts';
import { type Waiting, reading, wholeText } from './input.ts';

/**
 * Bytes: as much as the packets of ten hours of a stream. It is parsed at once, which blocks other work for a second.
 */
const LARGEST = 64_000_000;

/** @throws CannotDo where it cannot be read, or is not what ffprobe writes */
export async function probeIn(file: string, waiting: Waiting = {}): Promise<Probed> {
  const text = await wholeText(file, LARGEST, waiting);
  return reading(file, () => Promise.resolve(readProbe(text)));
}
