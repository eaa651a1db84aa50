/** The command line. */

import { Command, CommanderError } from 'commander';
import { checkCommand } from './check.ts';
import { CannotDo } from './cannot-do.ts';
import { reportCommand } from './report.ts';

const program = new Command('plumbline')
  .description('Checks *.site.yaml files, which describe the video side of a house, and computes what the site will do.')
  .version('0.1.0')
  .exitOverride()
  .showHelpAfterError()
  .addHelpText('after', `
Exit status: 0 nothing at or above --fail-on; 1 something; 2 it could not be done (usage, unreadable, no site).`);

for (const command of [checkCommand, reportCommand]) program.addCommand(command());

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2;
  else if (error instanceof CannotDo) {
    process.stderr.write(`plumbline: ${error.message}\n`);
    process.exitCode = 2;
  } else throw error;
}
