import assert from 'node:assert/strict';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { VOCABULARY } from '../../server/generate/schema-validators.ts';
import footageSchema from '../../schemas/footage.schema.json' with { type: 'json' };
import reportSchema from '../../schemas/report.schema.json' with { type: 'json' };
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };

type Schema = { readonly [keyword: string]: unknown };

interface Property {
  readonly pointer: string;
  readonly schema: Schema;
}

/** Every schema under a `properties` or `$defs`, at any depth, with what its `$ref` adds. */
function properties(root: Schema, schema: unknown = root, pointer = '#', areNames = false): Property[] {
  if (typeof schema !== 'object' || schema === null || Array.isArray(schema)) return [];
  return Object.entries(schema as Schema).flatMap(([key, inner]) => {
    const below = `${pointer}/${key}`;
    const own = areNames ? [{ pointer: below, schema: merged(root, inner as Schema) }] : [];
    const named = !areNames && (key === 'properties' || key === '$defs');
    return key === 'examples' || key === 'defaultSnippets' ? own : [...own, ...properties(root, inner, below, named)];
  });
}

function merged(root: Schema, { $ref, ...beside }: Schema): Schema {
  if (typeof $ref !== 'string') return beside;
  const target = (root['$defs'] as Readonly<Record<string, Schema>>)[$ref.replace('#/$defs/', '')];
  return { ...merged(root, target ?? {}), ...beside };
}

for (const [file, schema] of [
  ['site.schema.json', siteSchema],
  ['report.schema.json', reportSchema],
  ['footage.schema.json', footageSchema],
] as const) {
  describe(`schemas/${file}`, () => {
    // Source: the meta-schema of JSON Schema 2020-12 as it comes with ajv, and ajv's strict mode.
    const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, strictRequired: false });
    ajv.addVocabulary(VOCABULARY);
    ajv.addSchema(schema);

    it('is a JSON Schema 2020-12 in which nothing is unknown or ambiguous', () => {
      assert.ok(ajv.validateSchema(schema), ajv.errorsText());
      assert.ok(ajv.getSchema(schema.$id));
    });

    const all = properties(schema);
    it('has properties', () => assert.ok(all.length > 30));

    for (const { pointer, schema: property } of all) {
      it(`${pointer} has a description`, () => assert.match(String(property['description'] ?? ''), /^[A-Z0-9].*\.$/));

      // A mapping is shown by the examples of its properties.
      if (property['properties'] !== undefined && property['examples'] === undefined) continue;
      it(`${pointer} has examples, and they are valid`, () => {
        const examples = property['examples'];
        assert.ok(Array.isArray(examples) && examples.length > 0, 'no examples');
        const validate = ajv.getSchema(`${schema.$id}${pointer}`);
        assert.ok(validate);
        for (const example of examples)
          assert.ok(validate(example), `${JSON.stringify(example)}: ${ajv.errorsText(validate.errors)}`);
        if ('default' in property) assert.ok(validate(property['default']), 'the default is not valid');
      });

      const { enum: values, enumDescriptions } = property;
      if (!Array.isArray(values)) continue;
      it(`${pointer} tells what each value means`, () => {
        assert.ok(Array.isArray(enumDescriptions));
        assert.equal(enumDescriptions.length, values.length);
      });
    }
  });
}
