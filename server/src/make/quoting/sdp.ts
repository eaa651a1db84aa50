/** Texts in session descriptions (RFC 8866 §9, `byte-string`): UTF-8 in one line. */

import { visible } from '../../text/visible.ts';

/** An announcement should stay below 1 kB (RFC 2974 §6), and a character takes up to four bytes. */
const LONGEST = 120;

/** A text for people: one line, without control characters; `undefined` where nothing is left. */
export function sdpText(text: string): string | undefined {
  const line = visible(text, LONGEST);
  return line === '' ? undefined : line;
}
