/** Scalars: words of the schema, names, free addresses and numbers, amounts with their units. */

import { mediumAt } from '../../site/cable.ts';
import { connectorAt, portAt } from '../../site/model.ts';
import { readEnd } from '../../site/read.ts';
import type { Schema } from '../../site/shape.ts';
import { addressOffers, numberOffers } from './addresses.ts';
import { acceptedOffers } from './accepted.ts';
import { nameOffers, roleOf } from './names.ts';
import { likelyKinds } from './likely-kinds.ts';
import type { Offer } from './offer.ts';
import { quantityOffers } from './quantities.ts';
import { transmissionOffers } from './transmission.ts';
import { isTruth } from './types.ts';
import { type CompletionContext, textAtCursor } from './wanted.ts';
import { scalarOf } from './yaml-text.ts';

export function valueOffers(wanted: CompletionContext, schema: Schema): Offer[] {
  const names = schema['x-names'];
  if (names !== undefined) return nameOffers(wanted, names);
  const quantity = schema['x-quantity'];
  if (quantity !== undefined) return quantityOffers(quantity, roleOf(wanted), wanted.typed, schema);
  const form = schema['x-form'];
  if (form !== undefined) return addressOffers(wanted, form);
  if (isTruth(schema)) return truths(schema);
  const ofSystem = transmissionOffers(wanted);
  if (ofSystem !== undefined) return ofSystem;
  const words = wordsOf(schema);
  const { section, keyPath } = wanted;
  if (section === 'devices' && keyPath.length === 1 && keyPath[0] === 'kind') return kinds(wanted, words);
  if (section === 'cables' && keyPath.length === 1 && keyPath[0] === 'type') return cableTypes(wanted, words);
  if (words.length > 0) return words;
  if (section === 'lint' && keyPath[keyPath.length - 1] === 'at') return acceptedOffers(wanted);
  const numbers = numberOffers(wanted);
  return numbers.length > 0 ? numbers : examples(schema);
}

function truths({ default: without }: Schema): Offer[] {
  return [true, false].map((value) => ({
    label: String(value),
    kind: 'word',
    ...(value === without && { detail: 'as without the key' }),
  }));
}

/** Cable types that fit the ports at the ends first; cat6 is the commonest. */
function cableTypes(wanted: CompletionContext, words: readonly Offer[]): Offer[] {
  const { site } = wanted;
  const ends = ['from', 'to'].map((key) => readEnd(textAtCursor(wanted, [key]), []));
  const media = ends.flatMap((end) => {
    const port = portAt(site, end);
    return port === undefined ? [] : (mediumAt(port) ?? []);
  });
  const fits = ends.some((end) => connectorAt(site, end) !== undefined)
    ? /^coax/
    : media.includes('single-mode')
      ? /^os/
      : media.includes('multimode')
        ? /^om/
        : /^cat6$/;
  return [...words.filter(({ label }) => fits.test(label)), ...words.filter(({ label }) => !fits.test(label))];
}

/** The kinds that the device can be, the likeliest first. */
function kinds(wanted: CompletionContext, words: readonly Offer[]): Offer[] {
  return likelyKinds(wanted).flatMap((kind) => words.find(({ label }) => label === kind) ?? []);
}

/** The words that the schema lists, in its order. */
function wordsOf(schema: Schema): Offer[] {
  const listed = schema.enum === undefined ? schema.then : schema;
  return (listed?.enum ?? []).map((value, index) => ({
    label: String(value),
    kind: 'word',
    detail: value === listed?.default ? 'as without the key' : undefined,
    documentation: listed?.enumDescriptions?.[index],
    insert: scalarOf(value),
  }));
}

/** Nothing is offered for free text. */
function examples({ examples: given = [], type, pattern }: Schema): Offer[] {
  if (type === 'string' && pattern === undefined) return [];
  return given
    .filter((example) => typeof example !== 'object')
    .map((example) => ({ label: scalarOf(example), kind: 'number', detail: 'for example' }));
}
