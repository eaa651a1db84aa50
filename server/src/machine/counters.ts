/** Counters of interfaces, read from a file. */

import { IfMibTable } from '../audit/counters/if-mib-table.ts';
import { LinkLines } from '../audit/counters/ip-link.ts';
import type { Readings, SampleReader } from '../audit/counters/sample.ts';
import { Unreadable } from '../audit/unreadable.ts';
import { eachLine, reading } from './input.ts';

/**
 * What a file says of its form by its first character.
 *
 * @throws CannotDo where it cannot be read, or has no counters in it
 */
export async function countersIn(file: string): Promise<Readings> {
  let reader: SampleReader | undefined;
  await eachLine(file, (line, number) => {
    const text = number === 1 ? line.replace(/^\ufeff/, '') : line;
    if (reader === undefined && text.trim() !== '') reader = /^\s*[[{]/.test(text) ? new LinkLines() : new IfMibTable();
    reader?.line(text, number);
  });
  return reading(file, () => {
    const readings = reader?.end();
    if (readings === undefined || readings.samples.length === 0) throw new Unreadable('there are no counters in it.');
    return Promise.resolve(readings);
  });
}
