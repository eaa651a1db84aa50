/** The reference page of the site language: the keys of each section with units, defaults and an example. */

import { stringify } from 'yaml';
import {
  type Schema,
  SECTIONS,
  SECTION_NAMES,
  type SectionName,
  resolved,
  sectionSchema,
  under,
} from '../src/site/shape.ts';
import { ofKinds } from '../src/site/shape-words.ts';
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };
import type { Output } from './output.ts';

const BANNER = '<!-- Made from site.schema.json by `npm run generate`; edits belong there. -->';
const HEADER = '| key | value | default | meaning | example |\n| --- | --- | --- | --- | --- |';

/** Keywords of the schema that only this page explains. */
type Bounded = Schema & { readonly minimum?: number; readonly maximum?: number; readonly then?: Schema };

const definitions: Readonly<Record<string, Schema>> = siteSchema.$defs as unknown as Record<string, Schema>;

export function schemaReference(): Output[] {
  const shown = new Set<string>();
  const parts = [
    BANNER,
    '# The site language',
    siteSchema.description,
    'Names consist of letters, digits, `-` and `_`, and are unique within their section.',
    ...SECTION_NAMES.flatMap((section) => sectionParts(section, shown)),
    ...quantityParts(),
  ];
  return [{ path: 'schemas/reference.md', text: `${parts.join('\n\n')}\n` }];
}

function sectionParts(section: SectionName, shown: Set<string>): string[] {
  const schema = sectionSchema(section);
  if (schema === undefined) return [];
  const item = SECTIONS[section] === 'fixed' ? schema : under(schema, SECTIONS[section] === 'list' ? 0 : 'any');
  const example = stringify({ [section]: schema.examples?.[0] }, { lineWidth: 100 }).trim();
  const head = [`## ${section}`, schema.description ?? '', `\`\`\`yaml\n${example}\n\`\`\``];
  return item === undefined ? head : [...head, ...mappingParts(item), ...innerParts(item, shown)];
}

/** The inner mappings, each once, where it first occurs. */
function innerParts(mapping: Schema, shown: Set<string>): string[] {
  return Object.entries(mapping.properties ?? {}).flatMap(([key, property]) => {
    const name = mappingName(property);
    const inner = entryOf(under(mapping, key));
    if (inner === undefined) return [];
    if (name === undefined) return inner.properties === undefined ? [] : innerParts(inner, shown);
    if (shown.has(name)) return [];
    shown.add(name);
    const description = definitions[name]?.description ?? '';
    return [`### ${name}`, description, ...mappingParts(inner), ...innerParts(inner, shown)];
  });
}

/** The schema of the elements of a list or a map by name; of anything else, itself. */
function entryOf(schema: Schema | undefined): Schema | undefined {
  if (schema?.items !== undefined) return entryOf(under(schema, 0));
  return typeof schema?.additionalProperties === 'object' ? entryOf(under(schema, 'any')) : schema;
}

function mappingParts(mapping: Schema): string[] {
  const rows = rowsOf(mapping, '');
  return [[HEADER, ...rows.map(({ row }) => row)].join('\n'), ...rows.flatMap(({ values }) => values ?? [])];
}

interface Row {
  readonly row: string;
  /** The meaning of each of its values, where the schema describes them. */
  readonly values: string | undefined;
}

function rowsOf(mapping: Schema, prefix: string): Row[] {
  return Object.entries(mapping.properties ?? {}).flatMap(([key, property]) => {
    const schema = under(mapping, key);
    if (schema === undefined) return [];
    const path = `${prefix}${key}`;
    const fallback =
      mapping.required?.includes(key) === true ? 'required' : schema.default === undefined ? '' : code(schema.default);
    const cells = [
      `\`${path}\``,
      valueWords(property),
      fallback,
      [schema.description ?? '', ofKinds(schema) ?? ''].join(' ').trim(),
      (schema.examples ?? []).map(code).join(', '),
    ];
    const inner =
      schema.properties !== undefined && mappingName(property) === undefined ? rowsOf(schema, `${path}: `) : [];
    return [
      { row: `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`, values: meanings(path, property) },
      ...inner,
    ];
  });
}

function meanings(path: string, property: Schema): string | undefined {
  const schema: Bounded | undefined = freeValue(property);
  const { enum: values, enumDescriptions } = schema?.then ?? schema ?? {};
  if (values === undefined || enumDescriptions === undefined) return undefined;
  return [
    `Values of \`${path}\`:`,
    '',
    ...values.map((value, i) => `- ${code(value)}: ${enumDescriptions[i] ?? ''}`),
  ].join('\n');
}

/** The schema of the values of a map by name; of anything else, itself. */
function freeValue(property: Schema): Schema | undefined {
  const schema = resolved(property);
  return typeof schema?.additionalProperties === 'object' ? resolved(schema.additionalProperties) : schema;
}

/** The name in `$defs` of the mapping that a property, its elements or its entries are. */
function mappingName({ $ref, items, additionalProperties }: Schema): string | undefined {
  if ($ref !== undefined) {
    const name = $ref.replace('#/$defs/', '');
    return definitions[name]?.properties === undefined ? undefined : name;
  }
  if (items !== undefined) return mappingName(items);
  return typeof additionalProperties === 'object' ? mappingName(additionalProperties) : undefined;
}

const NAME_WORDS: Readonly<Record<NonNullable<Schema['x-names']>, string>> = {
  'devices': 'device name',
  'vlans': 'VLAN name',
  'racks': 'rack name',
  'multiplexes': 'multiplex name',
  'services': 'service name',
  'streams': 'stream name',
  'volumes': 'volume name',
  'recordings': 'recording name',
  'rules': 'rule name',
  'port-end': '`device/port` or device',
  'own-port': 'name of a port of the same device',
};

const FORM_WORDS: Readonly<Record<NonNullable<Schema['x-form']>, string>> = {
  'address': 'IPv4 address',
  'subnet': 'IPv4 subnet',
  'address-range': 'first and last IPv4 address, with a hyphen between',
  'group': 'IPv4 multicast address',
  'mac': 'MAC address',
  'time-zone': 'IANA time zone',
  'destination': 'IPv4 subnet or `default`',
  'frequency-range': 'lowest and highest frequency, with a hyphen between',
};

function valueWords(property: Schema): string {
  const schema: Bounded | undefined = resolved(property);
  if (schema === undefined) return '';
  const { items, additionalProperties } = schema;
  if (items !== undefined) return `list: ${valueWords(items)}`;
  if (typeof additionalProperties === 'object')
    return `by ${nameWords(schema.propertyNames)}: ${valueWords(additionalProperties)}`;
  const mapping = mappingName(property);
  const words = mapping === undefined ? singleWords(schema) : `[${mapping}](#${mapping})`;
  return schema.then?.enum === undefined ? words : `${schema.then.enum.map(code).join(', ')}, or ${words}`;
}

function nameWords(propertyNames: Schema | undefined): string {
  const names = resolved(propertyNames)?.['x-names'];
  return names === undefined ? 'name' : NAME_WORDS[names];
}

function singleWords(schema: Bounded): string {
  const { 'x-quantity': quantity, 'x-names': names, 'x-form': form, 'enum': values, type, minimum, maximum } = schema;
  if (quantity !== undefined) return `[${quantity.replace('-', ' ')}](#quantities)`;
  if (names !== undefined) return NAME_WORDS[names];
  if (form !== undefined) return FORM_WORDS[form];
  if (values !== undefined) return values.map(code).join(', ');
  if (type === 'boolean') return '`true` or `false`';
  if (type === 'object') return 'mapping';
  if (type === 'string') return 'text';
  const bounds = [minimum === undefined ? '' : ` from ${minimum}`, maximum === undefined ? '' : ` to ${maximum}`].join(
    '',
  );
  return `${type === 'integer' ? 'whole number' : 'number'}${bounds}`;
}

function quantityParts(): string[] {
  const quantities = Object.values(definitions).filter(
    (definition) => definition['x-quantity'] !== undefined && definition['x-zero'] !== true,
  );
  const rows = quantities.map(
    ({ title, description, examples }) =>
      `| ${title ?? ''} | ${description ?? ''} | ${(examples ?? []).map(code).join(', ')} |`,
  );
  return ['## Quantities', ['| quantity | how it is written | example |', '| --- | --- | --- |', ...rows].join('\n')];
}

/** A value as it is written in a site file, on one line. */
function code(value: unknown): string {
  const text = stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();
  return `\`${text}\``;
}
