// Text that means something wherever it lands: to shells, spreadsheets, web pages, configuration files and terminals.
import fc from 'fast-check';

const PIECES = [
  ' ', '  ', '"', "'", '`', ';', '$', '$(id)', '${HOME}', '`id`', '&&', '|', '>', '<', '\\', '\\\\', '#', '%', '%s', '%n', '*', '?', '[', ']',
  '!', '~', '=', '+', '-', '--', '@', ',', '/', '..', '../', ':', '=1+1', '=HYPERLINK("x")', '\n', '\r', '\r\n', '\t', '\0', '\u001b[31m',
  '</style>', '<script>', '&amp;', '-->', ']]>', '\u2028', '\u202e', '\ufeff', '\ud800', '\udc00', 'ä', 'é', 'ß', '日本', '🐴', '\u00a0',
  '[Match]', 'Name=eth0', 'EOF', 'a', 'Z', '0', '9', 'word', '_',
];

/** One to two hundred characters. */
export const hostileText: fc.Arbitrary<string> = fc
  .oneof(
    fc.array(fc.oneof(fc.constantFrom(...PIECES), fc.string({ unit: 'binary', maxLength: 3 })), { minLength: 1, maxLength: 12 }).map((parts) => parts.join('')),
    fc.constantFrom(...PIECES).map((piece) => piece.repeat(Math.ceil(200 / piece.length)).slice(0, 200)),
    fc.constantFrom(...PIECES),
  )
  .filter((text) => text.length > 0);
