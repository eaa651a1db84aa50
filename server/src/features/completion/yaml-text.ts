/** Values as YAML, on one line or below one another. */

import { scalarText } from '../../site/edit.ts';

/** `{kind: camera, poe: {class: 3}}` */
export function flowText(value: unknown, scalar: (value: unknown) => string = scalarOf): string {
  if (Array.isArray(value)) return `[${value.map((element) => flowText(element, scalar)).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return scalar(value);
  return `{${Object.entries(value)
    .map(([key, inner]) => `${key}: ${flowText(inner, scalar)}`)
    .join(', ')}}`;
}

/** Keys below one another, `indent` deep; values nested more deeply are on one line. */
export function blockText(
  value: Readonly<Record<string, unknown>>,
  indent: string,
  scalar: (value: unknown) => string = scalarOf,
): string {
  return Object.entries(value)
    .map(([key, inner]) => {
      const isDeep =
        typeof inner === 'object' &&
        inner !== null &&
        !Array.isArray(inner) &&
        Object.values(inner).some((own) => typeof own === 'object' && !Array.isArray(own));
      if (!isDeep) return `${indent}${key}: ${flowText(inner, scalar)}`;
      return `${indent}${key}:\n${blockText(inner as Readonly<Record<string, unknown>>, `${indent}  `, scalar)}`;
    })
    .join('\n');
}

export function scalarOf(value: unknown): string {
  return scalarText(typeof value === 'number' || typeof value === 'boolean' ? value : String(value), true);
}
