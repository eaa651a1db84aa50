// The keys of each kind of device: the schema says them, and the check, completion and the reference read them there.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { VOCABULARY } from '../../server/generate/schema-validators.ts';
import { complete } from '../../server/src/features/completion/completion.ts';
import { deviceKinds, itemSchema, keysOf, kindsWith, schemaAt } from '../../server/src/site/shape.ts';
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };
import { atCursor } from '../cursor.ts';
import { diagnosticsOf } from '../site.ts';

const keysOfDevice = keysOf(itemSchema('devices', 'any') ?? {});
const keysOfPort = keysOf(schemaAt('devices', 'any', ['ports', '1']) ?? {});

/** Every key of a device, and of one of its ports, with the kinds that have it. */
const keys = [
  ...keysOfDevice.map((key) => ({ key, kinds: kindsWith(schemaAt('devices', 'any', [key]) ?? {}), isOfPort: false })),
  ...keysOfPort.map((key) => ({
    key,
    kinds: kindsWith(schemaAt('devices', 'any', ['ports', '1', key]) ?? {}),
    isOfPort: true,
  })),
];

const offered = (typed: string): string[] => {
  const { checked, file, offset } = atCursor({ 'typed.site.yaml': typed });
  return complete(checked, file, offset, { schemaFeatures: true })?.offers.map(({ label }) => label) ?? [];
};

describe('keys by kind of device', () => {
  it('are the same to a general validator: a port of a kind that lacks a key is refused there, another taken', () => {
    const ajv = new Ajv2020({ strict: false, allErrors: true });
    for (const word of VOCABULARY) ajv.addKeyword(word);
    const validate = ajv.compile(siteSchema);
    for (const { key, kinds, isOfPort } of keys.filter(({ key: name }) => name !== 'kind')) {
      for (const kind of deviceKinds()) {
        // No value fits every key, so only what is said of the key itself counts.
        const device = isOfPort ? { kind, ports: { 1: { [key]: null } } } : { kind, [key]: null };
        validate({ devices: { any: device } });
        const isRefused = (validate.errors ?? []).some(({ keyword }) => keyword === 'false schema');
        assert.equal(isRefused, !kinds.includes(kind), `${kind} ${key}`);
      }
    }
  });

  it('are offered by completion where the kind has them', () => {
    for (const kind of deviceKinds()) {
      const ofPort = offered(`devices:\n  any: {kind: ${kind}, ports: {1: {$0`);
      for (const { key, kinds } of keys.filter(({ isOfPort }) => isOfPort))
        assert.equal(ofPort.includes(key), kinds.includes(kind), `${kind} ${key}`);
    }
  });

  it('stand in the reference page', () => {
    const page = readFileSync('schemas/reference.md', 'utf8');
    assert.match(page, /^\| `igmp-snooping` .*Only of a switch, a router or an access-point\. \|/m);
    assert.match(page, /^\| `router-port` .*Only of a switch, a router or an access-point\. \|/m);
  });

  for (const kind of ['swich', 'hub', '', undefined]) {
    it(`are not held against ${kind === undefined ? 'a device without a kind' : `the kind "${kind}"`}`, () => {
      const own = kind === undefined ? '' : `kind: ${kind}, `;
      const text = `devices: {any: {${own}igmp-snooping: true, poe-budget: 30 W, ports: {1: {router-port: true}}}}`;
      const errors = diagnosticsOf({ 'a.site.yaml': text }).filter(({ severity }) => severity === 'error');
      assert.equal(errors.length, 1);
    });
  }

  it('count for nothing where the kind does not have them', () => {
    const text =
      'devices: {any: {kind: camera, igmp-snooping: true, poe-budget: 30 W, ports: {1: {router-port: true}}}}';
    const found = diagnosticsOf({ 'a.site.yaml': text });
    assert.deepEqual(
      found.map(({ rule }) => rule.id),
      ['key-not-of-kind'],
    );
    assert.match(found[0]?.message ?? '', /A camera has no igmp-snooping, poe-budget or router-port/);
  });
});
