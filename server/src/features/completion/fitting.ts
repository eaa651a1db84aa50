/** Values for a tab stop of a snippet: what is free, or the first name that fits. */

import type { Schema } from '../../site/shape.ts';
import { addressOffers, numberOffers } from './addresses.ts';
import { nameOffers } from './names.ts';
import type { CompletionContext } from './wanted.ts';

/** `role` is the key that the value stands under; `kind` that of the device around it, where there is one. */
export function fitting(wanted: CompletionContext, schema: Schema, role: string, kind: string): string[] {
  const inside: CompletionContext = { ...wanted, name: '', keyPath: [role], item: undefined, typed: '', kind };
  const names = schema['x-names'];
  const form = schema['x-form'];
  const offers =
    names !== undefined
      ? nameOffers(inside, names, role)
      : form === 'address' || form === 'group'
        ? addressOffers(inside, form)
        : role === 'port' || role === 'id' || role === 'subnet'
          ? [...(form === 'subnet' ? addressOffers(inside, form) : numberOffers(inside))]
          : [];
  return offers.map(({ label, insert }) => insert ?? label);
}
