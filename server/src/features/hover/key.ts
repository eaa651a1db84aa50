/** The description of a key in the schema, or of one of its words. */

import type { Item } from '../../site/item.ts';
import { type Schema, type SectionName, schemaAt, sectionSchema } from '../../site/shape.ts';
import { type KeyPath, follow } from '../../text/syntax.ts';
import { unitsOf } from '../../text/quantity.ts';
import { ofKinds } from '../../site/shape-words.ts';

/**
 * Markdown; empty where the schema has no such key. The schema's own text is not escaped. Without `described` only
 * what another extension does not show from the schema.
 */
export function keyHoverText(item: Item, keyPath: KeyPath, part: 'key' | 'value', described = true): string {
  const schema = schemaAt(item.section, item.name, keyPath);
  const last = keyPath[keyPath.length - 1];
  // A port's name, or an element of a list, is no key of the language.
  if (schema === undefined || (last === undefined && item.name === '')) return '';
  const name = typeof last === 'number' ? '' : (last ?? item.name);
  const parent =
    last === undefined ? sectionSchema(item.section) : schemaAt(item.section, item.name, keyPath.slice(0, -1));
  const isKey = parent?.properties !== undefined && Object.hasOwn(parent.properties, name);
  if (!described) return isKey && part === 'key' ? beyondDescription(schema).join('\n\n') : '';
  if (!isKey) return part === 'value' ? valueText(item, keyPath, schema) : '';
  const value = part === 'value' ? valueText(item, keyPath, schema) : '';
  return [value, describe(`\`${name}\``, schema, part === 'key')].filter((text) => text !== '').join('\n\n');
}

export function sectionText(section: SectionName): string {
  const schema = sectionSchema(section);
  return schema === undefined ? '' : describe(`\`${section}\``, schema, false);
}

/** The meaning of the word at the place, if the schema describes each word. */
function valueText(item: Item, keyPath: KeyPath, schema: Schema): string {
  const node = follow(item.node, keyPath)?.node;
  if (node?.kind !== 'scalar') return '';
  const index = schema.enum?.findIndex((value) => value === node.value) ?? -1;
  const meaning = schema.enumDescriptions?.[index];
  return meaning === undefined ? '' : `\`${String(node.value)}\`: ${meaning}`;
}

function describe(name: string, schema: Schema, full: boolean): string {
  const lines = [`**${name}** ${schema.description ?? ''}`.trim()];
  if (!full) return lines.join('\n');
  const words = schema.enum?.map((value, index) => {
    const meaning = schema.enumDescriptions?.[index];
    return `- \`${String(value)}\`${meaning === undefined ? '' : `: ${meaning}`}`;
  });
  if (words !== undefined) lines.push(words.join('\n'));
  lines.push(...beyondDescription(schema));
  const examples = (schema.examples ?? []).map(code);
  if (examples.length > 0) lines.push(`For example ${examples.join(', ')}`);
  return lines.join('\n\n');
}

/** Which kinds of device have the key, the units that it may have, and its default. */
function beyondDescription(schema: Schema): string[] {
  const quantity = schema['x-quantity'];
  return [
    ...[ofKinds(schema) ?? []].flat(),
    ...(quantity === undefined ? [] : [`Units: ${unitsOf(quantity).map(code).join(', ')}`]),
    ...(schema.default === undefined ? [] : [`Without it: ${code(schema.default)}`]),
  ];
}

/** A value as it can be written on one line. */
function code(value: unknown): string {
  return `\`${flow(value)}\``;
}

function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${flow(inner)}`)
      .join(', ')}}`;
  return String(value);
}
