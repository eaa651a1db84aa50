import { basename } from 'node:path';
import { Command, Option } from 'commander';
import { check } from '../check.ts';
import { networkInReport } from '../draw/in-report.ts';
import { outlookReport } from '../outlook/figures.ts';
import { outlookOf } from '../outlook/outlook.ts';
import { outlookHtml } from '../outlook/page.ts';
import { outlookSections } from '../outlook/text.ts';
import { reportHtml } from '../report/html.ts';
import { asText } from '../report/page/cells.ts';
import type { Plan } from '../plan.ts';
import { reportOf } from '../report/report.ts';
import { reportText } from '../report/text.ts';
import { visibleJson } from './format/json.ts';
import { print } from './print.ts';
import type { ReportedFinding, Verdict } from '../report/verdict.ts';
import type { Checked } from '../lint/check.ts';
import { placed } from './placed.ts';
import { readSite } from './sites.ts';

const FORMATS: Readonly<Record<string, (plan: Plan, verdict: Verdict) => string>> = {
  text: (plan, verdict) => reportText(plan, verdict, outlookSections(outlookOf(plan))),
  json: (plan) => `${visibleJson({ ...reportOf(plan), ...outlookReport(outlookOf(plan)) })}\n`,
  html: (plan, verdict) =>
    reportHtml(plan, verdict, asText, networkInReport(plan, asText), outlookHtml(outlookOf(plan), asText)),
};

export function reportCommand(): Command {
  return new Command('report')
    .description(
      'Print what was computed: the load of each link, the receivers of each stream, the days of each volume, power, room for more cameras, and what must not fail.',
    )
    .argument('[FOLDER]', 'a folder of *.site.yaml files', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(FORMATS)).default('text'))
    .addHelpText(
      'after',
      `
Examples:
  plumbline report samples/harrow-lane
  plumbline report --format html . > harrow-lane.html`,
    )
    .action((folder: string, options: { format: string }) => {
      const checked = check(readSite(folder).folder);
      print(FORMATS[options.format]?.(checked.plan, options.format === 'json' ? [] : verdictOf(checked)) ?? '');
    });
}

function verdictOf(checked: Checked): Verdict {
  const found = placed(checked).flatMap(({ severity, message, file, line }): ReportedFinding[] =>
    severity === 'error' || severity === 'warning' ? [{ severity, message, where: `${basename(file)}:${line}` }] : [],
  );
  return [
    ...found.filter(({ severity }) => severity === 'error'),
    ...found.filter(({ severity }) => severity === 'warning'),
  ];
}
