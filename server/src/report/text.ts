/** The report as tables for a terminal: a function for each section, and nothing else, so it is long. */

import { decibels, level as levelWords } from '../text/radio-words.ts';
import { bitRate, bytes, days, kilograms, list, percent } from '../text/words.ts';
import { visible } from '../text/visible.ts';
import { type Align, columns } from './columns.ts';
import { uplinksOf } from '../network/uplinks.ts';
import type { Plan } from '../plan.ts';
import { isRateKnown } from '../site/media.ts';
import { freeUnitsWords, placeWords, weightWords } from './answer/rack.ts';
import { isSizeKnown, sizeWords } from './answer/storage.ts';
import { isLoadKnown, shareWords, sumWords } from './answer/words.ts';
import { type DirectionReport, type LinkReport, type Report, isLoaded, reportOf } from './report.ts';
import { powerSections } from './supply/text.ts';
import { tightest } from './tightest.ts';
import { type Verdict, verdictWords } from './verdict.ts';

/**
 * Undeclared figures are `?`, and never 0.
 *
 * @param more further sections, which come last
 */
export function reportText(plan: Plan, verdict: Verdict, more: readonly string[] = []): string {
  const report = reportOf(plan);
  const sections = [
    tight(plan),
    links(plan, report),
    streams(plan, report),
    traffic(report, plan),
    uplinks(plan),
    volumes(plan, report),
    racks(plan),
    power(report),
    ...powerSections(plan),
    air(report),
    levels(report),
    occasions(report),
    ...more,
  ].filter((section) => section !== '');
  const name = visible(plan.site.name ?? 'Site without a name');
  return `${[`${name}: ${verdictWords(verdict)}`, ...sections].join('\n\n')}\n`;
}

/** The most things near their limits that are listed. */
const MOST_TIGHT = 5;

function tight(plan: Plan): string {
  const rows = tightest(plan, MOST_TIGHT).map(({ name, what, figures, share, bounds, isKnown }) => [
    visible(name.name),
    visible(what),
    figures,
    `${share > bounds.limit ? '▲ ' : share > bounds.warn ? '△ ' : ''}${shareWords(share, 1, isKnown)}`,
    percent(bounds.limit, 1),
  ]);
  const head = ['where', 'what', 'at peak', 'of it', 'limit'];
  return section('The tightest', '▲ over its limit, △ over what the site warns at', head, rows, [
    'left',
    'left',
    'left',
    'right',
    'right',
  ]);
}

function section(
  title: string,
  note: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
  align: readonly Align[],
): string {
  if (rows.length === 0) return '';
  return [
    `${title}${note === '' ? '' : ` (${note})`}`,
    ...columns([head, ...rows], align).map((line) => `  ${line}`),
  ].join('\n');
}

function links(plan: Plan, { links: all }: Report): string {
  const rows = plan.network.topology.links.flatMap((link, index): string[][] => {
    const own = all[index];
    if (own === undefined) return [];
    const ends = [visible(own.from), '→', visible(own.to)];
    const back = ['', '←', ''];
    if (own.blocked && !isLoaded(own)) return [[...ends, capacity(own), 'blocked']];
    return [
      [...ends, capacity(own), ...load(own, own.forward, isLoadKnown(plan, link, link.a))],
      [...back, '', ...load(own, own.backward, isLoadKnown(plan, link, link.b))],
    ];
  });
  return section(
    'Links',
    'line rate, with preamble and gaps',
    ['from', 'way', 'to', 'speed', 'nominal', 'of it', 'peak', 'of it', 'streams'],
    rows,
    ['left', 'left', 'left', 'right', 'right', 'right', 'right', 'right', 'right'],
  );
}

function capacity({ capacity: speed, cables = 1 }: LinkReport): string {
  if (speed === null) return '?';
  return cables === 1 ? bitRate(speed) : `${cables} × ${bitRate(speed / cables)}`;
}

function load(
  { capacity: speed }: LinkReport,
  { line, streams: by, traffic: other = {} }: DirectionReport,
  isKnown: boolean,
): string[] {
  const share = (rate: number): string => shareWords(rate, speed ?? 0, isKnown);
  return [
    sumWords(line.nominal, isKnown),
    share(line.nominal),
    sumWords(line.peak, isKnown),
    share(line.peak),
    String(Object.keys(by).length + Object.keys(other).length),
  ];
}

function streams({ site }: Plan, { streams: all }: Report): string {
  const isKnown = (name: string): boolean => {
    const stream = site.streamByName.get(name);
    return stream !== undefined && isRateKnown(site, stream);
  };
  const rows = all.map((stream) => [
    visible(stream.name),
    stream.group ?? 'unicast',
    stream.mac ?? '',
    sumWords(stream.line.nominal, isKnown(stream.name)),
    sumWords(stream.line.peak, isKnown(stream.name)),
    stream.reaches.length === 0 ? 'nobody' : visible(list(stream.reaches)),
  ]);
  const table = section(
    'Streams',
    'line rate without a VLAN tag, one copy',
    ['stream', 'group', 'MAC', 'nominal', 'peak', 'reaches'],
    rows,
    ['left', 'left', 'left', 'right', 'right', 'left'],
  );
  const missed = all.flatMap(({ name, unreached, reasons }) =>
    unreached.map(
      (receiver) =>
        `  ${visible(name)} does not reach ${visible(receiver)}: ` +
        visible(reasons[receiver] ?? 'no reason known', 1000),
    ),
  );
  return [table, missed.join('\n')].filter((part) => part !== '').join('\n\n');
}

function traffic({ traffic: all }: Report, { site }: Plan): string {
  const isKnown = (name: string): boolean => site.trafficByName.get(name)?.rate !== undefined;
  const rows = all.map(({ name, from, to, there, back }) => [
    visible(name),
    visible(from ?? '?'),
    visible(to ?? '?'),
    sumWords(there.line.peak, isKnown(name)),
    sumWords(back.line.peak, isKnown(name)),
  ]);
  const table = section(
    'Other traffic',
    'line rate without a VLAN tag, acknowledgements included',
    ['traffic', 'from', 'to', 'there', 'back'],
    rows,
    ['left', 'left', 'left', 'right', 'right'],
  );
  const missed = all.flatMap(({ name, reason }) =>
    reason === null ? [] : [`  ${visible(name)} does not get there: ${visible(reason, 1000)}`],
  );
  return [table, missed.join('\n')].filter((part) => part !== '').join('\n\n');
}

function uplinks(plan: Plan): string {
  const rows = uplinksOf(plan.site.devices, plan.network).flatMap(({ device, down, up }) =>
    [down, up].map(({ way, rate, load: { nominal, peak }, link, out }, index) => {
      const isKnown = isLoadKnown(plan, link, out);
      return [
        index === 0 ? visible(device.name) : '',
        way,
        rate === undefined ? '?' : bitRate(rate),
        sumWords(nominal, isKnown),
        sumWords(peak, isKnown),
        shareWords(peak, rate ?? 0, isKnown),
      ];
    }),
  );
  const head = ['line', 'way', 'rate', 'nominal', 'peak', 'of the rate'];
  const align: readonly Align[] = ['left', 'left', 'right', 'right', 'right', 'right'];
  return section('Lines to the Internet', 'frames with FCS', head, rows, align);
}

function volumes({ site }: Plan, { volumes: all }: Report): string {
  const isKnown = (name: string): boolean => {
    const recording = site.recordingByName.get(name);
    return recording !== undefined && isSizeKnown(site, recording);
  };
  const rows = all.flatMap((volume) => {
    const names = Object.keys(volume.recordings);
    const isWhole = names.every(isKnown);
    return [
      [
        visible(volume.name),
        volume.usableBytes === null ? '?' : bytes(volume.usableBytes),
        sizeWords(volume.bytesPerDay, isWhole),
        '',
        names.length === 0 ? 'never' : volume.daysUntilFull === null || !isWhole ? '?' : days(volume.daysUntilFull),
      ],
      ...Object.entries(volume.recordings).map(([name, { bytesPerDay, bytesKept }]) => [
        `  ${visible(name)}`,
        '',
        sizeWords(bytesPerDay, isKnown(name)),
        bytesKept === null ? 'all' : sizeWords(bytesKept, isKnown(name)),
        '',
      ]),
    ];
  });
  return section('Volumes', '', ['volume, recordings', 'usable', 'a day', 'kept', 'full after'], rows, [
    'left',
    'right',
    'right',
    'right',
    'right',
  ]);
}

function racks(plan: Plan): string {
  const rows = plan.racks.flatMap((figures) => {
    const { rack, placed, elsewhere, weight, unweighed } = figures;
    return [
      [visible(rack.name), freeUnitsWords(figures), weightWords(weight, unweighed.length > 0, rack.bears) ?? '?'],
      ...placed.map((one) => [`  ${visible(one.device.name)}`, placeWords(one), massWords(one.device.mounting.weight)]),
      ...elsewhere.map(({ name, mounting }) => [`  ${visible(name)}`, '?', massWords(mounting.weight)]),
    ];
  });
  return section('Racks', '', ['rack, devices', 'units', 'weight'], rows, ['left', 'left', 'right']);
}

function massWords(grams: number | undefined): string {
  return grams === undefined ? '?' : kilograms(grams);
}

function power({ poe }: Report): string {
  const rows = poe.map(({ device, budget, draw }) => [
    visible(device),
    watts(draw),
    budget === null ? '?' : watts(budget),
    budget === null || budget === 0 ? '?' : percent(draw, budget),
  ]);
  return section('Power over Ethernet', 'set aside at the switch', ['device', 'draw', 'budget', 'of it'], rows, [
    'left',
    'right',
    'right',
    'right',
  ]);
}

function air({ air: cells }: Report): string {
  const rows = cells.flatMap(({ device, basicRate, share, streams: by }) => [
    [visible(device), bitRate(basicRate), `${share.nominal} %`, `${share.peak} %`],
    ...Object.entries(by).map(([name, own]) => [`  ${visible(name)}`, '', `${own.nominal} %`, `${own.peak} %`]),
  ]);
  return section(
    'Air',
    'the time that groups take of it',
    ['access point, streams', 'sent at', 'nominal', 'peak'],
    rows,
    ['left', 'right', 'right', 'right'],
  );
}

function levels({ rf }: Report): string {
  const points = rf.points.filter(({ place }) => place !== 'way');
  const rows = points.map(({ at, multiplex, level, carrierToNoise, needed, margin }, index) => [
    points[index - 1]?.at === at ? '' : visible(at),
    visible(multiplex),
    levelWords(level),
    decibelWords(carrierToNoise),
    decibelWords(needed),
    decibelWords(margin),
  ]);
  return section(
    'Television',
    'levels at 75 Ω, carrier to noise as it is and as it is needed',
    ['at', 'multiplex', 'level', 'C/N', 'needed', 'margin'],
    rows,
    ['left', 'left', 'right', 'right', 'right', 'right'],
  );
}

function decibelWords(value: number | null): string {
  return value === null ? '?' : decibels(value);
}

function occasions({ rf }: Report): string {
  const rows = rf.occasions.flatMap(({ name, assigned, unmet }) => [
    [visible(name), unmet.length === 0 ? '' : `${unmet.length} too many`],
    ...Object.entries(assigned).map(([multiplex, tuner]) => [`  ${visible(multiplex)}`, visible(tuner)]),
    ...unmet.map((multiplex) => [`  ${visible(multiplex)}`, 'no tuner']),
  ]);
  return section('Occasions', 'each tuner takes one multiplex at a time', ['occasion, multiplexes', 'tuner'], rows, [
    'left',
    'left',
  ]);
}

function watts(amount: number): string {
  return `${Number(amount.toFixed(2))} W`;
}
