/** Every cable of the site in the order of a walk through it: place by place, port by port. */

import { memberLinkAt, oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import type { Cable } from '../../site/model.ts';
import { isCoax } from '../../standards/television/coax.ts';
import { bitRate, count, metres } from '../../text/words.ts';
import { html } from '../../report/page/cells.ts';
import type { Output } from '../output.ts';
import { type Cell, csv } from '../quoting/csv.ts';
import { cautionsOf } from '../tables/cautions.ts';
import { byTexts } from '../../text/natural-order.ts';
import { type Column, TICK, facts, sheet, sheetTable } from '../tables/sheet.ts';
import { type CableRun, type PlugEnd, cableRun, byRun, reversed } from './cable-run.ts';
import { textAt } from '../../text/syntax.ts';

export const patchSchedule: Output = {
  kind: 'patch-schedule',
  title: 'Patch schedule',
  summary: 'every cable in the order of a walk, from port to port by way of the patch panels; CSV and a page to print',
  subjects: () => [],
  make(plan) {
    if (plan.site.cables.length === 0) return { files: [], refused: [], notes: [] };
    const walk = walkOf(plan);
    return {
      files: [
        { path: 'patch-schedule.csv', text: csvOf(plan, walk) },
        { path: 'patch-schedule.html', text: pageOf(plan, walk) },
      ],
      refused: [],
      notes: [],
    };
  },
};

/** Each cable once, from the end where one starts. Ends without a place come last, device by device. */
function walkOf(plan: Plan): CableRun[] {
  const { site } = plan;
  const ends = new Map<string, number>();
  for (const { from, to } of site.cables)
    for (const end of [from, to]) if (end !== undefined) ends.set(end.device, (ends.get(end.device) ?? 0) + 1);
  const rank = ({ text, port }: PlugEnd): readonly [forwards: number, cables: number, name: string] => {
    const device = port?.device.name ?? text;
    return [port?.forwards === true ? 1 : 0, ends.get(device) ?? 0, text];
  };
  const isHere = (one: CableRun): boolean => {
    const [a, b] = [rank(one.here), rank(one.there)];
    return a[0] !== b[0] ? a[0] > b[0] : a[1] !== b[1] ? a[1] > b[1] : a[2] <= b[2];
  };
  const order = byTexts<CableRun>(
    ({ here }) => (here.location === '' ? '\uffff' : here.location),
    ({ here }) => here.text,
  );
  return site.cables
    .map((cable) => cableRun(plan, cable))
    .map((one) => (isHere(one) ? one : reversed(one)))
    .sort((a, b) => order(a, b) || byRun(a, b));
}

const CSV_HEAD = [
  'Label',
  'From',
  'At',
  'Through',
  'To',
  'At the far end',
  'Cable',
  'Length (m)',
  'How laid',
  'Speed (bit/s)',
  'Peak from here (bit/s)',
  'Peak to here (bit/s)',
  'Site',
];

function csvOf({ site, network }: Plan, walk: readonly CableRun[]): string {
  return csv(
    CSV_HEAD,
    walk.map(({ cable, link, here, there, through, label }): Cell[] => {
      const peaks =
        link === undefined || here.port === undefined
          ? ['', '']
          : [here.port, oppositePort(link, here.port)].map((out) => network.load(link, out).line.peak);
      return [
        label,
        here.text,
        here.location,
        through.join('; '),
        there.text,
        there.location,
        cable.type ?? '',
        cable.length === undefined ? '' : cable.length / 1000,
        textAt(cable.item.data, ['description']) ?? '',
        (link === undefined || here.port === undefined ? undefined : memberLinkAt(link, here.port)?.capacity) ?? '',
        ...peaks,
        site.name ?? '',
      ];
    }),
  );
}

const COLUMNS: readonly Column[] = [
  { head: '' },
  { head: 'Label', set: 'w' },
  { head: 'From', set: 'w' },
  { head: 'Through', set: 'w' },
  { head: 'To', set: 'w' },
  { head: 'At the far end' },
  { head: 'Cable', set: 'w' },
  { head: 'Length', set: 'n' },
  { head: 'Speed', set: 'n' },
  { head: 'How laid', set: 's' },
];

function pageOf({ site }: Plan, walk: readonly CableRun[]): string {
  const stops: { location: string; cables: CableRun[] }[] = [];
  for (const one of walk) {
    const last = stops.at(-1);
    if (last !== undefined && last.location === one.here.location) last.cables.push(one);
    else stops.push({ location: one.here.location, cables: [one] });
  }
  const parts = stops.map(({ location, cables }) => {
    const rows = cables.map(({ cable, link, here, there, through, label }) => [
      TICK,
      label,
      here.text,
      through.join(', '),
      there.text,
      there.location,
      cable.type ?? '',
      cable.length === undefined ? '' : metres(cable.length),
      link === undefined
        ? isCoax(cable.type)
          ? ''
          : 'no link'
        : link.capacity === undefined
          ? ''
          : bitRate(link.capacity),
      textAt(cable.item.data, ['description']) ?? '',
    ]);
    const title = html(location === '' ? 'Place not said' : location);
    return `<section>\n<h2>${title}</h2>\n${sheetTable(COLUMNS, rows)}</section>\n`;
  });
  const cables = walk.map(({ cable }) => cable);
  return sheet(site, {
    title: 'Patch schedule',
    command: 'make patch-schedule',
    cautions: cautionsOf(
      site,
      cables,
      walk.flatMap(({ here, there }) => [here.port ?? [], there.port ?? []].flat()),
    ),
    body: `${facts(count(cables.length, 'cable'), ...byType(cables))}${parts.join('')}`,
  });
}

/** `cat6: 22, 563 m`, for each type of cable. */
function byType(cables: readonly Cable[]): string[] {
  const types = [...new Set(cables.map(({ type }) => type))].sort((a, b) =>
    (a ?? '\uffff') < (b ?? '\uffff') ? -1 : 1,
  );
  return types.map((type) => {
    const own = cables.filter((cable) => cable.type === type);
    const unknown = own.filter(({ length }) => length === undefined).length;
    const total = metres(own.reduce((sum, { length }) => sum + (length ?? 0), 0));
    const lengths =
      unknown === own.length
        ? 'lengths not known'
        : unknown === 0
          ? total
          : `${total} and ${unknown} of unknown length`;
    return `${type ?? 'type not said'}: ${own.length}, ${lengths}`;
  });
}
