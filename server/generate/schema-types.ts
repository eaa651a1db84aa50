/** TypeScript types of what may be written in a site. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type JSONSchema, compile } from 'json-schema-to-typescript';
import type { Output } from './index.ts';

const BANNER = '// Made from schemas/site.schema.json by `npm run generate`; edits belong there.\n';

export async function schemaTypes(root: string): Promise<Output[]> {
  const schema = JSON.parse(await readFile(join(root, 'schemas/site.schema.json'), 'utf8')) as JSONSchema;
  const text = await compile(titledByName(schema), 'SiteFile', {
    bannerComment: BANNER,
    additionalProperties: false,
    style: { singleQuote: true, printWidth: 120 },
  });
  return [{ path: 'server/src/site/schema.generated/types.ts', text }];
}

/** Types are named by their key in `$defs`, not by titles, which are for people; comments keep the description. */
function titledByName(schema: JSONSchema): JSONSchema {
  const copy = JSON.parse(JSON.stringify(schema)) as JSONSchema;
  strip(copy);
  delete copy.$id;
  for (const [name, definition] of Object.entries(copy.$defs ?? {})) {
    if (typeof definition === 'object' && definition !== null) Object.assign(definition, { title: name.charAt(0).toUpperCase() + name.slice(1) });
  }
  return copy;
}

function strip(value: unknown): void {
  if (Array.isArray(value)) value.forEach(strip);
  if (typeof value !== 'object' || value === null) return;
  const object = value as Record<string, unknown>;
  if (typeof object['title'] === 'string') delete object['title'];
  // The types of what stands under `if` and `then` only narrow what is said before.
  for (const key of ['if', 'then', 'else', 'examples', 'default', 'minItems', 'maxItems']) delete object[key];
  for (const inner of Object.values(object)) strip(inner);
}
