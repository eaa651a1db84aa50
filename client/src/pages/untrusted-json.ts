// What a page, an address or an editor's store says, as JSON that anybody may have written: judged before it is used.
import type { DrawingWanted } from '../../../server/src/lsp/page-request.ts';

/** What a text of JSON says; `undefined` where it is none. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** Whether it has these texts, and others that are texts if they are there. */
export function hasTexts(value: unknown, needed: readonly string[], optional: readonly string[]): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const of = new Map<string, unknown>(Object.entries(value));
  return (
    needed.every((key) => typeof of.get(key) === 'string') &&
    optional.every((key) => ['string', 'undefined'].includes(typeof of.get(key)))
  );
}

/** Whether it says which drawing is wanted; the server judges whether there is one. */
export function isDrawing(value: unknown): value is DrawingWanted {
  return hasTexts(value, ['kind', 'subject'], ['rate', 'vlan', 'stream']);
}
