// The key of a page in what the editor kept of it. A page keeps it, and a page may keep anything.

export function keyIn(state: unknown): string | undefined {
  if (typeof state !== 'object' || state === null || !('of' in state)) return undefined;
  return typeof state.of === 'string' ? state.of : undefined;
}
