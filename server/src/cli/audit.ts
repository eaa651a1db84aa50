import { Command } from 'commander';
import { announcementsCommand } from './audit/announcements.ts';
import { countersCommand } from './audit/counters.ts';
import { recordingsCommand } from './audit/recordings.ts';
import { probeCommand } from './audit/probe.ts';
import { EXIT_STATUS } from './exit-status.ts';

/** Each kind of audit is a command below this one; none of them changes anything but what it is told to write. */
const AUDITS: readonly (() => Command)[] = [
  announcementsCommand,
  countersCommand,
  probeCommand,
  recordingsCommand,
];

export function auditCommand(): Command {
  const command = new Command('audit')
    .description('Print where what runs differs from the plan. Only reads.')
    .addHelpText('after', `\n${EXIT_STATUS}`);
  for (const audit of AUDITS) command.addCommand(audit().exitOverride());
  return command;
}
