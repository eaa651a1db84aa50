/** Text of a site as one line for people to read, which neither a terminal nor an editor acts on. */

/** Control characters, line and paragraph separators, marks that change the direction of text, and lone surrogates. */
const UNSEEN =
  /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Most text is so, and stays as it is. */
const PLAIN = /^(?:[!-~]+(?: [!-~]+)*)?$/;

/** White space becomes a space, any other invisible character �; the text is cut after `max` characters. */
export function visible(text: string, max = 500): string {
  if (text.length <= max && PLAIN.test(text)) return text;
  const line = text
    .slice(0, max + 1)
    .replace(/\s{2,}|[^\S ]/g, ' ')
    .replace(UNSEEN, '\ufffd')
    .trim();
  return line.length > max ? `${line.slice(0, max).replace(/[\ud800-\udbff]$/, '')}…` : line;
}

/** The text with `instead` in place of each mark that is invisible. */
export function withoutUnseen(text: string, instead: (mark: string) => string): string {
  return text.replace(UNSEEN, instead);
}

/** Text of several lines with � for each invisible character; line breaks and tabs stay. */
export function visibleLines(text: string): string {
  return text.replace(UNSEEN, (mark, at: number) =>
    mark === '\n' || mark === '\t' || (mark === '\r' && text[at + 1] === '\n') ? mark : '\ufffd',
  );
}

/** A path, whole, on one line. */
export function visiblePath(path: string): string {
  return withoutUnseen(path, () => '\ufffd');
}
