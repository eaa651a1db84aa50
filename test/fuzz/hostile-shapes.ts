/**
 * Shapes of hostile text: things that a site declares once are repeated thousands of times, alike or not, in every
 * section and form that the schema allows; and so are elements of YAML. A shape gives a text of any size.
 */

import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };
import { isMapping } from '../../server/src/text/syntax.ts';
import type { Texts } from '../site.ts';
import type { Random } from './random.ts';

export interface Shape {
  readonly title: string;
  /** A site of about so many characters. */
  readonly texts: (size: number) => Texts;
}

type Schema = Readonly<Record<string, unknown>>;
/** A value as it is written in entry `i` of `n`. */
type Value = (i: number, n: number) => string;

export function shapeAtRandom(random: Random): Shape {
  return random.chance(0.3) ? repeated(random) : declared(random);
}

/** Sections of many entries. */
function declared(random: Random): Shape {
  const names = random.some(SECTIONS, 1 + random.below(4));
  const sections = names.map((name) => sectionAtRandom(random, name));
  const parts = random.pick([1, 1, 1, 1, 40]);
  return {
    title: `${sections.map(({ title }) => title).join('; ')}; in ${parts} files`,
    texts(size) {
      const own = Math.max(1, Math.floor(size / sections.length / parts));
      const texts: Record<string, string> = {};
      for (let part = 0; part < parts; part++)
        texts[`${part}.site.yaml`] = sections.map(({ text }) => text(own, part)).join('');
      return texts;
    },
  };
}

interface Section {
  readonly title: string;
  readonly text: (size: number, part: number) => string;
}

/** Of an entry as long as ten lines at least, so that there are many. */
const SECTIONS = Object.keys(siteSchema.properties).filter((name) => name !== 'site');
const LETTER: Readonly<Record<string, string>> = {
  vlans: 'v',
  devices: 'd',
  multiplexes: 'm',
  services: 'p',
  occasions: 'o',
  streams: 's',
  traffic: 't',
  volumes: 'w',
  recordings: 'r',
};

function sectionAtRandom(random: Random, name: string): Section {
  const schema = resolved(property(siteSchema, name));
  if (property(schema, name === 'policies' ? 'retention' : 'accept') !== undefined)
    return insideOf(random, name, schema);
  const isList = schema['type'] === 'array';
  const entry = valueAtRandom(random, resolved(isList ? schema['items'] : schema['additionalProperties']), 0);
  const key = random.chance(0.1) ? 'a' : (LETTER[name] ?? 'x');
  const keyed: Value = (i, n) => (key === 'a' ? `a: ${entry(i, n)}` : `${key}${i}: ${entry(i, n)}`);
  const form = random.pick(['lines', 'lines', 'flow', 'flow on lines']);
  return {
    title: `${name} in ${form}${isList ? '' : ` by ${key}`}, as ${clipped((isList ? entry : keyed)(1, 2))}`,
    text: (size, part) => {
      const write = isList ? entry : keyed;
      const each = write(1, 100).length + 6;
      const n = Math.max(1, Math.floor(size / each));
      const entries = Array.from({ length: n }, (_, i) => write(part * n + i, n));
      if (form === 'lines') return `${name}:\n${entries.map((one) => `  ${isList ? '- ' : ''}${one}\n`).join('')}`;
      const [open, close] = isList ? ['[', ']'] : ['{', '}'];
      return `${name}: ${open}${entries.join(form === 'flow' ? ', ' : ',\n  ')}${close}\n`;
    },
  };
}

/** Policies and what a site accepts: many entries of one of its lists or mappings. */
function insideOf(random: Random, name: string, schema: Schema): Section {
  const inner = name === 'policies' ? 'retention' : random.pick(['rules', 'accept']);
  const own = resolved(property(schema, inner));
  const isList = own['type'] === 'array';
  const entry = valueAtRandom(random, resolved(isList ? own['items'] : own['additionalProperties']), 0);
  const write: Value = isList ? (i, n) => `    - ${entry(i, n)}\n` : (i, n) => `    x${i}: ${entry(i, n)}\n`;
  return {
    title: `${name} ${inner}, as ${clipped(write(1, 2).trim())}`,
    text: (size) => {
      const n = Math.max(1, Math.floor(size / (write(1, 100).length + 2)));
      return `${name}:\n  ${inner}:\n${Array.from({ length: n }, (_, i) => write(i, n)).join('')}`;
    },
  };
}

function valueAtRandom(random: Random, given: unknown, depth: number): Value {
  const schema = resolved(given);
  if (random.chance(0.03))
    return always(random.pick(['{}', '[]', 'null', '"', '!!str x', '*a', '&a x', '- 1', 'x: y', '~']));
  const names = schema['x-names'];
  if (typeof names === 'string') return nameAtRandom(random, names);
  const { enum: words, properties, items, additionalProperties } = schema;
  if (Array.isArray(words)) {
    const [own, others] = [random.pick(words as string[]), words as string[]];
    return random.chance(0.8) ? always(String(own)) : (i) => String(others[i % others.length]);
  }
  if (isMapping(properties)) return mappingAtRandom(random, schema, properties, depth);
  if (items !== undefined) return listOf(random, valueAtRandom(random, items, depth + 1), ['[', ']']);
  if (isMapping(additionalProperties)) {
    const inner = valueAtRandom(random, additionalProperties, depth + 1);
    const key = random.pick(['', 'v', '1-']);
    return listOf(random, (i, n) => `${key}${key === '1-' ? i + 1 : i}: ${inner(i, n)}`, ['{', '}']);
  }
  return plainAtRandom(random, schema);
}

function mappingAtRandom(random: Random, schema: Schema, properties: Schema, depth: number): Value {
  const required = Array.isArray(schema['required']) ? (schema['required'] as string[]) : [];
  const likely = random.pick([0.2, 0.5, 0.9]);
  const parts = Object.entries(properties)
    .filter(([key]) => required.includes(key) || (random.chance(likely) && (depth < 2 || random.chance(0.3))))
    .map(([key, own]) => [key, valueAtRandom(random, own, depth + 1)] as const);
  return (i, n) => `{${parts.map(([key, value]) => `${key}: ${value(i, n)}`).join(', ')}}`;
}

/** Of a few elements in each entry, or in one entry of all the others have. */
function listOf(random: Random, element: Value, [open, close]: readonly [string, string]): Value {
  const count = random.pick<1 | 2 | 3 | 'many' | 'more and more'>([1, 2, 3, 'many', 'more and more']);
  const list = (length: number, i: number, n: number): string =>
    `${open}${Array.from({ length }, (_, k) => element(i + k, n)).join(', ')}${close}`;
  if (count === 'many') return (i, n) => list(i === 0 ? n : 1, i, n);
  if (count === 'more and more') return (i, n) => list(i % 100 === 0 ? 100 : 1, i, n);
  return (i, n) => list(count, i, n);
}

function nameAtRandom(random: Random, names: string): Value {
  const letter = LETTER[names] ?? 'd';
  const one =
    (which: Value): Value =>
    (i, n) =>
      `${letter}${which(i, n)}`;
  const which = indexAtRandom(random);
  if (names === 'rules') return always(random.pick(['link-load', 'duplicate-address', 'unknown-name', 'no-such']));
  if (names === 'own-port') return random.pick([always('1'), which]);
  if (names !== 'port-end') return random.chance(0.9) ? one(which) : (i) => `unknown-${i}`;
  const port = random.pick([undefined, always('1'), always('2'), which]);
  return port === undefined ? one(which) : (i, n) => `${letter}${which(i, n)}/${port(i, n)}`;
}

/** Which of the things of a section an entry is about. */
function indexAtRandom(random: Random): Value {
  return random.pick<Value>([
    (i) => String(i),
    always('0'),
    (i) => String(i + 1),
    (i, n) => String((i + 1) % n),
    (i) => String(i >> 1),
    (i) => String(i % 7),
    (i, n) => String((i * 7919) % n),
    (i) => String(Math.floor(Math.sqrt(i))),
  ]);
}

function plainAtRandom(random: Random, schema: Schema): Value {
  const { type, minimum = 0, maximum = 1e6, 'x-form': form, 'x-quantity': quantity, pattern } = schema;
  const [least, most] = [Number(minimum), Number(maximum)];
  if (type === 'boolean') return always(random.pick(['true', 'false']));
  if (typeof quantity === 'string') {
    const unit = UNIT[quantity] ?? 'b';
    const figure = 1 + random.below(2000);
    return random.chance(0.6) ? always(`${figure} ${unit}`) : (i) => `${i + 1} ${unit}`;
  }
  if (typeof form === 'string') return random.chance(0.05) ? always('auto') : formAtRandom(random, form);
  if (type === 'integer' || type === 'number' || (Array.isArray(type) && type.includes('integer')))
    return random.pick<Value>([
      always(String(least)),
      always(String(most)),
      always(String(least + random.below(most - least))),
      (i) => String(least + (i % (most - least + 1))),
    ]);
  const slash = String(pattern ?? '').startsWith('^/') ? '/' : '';
  return random.pick<Value>([
    always(`${slash}x`),
    (i) => `${slash}x${i}`,
    always(`${slash}%Y-%m-%d_%H-%M-%S.mp4`),
    (i) => `${slash}%H/x${i % 9}.mp4`,
    (i) => `${slash}x/x${i}/x`,
    always('1920x1080'),
    (i) => JSON.stringify(`${slash}${'"\\'.repeat(i % 5)}`),
  ]);
}

const UNIT: Readonly<Record<string, string>> = {
  'bit-rate': 'Mb/s',
  'byte-rate': 'MB/s',
  'size': 'GB',
  'duration': 's',
  'length': 'm',
  'power': 'W',
  'percentage': '%',
  'frequency': 'kHz',
  'ratio': 'dB',
  'level': 'dBuV',
  'voltage': 'V',
  'current': 'mA',
  'symbol-rate': 'kBd',
  'area': 'mm2',
};

function formAtRandom(random: Random, form: string): Value {
  const which = indexAtRandom(random);
  const first = form === 'group' ? random.pick([239, 224, 232]) : random.pick([10, 192]);
  const step = random.pick([1, 1, 256, 2 ** 23]);
  const address: Value = (i, n) => {
    const all = (first * 2 ** 24 + Number(which(i, n)) * step) >>> 0;
    return [24, 16, 8, 0].map((by) => (all >>> by) & 255).join('.');
  };
  switch (form) {
    case 'time-zone':
      return always('Europe/London');
    case 'mac':
      return (i, n) => `"02:00:${hex(Number(which(i, n)))}"`;
    case 'frequency-range':
      return random.pick<Value>([always('470-694 MHz'), (i) => `${i + 1}-${2 * i + 2} MHz`]);
    case 'address-range':
      return (i, n) => `${address(i, n)}-${address(i + 1, n)}`;
    case 'subnet':
    case 'destination': {
      const prefix = random.pick<Value>([always('8'), always('24'), always('30'), (i) => String(8 + (i % 23))]);
      return (i, n) => `${address(i, n)}/${prefix(i, n)}`;
    }
    default:
      return address;
  }
}

function hex(value: number): string {
  return [24, 16, 8, 0].map((by) => ((value >>> by) & 255).toString(16).padStart(2, '0')).join(':');
}

/** Elements of YAML, repeated many times somewhere in a site. */
function repeated(random: Random): Shape {
  const tokens = Array.from({ length: 1 + random.below(4) }, () => random.pick(TOKENS) ?? '').join('');
  const [before, after] = random.pick(AROUND);
  const counted = random.chance(0.3);
  return {
    title: `${JSON.stringify(tokens)}${counted ? ' with numbers' : ''} in ${JSON.stringify(before + after)}`,
    texts(size) {
      const n = Math.ceil(size / (tokens.length + (counted ? String(size).length : 0)));
      const body = counted ? Array.from({ length: n }, (_, i) => `${tokens}${i}`).join('') : tokens.repeat(n);
      return { '0.site.yaml': before + body + after };
    },
  };
}

const TOKENS: readonly string[] = [
  ...'#:-?,[]{}!|>\'"%@\\`~0aé 😀\n\r\t\0\ufeff\u2028\ud800',
  ...'- |: |? |, |# |\n  |\n    |\n  - |\n\n|\n  a: |\n  a:\n    |{a: |[a, |a: |&a |*a|<<: *a|&a {|!!str |---\n|...\n'.split(
    '|',
  ),
  ...'\\x41|$(|%Y|1-9|10.0.0.1|null|kind: camera|devices:\n|devices: '.split('|'),
];

const AROUND: readonly [readonly [string, string], ...(readonly [string, string])[]] = [
  ['', '\n'],
  ['devices:\n  a: ', '\n  b: {kind: camera}\n'],
  ['devices:\n  a: {kind: camera, description: ', '}\n'],
  ['devices: {a: {kind: camera}, ', '}\n'],
  ['devices: {', '\n'],
  ['cables: [', ']\n'],
  ['cables:\n  - ', '\n'],
  ['site: {name: "', '"}\n'],
  ["site: {name: '", "'}\n"],
  ['site:\n  name: |\n    ', '\nvlans: {}\n'],
  ['site:\n  name: ', '\n'],
  ['# ', '\nsite: {}\n'],
  ['recordings:\n  a: {stream: a, volume: b, file: "', '"}\n'],
  ['streams:\n  a:\n    receivers: [', ']\n'],
];

function always(value: string): Value {
  return () => value;
}

function clipped(text: string): string {
  return text.length > 200 ? `${text.slice(0, 200)}…` : text;
}

function property(schema: unknown, name: string): unknown {
  const properties = isMapping(schema) ? schema['properties'] : undefined;
  return isMapping(properties) ? properties[name] : undefined;
}

function resolved(schema: unknown): Schema {
  if (!isMapping(schema)) return {};
  const { $ref: reference, ...own } = schema;
  if (typeof reference !== 'string') return schema;
  const name = reference.replace('#/$defs/', '');
  return { ...resolved((siteSchema.$defs as Schema)[name]), ...own };
}
