/** Whether a value is at fault only because it is not typed to its end: more characters can make it right. */

import { begins } from '../text/nearest.ts';
import { type QuantityKind, unitsOf } from '../text/quantity.ts';
import type { Data } from '../text/syntax.ts';
import type { FormKind, Schema } from './shape.ts';

/** Whether it is the beginning of a number, a space and a unit, or a unit whose number was taken out. */
export function beginsQuantity(text: string, kind: QuantityKind): boolean {
  const match = /^-?(?:\d+(?:\.\d*)?(?: (.*))?)?$/u.exec(text);
  if (match === null) return unitsOf(kind).includes(text);
  return match[1] === undefined || match[1] === '' || begins(match[1], unitsOf(kind));
}

/** Whether a value that does not fit its schema may fit once more is typed. */
export function beginsWhat(schema: Schema | undefined, found: Data): boolean {
  if (typeof found === 'object') return true; // Empty: something may come into it.
  const text = String(found);
  const form = schema?.['x-form'];
  if (form !== undefined) return FORMS[form].test(text);
  if (schema?.title === 'Picture size') return /^\d*x?\d*$/.test(text);
  // Typing on does not mend a name with a character that no name has.
  return schema?.['x-names'] === 'port-end' ? /^[\w-]*\/?[\w-]*$/.test(text) : text === '' || /^[-_]+$/.test(text);
}

const OCTET = '(?:25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d)';
/** An address, or what it begins with. */
const ADDRESS = `(?:${OCTET}\\.){0,3}${OCTET}?`;
const WHOLE = `(?:${OCTET}\\.){3}${OCTET}`;

const FORMS: Readonly<Record<FormKind, RegExp>> = {
  'address': new RegExp(`^${ADDRESS}$`),
  'group': new RegExp(`^${ADDRESS}$`),
  'subnet': new RegExp(`^(?:${ADDRESS}|${WHOLE}/[0-3]?)$`),
  'destination': new RegExp(`^(?:${ADDRESS}|${WHOLE}/[0-3]?|d|de|def|defa|defau|defaul)$`),
  'address-range': new RegExp(`^(?:${ADDRESS}|${WHOLE}-${ADDRESS})$`),
  'mac': /^(?:[\da-f]{2}:){0,5}[\da-f]{0,2}$/i,
  'time-zone': /^[A-Za-z][\w+-]*(?:\/[\w+-]*){0,2}$/,
  'frequency-range': /^[\d.]+(?:-(?:[\d.]+(?: (?:[MG]H?)?)?)?)?$/,
};
