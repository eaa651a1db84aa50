/** The report as tables for a terminal. */

import { decibels, level as levelWords } from '../text/radio-words.ts';
import { bitRate, bytes, days, list, percent } from '../text/words.ts';
import { visible } from '../text/visible.ts';
import { type Align, columns } from './columns.ts';
import { type DirectionReport, type LinkReport, type Report, isLoaded } from './report.ts';

export function reportText(report: Report): string {
  const sections = [
    links(report),
    streams(report),
    traffic(report),
    uplinks(report),
    volumes(report),
    power(report),
    air(report),
    levels(report),
    occasions(report),
  ].filter((section) => section !== '');
  return `${[visible(report.site ?? 'Site without a name'), ...sections].join('\n\n')}\n`;
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

function links({ links: all }: Report): string {
  const rows = all.flatMap((link): string[][] => {
    const ends = [visible(link.from), '→', visible(link.to)];
    const back = ['', '←', ''];
    if (link.blocked && !isLoaded(link)) return [[...ends, capacity(link), 'blocked']];
    return [
      [...ends, capacity(link), ...load(link, link.forward)],
      [...back, '', ...load(link, link.backward)],
    ];
  });
  return section(
    'Links',
    'line rate, with preamble and gaps',
    ['from', '', 'to', 'speed', 'nominal', '', 'peak', '', 'streams'],
    rows,
    ['left', 'left', 'left', 'right', 'right', 'right', 'right', 'right', 'right'],
  );
}

function capacity({ capacity: speed, cables = 1 }: LinkReport): string {
  if (speed === null) return 'unknown';
  return cables === 1 ? bitRate(speed) : `${cables} × ${bitRate(speed / cables)}`;
}

function load({ capacity: speed }: LinkReport, { line, streams: by, traffic: other = {} }: DirectionReport): string[] {
  const share = (rate: number): string => (speed === null || speed === 0 ? '' : percent(rate, speed));
  return [
    bitRate(line.nominal),
    share(line.nominal),
    bitRate(line.peak),
    share(line.peak),
    String(Object.keys(by).length + Object.keys(other).length),
  ];
}

function streams({ streams: all }: Report): string {
  const rows = all.map((stream) => [
    visible(stream.name),
    stream.group ?? 'unicast',
    stream.mac ?? '',
    bitRate(stream.line.nominal),
    bitRate(stream.line.peak),
    visible(list(stream.reaches)),
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

function traffic({ traffic: all }: Report): string {
  const rows = all.map(({ name, from, to, there, back }) => [
    visible(name),
    visible(from ?? '?'),
    visible(to ?? '?'),
    bitRate(there.line.peak),
    bitRate(back.line.peak),
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

function uplinks({ uplinks: all }: Report): string {
  const rows = all.flatMap(({ device, down, up }) =>
    [
      { words: 'down', way: down },
      { words: 'up', way: up },
    ].map(({ words, way: { rate, nominal, peak } }, index) => [
      index === 0 ? visible(device) : '',
      words,
      rate === null ? 'unknown' : bitRate(rate),
      bitRate(nominal),
      bitRate(peak),
      rate === null || rate === 0 ? '' : percent(peak, rate),
    ]),
  );
  const head = ['line', '', 'rate', 'nominal', 'peak', ''];
  return section('Lines to the Internet', 'frames with FCS', head, rows, [
    'left',
    'left',
    'right',
    'right',
    'right',
    'right',
  ]);
}

function volumes({ volumes: all }: Report): string {
  const rows = all.flatMap((volume) => [
    [
      visible(volume.name),
      volume.usableBytes === null ? 'unknown' : bytes(volume.usableBytes),
      bytes(volume.bytesPerDay),
      '',
      volume.daysUntilFull === null ? 'unknown' : days(volume.daysUntilFull),
    ],
    ...Object.entries(volume.recordings).map(([name, { bytesPerDay, bytesKept }]) => [
      `  ${visible(name)}`,
      '',
      bytes(bytesPerDay),
      bytesKept === null ? 'unlimited' : bytes(bytesKept),
      '',
    ]),
  ]);
  return section('Volumes', '', ['volume, recordings', 'usable', 'a day', 'kept', 'full after'], rows, [
    'left',
    'right',
    'right',
    'right',
    'right',
  ]);
}

function power({ poe }: Report): string {
  const rows = poe.map(({ device, budget, draw }) => [
    visible(device),
    watts(draw),
    budget === null ? 'unknown' : watts(budget),
    budget === null || budget === 0 ? '' : percent(draw, budget),
  ]);
  return section('Power over Ethernet', 'set aside at the switch', ['device', 'draw', 'budget', ''], rows, [
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
