/** Writes the generated files: types, validators and pages of schemas and rules, and drawings of the samples. */

import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Output } from './output.ts';
import { schemaOutputs, stale } from './outputs.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
await write(await schemaOutputs(root));
// Pages of rules need a check. After a new section the first run fails here; the second has its validators.
const { ruleOutputs } = await import('./rules.ts');
await write(await ruleOutputs());
const { drawingOutputs } = await import('./drawings.ts');
await write(drawingOutputs(root));

async function write(outputs: readonly Output[]): Promise<void> {
  for (const { path, text } of await stale(root, outputs)) {
    await mkdir(dirname(join(root, path)), { recursive: true });
    await writeFile(join(root, path), text);
  }
}
