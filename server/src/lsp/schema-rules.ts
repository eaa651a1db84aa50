/** The findings that an extension that checks YAML against a schema reports too. */

import type { Diagnostic } from '../lint/rule.ts';

const OF_THE_SCHEMA: ReadonlySet<string> = new Set([
  'yaml-syntax',
  'duplicate-key',
  'unknown-key',
  'key-not-of-kind',
  'missing-key',
  'wrong-type',
  'value-not-allowed',
  'out-of-range',
  'malformed-value',
  'repeated-value',
  'quantity',
]);

export function isOfTheSchema({ rule, beyondSchema = false }: Diagnostic): boolean {
  return OF_THE_SCHEMA.has(rule.id) && !beyondSchema;
}
