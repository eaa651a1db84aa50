import assert from 'node:assert/strict';
import { fileURLToPath } from 'node:url';
import { drawingOutputs } from '../../server/generate/drawings.ts';
import type { Output } from '../../server/generate/output.ts';
import { schemaOutputs, stale } from '../../server/generate/outputs.ts';
import { ruleOutputs } from '../../server/generate/rules.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Paths of files that `npm run generate` would change. */
const changed = async (outputs: readonly Output[]): Promise<string[]> =>
  (await stale(root, outputs)).map(({ path }) => path);

describe('What is made', () => {
  it('from the schemas is as `npm run generate` would make it', async () => {
    const outputs = await schemaOutputs(root);
    assert.ok(outputs.length > 2);
    assert.deepEqual(await changed(outputs), []);
  });

  it('from the rules is as `npm run generate` would make it', async () => {
    const outputs = await ruleOutputs();
    assert.ok(outputs.length > 100);
    assert.deepEqual(await changed(outputs), []);
  });

  it('of the samples is drawn as `npm run generate` would draw it', async () => {
    assert.deepEqual(await changed(drawingOutputs(root)), []);
  });

  it('is changed where its text is another, or it is not there', async () => {
    const [first] = await ruleOutputs();
    assert.ok(first !== undefined);
    const outputs = [first, { ...first, text: `${first.text}x` }, { ...first, path: `${first.path}.absent` }];
    assert.deepEqual(await changed(outputs), [first.path, `${first.path}.absent`]);
  });
});
