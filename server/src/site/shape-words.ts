/** Words for values of a site file, and for what the schema wants. */

import { visible } from '../text/visible.ts';
import { list } from '../text/words.ts';
import type { Data, KeyPath } from '../text/syntax.ts';
import { scalarText } from './edit.ts';
import { type Item, placeOf } from './item.ts';
import {
  type FormKind,
  type NameKind,
  SECTIONS,
  type Schema,
  deviceKinds,
  kindsWith,
  resolved,
  schemaAt,
  sectionSchema,
  under,
} from './shape.ts';

/** Longer values are cut in messages. */
const SHOWN = 40;

/** What is at a key path, as one would call it: `speed`, `an entry of receivers`, `paddock-cam`, `this cable`. */
export function whatIsAt(item: Item, keyPath: KeyPath): string {
  const last = keyPath[keyPath.length - 1];
  if (typeof last === 'string') return visible(last, SHOWN);
  const around = keyPath.length > 1 ? String(keyPath[keyPath.length - 2]) : item.name;
  if (last !== undefined) return `an entry of ${visible(around, SHOWN)}`;
  return item.name === ''
    ? `this ${under(sectionSchema(item.section) ?? {}, 0)?.title?.toLowerCase() ?? 'entry'}`
    : visible(item.name, SHOWN);
}

/** A value as a message shows it. */
export function shown(data: Data): string {
  if (Array.isArray(data)) return 'a list';
  if (typeof data === 'object' && data !== null) return 'a mapping';
  if (data === null) return 'nothing';
  return data === '' ? 'an empty text' : visible(String(data), SHOWN);
}

/** A value as written: a number may have more digits than a JavaScript number keeps. */
export function writtenAt(item: Item, keyPath: KeyPath, value: Data): string {
  const { piece, start, end } = placeOf(item, keyPath);
  return typeof value === 'number' ? visible(piece.text.slice(start, end), 60) : shown(value);
}

/** As `whatIsAt`, at the start of a sentence; keys and names stay as they are written. */
export function subjectAt(item: Item, keyPath: KeyPath): string {
  return whatIsAt(item, keyPath).replace(/^(?:an|this) /, capital);
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `speed:100 Mb/s` is one text for YAML: the entry that is meant, where the text begins with one of the keys. */
export function withSpace(text: string, keys: readonly string[]): string | undefined {
  const colon = text.indexOf(':');
  const key = text.slice(0, colon);
  const value = text.slice(colon + 1);
  return colon > 0 && keys.includes(key) && PLAIN.test(value) ? `${key}: ${value}` : undefined;
}

/** A value that needs no quotes. */
const PLAIN = /^[\w.][^:#,[\]{}\r\n]*$/;

/** A value in flow style, on one line. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${flowText(inner)}`)
      .join(', ')}}`;
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? scalarText(value, true)
    : '';
}

/** `, such as 1 Gb/s`: what the schema shows as an example at a place in an item. */
export function suchAs(item: Item, keyPath: KeyPath): string {
  const schema = schemaAt(item.section, item.name, keyPath);
  if (schema?.enum !== undefined) return '';
  const shownValue = schema?.examples?.[0];
  const example =
    shownValue !== undefined ? flowText(shownValue) : keyPath.length === 0 ? sectionExample(item) : undefined;
  return example === undefined ? '' : `, such as ${example}`;
}

/** The first item of the section's example. */
function sectionExample({ section }: Item): string | undefined {
  const example = sectionSchema(section)?.examples?.[0];
  if (typeof example !== 'object' || example === null) return undefined;
  const first: unknown = Object.values(example)[0];
  return first === undefined ? undefined : flowText(first);
}

const OF_NAME: Readonly<Record<NameKind, string>> = {
  'devices': 'the name of a device',
  'vlans': 'the name of a VLAN',
  'racks': 'the name of a rack',
  'multiplexes': 'the name of a multiplex',
  'services': 'the name of a service',
  'streams': 'the name of a stream',
  'volumes': 'the name of a volume',
  'recordings': 'the name of a recording',
  'rules': 'the name of a rule',
  'port-end': 'a port as device/port, or a device of one port',
  'own-port': 'the name of a port of the same device',
};

export const OF_FORM: Readonly<Record<FormKind, string>> = {
  'address': 'an IPv4 address: four numbers from 0 to 255 with dots between',
  'subnet': 'an IPv4 subnet: an address, a slash and the length of the prefix, 0 to 32',
  'address-range': 'two IPv4 addresses with a hyphen between',
  'group': 'an IPv4 address: four numbers from 0 to 255 with dots between',
  'mac': 'a MAC address: six pairs of hexadecimal digits with colons between',
  'time-zone': 'a time zone of the IANA database',
  'destination': 'a subnet with its prefix, or default',
  'frequency-range': 'two frequencies with a hyphen between and one unit, the lower one first',
};

/** What the schema wants: `true or false`, `a whole number`, `the name of a VLAN`. */
export function wanted(schema: Schema | undefined, expected: readonly string[] = types(schema)): string {
  if (schema?.enum !== undefined) return `one of ${schema.enum.join(', ')}`;
  const names = schema?.['x-names'];
  if (names !== undefined) return OF_NAME[names];
  const form = schema?.['x-form'];
  if (form !== undefined) return OF_FORM[form];
  if (schema?.['x-quantity'] !== undefined) return 'a number, a space and a unit';
  return expected.map((type) => OF_TYPE[type] ?? type).join(' or ');
}

function types(schema: Schema | undefined): readonly string[] {
  const type = schema?.type ?? [];
  return typeof type === 'string' ? [type] : type;
}

const OF_TYPE: Readonly<Record<string, string>> = {
  string: 'a text',
  integer: 'a whole number',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a mapping',
};

/** `a switch`, `an access-point`. */
export function kindWords(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
}

/** `a switch, a router or an access-point`. */
export function kindsList(kinds: readonly string[]): string {
  return list(kinds.map(kindWords), 'or');
}

/** Which kinds of device have a key, or which have not; `undefined` where all have. */
export function ofKinds(schema: Schema): string | undefined {
  const having = kindsWith(schema);
  const lacking = deviceKinds().filter((kind) => !having.includes(kind));
  if (lacking.length === 0) return undefined;
  return having.length <= lacking.length ? `Only of ${kindsList(having)}.` : `Not of ${kindsList(lacking)}.`;
}

/** The keys below which a key that is unknown here belongs: `vlan` of a device belongs to its `ports`. */
export function homesOf(schema: Schema, key: string): string[] {
  return Object.entries(schema.properties ?? {}).flatMap(([name, property]) => {
    const inner = resolved(property);
    if (inner === undefined) return [];
    const entries = [
      inner,
      resolved(inner.items),
      typeof inner.additionalProperties === 'object' ? resolved(inner.additionalProperties) : undefined,
    ];
    return entries.some((entry) => entry?.properties !== undefined && Object.hasOwn(entry.properties, key))
      ? [name]
      : [];
  });
}

/** The schema of the mapping at a key path; the section's own for a key of a section that has fixed keys. */
export function schemaAround(item: Item, keyPath: KeyPath): Schema | undefined {
  if (keyPath.length > 0) return schemaAt(item.section, item.name, keyPath.slice(0, -1));
  return SECTIONS[item.section] === 'fixed' ? sectionSchema(item.section) : undefined;
}
