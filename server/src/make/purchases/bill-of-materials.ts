/** A shopping list for the site: lines by type, length and need, and what is undeclared. No prices, no makes. */

import type { Plan } from '../../plan.ts';
import { PURCHASE_GROUPS, type Purchase, type PurchaseGroup, purchasesOf } from '../../purchases/purchases.ts';
import { html } from '../../report/page/cells.ts';
import { count, few, metres } from '../../text/words.ts';
import type { Output } from '../output.ts';
import { csv } from '../quoting/csv.ts';
import { type Caution, type Column, TICK, facts, sheet, sheetTable } from '../tables/sheet.ts';

export const billOfMaterials: Output = {
  kind: 'bill-of-materials',
  title: 'Bill of materials',
  summary:
    'what to buy: cables by type and cut length, leads, ports by need, modules, disks, UPS; CSV and a page to print',
  subjects: () => [],
  make(plan) {
    const { lines, notSaid } = purchasesOf(plan);
    if (lines.length === 0) return { files: [], refused: [], notes: [] };
    return {
      files: [
        { path: 'bill-of-materials.csv', text: csvOf(plan, lines) },
        { path: 'bill-of-materials.html', text: pageOf(plan, lines, notSaid) },
      ],
      refused: [],
      notes: notSaid.length === 0 ? [] : [`Not said, so left out or to be measured: ${few(notSaid, SHOWN)}.`],
    };
  },
};

/** The most undeclared things that a note names. */
const SHOWN = 5;

function csvOf({ site }: Plan, lines: readonly Purchase[]): string {
  return csv(
    ['Group', 'What', 'Pieces', 'Together (m)', 'For', 'Site'],
    lines.map(({ group, what, count: pieces, length, at }) => [
      group,
      what,
      pieces,
      length === undefined ? '' : length / 1000,
      at.join('; '),
      site.name ?? '',
    ]),
  );
}

const COLUMNS: readonly Column[] = [
  { head: '' },
  { head: 'Pieces', set: 'n' },
  { head: 'What', set: 'w' },
  { head: 'Together', set: 'n' },
  { head: 'For', set: 's' },
];

const TITLES: Readonly<Record<PurchaseGroup, string>> = {
  'cable': 'Cables, to be laid and cut',
  'lead': 'Leads with both plugs',
  'connector': 'Connectors',
  'panel port': 'Ports of patch panels',
  'switch port': 'Ports of switches, by need',
  'module': 'Modules',
  'device': 'Devices',
  'disk': 'Disks',
  'UPS': 'UPS',
  'rack unit': 'Rack units',
};

function pageOf({ site }: Plan, lines: readonly Purchase[], notSaid: readonly string[]): string {
  const parts = PURCHASE_GROUPS.flatMap((group) => {
    const own = lines.filter((line) => line.group === group);
    if (own.length === 0) return [];
    const rows = own.map(({ what, count: pieces, length, at }) => [
      TICK,
      String(pieces),
      what,
      length === undefined ? '' : metres(length),
      few(at, 12),
    ]);
    return [`<section>\n<h2>${html(TITLES[group])}</h2>\n${sheetTable(COLUMNS, rows)}</section>\n`];
  });
  const missing =
    notSaid.length === 0
      ? ''
      : `<section>\n<h2>Not said</h2>\n<ul>\n${notSaid.map((one) => `<li>${html(one)}</li>\n`).join('')}</ul>\n</section>\n`;
  const cables = lines.filter(({ group }) => group === 'cable');
  const total = cables.reduce((sum, { length }) => sum + (length ?? 0), 0);
  const pieces = cables.reduce((sum, line) => sum + line.count, 0);
  return sheet(site, {
    title: 'Bill of materials',
    command: 'make bill-of-materials',
    cautions: CAUTIONS,
    body:
      facts(
        pieces === 0 ? undefined : `${count(pieces, 'cable')} to be laid, ${metres(total)} with slack`,
        'cut lengths: a tenth more than planned, at least 2 m, in whole metres',
        'leads: the next length that is sold',
      ) +
      parts.join('') +
      missing,
  });
}

const CAUTIONS: readonly Caution[] = [
  {
    about: 'Before you order',
    text:
      'measure the ways, and see that cables are of a class that the building code asks for; one spare disk of each ' +
      'size is counted.',
  },
  {
    about: 'Mains, batteries and earth',
    text: 'what is behind a socket, a UPS of more than a plug, and bonding are for a licensed electrician.',
  },
];
