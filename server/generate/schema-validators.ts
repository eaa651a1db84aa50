/** Validators compiled from the schema, so that nothing is compiled at start: one for an item of each section. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';
import type { Output } from './output.ts';

const BANNER = '// Made from schemas/site.schema.json by `npm run generate`; edits belong there.\n';
/** The annotations and editor keywords that are no part of JSON Schema. */
export const VOCABULARY = [
  'x-names',
  'x-quantity',
  'x-zero',
  'x-form',
  'x-also',
  'enumDescriptions',
  'defaultSnippets',
];
/** Keywords for people and editors, which would only make the validators longer. */
const ANNOTATIONS = ['title', 'description', 'examples', 'default', ...VOCABULARY];

interface SiteSchema {
  readonly $id: string;
  readonly properties: Readonly<Record<string, Section>>;
  readonly $defs: Readonly<Record<string, { readonly type?: unknown }>>;
}

interface Section {
  readonly additionalProperties?: { readonly $ref: string } | boolean;
  readonly items?: { readonly $ref: string };
}

/** The package is CommonJS: its default export is the module, or the function, by how it is loaded. */
const standaloneCode =
  typeof standalone === 'function' ? standalone : (standalone as { default: typeof standalone }).default;

export async function schemaValidators(root: string): Promise<Output[]> {
  const schema = JSON.parse(await readFile(join(root, 'schemas/site.schema.json'), 'utf8')) as SiteSchema;
  const ajv = new Ajv2020({
    allErrors: true,
    messages: false,
    strict: true,
    allowUnionTypes: true,
    code: { source: true, esm: true, lines: true },
  });
  ajv.addSchema(unguarded(withItemTypes(bare(schema), schema.$defs)) as SiteSchema);
  const id = schema.$id;
  const names: Record<string, string> = {};
  for (const [name, section] of Object.entries(schema.properties)) {
    const each =
      typeof section.additionalProperties === 'object' ? section.additionalProperties.$ref : section.items?.$ref;
    names[name] = each === undefined ? `${id}#/properties/${name}` : `${id}${each}`;
  }
  // The time of ajv's way to join the errors of thousands of elements grows with the square of their number.
  const code = standaloneCode(ajv, names).replaceAll(
    /vErrors = vErrors === null \? (\w+)\.errors : vErrors\.concat\(\1\.errors\);/g,
    'if (vErrors === null) vErrors = $1.errors; else for (const each of $1.errors) vErrors.push(each);',
  );
  if (code.includes('.concat(')) throw new Error('ajv joins errors in another way than is known here');
  const bundled = await build({
    stdin: { contents: code, resolveDir: root },
    // The output contains paths, which must not depend on where the packages are installed.
    absWorkingDir: root,
    preserveSymlinks: true,
    bundle: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    legalComments: 'none',
  });
  const declarations = `${BANNER}import type { Validator } from '../validate.ts';\n\n${Object.keys(names)
    .map((name) => `export declare const ${name}: Validator;\n`)
    .join('')}`;
  return [
    {
      path: 'server/src/site/schema.generated/validate.js',
      text: BANNER + bundled.outputFiles.map(({ text }) => text).join(''),
    },
    { path: 'server/src/site/schema.generated/validate.d.ts', text: declarations },
  ];
}

/** A copy without annotations; a property with the name of one stays. */
function bare(value: unknown, namesBelow = false): unknown {
  if (Array.isArray(value)) return value.map((element) => bare(element));
  if (typeof value !== 'object' || value === null) return value;
  const kept = Object.entries(value).filter(([key]) => namesBelow || !ANNOTATIONS.includes(key));
  return Object.fromEntries(
    kept.map(([key, inner]) => [key, bare(inner, !namesBelow && (key === 'properties' || key === '$defs'))]),
  );
}

/**
 * The conditions by kind ask whether a kind is known, for editors that check by the schema alone; the reader of the
 * validator's errors does so once.
 */
function unguarded(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unguarded);
  if (typeof value !== 'object' || value === null) return value;
  const { $ref, ...rest } = value as { readonly $ref?: string };
  const inner = Object.fromEntries(Object.entries(rest).map(([key, below]) => [key, unguarded(below)]));
  return $ref === undefined || 'not' in rest ? inner : { $ref, ...inner };
}

/**
 * Adds the type of the elements, where they are scalars, to lists without repeats. The validator then compares scalars
 * only; its comparison of objects fails for objects without a prototype, such as our data.
 */
function withItemTypes(value: unknown, defs: SiteSchema['$defs']): unknown {
  if (Array.isArray(value)) return value.map((element) => withItemTypes(element, defs));
  if (typeof value !== 'object' || value === null) return value;
  const copy = Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withItemTypes(inner, defs)]));
  const { uniqueItems, items } = copy as { uniqueItems?: unknown; items?: { $ref?: string } };
  const type = defs[items?.$ref?.replace('#/$defs/', '') ?? '']?.type;
  return uniqueItems === true && type !== undefined ? { ...copy, items: { ...items, type } } : copy;
}
