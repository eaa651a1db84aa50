/** A port in time: what its counters carried over the load that is planned, out of it and into it. */

import { USUAL_LIMITS, type Row as Counted, rowsOf } from '../audit/counters/compare.ts';
import { type Step } from '../audit/counters/flow.ts';
import { matched } from '../audit/counters/ports.ts';
import { clockOf } from '../footage/clock.ts';
import type { Plan } from '../plan.ts';
import { portAnswer } from '../report/answer/port.ts';
import { type Port, portName } from '../site/model.ts';
import { bitRate } from '../text/words.ts';
import { type Axes, BELOW, LEFT, axesMarks, evenScale, pointIn } from './axes.ts';
import {
  type Drawing,
  type DrawingKind,
  type Line,
  type Mark,
  type Measured,
  type Point,
  type Table,
  portNamed,
} from './drawing.ts';
import { words } from './words.ts';

const MARGIN = 16;
const PLOT = { width: 720, height: 150 };
const HEAD = 46;
const TITLE = 26;
const SMALL = 11;
/** Of the width, px: what was counted within one is drawn as one. */
const COLUMN = 2;

export const portTime: DrawingKind = {
  kind: 'port',
  title: 'Port in time',
  summary: 'what its counters carried over the load that is planned, both directions (needs --counters)',
  measured: { from: 'counters', needed: true, has: ({ counters }) => counters !== undefined },
  subjects: ({ site }) => site.ports.map(portName),
  draw(plan, subject, { measured }) {
    const port = plan.site.ports.find((one) => portName(one) === subject);
    if (port === undefined || measured?.counters === undefined) throw new Error(`no counters of ${subject} were read`);
    return drawn(plan, port, measured.counters);
  },
};

function drawn(plan: Plan, port: Port, { readings, device }: NonNullable<Measured['counters']>): Drawing {
  const { counted } = matched(plan.site, readings.samples, device);
  const rows = rowsOf(
    plan,
    counted.filter((one) => one.port === port),
    USUAL_LIMITS,
  ).filter(({ flow }) => flow.steps.length > 0);
  const times = rows.flatMap(({ flow }) => flow.steps.flatMap(({ from, to }) => [from, to]));
  const from = times.reduce((least, time) => Math.min(least, time), Infinity);
  const to = times.reduce((most, time) => Math.max(most, time), -Infinity);
  const clock = clockOf(plan.site.timezone);
  const name = portName(port);
  const answer = portAnswer(plan, port);
  const each = TITLE + PLOT.height + BELOW + 16;
  const said = rows.map(
    ({ title, flow, planned }) => `${title}: ${bitRate(flow.mean)} on average, ${bitRate(planned.nominal)} planned`,
  );
  return {
    title: `Port ${name} in time`,
    description: `${rows.length === 0 ? `The files have no counters of ${name}` : said.join('; ')}. Of frames, as counters count them. Solid: counted; dashed: planned, as usual and at peak.`,
    width: MARGIN + LEFT + PLOT.width + 24 + MARGIN,
    height: HEAD + Math.max(1, rows.length) * each,
    marks: [
      {
        mark: 'thing',
        at: portNamed(name),
        role: 'port',
        label: `${name}: ${answer}`,
        marks: [words(`${name} · ${answer}`, MARGIN, 26, { size: 14, strong: true, maxWidth: LEFT + PLOT.width })],
      },
      ...rows.flatMap((row, index) => directionMarks(row, { from, to, top: HEAD + index * each, clock })),
    ],
    tables: [tableOf(name, rows)],
  };
}

interface Frame {
  /** ms since 1970 */
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly clock: (instant: number) => string;
}

function directionMarks({ title, flow, planned }: Counted, { from, to, top, clock }: Frame): Mark[] {
  const counted = rates(flow.steps);
  const most = counted.reduce((highest, { rate }) => Math.max(highest, rate), Math.max(planned.peak, 1000));
  const shown = (instant: number): string => clock(instant).slice(0, 19).replace('T', ' ');
  const axes: Axes = {
    left: MARGIN + LEFT,
    top: top + TITLE,
    ...PLOT,
    across: { from, to: Math.max(to, from + 1), ticks: [] },
    up: evenScale(most, 4, bitRate),
  };
  const level = (rate: number, look: Line['look']): Mark => ({
    mark: 'line',
    points: [pointIn(axes, from, rate), pointIn(axes, axes.across.to, rate)],
    look,
  });
  const bottom = axes.top + PLOT.height + 18;
  return [
    words(
      `${title}: ${bitRate(flow.mean)} on average, planned ${bitRate(planned.nominal)}, at peak ${bitRate(planned.peak)}`,
      axes.left,
      top + 16,
      { size: 12, maxWidth: PLOT.width },
    ),
    ...axesMarks(axes),
    words(shown(from), axes.left, bottom, { size: SMALL, look: 'quiet' }),
    words(shown(to), axes.left + PLOT.width, bottom, { size: SMALL, look: 'quiet', anchor: 'end' }),
    level(planned.nominal, 'idle'),
    ...(planned.peak > planned.nominal ? [level(planned.peak, 'warn')] : []),
    ...linesOf(axes, counted).map((points): Mark => ({ mark: 'line', points, look: 'main' })),
  ];
}

interface Rate extends Pick<Step, 'from' | 'to'> {
  /** bit/s */
  readonly rate: number;
}

function rates(steps: readonly Step[]): Rate[] {
  return steps.map(({ from, to, octets }) => ({ from, to, rate: to === from ? 0 : (octets * 8000) / (to - from) }));
}

/** Rates over time as lines, broken where nothing was measured; within one column of pixels the highest is drawn. */
function linesOf(axes: Axes, counted: readonly Rate[]): Point[][] {
  const width = ((axes.across.to - axes.across.from) * COLUMN) / axes.width;
  const columns: Rate[] = [];
  for (const one of counted) {
    const last = columns.at(-1);
    if (last !== undefined && last.to === one.from && one.to - last.from <= width)
      columns[columns.length - 1] = { from: last.from, to: one.to, rate: Math.max(last.rate, one.rate) };
    else columns.push(one);
  }
  const lines: Point[][] = [];
  let before: Rate | undefined;
  for (const one of columns) {
    if (before?.to !== one.from) lines.push([]);
    lines.at(-1)?.push(pointIn(axes, one.from, one.rate), pointIn(axes, one.to, one.rate));
    before = one;
  }
  return lines;
}

function tableOf(name: string, rows: readonly Counted[]): Table {
  return {
    title: 'Counted and planned',
    head: ['Direction', 'On average', 'Busiest', 'Quietest', 'Planned', 'At peak'],
    rows:
      rows.length === 0
        ? [{ things: [portNamed(name)], cells: [{ names: [portNamed(name)] }, 'not counted', '', '', '', ''] }]
        : rows.map(({ title, flow, planned }) => ({
            things: [portNamed(name)],
            cells: [
              title,
              { figure: bitRate(flow.mean) },
              { figure: bitRate(flow.busiest) },
              { figure: bitRate(flow.quietest) },
              { figure: bitRate(planned.nominal) },
              { figure: bitRate(planned.peak) },
            ],
          })),
  };
}
