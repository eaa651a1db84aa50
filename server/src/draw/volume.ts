/**
 * How a volume fills over the days to come, and what is on its disk if somebody has audited it.
 *
 * One picture in one file; its bands are in `volume/`.
 */

import type { Plan } from '../plan.ts';
import { isSizeKnown, sizeWords, volumeAnswer } from '../report/answer/storage.ts';
import { shareWords } from '../report/answer/words.ts';
import { DAY } from '../standards/time-units.ts';
import type { VolumeFigures } from '../storage/storage.ts';
import { bytes, count, days, list, percent, threshold } from '../text/words.ts';
import { type Axes, BELOW, LEFT, axesMarks, evenScale, evenStep, pointIn } from './axes.ts';
import type { Drawing, DrawingKind, Line, Mark, Measured, Row, Table } from './drawing.ts';
import { widthOf, words } from './words.ts';
import { type Filling, NAMES, bands, fillOf, recordingAt, volumeNamed } from './volume/bands.ts';

const MARGIN = 16;
const PLOT = { width: 640, height: 300 };
const SMALL = 11;
/** Days beyond which nothing is drawn. */
const MOST_DAYS = 366;
/** Of measured days. */
const MOST_DOTS = 30;

export const volumeFill: DrawingKind = {
  kind: 'volume',
  title: 'Fill of a volume',
  summary: 'how it fills over the days to come, its limit, when deletion begins; with --folder what is there over it',
  measured: {
    from: 'recordings',
    needed: false,
    has: ({ recordings }, subject) => recordings?.looked.some(({ recording }) => recording.volume === subject) === true,
  },
  subjects: ({ site }) => site.volumes.map(({ name }) => name),
  draw(plan, subject, { measured }) {
    const volume = plan.site.volumeByName.get(subject);
    if (volume === undefined) throw new Error(`${subject} is not a volume of this site`);
    return drawn(plan, plan.storage.on(volume), measured?.recordings);
  },
};

type OnFolder = NonNullable<Measured['recordings']>;

function fillOn({ recordings }: VolumeFigures, day: number): number {
  return recordings.reduce((sum, figures) => sum + fillOf(figures, day), 0);
}

/** Days after which a recording is deleted, each once, in order. */
function keeps({ recordings }: VolumeFigures): number[] {
  const all = recordings.flatMap(({ recording: { keep } }) => (keep === undefined ? [] : [keep / DAY]));
  return [...new Set(all)].sort((a, b) => a - b);
}

/** Of which nobody can say what they take: they are not in the fill. */
function unknownOn({ site }: Plan, { recordings }: VolumeFigures): string[] {
  return recordings.flatMap(({ recording }) => (isSizeKnown(site, recording) ? [] : [recording.name]));
}

function drawn(plan: Plan, figures: VolumeFigures, measured: OnFolder | undefined): Drawing {
  const { volume, usableBytes, recordings, daysUntilFullKept } = figures;
  const kept = keeps(figures);
  const onDisk = measured === undefined ? [] : measuredDays(figures, measured);
  const grows = recordings.some(({ recording }) => recording.keep === undefined);
  const last = Math.min(
    MOST_DAYS,
    Math.max(
      7,
      Math.ceil((kept.at(-1) ?? 0) * 1.15),
      Math.ceil(((grows ? daysUntilFullKept : undefined) ?? 0) * 1.15),
      onDisk.at(-1)?.day ?? 0,
    ),
  );
  const events = eventsOf(figures, kept).filter(({ day }) => day <= last);
  const top = 40 + events.length * 16;
  const most = Math.max(fillOn(figures, last), usableBytes ?? 0, ...onDisk.map(({ there }) => there));
  const step = Math.max(1, evenStep(last, 10));
  const axes: Axes = {
    left: MARGIN + LEFT,
    top,
    ...PLOT,
    across: {
      from: 0,
      to: last,
      ticks: Array.from({ length: Math.floor(last / step) + 1 }, (_, index) => ({
        value: index * step,
        text: index === 0 ? 'day 0' : String(index * step),
      })),
    },
    up: evenScale(most, 5, bytes),
  };
  const answer = volumeAnswer(plan, figures);
  const unknown = unknownOn(plan, figures);
  const width = axes.left + PLOT.width + 8 + NAMES + MARGIN;
  return {
    title: `Fill of ${volume.name}`,
    description:
      `${volume.name}: ${answer}.${limitWords(plan, figures)} The sum of its recordings from an empty disk on, each until it is deleted as its keep says. ` +
      (unknown.length === 0 ? '' : `Not in it, as their rate is not known: ${list(unknown)}. `) +
      (measured === undefined ? '' : 'Dots: what is on the disk of the newest so many days.'),
    width,
    height: top + PLOT.height + BELOW + MARGIN,
    marks: [
      {
        mark: 'thing',
        at: volumeNamed(volume.name),
        role: 'volume',
        label: `${volume.name}: ${answer}`,
        marks: [
          words(`${volume.name} · ${answer}`, MARGIN, 28, { size: 14, strong: true, maxWidth: width - 2 * MARGIN }),
        ],
      },
      ...axesMarks(axes),
      ...bands({ figures, axes, kept, last, unknown }),
      ...limits(plan, figures, axes, events),
      ...eventMarks(axes, events),
      ...dots(axes, onDisk),
    ],
    tables: [
      daysTable({ figures, kept, last, unknown }),
      recordingsTable(plan, figures),
      ...(measured === undefined ? [] : [measuredTable(figures, onDisk)]),
    ],
  };
}

function limitWords({ site }: Plan, { usableBytes }: VolumeFigures): string {
  const { limit } = site.policies.volumeFill;
  if (usableBytes === undefined || usableBytes === 0) return '';
  return ` Usable ${bytes(usableBytes)}, limit ${threshold(limit)}: ${bytes((usableBytes * limit) / 10_000)}.`;
}

/** What may be used, and what the site's policy lets be used of it. */
function limits({ site }: Plan, { usableBytes }: VolumeFigures, axes: Axes, events: readonly Event[]): Mark[] {
  if (usableBytes === undefined || usableBytes === 0) return [];
  const { limit } = site.policies.volumeFill;
  const upright = events.map(({ day }) => pointIn(axes, day, 0).x);
  const across = (value: number, text: string, look: Line['look'], above: boolean): Mark[] => {
    const from = pointIn(axes, axes.across.from, value);
    const to = pointIn(axes, axes.across.to, value);
    // The first place where no line of an event runs through the words.
    const x = [from.x, ...upright.toSorted((a, b) => a - b)].find(
      (start) => !upright.some((line) => line > start && line < start + 12 + widthOf(text, SMALL)),
    );
    return [
      { mark: 'line', points: [from, to], look },
      words(text, (x ?? from.x) + 6, above ? from.y - 5 : from.y + 14, { size: SMALL }),
    ];
  };
  const allowed = (usableBytes * limit) / 10_000;
  return [
    ...across(usableBytes, `usable ${bytes(usableBytes)}`, 'plain', true),
    ...(allowed < usableBytes ? across(allowed, `limit ${threshold(limit)}: ${bytes(allowed)}`, 'warn', false) : []),
  ];
}

interface Event {
  readonly day: number;
  readonly text: string;
  readonly look: Line['look'];
}

function eventsOf({ daysUntilFullKept, recordings }: VolumeFigures, kept: readonly number[]): Event[] {
  const [first] = kept;
  const last = kept.at(-1);
  const whose = recordings.filter(({ recording: { keep } }) => keep !== undefined && keep / DAY === first);
  return [
    ...(daysUntilFullKept === undefined
      ? []
      : [{ day: daysUntilFullKept, text: `▲ full after ${days(daysUntilFullKept)}`, look: 'bad' as const }]),
    ...(first === undefined
      ? []
      : [
          {
            day: first,
            text: `day ${Number(first.toFixed(1))}: the first is deleted (${list(whose.slice(0, 2).map(({ recording }) => recording.name))}${whose.length > 2 ? ' …' : ''})`,
            look: 'idle' as const,
          },
        ]),
    ...(last === undefined || last === first || recordings.some(({ recording }) => recording.keep === undefined)
      ? []
      : [{ day: last, text: `day ${Number(last.toFixed(1))}: as much is deleted as written`, look: 'idle' as const }]),
  ];
}

/**
 * Words stand left of their line, where they meet no line of an earlier one, or else right of it. Those at the right come
 * first, as later lines begin below them, then the others from the latest on: so no line runs through words.
 */
function eventMarks(axes: Axes, events: readonly Event[]): Mark[] {
  const all = events
    .map((event) => ({ ...event, ...pointIn(axes, event.day, 0) }))
    .sort((a, b) => a.day - b.day)
    .map((event, index, sorted) => {
      const before = sorted[index - 1]?.x ?? MARGIN;
      return { ...event, isLeft: event.x - 6 - widthOf(event.text, SMALL) > before };
    });
  const inOrder = [...all.filter(({ isLeft }) => !isLeft), ...all.filter(({ isLeft }) => isLeft).toReversed()];
  const right = axes.left + axes.width + 8 + NAMES;
  return inOrder.flatMap(({ x, text, look, isLeft }, index): Mark[] => {
    const y = 46 + index * 16;
    return [
      {
        mark: 'line',
        points: [
          { x, y: y - 8 },
          { x, y: axes.top + axes.height },
        ],
        look,
      },
      words(text, isLeft ? x - 6 : x + 6, y, {
        size: SMALL,
        anchor: isLeft ? 'end' : 'start',
        look: look === 'bad' ? 'bad' : 'plain',
        ...(isLeft ? {} : { maxWidth: right - x - 6 }),
      }),
    ];
  });
}

/** What the newest so many days take. */
interface OnDisk {
  readonly day: number;
  readonly there: number;
  readonly planned: number;
}

/** From today backwards, as far as files go. */
function measuredDays(figures: VolumeFigures, { looked, now }: OnFolder): OnDisk[] {
  const own = looked.filter(
    ({ recording, course }) => recording.volume === figures.volume.name && course.end > course.first,
  );
  const oldest = own.reduce((least, { course }) => Math.min(least, course.from), now);
  const all = Math.min(MOST_DAYS, Math.ceil((now - oldest) / DAY));
  const step = Math.max(1, Math.ceil(all / MOST_DOTS));
  const found: OnDisk[] = [];
  for (let day = step; day <= Math.max(all, all > 0 ? step : 0); day += step) {
    const since = now - day * DAY;
    const there = own.reduce((sum, { rows, course }) => {
      for (let index = Math.max(course.first, rows.before(since)); index < course.end; index++) sum += rows.size(index);
      return sum;
    }, 0);
    found.push({ day, there, planned: fillOn(figures, day) });
  }
  return found;
}

function dots(axes: Axes, onDisk: readonly OnDisk[]): Mark[] {
  return onDisk
    .filter(({ day }) => day <= axes.across.to)
    .map(({ day, there }) => {
      const { x, y } = pointIn(axes, day, there);
      return words('●', x, y + 4, { anchor: 'middle', size: SMALL });
    });
}

function daysTable({ figures, kept, last, unknown }: Omit<Filling, 'axes'>): Table {
  const { volume, usableBytes } = figures;
  const isKnown = unknown.length === 0;
  const shown = [...new Set([1, 7, 14, 21, 28, ...kept, last])].filter((day) => day <= last).sort((a, b) => a - b);
  return {
    title: 'By day',
    head: ['Day', 'On the disk', 'Of the volume'],
    rows: shown.map((day) => {
      const fill = fillOn(figures, day);
      return {
        things: [volumeNamed(volume.name)],
        cells: [
          String(Number(day.toFixed(2))),
          { figure: sizeWords(fill, isKnown) },
          { figure: shareWords(fill, usableBytes ?? 0, isKnown) },
        ],
      };
    }),
  };
}

function recordingsTable({ site }: Plan, { recordings }: VolumeFigures): Table {
  return {
    title: 'Recordings',
    head: ['Recording', 'A day', 'Keep', 'Kept'],
    rows: recordings.map(({ recording, bytesPerDay, bytesKept }): Row => {
      const isKnown = isSizeKnown(site, recording);
      return {
        things: [recordingAt(recording.name)],
        cells: [
          { names: [recordingAt(recording.name)] },
          { figure: isKnown ? bytes(bytesPerDay) : '?' },
          { figure: recording.keep === undefined ? 'never deleted' : days(recording.keep / DAY) },
          { figure: bytesKept === undefined ? 'all' : isKnown ? bytes(bytesKept) : '?' },
        ],
      };
    }),
  };
}

function measuredTable({ volume }: VolumeFigures, onDisk: readonly OnDisk[]): Table {
  return {
    title: 'Measured',
    head: ['The newest', 'On the disk', 'Planned', 'Of the plan'],
    rows: onDisk.map(({ day, there, planned }) => ({
      things: [volumeNamed(volume.name)],
      cells: [
        count(day, 'day'),
        { figure: bytes(there) },
        { figure: bytes(planned) },
        { figure: planned === 0 ? '?' : percent(there, planned) },
      ],
    })),
  };
}
