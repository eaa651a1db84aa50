/** Ready-made items, such as a camera or a switch, filled in with what is free in the site. */

import { type Schema, sectionSchema, under } from '../../site/shape.ts';
import { scalarText } from '../../site/edit.ts';
import { filled } from './fill.ts';
import { suggestedKinds } from './likely-kinds.ts';
import { type Offer, withoutTabStops } from './offer.ts';
import type { CompletionContext } from './wanted.ts';
import { blockText, flowText } from './yaml-text.ts';

/** The example items that the schema has for a section, where a new item begins. */
export function sectionSnippets(wanted: CompletionContext): Offer[] {
  const { section, cursor } = wanted;
  const schema = section === undefined ? undefined : sectionSchema(section);
  if (schema === undefined || cursor.hasColon) return [];
  return (schema.defaultSnippets ?? []).map(({ label, description, body }) => {
    const whole = filled(wanted, schema, body);
    const insert = Array.isArray(whole)
      ? whole.map((element) => `- ${flowText(element, tabbed)}`).join('\n')
      : cursor.inFlow
        ? flowText(whole, tabbed).slice(1, -1)
        : items(whole as Readonly<Record<string, unknown>>);
    return offer(label, description, insert);
  });
}

/** A device that fits is on one line; any other item has a line for each key. */
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

/** Devices of the likeliest kinds first. */
function inOrder(
  wanted: CompletionContext,
  snippets: NonNullable<Schema['defaultSnippets']>,
): NonNullable<Schema['defaultSnippets']> {
  if (wanted.section !== 'devices') return snippets;
  const [likeliest] = suggestedKinds(wanted);
  const isLikely = ({ body }: { readonly body: unknown }): boolean =>
    Object.values(body as Record<string, { readonly kind: string }>)[0]?.kind === likeliest;
  return [...snippets.filter(isLikely), ...snippets.filter((snippet) => !isLikely(snippet))];
}

/** Examples on one line, where the item's name or the dash of a list stands already. */
export function exampleOffers(wanted: CompletionContext, schema: Schema): Offer[] {
  const { section, cursor } = wanted;
  const around = section === undefined ? undefined : sectionSchema(section);
  if (around?.defaultSnippets !== undefined && cursor.path.length === 2) {
    return inOrder(wanted, around.defaultSnippets).flatMap(({ label, description, body }) => {
      const whole: unknown = Object.values(filled(wanted, around, body) as object)[0];
      return whole === undefined ? [] : [offer(label, description, flowText(whole, tabbed))];
    });
  }
  const examples = (schema.examples ?? []).filter(
    (example) => typeof example === 'object' && !namesSomething(schema, example),
  );
  if (examples.length === 0 && schema.required !== undefined) return [withRequired(schema.required)];
  return examples.map((example) => ({
    label: flowText(example),
    kind: 'snippet',
    detail: 'for example',
    insert: flowText(example),
  }));
}

/** Whether an example has names, which the site may lack. */
function namesSomething(schema: Schema | undefined, example: unknown): boolean {
  if (Array.isArray(example)) return example.some((one) => namesSomething(under(schema ?? {}, 0), one));
  if (typeof example !== 'object' || example === null) return schema?.['x-names'] !== undefined;
  const keys = schema?.propertyNames === undefined ? undefined : under({ items: schema.propertyNames }, 0);
  return (
    keys?.['x-names'] !== undefined ||
    Object.entries(example).some(([key, value]) => namesSomething(under(schema ?? {}, key), value))
  );
}

/** A mapping with its required keys, their values still to be typed. */
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

function offer(label: string, description: string | undefined, body: string): Offer {
  const insert = emptyFirst(body);
  return {
    label,
    kind: 'snippet',
    detail: description,
    documentation: `\`\`\`yaml\n${withoutTabStops(insert)}\n\`\`\``,
    insert,
    isSnippet: true,
    // A name is chosen next where the first tab stop of all is empty.
    ...(/^[^$]*\$\{\d+:\}/.test(insert) && { goesOn: true }),
  };
}

/** Tab stops numbered anew: the item's own name, then what is still to be typed, then what may be changed. */
function emptyFirst(insert: string): string {
  const stops = [...insert.matchAll(/\$\{(\d+):([^{}]*)\}/g)].map(([, index = '', text]) => ({
    index,
    rank: insert.startsWith(`\${${index}:`) ? 0 : text === '' ? 1 : 2,
  }));
  const indices = new Set(
    stops.sort((a, b) => a.rank - b.rank || Number(a.index) - Number(b.index)).map(({ index }) => index),
  );
  const anew = new Map([...indices].map((index, position) => [index, position + 1]));
  return insert.replace(/\$\{(\d+):/g, (_, index: string) => `\${${anew.get(index) ?? index}:`);
}

/** A scalar of a body: with a caret it is a number, and is not quoted. */
function tabbed(value: unknown): string {
  if (typeof value !== 'string') return String(value);
  const plain = withoutTabStops(value);
  if (plain === '') return value;
  const isWhole = /^\$\{\d+:[^{}]*\}$/.test(value);
  if (value.startsWith('^')) return value.slice(1);
  if (isWhole && scalarText(plain, true) === plain) return value;
  const quoted = scalarText(plain, true);
  return quoted === plain ? value : `"${value}"`;
}
