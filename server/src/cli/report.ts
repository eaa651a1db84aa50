import { Command, Option } from 'commander';
import { planOf } from '../plan.ts';
import { reportHtml } from '../report/html.ts';
import { type Report, reportOf } from '../report/report.ts';
import { reportText } from '../report/text.ts';
import { visibleJson } from './format/json.ts';
import { print } from './print.ts';
import { readSite } from './sites.ts';

const FORMATS: Readonly<Record<string, (report: Report) => string>> = {
  text: reportText,
  json: (report) => `${visibleJson(report)}\n`,
  html: reportHtml,
};

export function reportCommand(): Command {
  return new Command('report')
    .description('Print what was computed: load of every link, receivers of every stream, days of every volume, watts.')
    .argument('[FOLDER]', 'a folder of *.site.yaml files (default: the working folder)', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(FORMATS)).default('text'))
    .addHelpText(
      'after',
      `
Examples:
  plumbline report samples/harrow-lane
  plumbline report --format html . > harrow-lane.html`,
    )
    .action((folder: string, options: { format: string }) => {
      const report = reportOf(planOf(readSite(folder).folder.site()));
      print(FORMATS[options.format]?.(report) ?? '');
    });
}
