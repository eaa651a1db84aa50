/** The levels that each outlet and receiver should show on a meter, to tick off. */

import type { Plan } from '../../plan.ts';
import { html } from '../../report/page/cells.ts';
import { type Connector, connectorAt, connectorName } from '../../site/model.ts';
import { isCoax } from '../../standards/television/coax.ts';
import type { Point } from '../../television/reception.ts';
import { decibels, level, megahertz } from '../../text/radio-words.ts';
import { textAt } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { count } from '../../text/words.ts';
import type { Output } from '../output.ts';
import { type Cell, csv } from '../quoting/csv.ts';
import { cautionsOf } from '../tables/cautions.ts';
import { byTexts } from '../../text/natural-order.ts';
import { type Column, TICK, facts, sheet, sheetTable } from '../tables/sheet.ts';

export const outletSchedule: Output = {
  kind: 'outlet-schedule',
  title: 'Outlet schedule',
  summary: 'levels and margins at each outlet and receiver, to hold a meter against; CSV and a page to print',
  subjects: () => [],
  make(plan) {
    const places = placesOf(plan);
    if (places.length === 0) return { files: [], refused: [], notes: [] };
    return {
      files: [
        { path: 'outlet-schedule.csv', text: csvOf(plan, places) },
        { path: 'outlet-schedule.html', text: pageOf(plan, places) },
      ],
      refused: [],
      notes: [],
    };
  },
};

/** A place where a meter is plugged in. */
interface MeteredPlace {
  readonly at: Connector;
  readonly location: string;
  /** In the order of frequency. */
  readonly points: readonly Point[];
}

/** The outlets and receivers that a signal reaches, place by place. */
function placesOf({ television: { reception } }: Plan): MeteredPlace[] {
  const order = byTexts<MeteredPlace>(
    ({ location }) => (location === '' ? '\uffff' : location),
    ({ at }) => connectorName(at),
  );
  return [...reception.outlets, ...reception.receivers]
    .filter(({ points }) => points.length > 0)
    .map(({ at, points }) => ({
      at,
      location: visible(textAt(at.device.item.data, ['location']) ?? '', 200),
      points: [...points].sort(
        (a, b) =>
          a.signal.frequency - b.signal.frequency || (a.signal.multiplex.name < b.signal.multiplex.name ? -1 : 1),
      ),
    }))
    .sort(order);
}

const CSV_HEAD = [
  'At',
  'Place',
  'Multiplex',
  'System',
  'Channel',
  'Frequency on the coax (MHz)',
  'Level (dBµV)',
  'Least (dBµV)',
  'Most (dBµV)',
  'C/N (dB)',
  'Needed (dB)',
  'Margin (dB)',
  'Site',
];

function csvOf({ site }: Plan, places: readonly MeteredPlace[]): string {
  return csv(
    CSV_HEAD,
    places.flatMap(({ at, location, points }) =>
      points.map(({ signal, window, carrierToNoise, needed, margin }): Cell[] => [
        connectorName(at),
        location,
        signal.multiplex.name,
        signal.multiplex.system ?? '',
        signal.multiplex.channel ?? '',
        Number((signal.frequency / 1e6).toFixed(3)),
        tenth(signal.level),
        window === undefined ? '' : tenth(window.min),
        window === undefined ? '' : tenth(window.max),
        ...[carrierToNoise, needed, margin].map((value) => (value === undefined ? '' : tenth(value))),
        site.name ?? '',
      ]),
    ),
  );
}

function tenth(value: number): number {
  return Number(value.toFixed(1));
}

const COLUMNS: readonly Column[] = [
  { head: '' },
  { head: 'Multiplex', set: 'w' },
  { head: 'System', set: 'w' },
  { head: 'Channel', set: 'n' },
  { head: 'On the coax', set: 'n' },
  { head: 'Level', set: 'n' },
  { head: 'Window', set: 'n' },
  { head: 'C/N', set: 'n' },
  { head: 'Needed', set: 'n' },
  { head: 'Margin', set: 'n' },
  { head: 'As metered', set: 'w' },
];

function pageOf({ site }: Plan, places: readonly MeteredPlace[]): string {
  const parts = places.map(({ at, location, points }) => {
    const rows = points.map(({ signal, window, carrierToNoise, needed, margin }) => [
      TICK,
      signal.multiplex.name,
      signal.multiplex.system ?? '',
      String(signal.multiplex.channel ?? ''),
      megahertz(signal.frequency),
      level(signal.level),
      window === undefined ? '' : `${tenth(window.min)} to ${tenth(window.max)}`,
      ...[carrierToNoise, needed, margin].map((value) => (value === undefined ? '' : decibels(value))),
      '',
    ]);
    const title = [connectorName(at), location].filter((text) => text !== '').join(', ');
    return `<section>\n<h2>${html(visible(title, 300))}</h2>\n${sheetTable(COLUMNS, rows)}</section>\n`;
  });
  const coax = site.cables.filter(
    ({ type, from, to }) =>
      isCoax(type) || connectorAt(site, from) !== undefined || connectorAt(site, to) !== undefined,
  );
  return sheet(site, {
    title: 'Outlet schedule',
    command: 'make outlet-schedule',
    cautions: [
      ...cautionsOf(site, coax, []),
      {
        about: 'Current on the coax',
        text: 'supplies for masthead amplifiers and LNBs put it there: switch them off before you connect or disconnect a plug.',
      },
    ],
    body:
      facts(
        count(places.length, 'place'),
        'levels at 75 Ω over the whole channel, as computed; a meter may show 2 dB more or less',
      ) + parts.join(''),
  });
}
