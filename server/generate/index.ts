/**
 * Writes what is made from the schemas and the rules: types, validators, pages.
 * With --check it writes nothing, and fails where a file is not as it would be made.
 */

import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Output } from './output.ts';
import { schemaReference } from './schema-reference.ts';
import { schemaTypes } from './schema-types.ts';
import { schemaValidators } from './schema-validators.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const stale: string[] = [];
await write([...schemaReference(), ...(await Promise.all([schemaTypes(root), schemaValidators(root)])).flat()]);
// Pages of rules show what a check finds. After a new section the first run fails here, and the second has its validators.
const { ruleOutputs } = await import('./rules.ts');
await write(await ruleOutputs());

if (process.argv.includes('--check') && stale.length > 0) {
  process.stderr.write(
    `Not as they would be made; run \`npm run generate\`:\n${stale.map((path) => `  ${path}\n`).join('')}`,
  );
  process.exitCode = 1;
}

async function write(outputs: readonly Output[]): Promise<void> {
  for (const { path, text } of outputs) {
    const file = join(root, path);
    if ((await textOf(file)) === text) continue;
    stale.push(relative(root, file));
    if (process.argv.includes('--check')) continue;
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

async function textOf(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
