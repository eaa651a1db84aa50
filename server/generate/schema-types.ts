/** TypeScript types of the site language: one for each mapping of the schema's `$defs`. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type JSONSchema, compile } from 'json-schema-to-typescript';
import type { Output } from './output.ts';

const BANNER = '// Made from schemas/site.schema.json by `npm run generate`; edits belong there.\n';

type Schema = { [key: string]: unknown };

export async function schemaTypes(root: string): Promise<Output[]> {
  const schema = JSON.parse(await readFile(join(root, 'schemas/site.schema.json'), 'utf8')) as Schema;
  const text = await compile(forTypes(schema), 'SiteFile', {
    bannerComment: BANNER,
    additionalProperties: false,
    style: { singleQuote: true, printWidth: 120 },
  });
  return [{ path: 'server/src/site/schema.generated/types.ts', text }];
}

/** The schema as the compiler of types needs it: types are named by their key in `$defs`, texts and numbers by none. */
function forTypes(schema: Schema): JSONSchema {
  const defs = schema['$defs'] as Record<string, Schema>;
  const { $id: _id, $defs: _defs, ...root } = inlined(schema, defs) as Schema;
  const named = Object.entries(defs)
    .filter(([, definition]) => definition['type'] === 'object')
    .map(([name, definition]) => [name, { ...(inlined(definition, defs) as Schema), title: typeName(name) }]);
  return { ...root, title: 'SiteFile', $defs: Object.fromEntries(named) };
}

/** A copy without titles and examples in which only references to mappings are left, with nothing beside them. */
function inlined(value: unknown, defs: Readonly<Record<string, Schema>>): unknown {
  if (Array.isArray(value)) return value.map((element) => inlined(element, defs));
  if (typeof value !== 'object' || value === null) return value;
  const schema = value as Schema;
  const name = typeof schema['$ref'] === 'string' ? schema['$ref'].replace('#/$defs/', '') : undefined;
  if (name !== undefined) {
    const { $ref, ...beside } = schema;
    const target = defs[name];
    if (target === undefined) throw new Error(`schemas/site.schema.json refers to ${name}, which is not in its $defs.`);
    return target['type'] === 'object' ? { $ref } : inlined({ ...target, ...beside }, defs);
  }
  const {
    title,
    examples: _examples,
    defaultSnippets: _snippets,
    allOf: _allOf,
    if: _if,
    then,
    minItems: _minItems,
    ...rest
  } = schema;
  const kept = Object.fromEntries(Object.entries(rest).map(([key, inner]) => [key, inlined(inner, defs)]));
  // A property may also be named `title`.
  if (typeof title === 'object') kept['title'] = inlined(title, defs);
  // A type list with `then` for texts is a choice between them and the mapping.
  return then === undefined
    ? kept
    : { description: kept['description'], anyOf: [inlined(then, defs), { ...kept, type: 'object' }] };
}

function typeName(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
