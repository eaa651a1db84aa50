import { lstatSync, readdirSync } from 'node:fs';
import { Command } from 'commander';
import { SUFFIX } from '../site/folder.ts';
import { codeOfSystem, reasonOf } from '../machine/failures.ts';
import { NEW_SITE, NEW_SITE_FILE } from '../site/new-site.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { writeInto } from '../machine/write-into.ts';
import { isDone, print } from './print.ts';

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
      const file = writeNew(folder);
      isDone(`${file} is written.`);
      print(`${file} is written. \`plumbline check ${folder}\` checks it; change it and check again.\n`);
    });
}

/** @throws CannotDo where something is there already */
function writeNew(folder: string): string {
  const present = lstatSync(folder, { throwIfNoEntry: false }) === undefined ? [] : entriesOf(folder);
  const site = present.find((name) => name.endsWith(SUFFIX));
  if (site !== undefined)
    throw new CannotDo(`${folder} holds a site already (${site}), which is left as it is. Name another folder.`);
  const [file = ''] = writeInto(folder, [{ path: NEW_SITE_FILE, text: NEW_SITE }]);
  return file;
}

function entriesOf(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    throw new CannotDo(`${folder} cannot be read: ${reasonOf(codeOfSystem(error))}.`);
  }
}
