/** Values in the files of systemd-networkd: systemd.syntax(7), systemd.network(5). */

import { visible } from '../../text/visible.ts';

/**
 * A text for people, as in `Description=`: one line, without a backslash at its end, which would join the next line. A
 * per cent sign needs no escape here.
 */
export function networkdText(text: string): string {
  return visible(text).replace(/[\s\\]+$/, '');
}

/**
 * The name of an interface where networkd takes a pattern (`Name=` of `[Match]`): letters, digits and . _ + @ -, not
 * digits alone. Anything else is a pattern, a quote or a negation there, or no name to systemd.
 *
 * @returns `undefined` for a name that cannot be written
 */
export function networkdInterface(name: string): string | undefined {
  if (!/^[A-Za-z0-9._+@-]{1,15}$/.test(name) || /^\d+$/.test(name)) return undefined;
  return ['.', '..', 'all', 'default'].includes(name) ? undefined : name;
}
