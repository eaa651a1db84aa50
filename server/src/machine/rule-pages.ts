/** The pages of the rules that are packed beside the programs. */

import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * Path of the folder with a page `ID.md` for each rule; `undefined` where it is missing.
 *
 * @param program path of the program that runs
 */
export function rulePagesFolder(program = process.argv[1]): string | undefined {
  if (program === undefined || !existsSync(program)) return undefined;
  const folder = join(dirname(realpathSync(program)), '..', 'schemas', 'rules');
  return existsSync(folder) ? folder : undefined;
}
