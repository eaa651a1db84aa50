import { Command } from 'commander';
import { auditCounters } from '../../audit/counters/audit.ts';
import { type Options, USUAL_LIMITS } from '../../audit/counters/compare.ts';
import { IP_LINK_COMMAND } from '../../audit/counters/ip-link.ts';
import type { Readings } from '../../audit/counters/sample.ts';
import { countersIn } from '../../machine/counters.ts';
import { reading } from '../../machine/input.ts';
import { planOf } from '../../plan.ts';
import { type QuantityKind, quantity } from '../../text/quantity.ts';
import { bitRate, duration } from '../../text/words.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { progress, progressDone } from '../progress.ts';
import { readSite } from '../sites.ts';
import { type PrintOptions, failOnOption, formatOption, printAudit } from './print.ts';

interface Given extends PrintOptions {
  readonly site: string;
  readonly device?: string;
  readonly tolerance: string;
  readonly other: string;
  readonly over: string;
}

export function countersCommand(): Command {
  return new Command('counters')
    .description(
      'Compare interface counters with the load of each port, and name the stream that explains a difference.',
    )
    .argument('<FILE...>', 'counters over time: lines of JSON from Linux, or values of the Interfaces MIB as CSV')
    .option('--site <folder>', 'the folder of the site', '.')
    .option('--device <name>', 'the device, if the file does not name it')
    .option('--tolerance <percentage>', 'how much may differ from the plan', `${USUAL_LIMITS.tolerance / 100} %`)
    .option('--other <rate>', 'how much a port may carry besides the streams', bitRate(USUAL_LIMITS.other))
    .option('--over <duration>', 'the shortest stretch that counts as the busiest', duration(USUAL_LIMITS.over))
    .addOption(formatOption())
    .addOption(failOnOption())
    .addHelpText(
      'after',
      `
On a Linux host or switch, until Ctrl+C:
  ${IP_LINK_COMMAND}
Several hosts may be in one file, or in several, each line with its device:
  jq -c '{time: now, device: "recorder", links: .}'

From other equipment, CSV with a row for each interface and time; the first line names the columns as IF-MIB does:
  time,device,ifName,ifHCInOctets,ifHCOutOctets,ifInDiscards,ifOutDiscards,ifHighSpeed,sysUpTime
  2026-03-01T12:00:00Z,core,1,987654321,123456789,0,0,1000,360000
ifDescr, ifInOctets, ifOutOctets, ifInErrors, ifOutErrors, ifSpeed and ifCounterDiscontinuityTime are known too.

An interface is the port of that name, or of that \`interface\`, in the site.

Examples:
  plumbline audit counters counters.jsonl --device recorder --site samples/harrow-lane
  plumbline audit counters core.csv --tolerance '5 %' --over '1 min'`,
    )
    .action(async (files: string[], given: Given) => {
      const options: Options = {
        tolerance: read('--tolerance', given.tolerance, 'percentage'),
        other: read('--other', given.other, 'bit-rate'),
        over: read('--over', given.over, 'duration'),
      };
      const site = readSite(given.site);
      const readings: Readings[] = [];
      for (const file of files) readings.push(await countersIn(file, { progress }));
      progressDone();
      const all = {
        samples: readings.flatMap(({ samples }) => samples),
        notes: readings.flatMap(({ notes }) => notes),
      };
      const names = files.length === 1 ? (files[0] ?? '') : 'The files';
      const audited = await reading(names, () =>
        Promise.resolve(auditCounters(planOf(site.folder.site()), all, given.device, options)),
      );
      process.exitCode = printAudit(site, audited, given);
    });
}

function read(option: string, text: string, kind: QuantityKind): number {
  const value = quantity(text, kind);
  if (value === undefined)
    throw new CannotDo(`${option} is ${text}: write a number, a space and a unit, such as '${EXAMPLES[kind] ?? ''}'.`);
  return value;
}

const EXAMPLES: Partial<Record<QuantityKind, string>> = {
  'percentage': '10 %',
  'bit-rate': '100 kb/s',
  'duration': '10 s',
};
