/** Texts in systemd units: systemd.syntax(7), systemd.service(5) "Command lines", systemd.unit(5) "Specifiers". */

import { visible } from '../../text/visible.ts';

/** Characters that need no quotes in a word of a command. */
const PLAIN = /^[A-Za-z0-9_./:@+,=-]+$/;

/** NUL ends an argument, and a lone surrogate has no bytes. */
const UNQUOTABLE = /\0|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/** Bytes in a part of a path (NAME_MAX of Linux), which systemd enforces. */
const LONGEST_PART = 255;

/**
 * A text for people, as in `Description=`: one line, per cent signs doubled, no backslash that would join the next
 * line.
 */
export function unitText(text: string): string {
  return visible(text)
    .replace(/[\s\\]+$/, '')
    .replaceAll('%', '%%');
}

/**
 * The text as one argument of a command, without variables, specifiers or a second command in it.
 *
 * @returns `undefined` where no argument can hold it
 */
export function unitWord(text: string): string | undefined {
  if (UNQUOTABLE.test(text)) return undefined;
  if (PLAIN.test(text)) return text;
  const escaped = text
    .replace(/["\\]/g, '\\$&')
    .replace(/[\u0001-\u001f\u007f]/g, (control) => `\\x${control.charCodeAt(0).toString(16).padStart(2, '0')}`)
    .replaceAll('%', '%%')
    .replaceAll('$', '$$$$');
  return `"${escaped}"`;
}

/** Bytes in the name of a unit: systemd.unit(5). */
const LONGEST_UNIT = 255;

/**
 * The mount units of a path and of each folder above it, the outermost first: systemd.unit(5), "String escaping for
 * inclusion in unit names".
 */
export function mountUnits(path: string): string[] {
  const parts = path.split('/').filter((part) => part !== '');
  const escaped = (part: string, index: number): string =>
    Array.from(new TextEncoder().encode(part), (byte, at) => {
      const mark = String.fromCharCode(byte);
      const plain = /[A-Za-z0-9:_.]/.test(mark) && !(mark === '.' && index === 0 && at === 0);
      return plain ? mark : `\\x${byte.toString(16).padStart(2, '0')}`;
    }).join('');
  const names = parts.map(escaped);
  return names
    .map((_, index) => `${names.slice(0, index + 1).join('-')}.mount`)
    .filter((name) => name.length <= LONGEST_UNIT);
}

/**
 * A path in a setting that takes a list of them, such as `ReadWritePaths=`. Quotes work there. A backslash takes the
 * meaning of the next character, be it the closing quote, and is gone itself: systemd passes over the setting, or takes
 * another path (systemd 252, tried).
 *
 * @param prefix before the path: `-` where it may be missing
 * @returns `undefined` for a path with a control character, a backslash, both kinds of quotes, or a part of over 255
 * bytes
 */
export function unitPath(path: string, prefix = ''): string | undefined {
  if (UNQUOTABLE.test(path) || /[\u0001-\u001f\u007f\\]/.test(path) || !path.startsWith('/')) return undefined;
  if (path.split('/').some((part) => new TextEncoder().encode(part).length > LONGEST_PART)) return undefined;
  const specified = `${prefix}${path.replaceAll('%', '%%')}`;
  if (PLAIN.test(path)) return specified;
  const quote = ['"', "'"].find((candidate) => !path.includes(candidate));
  return quote === undefined ? undefined : `${quote}${specified}${quote}`;
}

/** @returns `undefined` where a word cannot be an argument */
export function unitCommand(words: readonly string[]): string | undefined {
  const quoted = words.map(unitWord);
  return quoted.includes(undefined) ? undefined : quoted.join(' ');
}
