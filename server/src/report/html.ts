/** The report as one page that prints: no scripts, nothing fetched, light or dark as the reader has it. */

import { decibels, level as levelWords } from '../text/radio-words.ts';
import { visible } from '../text/visible.ts';
import { bitRate, bytes, days, percent } from '../text/words.ts';
import { type DirectionReport, type LinkReport, type Report, isLoaded } from './report.ts';

export function reportHtml(report: Report): string {
  const name = html(report.site ?? 'Site without a name');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>${name}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${name}</h1>
${[links(report), streams(report), traffic(report), uplinks(report), volumes(report), power(report), air(report), levels(report), occasions(report)].join('')}</body>
</html>
`;
}

const STYLE = `
:root { color-scheme: light dark; font: 15px/1.45 system-ui, sans-serif; }
body { max-width: 72rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.6rem; } h2 { font-size: 1.15rem; margin: 2rem 0 .4rem; }
p { margin: .3rem 0; } .note { opacity: .75; }
table { border-collapse: collapse; width: 100%; }
th, td { padding: .2rem .6rem; text-align: left; vertical-align: top; border-bottom: 1px solid color-mix(in srgb, currentColor 20%, transparent); }
td.n, th.n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
td:first-child { white-space: nowrap; } tr.part td:first-child { padding-left: 1.6rem; }
meter { width: 4rem; margin-right: .3rem; }
@media print { :root { color-scheme: light; font-size: 10pt; } body { margin: 0; max-width: none; } tr { break-inside: avoid; } thead { display: table-header-group; } }
`;

/** `text` escaped for elements and quoted attributes. */
export function html(text: string): string {
  return visible(text, 1000).replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}

/** The HTML of a cell; numbers are aligned right. */
interface Cell {
  readonly html: string;
  readonly number?: boolean;
}

const text = (value: string): Cell => ({ html: html(value) });
const figure = (value: string): Cell => ({ html: html(value), number: true });

interface Row {
  readonly cells: readonly Cell[];
  /** Belongs to the row above. */
  readonly part?: boolean;
}

function table(title: string, note: string, head: readonly Cell[], rows: readonly Row[], after = ''): string {
  if (rows.length === 0) return '';
  const row = (tag: string, cells: readonly Cell[]): string =>
    cells.map((cell) => `<${tag}${cell.number === true ? ' class="n"' : ''}>${cell.html}</${tag}>`).join('');
  return [
    `<h2>${html(title)}</h2>`,
    ...(note === '' ? [] : [`<p class="note">${html(note)}</p>`]),
    '<table>',
    `<thead><tr>${row('th', head)}</tr></thead>`,
    '<tbody>',
    ...rows.map(({ cells, part }) => `<tr${part === true ? ' class="part"' : ''}>${row('td', cells)}</tr>`),
    '</tbody>',
    '</table>',
    `${after}\n`,
  ].join('\n');
}

function links({ links: all }: Report): string {
  const rows = all.flatMap((link): Row[] => {
    if (link.blocked && !isLoaded(link)) {
      const ends = [text(`${link.from} – ${link.to}`), figure(speed(link))];
      return [{ cells: [...ends, figure(''), figure(''), figure(''), text('blocked by spanning tree')] }];
    }
    return [
      { cells: direction(link, link.from, link.to, link.forward) },
      { cells: direction(link, link.to, link.from, link.backward), part: true },
    ];
  });
  const head = [
    text('Link'),
    figure('Speed'),
    figure('Nominal'),
    figure('Peak'),
    figure('Of the speed'),
    text('Streams'),
  ];
  return table('Links', 'Line rate: Ethernet frames with preamble and gaps.', head, rows);
}

function direction(
  link: LinkReport,
  from: string,
  to: string,
  { line, streams: by, traffic: other = {} }: DirectionReport,
): Cell[] {
  const { capacity } = link;
  const share: Cell =
    capacity === null || capacity === 0
      ? figure('')
      : {
          html:
            '<meter min="0" max="1" low="0.7" high="0.9" optimum="0" ' +
            `value="${Math.min(1, line.peak / capacity).toFixed(3)}"></meter>${html(percent(line.peak, capacity))}`,
          number: true,
        };
  return [
    text(`${from} → ${to}`),
    figure(speed(link)),
    figure(bitRate(line.nominal)),
    figure(bitRate(line.peak)),
    share,
    text([...Object.keys(by), ...Object.keys(other)].join(', ')),
  ];
}

function speed({ capacity, cables = 1 }: LinkReport): string {
  if (capacity === null) return 'unknown';
  return cables === 1 ? bitRate(capacity) : `${cables} × ${bitRate(capacity / cables)}`;
}

function streams({ streams: all }: Report): string {
  const rows = all.map(({ name, group, mac, line, reaches }) => ({
    cells: [
      text(name),
      text(group ?? 'unicast'),
      text(mac ?? ''),
      figure(bitRate(line.nominal)),
      figure(bitRate(line.peak)),
      text(reaches.join(', ')),
    ],
  }));
  const missed = all.flatMap(({ name, unreached, reasons }) =>
    unreached.map(
      (receiver) => `<p>${html(`${name} does not reach ${receiver}: ${reasons[receiver] ?? 'no reason known'}`)}.</p>`,
    ),
  );
  const head = [text('Stream'), text('Group'), text('MAC'), figure('Nominal'), figure('Peak'), text('Reaches')];
  return table('Streams', 'Line rate of one copy, without a VLAN tag.', head, rows, missed.join('\n'));
}

function traffic({ traffic: all }: Report): string {
  const rows = all.map(({ name, from, to, there, back }) => ({
    cells: [
      text(name),
      text(from ?? '?'),
      text(to ?? '?'),
      figure(bitRate(there.line.peak)),
      figure(bitRate(back.line.peak)),
    ],
  }));
  const missed = all.flatMap(({ name, reason }) =>
    reason === null ? [] : [`<p>${html(`${name} does not get there: ${reason}`)}.</p>`],
  );
  const head = [text('Traffic'), text('From'), text('To'), figure('There'), figure('Back')];
  const note = 'Line rate without a VLAN tag, acknowledgements included.';
  return table('Other traffic', note, head, rows, missed.join('\n'));
}

function uplinks({ uplinks: all }: Report): string {
  const rows = all.flatMap(({ device, down, up }): Row[] => [
    { cells: lineCells(`${device}, down`, down) },
    { cells: lineCells(`${device}, up`, up), part: true },
  ]);
  const head = [text('Line'), figure('Rate'), figure('Nominal'), figure('Peak'), figure('Of the rate')];
  return table('Lines to the Internet', 'Frames with FCS.', head, rows);
}

function lineCells(name: string, { rate, nominal, peak }: Report['uplinks'][number]['up']): Cell[] {
  return [
    text(name),
    figure(rate === null ? 'unknown' : bitRate(rate)),
    figure(bitRate(nominal)),
    figure(bitRate(peak)),
    figure(rate === null || rate === 0 ? '' : percent(peak, rate)),
  ];
}

function volumes({ volumes: all }: Report): string {
  const rows = all.flatMap(({ name, usableBytes, bytesPerDay, daysUntilFull, recordings }): Row[] => [
    {
      cells: [
        text(name),
        figure(usableBytes === null ? 'unknown' : bytes(usableBytes)),
        figure(bytes(bytesPerDay)),
        figure(''),
        figure(daysUntilFull === null ? 'unknown' : days(daysUntilFull)),
      ],
    },
    ...Object.entries(recordings).map(([recording, figures]) => ({
      cells: [
        text(recording),
        figure(''),
        figure(bytes(figures.bytesPerDay)),
        figure(figures.bytesKept === null ? 'unlimited' : bytes(figures.bytesKept)),
        figure(''),
      ],
      part: true,
    })),
  ]);
  return table(
    'Volumes',
    '',
    [text('Volume'), figure('Usable'), figure('A day'), figure('Kept'), figure('Full after')],
    rows,
  );
}

function power({ poe }: Report): string {
  const rows = poe.map(({ device, budget, draw }) => ({
    cells: [
      text(device),
      figure(watts(draw)),
      figure(budget === null ? 'unknown' : watts(budget)),
      figure(budget === null || budget === 0 ? '' : percent(draw, budget)),
    ],
  }));
  return table(
    'Power over Ethernet',
    'What each switch sets aside for the devices that it feeds.',
    [text('Switch'), figure('Draw'), figure('Budget'), figure('')],
    rows,
  );
}

function air({ air: cells }: Report): string {
  const share = (value: number): Cell => figure(`${value} %`);
  const rows = cells.flatMap(({ device, basicRate, share: all, streams: by }): Row[] => [
    { cells: [text(device), figure(bitRate(basicRate)), share(all.nominal), share(all.peak)] },
    ...Object.entries(by).map(([name, own]) => ({
      cells: [text(name), figure(''), share(own.nominal), share(own.peak)],
      part: true,
    })),
  ]);
  return table(
    'Air',
    'What groups take of the time of each access point, sent at its basic rate.',
    [text('Access point'), figure('Sent at'), figure('Nominal'), figure('Peak')],
    rows,
  );
}

function watts(amount: number): string {
  return `${Number(amount.toFixed(2))} W`;
}

function levels({ rf }: Report): string {
  const points = rf.points.filter(({ place }) => place !== 'way');
  const known = (value: number | null): Cell => figure(value === null ? '?' : decibels(value));
  const rows = points.map(({ at, multiplex, level, carrierToNoise, needed, margin }, index): Row => ({
    cells: [
      text(points[index - 1]?.at === at ? '' : at),
      text(multiplex),
      figure(levelWords(level)),
      known(carrierToNoise),
      known(needed),
      known(margin),
    ],
  }));
  return table(
    'Television',
    'Levels at 75 Ω; carrier to noise as it is and as it is needed.',
    [text('At'), text('Multiplex'), figure('Level'), figure('C/N'), figure('Needed'), figure('Margin')],
    rows,
  );
}

function occasions({ rf }: Report): string {
  const rows = rf.occasions.flatMap(({ name, assigned, unmet }): Row[] => [
    { cells: [text(name), text(unmet.length === 0 ? '' : `${unmet.length} too many`)] },
    ...Object.entries(assigned).map(([multiplex, tuner]) => ({ cells: [text(multiplex), text(tuner)], part: true })),
    ...unmet.map((multiplex) => ({ cells: [text(multiplex), text('no tuner')], part: true })),
  ]);
  return table('Occasions', 'Each tuner takes one multiplex at a time.', [text('Occasion'), text('Tuner')], rows);
}
