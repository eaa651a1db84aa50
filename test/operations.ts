/**
 * Work as a number that is the same on every machine, however busy: how often pieces of code ran. Import this before
 * the counted code, in a process of its own: code that is already compiled has no counters, and code with counters is
 * slow.
 */

import { Session } from 'node:inspector/promises';

const session = new Session();
session.connect();
await session.post('Profiler.enable');
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });

/**
 * How many functions, branches and loop bodies a step ran, as V8 counts them for coverage
 * (https://v8.dev/blog/javascript-code-coverage). What is not JavaScript does not count, such as a search in a string.
 */
export async function operations(step: () => void): Promise<number> {
  await session.post('Profiler.takePreciseCoverage');
  step();
  const { result } = await session.post('Profiler.takePreciseCoverage');
  let count = 0;
  for (const { functions } of result)
    for (const { ranges } of functions) for (const range of ranges) count += range.count;
  return count;
}
