import { lstatSync, readdirSync } from 'node:fs';
import { Command, Option } from 'commander';
import { SUFFIX } from '../site/folder.ts';
import { codeOfSystem, reasonOf } from '../machine/failures.ts';
import { NEW_SITES, NEW_SITE_FILE } from '../site/new-site/new-site.ts';
import { ownTimeZone } from '../site/time-zone.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { writeInto } from '../machine/write-into.ts';
import { sayAtFailure, print } from './print.ts';

const LAYOUTS = Object.entries(NEW_SITES)
  .map(([word, { description }]) => `${word}, ${description}`)
  .join('; ');

export function newCommand(): Command {
  return new Command('new')
    .description('Write a small site to start from, with comments. It checks clean.')
    .argument('<FOLDER>', 'where to write it; created if missing')
    .addOption(
      new Option('--like <layout>', `what to start from: ${LAYOUTS}`).choices(Object.keys(NEW_SITES)).default('flat'),
    )
    .addHelpText(
      'after',
      `
Nothing is overwritten: a folder that holds a site already is left as it is.

Examples:
  plumbline new home && plumbline check home
  plumbline new --like buildings farm`,
    )
    .action((folder: string, { like }: { readonly like: keyof typeof NEW_SITES }) => {
      const file = writeNew(folder, NEW_SITES[like].text(ownTimeZone()));
      sayAtFailure(`${file} is written.`);
      print(`${file} is written. \`plumbline check ${folder}\` checks it; change it and check again.\n`);
    });
}

/** @throws CannotDo where the folder has something in it already */
function writeNew(folder: string, text: string): string {
  const present = entriesOf(folder);
  const site = present.find((name) => name.endsWith(SUFFIX));
  if (site !== undefined)
    throw new CannotDo(`${folder} holds a site already (${site}), which is left as it is. Name another folder.`);
  const [file = ''] = writeInto(folder, [{ path: NEW_SITE_FILE, text }]);
  return file;
}

/** Names in the folder; empty where it does not exist yet. */
function entriesOf(folder: string): readonly string[] {
  try {
    return lstatSync(folder, { throwIfNoEntry: false }) === undefined ? [] : readdirSync(folder);
  } catch (error) {
    throw new CannotDo(`${folder} cannot be read: ${reasonOf(codeOfSystem(error))}.`);
  }
}
