/** Words of a POSIX shell (IEEE Std 1003.1, XCU §2.2), as a script holds them: one line each. */

/** What no shell treats as more than itself, wherever in a command it stands but at its very start. */
const PLAIN = /^[A-Za-z0-9_./:@%+,-]+$/;

/** NUL ends a word, a line end ends the line, and half a character has no bytes. */
const UNQUOTABLE = /[\0\n\r]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/**
 * The text as one word that stands for exactly it; in single quotes where it holds more than plain characters.
 *
 * @returns `undefined` where the text cannot stand in one line of a script
 */
export function shellWord(text: string): string | undefined {
  if (UNQUOTABLE.test(text)) return undefined;
  if (PLAIN.test(text)) return text;
  // A backslash before a closing quote is right, but looks like a mistake, to shellcheck too: it stands outside.
  const parts = text.split(/(\\*'|\\+$)/);
  return (
    parts
      .map((part, index) => (index % 2 === 1 ? part.replace(/./g, '\\$&') : part === '' ? '' : `'${part}'`))
      .join('') || "''"
  );
}
