/** Checks an item against the schema, lists what does not fit, and keeps what does. */

import { NONE } from '../none.ts';
import { type Data, type KeyPath, dataAt, emptyMapping } from '../text/syntax.ts';
import { type Schema, type SectionName, SECTIONS, deviceKinds, keysOf, schemaAt, sectionSchema } from './shape.ts';
import { isQuantity, readPositive } from '../text/quantity.ts';
import * as generated from './schema.generated/validate.js';

export type ShapeProblem = { readonly keyPath: KeyPath } & (
  | { readonly problem: 'unknown-key'; readonly key: string; readonly allowed: readonly string[] }
  | { readonly problem: 'not-of-kind'; readonly key: string }
  | { readonly problem: 'missing-key'; readonly key: string }
  | { readonly problem: 'wrong-type'; readonly expected: readonly string[]; readonly found: Data }
  | {
      readonly problem: 'not-allowed';
      readonly found: Data;
      readonly allowed: readonly (string | number | boolean)[];
      readonly also: Schema['x-also'];
    }
  | { readonly problem: 'out-of-range'; readonly found: Data; readonly bound: string }
  | { readonly problem: 'bad-name'; readonly name: string }
  | { readonly problem: 'malformed'; readonly found: Data; readonly schema: Schema | undefined }
  | { readonly problem: 'repeated'; readonly found: Data }
);

/** What ajv's standalone validators report; the part that is read here. */
export interface ValidationError {
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly propertyName?: string;
}

export interface Validator {
  (data: unknown): boolean;
  errors?: readonly ValidationError[] | null;
}

const validators: Readonly<Record<SectionName, Validator>> = generated;

/** Never throws or changes `data`; the result shares what fits. */
export function validate(
  section: SectionName,
  name: string,
  data: Data,
): { data: Data; problems: readonly ShapeProblem[] } {
  const fixed = SECTIONS[section] === 'fixed';
  const subject: Data = fixed ? named(name, data) : data;
  const validator = validators[section];
  if (validator(subject)) return { data, problems: NONE };
  const problems: ShapeProblem[] = [];
  const dropped: KeyPath[] = [];
  for (const error of validator.errors ?? []) {
    const keyPath = keyPathOf(error.instancePath, subject);
    const isSection = fixed && keyPath.length === 0;
    if (isSection && error.keyword !== 'additionalProperties') continue;
    const inner = fixed ? keyPath.slice(1) : keyPath;
    const schema = schemaAt(section, name, inner);
    const around = isSection ? sectionSchema(section) : schema;
    const found = at(subject, keyPath);
    const read = readError({
      error,
      keyPath: inner,
      found,
      schema,
      around,
      isSection,
      isOfKnownKind: isOfKnownKind(data),
    });
    if (read === undefined) continue;
    if (read.problem !== undefined) problems.push(read.problem);
    if (read.drops !== undefined) dropped.push(read.drops);
  }
  return { data: pruned(data, dropped), problems: distinct(problems) };
}

const KINDS: ReadonlySet<unknown> = new Set(deviceKinds());

function isOfKnownKind(data: Data): boolean {
  return KINDS.has(dataAt(data, ['kind']));
}

function named(name: string, data: Data): Data {
  const object = emptyMapping();
  object[name] = data;
  return object;
}

interface Located {
  readonly error: ValidationError;
  /** Where in the item. */
  readonly keyPath: KeyPath;
  readonly found: Data;
  readonly schema: Schema | undefined;
  /** The schema of the mapping that an unknown key is in. */
  readonly around: Schema | undefined;
  /** The key of the item itself is unknown in its section. */
  readonly isSection: boolean;
  readonly isOfKnownKind: boolean;
}

/** What a validator's error means, and which data is left out for it; `undefined` if another error covers it. */
function readError({
  error,
  keyPath,
  found,
  schema,
  around,
  isSection,
  isOfKnownKind,
}: Located): { readonly problem?: ShapeProblem; readonly drops?: KeyPath } | undefined {
  const { params } = error;
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params['additionalProperty']);
      const below = isSection ? keyPath : [...keyPath, key];
      const allowed = around === undefined ? [] : keysOf(around);
      return { problem: { problem: 'unknown-key', keyPath: below, key, allowed }, drops: below };
    }
    case 'false schema':
      // A device of no known kind may have any key.
      if (!isOfKnownKind) return undefined;
      return { problem: { problem: 'not-of-kind', keyPath, key: String(keyPath[keyPath.length - 1]) }, drops: keyPath };
    case 'required':
      return { problem: { problem: 'missing-key', keyPath, key: String(params['missingProperty']) } };
    case 'type':
      return { problem: { problem: 'wrong-type', keyPath, expected: list(params['type']), found }, drops: keyPath };
    case 'enum':
    case 'const':
      // A quantity that cannot be read is reported as such.
      if (schema?.['x-quantity'] !== undefined && !isQuantity(readPositive(String(found), schema['x-quantity'])))
        return { drops: keyPath };
      return {
        problem: {
          problem: 'not-allowed',
          keyPath,
          found,
          allowed: allowedIn(error, schema),
          also: (schema?.then ?? schema)?.['x-also'],
        },
        drops: keyPath,
      };
    case 'minimum':
    case 'maximum':
    case 'exclusiveMinimum':
    case 'exclusiveMaximum':
    case 'multipleOf':
      return { problem: { problem: 'out-of-range', keyPath, found, bound: boundWords(error) }, drops: keyPath };
    case 'propertyNames': {
      const name = String(params['propertyName']);
      return { problem: { problem: 'bad-name', keyPath: [...keyPath, name], name } };
    }
    case 'uniqueItems': {
      const again = Math.max(Number(params['i']), Number(params['j']));
      return { problem: { problem: 'repeated', keyPath: [...keyPath, again], found: element(found, again) } };
    }
    case 'pattern':
    case 'minLength':
    case 'maxLength':
    case 'minItems':
    case 'minProperties':
      if (error.propertyName !== undefined) return undefined; // `propertyNames` reports it.
      // Text in place of a number is a number in quotes, or not a number at all.
      if (typeof found === 'string' && schema?.type?.includes('integer') === true)
        return { problem: { problem: 'wrong-type', keyPath, expected: ['integer'], found }, drops: keyPath };
      // A quantity that cannot be read is reported from its mention, with what is wrong with it.
      return schema?.['x-quantity'] === undefined
        ? { problem: { problem: 'malformed', keyPath, found, schema }, drops: keyPath }
        : { drops: keyPath };
    default:
      return undefined; // `if`, `$ref` and the like only lead to what is reported above.
  }
}

function allowedIn({ params }: ValidationError, schema: Schema | undefined): readonly (string | number | boolean)[] {
  const listed = params['allowedValues'];
  return Array.isArray(listed)
    ? listed.filter((value) => ['string', 'number', 'boolean'].includes(typeof value))
    : (schema?.enum ?? []);
}

function boundWords({ keyword, params }: ValidationError): string {
  const limit = String(params['limit'] ?? params['multipleOf']);
  switch (keyword) {
    case 'minimum':
      return `at least ${limit}`;
    case 'maximum':
      return `at most ${limit}`;
    case 'exclusiveMinimum':
      return `more than ${limit}`;
    case 'exclusiveMaximum':
      return `less than ${limit}`;
    default:
      return `a multiple of ${limit}`;
  }
}

function list(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.map(String) : String(value).split(',');
}

function element(data: Data, index: number): Data {
  return Array.isArray(data) ? (data[index] ?? null) : null;
}

/** A JSON pointer (RFC 6901) as a key path; steps into lists become numbers. */
function keyPathOf(pointer: string, data: Data): KeyPath {
  const keyPath: (string | number)[] = [];
  let current: Data | undefined = data;
  for (const part of pointer.split('/').slice(1)) {
    const step = part.replaceAll('~1', '/').replaceAll('~0', '~');
    if (Array.isArray(current)) {
      keyPath.push(Number(step));
      current = current[Number(step)];
    } else {
      keyPath.push(step);
      current = dataAt(current, [step]);
    }
  }
  return keyPath;
}

function at(data: Data, keyPath: KeyPath): Data {
  return dataAt(data, keyPath) ?? null;
}

/** A copy without the values at the key paths; an element of a list becomes null, so that the others keep their index. */
function pruned(data: Data, keyPaths: readonly KeyPath[]): Data {
  if (keyPaths.some((keyPath) => keyPath.length === 0)) return null;
  if (keyPaths.length === 0 || typeof data !== 'object' || data === null) return data;
  const inside = new Map<string | number, KeyPath[]>();
  for (const [step = '', ...rest] of keyPaths) {
    const below = inside.get(step);
    if (below === undefined) inside.set(step, [rest]);
    else below.push(rest);
  }
  const below = (step: string | number): KeyPath[] => inside.get(step) ?? [];
  if (Array.isArray(data)) {
    return data.map((value, index) => pruned(value, below(index)));
  }
  const copy = emptyMapping();
  for (const [key, value] of Object.entries(data)) {
    const inner = below(key);
    if (!inner.some((keyPath) => keyPath.length === 0)) copy[key] = pruned(value, inner);
  }
  return copy;
}

/** One problem for each place: the first of several type errors, which names all the types. */
function distinct(problems: ShapeProblem[]): ShapeProblem[] {
  const seen = new Set<string>();
  return problems.filter((problem) => {
    const key =
      problem.problem === 'missing-key' ? `${problem.keyPath.join('/')}?${problem.key}` : problem.keyPath.join('/');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
