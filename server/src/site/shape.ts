/** The shape of the site language, read from its JSON Schema: sections, keys and their schemas. */

import { perObject } from '../memo.ts';
import type { KeyPath } from '../text/syntax.ts';
import type { QuantityKind } from '../text/quantity.ts';
import siteSchema from '../../../schemas/site.schema.json' with { type: 'json' };

/** How a section holds its items: by name, as a list, or by the fixed keys of the schema. */
export const SECTIONS = {
  site: 'fixed',
  vlans: 'map',
  racks: 'map',
  devices: 'map',
  cables: 'list',
  multiplexes: 'map',
  services: 'map',
  occasions: 'map',
  streams: 'map',
  traffic: 'map',
  volumes: 'map',
  recordings: 'map',
  policies: 'fixed',
  lint: 'fixed',
} as const;

export type SectionName = keyof typeof SECTIONS;

export const SECTION_NAMES = Object.keys(SECTIONS) as SectionName[];

export function sectionOf(name: string): SectionName | undefined {
  return SECTION_NAMES.find((section) => section === name);
}

/** What a text names: an item of a section, a rule, a port of any device, or a port of the same device. */
export type NameKind =
  | 'devices'
  | 'vlans'
  | 'racks'
  | 'multiplexes'
  | 'services'
  | 'streams'
  | 'volumes'
  | 'recordings'
  | 'rules'
  | 'port-end'
  | 'own-port';

export type FormKind =
  'address' | 'subnet' | 'address-range' | 'group' | 'mac' | 'time-zone' | 'destination' | 'frequency-range';

/** The part of JSON Schema 2020-12 that the site's schema uses, with its annotations. */
export interface Schema {
  readonly '$ref'?: string;
  readonly 'title'?: string;
  readonly 'description'?: string;
  readonly 'type'?: string | readonly string[];
  readonly 'enum'?: readonly (string | number | boolean)[];
  readonly 'enumDescriptions'?: readonly string[];
  readonly 'default'?: unknown;
  readonly 'pattern'?: string;
  readonly 'examples'?: readonly unknown[];
  readonly 'properties'?: Readonly<Record<string, Schema>>;
  readonly 'required'?: readonly string[];
  readonly 'additionalProperties'?: Schema | boolean;
  readonly 'propertyNames'?: Schema;
  readonly 'items'?: Schema;
  readonly 'defaultSnippets'?: readonly {
    readonly label: string;
    readonly description?: string;
    readonly body: unknown;
  }[];
  readonly '$defs'?: Readonly<Record<string, Schema>>;
  /** Keys that only some kinds of device have. */
  readonly 'allOf'?: readonly OfKinds[];
  /** The schema of a value that is a text. */
  readonly 'then'?: Schema;
  readonly 'x-names'?: NameKind;
  readonly 'x-quantity'?: QuantityKind;
  /** Set where the quantity may be zero although others of its kind may not. */
  readonly 'x-zero'?: true;
  readonly 'x-form'?: FormKind;
  /** Other words for values of an enumeration, in lower case, and the values that they may mean. */
  readonly 'x-also'?: Readonly<Record<string, readonly string[]>>;
}

/** Keys that only devices of some kinds have. */
interface OfKinds {
  readonly if: { readonly properties: { readonly kind: { readonly not: { readonly enum: readonly string[] } } } };
  readonly then: Without;
}

/** `false` where a kind lacks the key. */
type Without =
  false | { readonly properties?: Readonly<Record<string, Without>>; readonly additionalProperties?: Without };

const root = siteSchema as unknown as Schema;

/** The schema of a whole file. */
export const rootSchema: Schema = root;

/** The schema that a `$ref` leads to. */
export function resolved(schema: Schema | undefined): Schema | undefined {
  return schema?.$ref === undefined ? schema : resolvedOnce(schema);
}

const resolvedOnce = perObject((schema: Schema): Schema | undefined => {
  let current: Schema | undefined = schema;
  while (current?.$ref !== undefined) {
    const target: Schema | undefined = root.$defs?.[current.$ref.replace('#/$defs/', '')];
    // A description beside a $ref overrides that of its target.
    const { $ref: _, ...beside } = current;
    current = target === undefined ? undefined : { ...target, ...beside };
  }
  return current;
});

/** Schemas below a schema, by key; `.` for any name, `[]` for any index. */
const below = perObject((_: Schema) => new Map<string, Schema | undefined>());

/** The schema of the value under a key or index. */
export function under(schema: Schema, step: string | number): Schema | undefined {
  const [key, found] = stepInto(schema, step);
  // There is no end of unknown keys, so they are not kept.
  if (found === undefined) return undefined;
  const kept = below(schema);
  if (!kept.has(key)) kept.set(key, withKinds(resolved(found), schema, step));
  return kept.get(key);
}

/** The schema under a key, with the conditions on it of the schema above. */
function withKinds(schema: Schema | undefined, { allOf = [] }: Schema, step: string | number): Schema | undefined {
  const here = allOf.flatMap(({ if: kinds, then }): OfKinds[] => {
    const below = then === false ? false : typeof step === 'number' ? undefined : withoutAt(then, step);
    return below === undefined ? [] : [{ if: kinds, then: below }];
  });
  return schema === undefined || here.length === 0 ? schema : { ...schema, allOf: here };
}

function withoutAt(
  { properties = {}, additionalProperties }: Exclude<Without, false>,
  key: string,
): Without | undefined {
  return Object.hasOwn(properties, key) ? properties[key] : additionalProperties;
}

/** All kinds of device. */
export function deviceKinds(): readonly string[] {
  return (root.$defs?.['kind']?.enum ?? []).map(String);
}

/** The kinds of device that have the key of a schema; `under` has returned the schema. */
export function kindsWith({ allOf = [] }: Schema): readonly string[] {
  const having = allOf.flatMap(({ if: kinds, then }) => (then === false ? [kinds.properties.kind.not.enum] : []));
  return deviceKinds().filter((kind) => having.every((kinds) => kinds.includes(kind)));
}

function stepInto(schema: Schema, step: string | number): readonly [key: string, schema: Schema | undefined] {
  if (typeof step === 'number') return ['[]', schema.items];
  if (schema.properties !== undefined && Object.hasOwn(schema.properties, step))
    return [`.${step}`, schema.properties[step]];
  // Any name may be a key, so their common schema is kept once.
  return ['.', typeof schema.additionalProperties === 'object' ? schema.additionalProperties : undefined];
}

export function sectionSchema(section: SectionName): Schema | undefined {
  return resolved(root.properties?.[section]);
}

const sectionSchemas = new Map<SectionName, Schema | undefined>();

/** The schema of an item: of a section's entry, element or fixed key. */
export function itemSchema(section: SectionName, name: string): Schema | undefined {
  if (!sectionSchemas.has(section)) sectionSchemas.set(section, sectionSchema(section));
  const schema = sectionSchemas.get(section);
  return schema === undefined ? undefined : under(schema, SECTIONS[section] === 'list' ? 0 : name);
}

export function schemaAt(section: SectionName, name: string, keyPath: KeyPath): Schema | undefined {
  let schema = itemSchema(section, name);
  for (const step of keyPath) {
    if (schema === undefined) return undefined;
    schema = under(schema, step);
  }
  return schema;
}

/** The keys that a mapping of that schema may have. */
export function keysOf(schema: Schema): readonly string[] {
  return Object.keys(schema.properties ?? {});
}
