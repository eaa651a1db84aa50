import { Command } from 'commander';
import { distance } from 'fastest-levenshtein';
import { rules } from '../rules/index.generated.ts';
import { rulePage } from '../rules/page.ts';
import { CannotDo } from './cannot-do.ts';

export function explainCommand(): Command {
  return new Command('explain')
    .description('Print what a rule says, why, and examples; without a name, all rules in a line each.')
    .argument('[RULE]', 'a rule, such as link-load')
    .addHelpText('after', `
Examples:
  plumbline explain
  plumbline explain link-load`)
    .action((name: string | undefined) => {
      if (name === undefined) {
        const width = Math.max(...rules.map(({ id }) => id.length));
        process.stdout.write(rules.map(({ id, summary }) => `${id.padEnd(width)}  ${summary}\n`).join(''));
        return;
      }
      const rule = rules.find(({ id }) => id === name);
      if (rule === undefined) throw new CannotDo(`There is no rule ${name}. The nearest name is ${nearest(name)}; \`plumbline explain\` lists all.`);
      process.stdout.write(rulePage(rule));
    });
}

function nearest(name: string): string {
  return [...rules].sort((a, b) => distance(a.id, name) - distance(b.id, name))[0]?.id ?? '';
}
