/** All files generated from the schemas and the rules, and those that are out of date. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Output } from './output.ts';
import { schemaReference } from './schema-reference.ts';
import { schemaTypes } from './schema-types.ts';
import { schemaValidators } from './schema-validators.ts';

/** Types, validators and pages of the schemas. @param root the repository */
export async function schemaOutputs(root: string): Promise<Output[]> {
  return [...schemaReference(), ...(await Promise.all([schemaTypes(root), schemaValidators(root)])).flat()];
}

/** The outputs whose file in the repository differs or is missing. */
export async function stale(root: string, outputs: readonly Output[]): Promise<Output[]> {
  const texts = await Promise.all(outputs.map(({ path }) => textOf(join(root, path))));
  return outputs.filter(({ text }, index) => text !== texts[index]);
}

async function textOf(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
