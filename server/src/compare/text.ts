/** A comparison as text for a terminal. */

import { visible } from '../text/visible.ts';
import { type Comparison, isSamePlan } from './compare.ts';
import { WORK_WORDS, boughtWords, changeWords, loadWords, pairWords, poeWords } from './words.ts';

export function comparisonText(all: Comparison): string {
  if (isSamePlan(all)) return 'The two plans are the same.\n';
  const { findings, user, links, poe, power, settings, work, purchases } = all;
  const finding = ({ severity, rule, message }: (typeof findings.new)[number]): string =>
    `${severity} ${message} [${rule}]`;
  const parts = [
    section('New findings', findings.new.map(finding)),
    section('Solved', findings.solved.map(finding)),
    section(
      'What users get',
      user.map((one) => `${pairWords(one.of)} ${one.what}: ${changeWords(one)}`),
    ),
    section(
      'Links at peak (that move by more than a hundredth, or cross a threshold)',
      links.map(
        ({ from, to, before, after }) =>
          `${pairWords(from)} → ${pairWords(to)}: ${loadWords(before)} → ${loadWords(after)}`,
      ),
    ),
    section(
      'Power over Ethernet',
      poe.map(({ device, before, after }) => `${pairWords(device)}: ${poeWords(before)} → ${poeWords(after)}`),
    ),
    section(
      'Power from the mains',
      power === null
        ? []
        : [
            `${power.before.mean} W → ${power.after.mean} W on average, ${power.before.most} W → ${power.after.most} W at most`,
            `${power.before.kilowattHours} kWh → ${power.after.kilowattHours} kWh in a year`,
          ],
    ),
    section(
      'To set',
      settings.map(
        (one) => `${one.section} ${pairWords(one.of)}${one.key === '' ? '' : ` ${one.key}`}: ${changeWords(one)}`,
      ),
    ),
    section(
      'Work',
      work.map((one) => `${WORK_WORDS[one.work]} ${changeWords(one)}`),
    ),
    section('To buy', purchases.buy.map(boughtWords)),
    section('Left over', purchases.left.map(boughtWords)),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function section(title: string, lines: readonly string[]): string {
  if (lines.length === 0) return '';
  return [title, ...lines.map((line) => `  ${visible(line, 1000)}`)].join('\n');
}
