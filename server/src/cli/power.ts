import { Command, Option } from 'commander';
import { planOf } from '../plan.ts';
import { supplyReport } from '../report/supply/figures.ts';
import { powerText } from '../report/supply/text.ts';
import { visibleJson } from './format/json.ts';
import { print } from './print.ts';
import { readSite } from './sites.ts';

export function powerCommand(): Command {
  return new Command('power')
    .description(
      'Print what each device draws and what feeds it, how long each UPS and each camera lasts when the mains fails, and kWh in a year.',
    )
    .option('--site <folder>', 'the folder of the site', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
Say what feeds a device and what it draws by its key power, and give a UPS its ratings and its battery.
plumbline explain power DEVICE prints the sums.

Examples:
  plumbline power --site samples/harrow-lane
  plumbline explain power core --site samples/harrow-lane`,
    )
    .action((options: { site: string; format: string }) => {
      const plan = planOf(readSite(options.site).folder.site());
      print(options.format === 'json' ? `${visibleJson(supplyReport(plan))}\n` : powerText(plan));
    });
}
