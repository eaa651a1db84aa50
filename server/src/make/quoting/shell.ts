/** Words of a POSIX shell (IEEE Std 1003.1, XCU §2.2), each in one line of a script. */

/** Characters that mean only themselves to a shell, except at the very start of a command. */
const PLAIN = /^[A-Za-z0-9_./:@%+,-]+$/;

/** NUL ends a word, a line end ends the line, and a lone surrogate has no bytes. */
const UNQUOTABLE = /[\0\n\r]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/**
 * The text as one word of the shell, in single quotes where it has other than plain characters.
 *
 * @returns `undefined` where the text cannot stand in one line of a script
 */
export function shellWord(text: string): string | undefined {
  if (UNQUOTABLE.test(text)) return undefined;
  if (PLAIN.test(text)) return text;
  // A backslash before a closing quote is right, but looks like a mistake, to shellcheck too: it goes outside.
  const parts = text.split(/(\\*'|\\+$)/);
  return (
    parts
      .map((part, index) => (index % 2 === 1 ? part.replace(/./g, '\\$&') : part === '' ? '' : `'${part}'`))
      .join('') || "''"
  );
}
