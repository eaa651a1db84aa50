/** Which type of value a schema wants; `poe` may be a text or a mapping. */

import type { Schema } from '../../site/shape.ts';

function is(schema: Schema, type: string): boolean {
  return Array.isArray(schema.type) ? schema.type.includes(type) : schema.type === type;
}

export const isList = (schema: Schema): boolean => is(schema, 'array');
export const isMapping = (schema: Schema): boolean => is(schema, 'object');
export const isText = (schema: Schema): boolean => is(schema, 'string');
export const isTruth = (schema: Schema): boolean => is(schema, 'boolean');
