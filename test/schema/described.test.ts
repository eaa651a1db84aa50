import assert from 'node:assert/strict';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { VOCABULARY } from '../../server/generate/schema-validators.ts';
import footageSchema from '../../schemas/footage.schema.json' with { type: 'json' };
import questionsSchema from '../../schemas/questions.schema.json' with { type: 'json' };
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

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
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
  ['questions.schema.json', questionsSchema],
] as const) {
  describe(`schemas/${file}`, () => {
    // Source: the meta-schema of JSON Schema 2020-12 as it comes with ajv, and ajv's strict mode.
    const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, strictRequired: false });
    ajv.addVocabulary(VOCABULARY);
    ajv.addSchema(schema);
    // What the others refer to.
    if (schema !== reportSchema) ajv.addSchema(reportSchema);

    it('is a JSON Schema 2020-12 in which nothing is unknown or ambiguous', () => {
      assert.ok(ajv.validateSchema(schema), ajv.errorsText());
      assert.ok(ajv.getSchema(schema.$id));
    });

    const all = properties(schema);
    it('has properties', () => assert.ok(all.length > 30));

    it('describes each of them', () => {
      for (const { pointer, schema: property } of all)
        assert.match(textOf(property['description']), /^[A-Z0-9].*\.$/, pointer);
    });

    it('has valid examples and defaults for each of them', () => {
      for (const { pointer, schema: property } of all) {
        const { examples } = property;
        // A mapping is shown by the examples of its properties.
        if (property['properties'] !== undefined && examples === undefined) continue;
        assert.ok(Array.isArray(examples) && examples.length > 0, `${pointer} has no examples`);
        const validate = ajv.getSchema(`${schema.$id}${pointer}`);
        assert.ok(validate, pointer);
        for (const example of examples)
          assert.ok(validate(example), `${pointer}, ${JSON.stringify(example)}: ${ajv.errorsText(validate.errors)}`);
        if ('default' in property) assert.ok(validate(property['default']), `the default of ${pointer} is not valid`);
      }
    });

    it('tells what each value of an enumeration means', () => {
      for (const { pointer, schema: property } of all) {
        const { enum: values, enumDescriptions } = property;
        if (!Array.isArray(values)) continue;
        assert.ok(Array.isArray(enumDescriptions), pointer);
        assert.equal(enumDescriptions.length, values.length, pointer);
      }
    });
  });
}
