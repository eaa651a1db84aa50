import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { SUFFIX } from '../machine/disk.ts';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { NEW_SITE, NEW_SITE_FILE } from '../site/new-site.ts';
import { CannotDo } from '../machine/cannot-do.ts';

export function newCommand(): Command {
  return new Command('new')
    .description(
      'Write a small site to start from: two cameras, a server and a screen, with comments. It checks clean.',
    )
    .argument('<FOLDER>', 'where to; it is made where it is not there')
    .addHelpText(
      'after',
      `
Nothing is overwritten: a folder that holds a site already is left as it is.

Example:
  plumbline new home && plumbline check home`,
    )
    .action((folder: string) => {
      const file = join(folder, NEW_SITE_FILE);
      writeNew(folder, file);
      process.stdout.write(`${file} is written. \`plumbline check ${folder}\` checks it; change it and check again.\n`);
    });
}

function writeNew(folder: string, file: string): void {
  try {
    mkdirSync(folder, { recursive: true });
    const present = readdirSync(folder).find((name) => name.endsWith(SUFFIX));
    if (present !== undefined)
      throw new CannotDo(`${folder} holds a site already (${present}), which is left as it is. Name another folder.`);
    writeFileSync(file, NEW_SITE, { flag: 'wx' });
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new CannotDo(
      `${file} cannot be written: ${code === 'EEXIST' ? 'something of this name is there' : reasonOf(code)}.`,
    );
  }
}
