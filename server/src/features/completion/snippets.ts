/** Ready-made items, such as a camera or a switch, filled in with what is free in the site. */

import { type Schema, resolved, sectionSchema, under } from '../../site/shape.ts';
import { scalarText } from '../../site/edit.ts';
import { fitting } from './fitting.ts';
import { type Offer, withoutTabStops } from './offer.ts';
import type { Wanted } from './wanted.ts';
import { blockText, flowText } from './yaml-text.ts';

/** The items that the schema has for a section, where a new item begins. */
export function sectionSnippets(wanted: Wanted): Offer[] {
  const { section, cursor } = wanted;
  const schema = section === undefined ? undefined : sectionSchema(section);
  if (schema === undefined || cursor.hasColon) return [];
  return (schema.defaultSnippets ?? []).map(({ label, description, body }) => {
    const filled = fill(wanted, schema, body);
    const insert = Array.isArray(filled)
      ? filled.map((element) => `- ${flowText(element, tabbed)}`).join('\n')
      : cursor.inFlow
        ? flowText(filled, tabbed).slice(1, -1)
        : items(filled as Readonly<Record<string, unknown>>);
    return offer(label, description, insert);
  });
}

/** A device that fits on a line stands on one; any other item has a line for each key. */
function items(body: Readonly<Record<string, unknown>>): string {
  return Object.entries(body)
    .map(([name, value]) => {
      const short = flowText(value, tabbed);
      const isSmall = withoutTabStops(short).length <= 90 && !short.includes('[{');
      return isSmall
        ? `${name}: ${short}`
        : `${name}:\n${blockText(value as Readonly<Record<string, unknown>>, '  ', tabbed)}`;
    })
    .join('\n');
}

/** The same, on one line, where the item's name or the dash of a list stands already. */
export function exampleOffers(wanted: Wanted, schema: Schema): Offer[] {
  const { section, cursor } = wanted;
  const around = section === undefined ? undefined : sectionSchema(section);
  if (around?.defaultSnippets !== undefined && cursor.path.length === 2) {
    return around.defaultSnippets.flatMap(({ label, description, body }) => {
      const filled: unknown = Object.values(fill(wanted, around, body) as object)[0];
      return filled === undefined ? [] : [offer(label, description, flowText(filled, tabbed))];
    });
  }
  const examples = (schema.examples ?? []).filter((example) => typeof example === 'object');
  if (examples.length === 0 && schema.required !== undefined) return [withRequired(schema.required)];
  return examples.map((example) => ({
    label: flowText(example),
    kind: 'snippet',
    detail: 'for example',
    insert: flowText(example),
  }));
}

/** A mapping with the keys that it needs, their values still to come. */
function withRequired(keys: readonly string[]): Offer {
  const insert = `{${keys.map((key, index) => `${key}: $${index + 1}`).join(', ')}}`;
  return {
    label: `{${keys.join(', ')}}`,
    kind: 'snippet',
    detail: 'with what it needs',
    insert,
    isSnippet: true,
    goesOn: true,
  };
}

function offer(label: string, description: string | undefined, insert: string): Offer {
  return {
    label,
    kind: 'snippet',
    detail: description,
    documentation: `\`\`\`yaml\n${withoutTabStops(insert)}\n\`\`\``,
    insert,
    isSnippet: true,
  };
}

/** The body with the site's own names and free addresses at its tab stops, where the schema says what they are. */
function fill(wanted: Wanted, schema: Schema, body: unknown): unknown {
  const replaced = ownName(wanted, body);
  const walk = (inner: Schema | undefined, value: unknown, role: string, kind: string): unknown => {
    if (Array.isArray(value))
      return value.map((element) => walk(inner === undefined ? undefined : under(inner, 0), element, role, kind));
    if (typeof value === 'object' && value !== null) {
      const object = value as Readonly<Record<string, unknown>>;
      const own = typeof object['kind'] === 'string' ? object['kind'] : kind;
      return Object.fromEntries(
        Object.entries(object).map(([key, at]) => [
          stops(key),
          walk(inner === undefined ? undefined : under(inner, key), at, key, own),
        ]),
      );
    }
    if (typeof value === 'string' && /^\$\{\d+:[^{}]*\}./.test(value)) return stops(value);
    const stop = typeof value === 'string' ? /^(\^?)\$\{(\d+):([^{}]*)\}$/.exec(value) : null;
    if (stop === null) return value;
    const [, number = '', index = '', text = ''] = stop;
    if (inner !== undefined && !replaced.has(index)) {
      const used = [...replaced.values()];
      const fits = fitting(wanted, inner, role, kind);
      // A name of the example that the site has too is as good as any.
      const own =
        inner['x-names'] !== undefined && fits.includes(text)
          ? text
          : fits.find((candidate) => !used.includes(candidate));
      replaced.set(index, own ?? text);
    }
    return `${number}\${${index}:${replaced.get(index) ?? text}}`;
  };
  const stops = (text: string): string =>
    text.replace(/\$\{(\d+):([^{}]*)\}/g, (whole, index: string) => {
      const own = replaced.get(index);
      return own === undefined ? whole : `\${${index}:${own}}`;
    });
  return walk(resolved(schema), body, '', '');
}

/** The item's own tab stop, with a name that no other item of the section has. */
function ownName({ section, site }: Wanted, body: unknown): Map<string, string> {
  const [, index, name] = /^\$\{(\d+):([^{}]*)\}$/.exec(Object.keys(body as object)[0] ?? '') ?? [];
  if (index === undefined || name === undefined) return new Map();
  const taken = new Set(site.items.filter((item) => item.section === section).map((item) => item.name));
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${name}-${number}`;
  return new Map([[index, free]]);
}

/** A scalar of a body: with a caret it is a number, and is not quoted. */
function tabbed(value: unknown): string {
  if (typeof value !== 'string') return String(value);
  const plain = withoutTabStops(value);
  const isWhole = /^\$\{\d+:[^{}]*\}$/.test(value);
  if (value.startsWith('^')) return value.slice(1);
  if (isWhole && scalarText(plain, true) === plain) return value;
  const quoted = scalarText(plain, true);
  return quoted === plain ? value : `"${value}"`;
}
