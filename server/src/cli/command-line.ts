/** Runs a command line. */

import { Command, CommanderError } from 'commander';
import { CannotDo } from '../machine/cannot-do.ts';
import { announceCommand } from './announce.ts';
import { auditCommand } from './audit.ts';
import { compareCommand } from './compare.ts';
import { checkCommand } from './check.ts';
import { drawCommand } from './draw.ts';
import { EXIT_STATUS } from './exit-status.ts';
import { explainCommand } from './explain.ts';
import { failureCommand } from './failure.ts';
import { fixCommand } from './fix.ts';
import { footageCommand } from './footage.ts';
import { headroomCommand } from './headroom.ts';
import { lspCommand } from './lsp.ts';
import { makeCommand } from './make.ts';
import { newCommand } from './new.ts';
import { powerCommand } from './power.ts';
import { print, printMessage } from './print.ts';
import { reportCommand } from './report.ts';
import { visiblePath } from '../text/visible.ts';
import manifest from '../../../package.json' with { type: 'json' };

/** Runs the command and sets `process.exitCode`. @param words without the program's name */
export async function run(words: readonly string[]): Promise<void> {
  try {
    await commandLine().parseAsync(words, { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2;
    else if (error instanceof CannotDo) {
      printMessage(`plumbline: ${[error.message, ...error.details].map(visiblePath).join('\n')}\n`);
      process.exitCode = 2;
    } else throw error;
  }
}

function commandLine(): Command {
  const program = new Command('plumbline')
    .description(
      'Checks *.site.yaml files, which describe the video side of a house, and computes what the site will do.',
    )
    .version(manifest.version)
    .showHelpAfterError('(plumbline --help shows the commands)')
    .addHelpText(
      'after',
      `
Examples:
  plumbline new home && plumbline check home
  plumbline report home
  plumbline explain link-load

${EXIT_STATUS}`,
    );

  for (const command of [
    checkCommand,
    reportCommand,
    fixCommand,
    explainCommand,
    powerCommand,
    compareCommand,
    headroomCommand,
    failureCommand,
    newCommand,
    drawCommand,
    makeCommand,
    announceCommand,
    auditCommand,
    footageCommand,
    lspCommand,
  ])
    program.addCommand(command());
  // Set after the commands were added, as they do not inherit it from the program.
  const all = (command: Command): Command[] => [command, ...command.commands.flatMap(all)];
  for (const command of all(program))
    command.exitOverride().configureOutput({ writeOut: print, writeErr: printMessage });
  return program;
}
