import assert from 'node:assert/strict';
import { sleep } from './run.ts';

/** Waits: long enough for FFmpeg to begin, notice, end and begin again on a machine with other work to do. */
export const PATIENCE = 90_000;

/**
 * @param otherwise what to say where it does not come to that
 * @param every milliseconds from one look to the next
 */
export async function until(
  met: () => boolean | Promise<boolean>,
  otherwise: () => string,
  every = 200,
): Promise<void> {
  const end = Date.now() + PATIENCE;
  while (!(await met())) {
    if (Date.now() > end) assert.fail(otherwise());
    await sleep(every);
  }
}
