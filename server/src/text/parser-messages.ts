/** What the YAML parser finds wrong, in the words of a person who writes a site. */

import type { YAMLError } from 'yaml';

export function parserMessage(error: YAMLError): string {
  switch (error.code) {
    case 'BAD_INDENT':
      if (/end with a }/.test(error.message)) return 'a closing } is missing';
      if (/end with a ]/.test(error.message)) return 'a closing ] is missing';
      return 'the indentation does not fit: entries of one mapping start in the same column';
    case 'MISSING_CHAR':
      return /implicit (?:map )?keys/i.test(error.message)
        ? 'a key is followed by a colon and a space'
        : missing(error.message);
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'a nested mapping starts on a line of its own, or stands in { }';
    case 'BLOCK_IN_FLOW':
      return 'inside { } and [ ] only { } and [ ] can be nested; is a closing bracket missing?';
    case 'MULTILINE_IMPLICIT_KEY':
      return 'a key and its colon stand on one line; is a colon missing?';
    case 'UNEXPECTED_TOKEN':
      return 'this does not fit here; check the brackets, quotes and colons before it';
    case 'TAB_AS_INDENT':
      return 'a tab cannot indent; use spaces';
    case 'BAD_DQ_ESCAPE':
      return 'unknown escape in a double-quoted text; write \\\\ for a backslash, or use single quotes';
    case 'BAD_SCALAR_START':
      return 'a plain text cannot start with this character; put the text in quotes';
    case 'MULTIPLE_ANCHORS':
    case 'MULTIPLE_TAGS':
      return 'only one anchor and one tag can stand before a value';
    default:
      return error.message.replace(/\s+/g, ' ').replace(/ at line \d+.*$/, '');
  }
}

function missing(message: string): string {
  if (/ending with a \}|Expected .*\}|\}/.test(message)) return 'a closing } is missing';
  if (/\]/.test(message)) return 'a closing ] is missing';
  if (/closing "|double-quoted|Missing closing "/.test(message)) return 'a closing " is missing';
  if (/Missing closing '/.test(message)) return "a closing ' is missing";
  if (/, /.test(message) || /comma/i.test(message)) return 'a comma is missing between two entries';
  return 'a colon or bracket is missing';
}

/** Whether a bracket or a quote is not closed. */
export function leavesOpen({ message }: YAMLError): boolean {
  return /end with a [}\]]|ending with a [}\]]|Missing closing/.test(message);
}
