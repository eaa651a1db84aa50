/** Names, addresses and quantities that an item mentions, found by the annotations of the schema. */

import { type Quantity, type QuantityFault, type QuantityKind, readPositive, readQuantity } from '../text/quantity.ts';
import type { Data, KeyPath } from '../text/syntax.ts';
import { type FormKind, type NameKind, type Schema, type SectionName, itemSchema, resolved, under } from './shape.ts';

interface At {
  readonly keyPath: KeyPath;
  readonly part: 'key' | 'value';
  readonly text: string;
}

export type NameMention = At & { readonly mention: 'name'; readonly names: NameKind };

export type Mention =
  | NameMention
  | (At & { readonly mention: 'form'; readonly form: FormKind })
  | (At & { readonly mention: 'quantity'; readonly quantity: QuantityKind; readonly read: Quantity | QuantityFault });

export function mentionsIn(section: SectionName, name: string, data: Data): Mention[] {
  const found: Mention[] = [];
  const schema = itemSchema(section, name);
  if (schema !== undefined) walk(schema, data, [], found);
  return found.slice();
}

function walk(schema: Schema, data: Data, keyPath: KeyPath, found: Mention[]): void {
  if (data === null || typeof data === 'boolean') return;
  if (typeof data !== 'object') {
    note(schema, { keyPath, part: 'value', text: String(data) }, found);
    return;
  }
  if (Array.isArray(data)) {
    for (const [index, element] of data.entries()) {
      const inner = under(schema, index);
      if (inner !== undefined) walk(inner, element, keyPath.concat(index), found);
    }
    return;
  }
  const keys = resolved(schema.propertyNames);
  for (const key of Object.keys(data)) {
    const below = keyPath.concat(key);
    if (keys?.['x-names'] !== undefined) note(keys, { keyPath: below, part: 'key', text: key }, found);
    const inner = under(schema, key);
    const value = data[key];
    if (inner !== undefined && value !== undefined) walk(inner, value, below, found);
  }
}

// Written out: an object made by `...at` with more keys behind takes twice the memory.
function note(schema: Schema, { keyPath, part, text }: At, found: Mention[]): void {
  const names = schema['x-names'];
  const form = schema['x-form'];
  const quantity = schema['x-quantity'];
  if (names !== undefined) found.push({ keyPath, part, text, mention: 'name', names });
  if (form !== undefined) found.push({ keyPath, part, text, mention: 'form', form });
  if (quantity !== undefined)
    found.push({
      keyPath,
      part,
      text,
      mention: 'quantity',
      quantity,
      read: schema['x-zero'] === true ? readQuantity(text, quantity) : readPositive(text, quantity),
    });
}
