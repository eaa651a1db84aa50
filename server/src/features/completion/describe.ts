/** The description of a key in the schema, for the box beside a list of offers. */

import { unitsOf } from '../../text/quantity.ts';
import type { Schema } from '../../site/shape.ts';
import { ofKinds } from '../../site/shape-words.ts';
import { flowText } from './yaml-text.ts';

export function describeOffer(schema: Schema): string {
  const units =
    schema['x-quantity'] === undefined ? [] : [`Units: ${unitsOf(schema['x-quantity']).map(code).join(', ')}`];
  const without = schema.default === undefined ? [] : [`Without it: ${code(flowText(schema.default))}`];
  const examples = (schema.examples ?? []).map((example) => code(flowText(example)));
  return [
    schema.description ?? '',
    ofKinds(schema) ?? '',
    ...units,
    ...without,
    ...(examples.length === 0 ? [] : [`For example ${examples.join(', ')}`]),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function code(text: string): string {
  return `\`${text}\``;
}

export function firstSentence(text = ''): string {
  return /^.*?[.:;](?=\s|$)/.exec(text)?.[0].slice(0, -1) ?? text;
}
