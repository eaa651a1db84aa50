/** Keys that a mapping may still have: words of the language, names that are keys, and ports. */

import { type Schema, deviceKinds, kindsWith, under } from '../../site/shape.ts';
import { portNames } from '../../site/port-names.ts';
import { describeOffer, firstSentence } from './describe.ts';
import { fitsBeside } from './beside-ports.ts';
import { nameOffers } from './names.ts';
import type { Offer } from './offer.ts';
import { isList, isMapping, isText } from './types.ts';
import { type CompletionContext, textAtCursor } from './wanted.ts';

/** Required keys first, then in the order of the schema. */
export function keyOffers(wanted: CompletionContext, schema: Schema): Offer[] {
  const { cursor, section } = wanted;
  const required = new Set(schema.required);
  const isDevice = section === 'devices' && cursor.path.length === 2;
  const kind = section === 'devices' ? textAtCursor(wanted, ['kind']) : undefined;
  const taken = new Set(cursor.path.length > 0 ? cursor.keys : [...cursor.keys, ...sectionsOf(wanted)]);
  const names = Object.keys(schema.properties ?? {}).filter(
    (name) => !taken.has(name) && isOfKind(schema, name, kind) && (!isDevice || fitsBeside(name, kind, cursor.keys)),
  );
  const ordered = [...names.filter((name) => required.has(name)), ...names.filter((name) => !required.has(name))];
  return [
    ...ordered.flatMap((name) => keyOffer(wanted, schema, name, required.has(name)) ?? []),
    ...freeKeys(wanted, schema),
  ];
}

/** The sections that the file has. */
function sectionsOf({ file }: CompletionContext): string[] {
  return [...file.cut.headers.flatMap(({ section }) => section ?? []), ...file.items.map(({ section }) => section)];
}

/** Whether devices of that kind have the key; true while the kind is unknown. */
function isOfKind(schema: Schema, name: string, kind: string | undefined): boolean {
  const value = under(schema, name);
  return value === undefined || kind === undefined || !deviceKinds().includes(kind) || kindsWith(value).includes(kind);
}

function keyOffer(wanted: CompletionContext, schema: Schema, name: string, isRequired: boolean): Offer | undefined {
  const value = under(schema, name);
  if (value === undefined) return undefined;
  return {
    label: name,
    kind: wanted.cursor.path.length === 0 ? 'section' : 'key',
    detail: `${isRequired ? 'required · ' : ''}${firstSentence(value.description)}`,
    documentation: describeOffer(value),
    ...insertion(wanted, name, value),
  };
}

function insertion(
  { cursor }: CompletionContext,
  key: string,
  value: Schema,
): Pick<Offer, 'insert' | 'isSnippet' | 'goesOn'> {
  if (cursor.hasColon) return { insert: key };
  if (isMapping(value) && !isText(value))
    return { insert: cursor.inFlow ? `${key}: {$0}` : `${key}:\n  $0`, isSnippet: true, goesOn: true };
  if (!isList(value)) return { insert: `${key}: `, goesOn: true };
  const element = under(value, 0);
  const below = !cursor.inFlow && element !== undefined && isMapping(element);
  return { insert: below ? `${key}:\n  - $0` : `${key}: [$0]`, isSnippet: true, goesOn: true };
}

/** Keys that are names of the site: VLANs of a router's legs, rules, the next ports. */
function freeKeys(wanted: CompletionContext, schema: Schema): Offer[] {
  const { cursor, section, keyPath } = wanted;
  const value = typeof schema.additionalProperties === 'object' ? under(schema, '') : undefined;
  if (value === undefined) return [];
  if (section === 'devices' && cursor.path.length === 3 && keyPath[0] === 'ports') return portKeys(wanted, value);
  const names = schema.propertyNames === undefined ? undefined : under({ items: schema.propertyNames }, 0)?.['x-names'];
  if (names === undefined) return [];
  return nameOffers(wanted, names)
    .filter(({ label }) => !cursor.keys.includes(label))
    .map((offer) => ({ ...offer, ...insertion(wanted, offer.insert ?? offer.label, value) }));
}

/** The next number, alone and as a range of eight, or the usual name of a host's port. */
function portKeys(wanted: CompletionContext, port: Schema): Offer[] {
  const { cursor } = wanted;
  const kind = textAtCursor(wanted, ['kind']);
  const numbers = cursor.keys
    .flatMap(portNames)
    .map(Number)
    .filter((number) => !Number.isNaN(number));
  const next = Math.max(0, ...numbers) + 1;
  const isHost = kind === 'server' || kind === 'computer' || kind === 'router';
  const names = isHost
    ? ['lan', 'cams', 'eth'].filter((name) => !cursor.keys.includes(name))
    : [String(next), `${next}-${next + 7}`];
  return names.map((name): Offer => ({
    label: name,
    kind: 'ports',
    detail: name.includes('-') ? 'eight ports alike' : 'a port',
    documentation: describeOffer(port),
    ...(cursor.hasColon ? {} : { insert: `${name}: {$0}`, isSnippet: true, goesOn: true }),
  }));
}
