/** Writes what is made from the schemas and the rules: types, validators, pages; and drawings of the samples. */

import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Output } from './output.ts';
import { schemaOutputs, stale } from './outputs.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
await write(await schemaOutputs(root));
// Pages of rules show what a check finds. After a new section the first run fails here, and the second has its
// validators.
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
