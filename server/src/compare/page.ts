/** A comparison as a page: no scripts, nothing fetched. */

import { type Cell, type Name, type Naming, asText, figure, html, table, text } from '../report/page/cells.ts';
import { STYLE } from '../report/page/style.ts';
import { type Comparison, isSamePlan } from './compare.ts';
import type { Pair } from './match.ts';
import { WORK_WORDS, boughtWords, loadWords, pairWords, poeWords } from './words.ts';

/**
 * @param than what the earlier plan is: `the last commit`
 * @param naming how names of the later plan are shown
 */
export function comparisonPage(all: Comparison, name: string, than: string, naming: Naming = asText): string {
  const same = isSamePlan(all) ? `<p class="verdict">✓ Nothing differs from ${html(than)}.</p>\n` : '';
  return page(name, `${name}, and ${than}`, same + sections(all, naming));
}

/** The page where there is nothing to compare with, and why. */
export function notCompared(name: string, why: string): string {
  return page(name, name, `<p class="verdict">${html(why)}</p>\n`);
}

function page(title: string, heading: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${html(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${html(heading)}</h1>
${body}</body>
</html>
`;
}

/** Sections whose items a page can lead to. */
const LEADING: readonly Name['names'][] = [
  'devices',
  'vlans',
  'streams',
  'traffic',
  'volumes',
  'recordings',
  'multiplexes',
  'occasions',
];

/** `gate-cam`, or `gate-cam, now front-cam`: the later name leads to its place. */
function named(naming: Naming, section: string, { before, after }: Pair): Cell {
  const names = LEADING.find((one) => one === section);
  if (names === undefined || after === null) return text(pairWords({ before, after }));
  const earlier = before === null || before === after ? '' : `${html(before)}, now `;
  return { html: `${earlier}${naming({ names, name: after })}` };
}

function sections(
  { findings, user, links, poe, power, settings, work, purchases }: Comparison,
  naming: Naming,
): string {
  const found = [
    ...findings.new.map((one) => ({ sign: '+ new', ...one })),
    ...findings.solved.map((one) => ({ sign: '− solved', ...one })),
  ];
  const ends = ({ before, after }: Pair): [ReturnType<typeof text>, ReturnType<typeof text>] => [
    text(before ?? ''),
    text(after ?? ''),
  ];
  return [
    table({
      title: 'Findings',
      head: ['', 'Severity', 'What', 'Rule'],
      rows: found.map(({ sign, severity, message, rule }) => ({
        cells: [text(sign), text(severity), text(message), text(rule)],
      })),
    }),
    table({
      title: 'What users get',
      head: ['', 'What', 'Before', 'After'],
      rows: user.map((one) => ({ cells: [text(pairWords(one.of)), text(one.what), ...ends(one)] })),
    }),
    table({
      title: 'Links at peak',
      note: 'Those that move by more than a hundredth of their speed, or cross a threshold.',
      head: ['From', 'To', 'Before', 'After'],
      rows: links.map(({ from, to, before, after }) => ({
        cells: [
          { html: naming({ names: 'ports', name: from.after ?? '' }) },
          { html: naming({ names: 'ports', name: to.after ?? '' }) },
          figure(loadWords(before)),
          figure(loadWords(after)),
        ],
      })),
    }),
    table({
      title: 'Power over Ethernet',
      head: ['Device', 'Before', 'After'],
      rows: poe.map((one) => ({
        cells: [named(naming, 'devices', one.device), figure(poeWords(one.before)), figure(poeWords(one.after))],
      })),
    }),
    table({
      title: 'Power from the mains',
      head: ['', 'Before', 'After'],
      rows:
        power === null
          ? []
          : (
              [
                ['on average', 'mean', 'W'],
                ['at most', 'most', 'W'],
                ['in a year', 'kilowattHours', 'kWh'],
              ] as const
            ).map(([what, key, unit]) => ({
              cells: [text(what), figure(`${power.before[key]} ${unit}`), figure(`${power.after[key]} ${unit}`)],
            })),
    }),
    table({
      title: 'To set',
      head: ['Section', 'Of', 'Key', 'Before', 'After'],
      rows: settings.map((one) => ({
        cells: [text(one.section), named(naming, one.section, one.of), text(one.key), ...ends(one)],
      })),
    }),
    table({
      title: 'Work',
      note: 'Mains, roofs, ladders and earthing are for licensed practice under local codes.',
      head: ['', 'Before', 'After'],
      rows: work.map((one) => ({ cells: [text(WORK_WORDS[one.work]), ...ends(one)] })),
    }),
    table({
      title: 'To buy, and left over',
      head: ['', 'What'],
      rows: [
        ...purchases.buy.map((line) => ({ cells: [text('buy'), text(boughtWords(line))] })),
        ...purchases.left.map((line) => ({ cells: [text('left over'), text(boughtWords(line))] })),
      ],
    }),
  ].join('');
}
