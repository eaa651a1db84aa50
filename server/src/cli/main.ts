/** The command line. */

import { Command, CommanderError } from 'commander';
import { CannotDo } from './cannot-do.ts';
import { checkCommand } from './check.ts';
import { explainCommand } from './explain.ts';
import { fixCommand } from './fix.ts';
import { lspCommand } from './lsp.ts';
import { reportCommand } from './report.ts';
import manifest from '../../../package.json' with { type: 'json' };

const program = new Command('plumbline')
  .description('Checks *.site.yaml files, which describe the video side of a house, and computes what the site will do.')
  .version(manifest.version)
  .showHelpAfterError('(plumbline --help shows the commands)')
  .addHelpText('after', `
Exit status: 0 nothing at or above --fail-on; 1 something; 2 it could not be done (usage, unreadable, no site).`);

for (const command of [checkCommand, reportCommand, fixCommand, explainCommand, lspCommand]) program.addCommand(command());
// Set once the commands are there: they do not take it over from the program.
for (const command of [program, ...program.commands]) command.exitOverride();

program.parseAsync().catch((error: unknown) => {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2;
  else if (error instanceof CannotDo) {
    process.stderr.write(`plumbline: ${error.message}\n`);
    process.exitCode = 2;
  } else throw error;
});
