/** Counters of interfaces, read from a file. */

import { IfMibTable } from '../audit/counters/if-mib-table.ts';
import { LinkLines } from '../audit/counters/ip-link.ts';
import type { Readings, SampleReader } from '../audit/counters/sample.ts';
import { Unreadable } from '../audit/unreadable.ts';
import { type Waiting, eachLine, reading } from './input.ts';

/** Bytes: as much as ip prints in two days for a hundred interfaces every ten seconds. */
const LARGEST = 1_000_000_000;

/**
 * Reads a file in the format that its first character shows.
 *
 * @throws CannotDo where it cannot be read, or has no counters in it
 */
export async function countersIn(file: string, waiting: Waiting = {}): Promise<Readings> {
  let reader: SampleReader | undefined;
  const take = (line: string, number: number): void => {
    const text = number === 1 ? line.replace(/^\ufeff/, '') : line;
    if (reader === undefined && text.trim() !== '') reader = /^\s*[[{]/.test(text) ? new LinkLines() : new IfMibTable();
    reader?.line(text, number);
  };
  await eachLine(file, LARGEST, take, waiting);
  return reading(file, () => {
    const readings = reader?.end();
    if (readings === undefined || readings.samples.length === 0) throw new Unreadable('there are no counters in it.');
    return Promise.resolve(readings);
  });
}
