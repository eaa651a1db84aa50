import assert from 'node:assert/strict';
import { sleep } from './run.ts';

/** Waits: long enough for FFmpeg to begin, notice, end and begin again on a machine with other work to do. */
const PATIENCE = 90_000;

/** @param otherwise what to say where it does not come to that */
export async function until(met: () => boolean, otherwise: () => string): Promise<void> {
  const end = Date.now() + PATIENCE;
  while (!met()) {
    if (Date.now() > end) assert.fail(otherwise());
    await sleep(200);
  }
}
