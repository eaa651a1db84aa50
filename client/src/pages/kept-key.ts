// The key of a page in what the editor kept of it. A page keeps it, and a page may keep anything.
import type { DrawingWanted } from '../../../server/src/lsp/page-request.ts';

export function keyIn(state: unknown): string | undefined {
  if (typeof state !== 'object' || state === null || !('of' in state)) return undefined;
  return typeof state.of === 'string' ? state.of : undefined;
}

/** What a text of JSON says; `undefined` where it is none. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** Whether it says which drawing is wanted; the server judges whether there is one. */
export function isDrawing(value: unknown): value is DrawingWanted {
  return hasTexts(value, ['kind', 'subject'], ['rate', 'vlan', 'stream']);
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
