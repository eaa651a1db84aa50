import { Command } from 'commander';
import { announcementsCommand } from './audit/announcements.ts';
import { countersCommand } from './audit/counters.ts';
import { recordingsCommand } from './audit/recordings.ts';
import { probeCommand } from './audit/probe.ts';

/** Each kind of audit is a command below this one; none writes anything without an option for it. */
const AUDITS: readonly (() => Command)[] = [announcementsCommand, countersCommand, probeCommand, recordingsCommand];

export function auditCommand(): Command {
  const command = new Command('audit').description('Compare the running system with the plan. Only reads.').addHelpText(
    'after',
    `
Exit status: 0, nothing at or above --fail-on (a warning by default); 1, something; 2, it could not run.`,
  );
  for (const audit of AUDITS) command.addCommand(audit());
  return command;
}
