/** Units behind a number, and usual amounts where there is none yet. */

import { type QuantityKind, unitsOf } from '../../text/quantity.ts';
import type { Schema } from '../../site/shape.ts';
import type { Offer } from './offer.ts';

/** Usual amounts by key, the commonest first; common practice, no source. Ethernet speeds are those of IEEE 802.3. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  'speed': ['1 Gb/s', '100 Mb/s', '2.5 Gb/s', '10 Gb/s', '10 Mb/s'],
  'keyframe-interval': ['1 s', '2 s', '4 s'],
  'segment': ['60 s', '5 min', '15 min', '1 h'],
  'keep': ['7 d', '14 d', '30 d'],
  'at-least': ['7 d', '14 d', '30 d'],
  'at-most': ['14 d', '30 d', '90 d'],
  'capacity': ['2 TB', '4 TB', '8 TB', '12 TB', '16 TB'],
  'reserve': ['5 %', '10 %'],
  'warn': ['70 %', '80 %'],
  'limit': ['90 %', '95 %'],
  'sample-rate': ['8 kHz', '16 kHz', '44.1 kHz', '48 kHz'],
};

export function quantityOffers(kind: QuantityKind, key: string, typed: string, schema: Schema): Offer[] {
  const number = /^\s*(\d+(?:\.\d+)?)/.exec(typed)?.[1];
  if (number !== undefined)
    return unitsOf(kind).map((unit) => ({ label: `${number} ${unit}`, kind: 'quantity', detail: UNIT_WORDS[unit] }));
  const examples = (schema.examples ?? []).filter((example) => typeof example === 'string');
  const units: readonly string[] = unitsOf(kind);
  // One key may be a time here and watts there.
  const ofKind = (USUAL[key] ?? []).filter((text) => units.includes(text.slice(text.indexOf(' ') + 1)));
  const usual = [...new Set([...ofKind, ...examples])];
  return usual.map((text) => ({ label: text, kind: 'quantity' }));
}

const UNIT_WORDS: Readonly<Record<string, string>> = {
  'b/s': 'bits per second',
  'kb/s': '1000 bits per second',
  'Mb/s': 'a million bits per second',
  'Gb/s': 'a thousand million bits per second',
  'ms': 'milliseconds',
  's': 'seconds',
  'min': 'minutes',
  'h': 'hours',
  'd': 'days',
  'm': 'metres',
  'mm': 'millimetres',
  'kg': 'kilograms',
  'g': 'grams',
  'W': 'watts',
  '%': 'of the whole',
  'B': 'bytes',
  'kB': '1000 bytes',
  'MB': 'a million bytes',
  'GB': 'a thousand million bytes',
  'TB': 'a million million bytes',
  'KiB': '1024 bytes',
  'MiB': '1024 KiB',
  'GiB': '1024 MiB',
  'TiB': '1024 GiB',
};
