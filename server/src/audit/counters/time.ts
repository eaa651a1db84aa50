import { parseInstant } from '../../standards/rfc3339.ts';
import { visible } from '../../text/visible.ts';
import { Unreadable } from '../unreadable.ts';

/** Seconds from 1973 to 5138: a number outside is no time in seconds. */
const [FIRST, LAST] = [100_000_000, 100_000_000_000];

/**
 * The time of a sample in milliseconds since 1970, written as seconds since then or by RFC 3339.
 *
 * @param at its place in the file, for the message
 * @throws Unreadable
 */
export function timeOf(value: unknown, at: string): number {
  const seconds =
    typeof value === 'number' ? value : typeof value === 'string' && /^\d+(\.\d+)?$/.test(value) ? Number(value) : NaN;
  if (seconds >= FIRST && seconds <= LAST) return Math.round(seconds * 1000);
  const instant = typeof value === 'string' ? parseInstant(value) : undefined;
  if (instant !== undefined) return instant;
  const found = value === undefined ? 'there is no time' : `the time is ${visible(String(value), 40)}`;
  throw new Unreadable(
    `${at}: ${found}. Write it as 2026-03-01T12:00:00Z, with Z or the offset from UTC, or as seconds since 1970.`,
  );
}
