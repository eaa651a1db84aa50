import { fixOf, setValue } from '../../site/edit.ts';
import { type Item, type Place, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { readThreshold } from '../../site/read.ts';
import { dataAt } from '../../text/syntax.ts';
import { level } from '../../text/radio-words.ts';
import { threshold } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const policyThreshold: Rule = {
  id: 'policy-threshold',
  severity: 'warning',
  showAfter: 'value',
  summary: 'A policy warns only above its limit, or allows nothing at all.',
  why: `\`warn\` is there to warn before the \`limit\` is reached. With the two the wrong way round nothing warns
before the error. At zero per cent every link or volume in use is too full. Correct the figure, or
remove it.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    checkPercentages(site, 'link-load', report);
    checkPercentages(site, 'volume-fill', report);
    checkPercentages(site, 'airtime', report);
    checkOutletLevels(site, report);
    checkDecibels(site, report);
  },
};

/** Margins of an aerial system: below 0 dB they would allow less than is needed. */
function checkDecibels({ sections, policies: { aerialSystem } }: Site, report: Report): void {
  const item = sections.policies.find((candidate) => candidate.name === 'aerial-system');
  if (item === undefined) return;
  const { margin, levelReserve, slope } = aerialSystem;
  for (const [key, value] of [
    ['margin', margin],
    ['level-reserve', levelReserve],
    ['slope', slope],
  ] as const) {
    if (value >= 0) continue;
    const text = dataAt(item.data, [key]);
    const better = typeof text === 'string' ? text.replace(/^\s*-/, '') : undefined;
    report({
      at: placeOf(item, [key]),
      message: `The ${key.replace('-', ' ')} of aerial-system is below 0 dB, so ${TAKEN[key]}. Write it without the minus.`,
      acceptAt: ['aerial-system'],
      fixes: () => (better === undefined ? [] : fixOf(`Write ${better}`, setValue(item, [key], better))),
    });
  }
}

const TAKEN = {
  'margin': 'less than a receiver needs counts as enough',
  'level-reserve': 'a level outside its window counts as right',
  'slope': 'no two levels are alike enough',
} as const;

/** A window of levels that ends before it begins. */
function checkOutletLevels({ sections, policies }: Site, report: Report): void {
  const item = sections.policies.find((candidate) => candidate.name === 'aerial-system');
  if (item === undefined) return;
  for (const [system, { min, max }] of policies.aerialSystem.outletLevel) {
    if (min === undefined || max === undefined || min <= max) continue;
    const at = (key: string): Place => placeOf(item, ['outlet-level', system, key]);
    report({
      at: at('min'),
      message: `No level is above ${level(min)} and below ${level(max)}, so none is right for ${system}. Swap the two.`,
      acceptAt: ['aerial-system'],
      related: [{ at: at('max'), message: 'the maximum' }],
    });
  }
}

function checkPercentages({ sections }: Site, name: string, report: Report): void {
  const item = sections.policies.find((candidate) => candidate.name === name);
  if (item === undefined) return;
  const { warn, limit } = readThreshold(item);
  const at = (key: string): Place => placeOf(item, [key]);
  if (limit === 0) {
    report({
      at: at('limit'),
      message: `${name} allows 0 %, so nothing may be used. Set what may be.`,
      acceptAt: [name],
    });
  }
  if (warn === 0) {
    report({ at: at('warn'), message: `${name} warns at 0 %, so at any use. Set it higher.`, acceptAt: [name] });
  }
  if (warn === undefined || limit === undefined || limit === 0 || warn <= limit) return;
  report({
    at: at('warn'),
    message:
      `${name} warns at ${threshold(warn)}, above its limit of ${threshold(limit)}, so it never warns. Let it warn ` +
      'earlier.',
    acceptAt: [name],
    related: [{ at: at('limit'), message: 'the limit' }],
    fixes: () => fixOf('Swap the two', ...swapped(item, at('warn'), at('limit'))),
  });
}

function swapped(item: Item, warn: Place, limit: Place): ReturnType<typeof setValue>[] {
  const text = ({ piece, start, end }: Place): string => piece.text.slice(start, end);
  return [setValue(item, ['warn'], text(limit)), setValue(item, ['limit'], text(warn))];
}

export const examples: readonly Example[] = [
  {
    bad: `
policies:
  aerial-system: {outlet-level: {dvb-t: {min: 74 dBµV, max: 45 dBµV}}}
#                                             ^^^^^^^ No level is above 74.0 dBµV and below 45.0 dBµV
`,
    good: `
policies:
  aerial-system: {outlet-level: {dvb-t: {min: 45 dBµV, max: 74 dBµV}}}
`,
  },
  {
    bad: `
policies:
  link-load: {warn: 90 %, limit: 70 %}
#                   ^^^^ link-load warns at 90 %, above its limit of 70 %, so it never warns
`,
    good: `
policies:
  link-load: {warn: 70 %, limit: 70 %}
`,
    fixed: `
policies:
  link-load: {warn: 70 %, limit: 90 %}
`,
  },
  {
    bad: `
policies:
  link-load: {warn: 0 %}
#                   ^^^ link-load warns at 0 %, so at any use. Set
  volume-fill: {limit: 0 %}
#                      ^^^ volume-fill allows 0 %, so nothing may be used
`,
    good: `
policies:
  volume-fill: {limit: 90 %}
`,
  },
  {
    bad: `
policies:
  aerial-system: {margin: -6 dB, slope: 12 dB}
#                         ^^^^^ The margin of aerial-system is below 0 dB, so less than a receiver needs counts as enough.
`,
    fixed: `
policies:
  aerial-system: {margin: 6 dB, slope: 12 dB}
`,
  },
];
