import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { distance } from 'fastest-levenshtein';
import { ruleById } from '../check.ts';
import { planOf } from '../plan.ts';
import { FIGURE_PATHS, explain } from '../report/explain.ts';
import { OUTLOOK_PATHS, explainOutlook } from '../outlook/explain.ts';
import { explanationText } from '../report/explain/explanation.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { rulePagesFolder } from '../machine/rule-pages.ts';
import { print } from './print.ts';
import { readSite } from './sites.ts';

const ALL = [...ruleById.values()];

export function explainCommand(): Command {
  return new Command('explain')
    .description(
      'Print the page of a rule or audit finding, or how a figure of the report is computed. Without a name, list all rules.',
    )
    .argument('[NAME...]', 'a rule, such as link-load, or the path of a figure, such as links core/16 forward peak')
    .option('--site <folder>', 'the folder of the site', '.')
    .addHelpText(
      'after',
      `
Figures:
${[...FIGURE_PATHS, ...OUTLOOK_PATHS].map((path) => `  ${path}`).join('\n')}

Examples:
  plumbline explain
  plumbline explain link-load
  plumbline explain links core/16 forward peak --site samples/harrow-lane`,
    )
    .action((names: string[], options: { site: string }) => {
      print(explained(names, options.site));
    });
}

function explained(names: readonly string[], site: string): string {
  const [first, ...more] = names;
  if (first === undefined) {
    const width = Math.max(...ALL.map(({ id }) => id.length));
    return ALL.map(({ id, summary }) => `${id.padEnd(width)}  ${summary}\n`).join('');
  }
  if (more.length === 0) {
    if (ruleById.has(first)) return rulePage(first);
    throw new CannotDo(
      `There is no rule ${first}. The nearest name is ${nearest(first)}; \`plumbline explain\` lists all.`,
    );
  }
  const plan = planOf(readSite(site).folder.site());
  const found = explainOutlook(plan, names) ?? explain(plan, names);
  if ('problem' in found) throw new CannotDo(found.problem);
  return `${found.explanations.map((explanation) => explanationText(explanation).trimEnd()).join('\n\n')}\n`;
}

/** The page without the comment for editors at its head. */
function rulePage(id: string): string {
  const folder = rulePagesFolder();
  if (folder === undefined)
    throw new CannotDo('The folder schemas/rules is missing beside the program; install it anew.');
  return readFileSync(join(folder, `${id}.md`), 'utf8').replace(/^<!--.*?-->\s*/s, '');
}

function nearest(name: string): string {
  return [...ALL].sort((a, b) => distance(a.id, name) - distance(b.id, name))[0]?.id ?? '';
}
