import assert from 'node:assert/strict';

/** Holds a figure against a published or hand-worked one that is rounded, by default to two digits. */
export function near(actual: number | undefined, expected: number, within = 0.0051): void {
  assert.ok(
    actual !== undefined && Math.abs(actual - expected) <= within,
    `${String(actual)} is not ${expected} ± ${within}`,
  );
}
