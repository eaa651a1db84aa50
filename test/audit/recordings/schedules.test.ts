/**
 * Recorders at random, in several zones and about the days on which clocks change, against a model that knows what was
 * really recorded: it keeps true times, and reads no name.
 */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { type Entry, LOCAL, OFFSET, found, pathAt, siteText } from './folder.ts';
import type { Diagnostic } from '../../../server/src/lint/rule.ts';

const SECOND = 1000;
const ZONES = [
  'Europe/London',
  'America/St_Johns',
  'Australia/Lord_Howe',
  'America/Sao_Paulo',
  'Asia/Kathmandu',
  'Pacific/Chatham',
  'UTC',
];
/** Days on which clocks change in some of the zones, and one on which none does. */
const DAYS = [
  '2026-03-28',
  '2026-10-24',
  '2026-03-07',
  '2026-10-31',
  '2026-04-04',
  '2026-10-03',
  '2018-02-17',
  '2026-06-01',
];

/** When clocks go back (zdump -v, tzdata 2025b). */
const BACK = [
  ['Europe/London', '2026-10-25T01:00:00Z'],
  ['America/St_Johns', '2026-11-01T04:30:00Z'],
  ['Australia/Lord_Howe', '2026-04-04T15:00:00Z'],
  ['America/Sao_Paulo', '2018-02-18T02:00:00Z'],
  ['Pacific/Chatham', '2026-04-04T14:00:00Z'],
] as const;

/** A file as it really was; milliseconds. */
interface True {
  readonly start: number;
  readonly length: number;
}

interface Schedule {
  readonly zone: string;
  readonly begin: number;
  readonly segment: number;
  readonly keyframes: number;
  /** After each outage: how many whole files, how much of one more, and how long nothing was recorded then. */
  readonly runs: readonly { readonly files: number; readonly rest: number; readonly outage: number }[];
  readonly rate: number;
}

const schedule: fc.Arbitrary<Schedule> = fc.record({
  zone: fc.constantFrom(...ZONES),
  begin: fc
    .tuple(fc.constantFrom(...DAYS), fc.integer({ min: 0, max: 30 * 3_600_000 }))
    .map(([day, after]) => Date.parse(`${day}T00:00:00Z`) + after),
  segment: fc.constantFrom(60_000, 300_000, 600_000),
  keyframes: fc.constantFrom(1000, 2000, 7000),
  // Names tell seconds: what is shorter than some of them is not drawn.
  runs: fc.array(
    fc.record({
      files: fc.integer({ min: 3, max: 12 }),
      rest: fc.double({ min: 0.1, max: 0.7, noNaN: true }),
      outage: fc.oneof(fc.constant(0), fc.integer({ min: 5000, max: 7_200_000 })),
    }),
    { minLength: 1, maxLength: 5 },
  ),
  rate: fc.integer({ min: 200_000, max: 20_000_000 }),
});

/** Ends come at keyframes, as FFmpeg's segment muxer has it: the first at or after each whole segment. */
function recordedBy({ begin, segment, keyframes, runs }: Schedule, whole: boolean): True[] {
  const files: True[] = [];
  let at = begin;
  for (const { files: count, rest, outage } of runs) {
    const ends = Array.from(
      { length: count },
      (_, index) => Math.ceil(((index + 1) * segment) / keyframes) * keyframes,
    );
    ends.forEach((end, index) => {
      const start = index === 0 ? 0 : (ends[index - 1] ?? 0);
      files.push({ start: at + start, length: end - start });
    });
    at += ends.at(-1) ?? 0;
    if (whole) continue;
    files.push({ start: at, length: Math.round(segment * rest) });
    at += Math.round(segment * rest) + outage;
  }
  return files;
}

/** What is left on the disk: of files of one name the last. */
function onDisk(files: readonly True[], pattern: string, { zone, rate }: Schedule): Entry[] {
  const entries = files.map(({ start, length }) => ({
    path: pathAt(start, pattern, zone),
    size: Math.round((rate * length) / 8000),
    modified: start + length,
  }));
  return [...new Map(entries.map((entry) => [entry.path, entry])).values()];
}

function textOf({ zone, segment, keyframes }: Schedule, file: string, rate: number): string {
  return siteText({
    zone,
    file,
    segment: `${segment / SECOND} s`,
    keyframes: `${keyframes / SECOND} s`,
    bitrate: `${rate} b/s`,
  });
}

function ids(found: readonly Diagnostic[]): string[] {
  return found.map(({ rule }) => rule.id).sort();
}

/** `1 h 50 min` and the like. */
function milliseconds(text = ''): number {
  const units = new Map([
    ['d', 86_400_000],
    ['h', 3_600_000],
    ['min', 60_000],
    ['s', 1000],
  ]);
  return [...text.matchAll(/([\d.]+) (\w+)/g)].reduce(
    (sum, [, n, unit = '']) => sum + Number(n) * (units.get(unit) ?? NaN),
    0,
  );
}

function total(found: readonly Diagnostic[], id: string, form: RegExp): { count: number; time: number } {
  const message = found.find(({ rule }) => rule.id === id)?.message;
  if (message === undefined) return { count: 0, time: 0 };
  const [, time, count] = form.exec(message) ?? [];
  return { count: Number(count), time: milliseconds(time) };
}

const GAPS = /lacks ([\w .]+) in (\d+) gaps?:/;
/** Words show minutes from an hour on, and seconds below. */
const shownWithin = (time: number): number => (time >= 3_500_000 ? 30_000 : 500);

describe('audits of recordings, on schedules at random', function () {
  it('whole files that follow each other are no fault, in any zone', () => {
    fc.assert(
      fc.property(schedule, (drawn) => {
        const files = onDisk(recordedBy(drawn, true), OFFSET, drawn);
        assert.deepEqual(ids(found(textOf(drawn, OFFSET, drawn.rate), files).found), []);
      }),
      { numRuns: 150 },
    );
  });

  it('each run of files that are gone is a gap of their length', () => {
    fc.assert(
      fc.property(schedule, fc.array(fc.nat({ max: 60 }), { minLength: 1, maxLength: 6 }), (drawn, gone) => {
        const all = recordedBy(drawn, true);
        // The first and the last bound what is known, and there must be enough left to tell the usual length.
        const kept = all.filter(
          (_, index) => index === 0 || index === all.length - 1 || !gone.some((one) => one % all.length === index),
        );
        fc.pre(kept.length < all.length && kept.length > 0.7 * all.length);
        const gaps: number[] = [];
        kept.slice(1).forEach((file, index) => {
          const before = kept[index];
          if (before !== undefined && file.start > before.start + before.length)
            gaps.push(file.start - before.start - before.length);
        });
        const { found: diagnostics } = found(textOf(drawn, OFFSET, drawn.rate), onDisk(kept, OFFSET, drawn));
        assert.deepEqual(ids(diagnostics), ['recording-gap']);
        const sum = gaps.reduce((a, b) => a + b, 0);
        const told = total(diagnostics, 'recording-gap', GAPS);
        assert.equal(told.count, gaps.length);
        // A file may be a keyframe interval longer or shorter than usual, and names are rounded.
        assert.ok(
          Math.abs(told.time - sum) <= gaps.length * (drawn.keyframes + 2 * SECOND) + shownWithin(sum),
          `${told.time} for ${sum}`,
        );
      }),
      { numRuns: 150 },
    );
  });

  it('with true lengths, outages are gaps to the second, and each restart a short file', () => {
    fc.assert(
      fc.property(schedule, (drawn) => {
        const files = recordedBy(drawn, false);
        const lengths = new Map([
          ['gate', new Map(files.map(({ start, length }) => [Math.floor(start / SECOND) * SECOND, length]))],
        ]);
        const text = textOf(drawn, OFFSET, drawn.rate);
        const { found: diagnostics } = found(text, onDisk(files, OFFSET, drawn), { lengths });
        // What was recorded last is not known to have ended.
        const ended = drawn.runs.slice(0, -1);
        const outages = ended.map(({ outage }) => outage).filter((outage) => outage > 0);
        assert.deepEqual(ids(diagnostics), [
          ...(outages.length > 0 ? ['recording-gap'] : []),
          ...(ended.length > 0 ? ['segment-short'] : []),
        ]);
        const sum = outages.reduce((a, b) => a + b, 0);
        const told = total(diagnostics, 'recording-gap', GAPS);
        assert.equal(told.count, outages.length);
        assert.ok(
          Math.abs(told.time - sum) <= outages.length * 2 * SECOND + shownWithin(sum),
          `${told.time} for ${sum}`,
        );
        const shorts = diagnostics.find(({ rule }) => rule.id === 'segment-short')?.message ?? '0 files';
        assert.equal(Number.parseInt(shorts, 10), ended.length);
      }),
      { numRuns: 150 },
    );
  });

  it('without an offset in the names, what the second pass overwrote is lost, and nothing else', () => {
    let overwritten = 0;
    fc.assert(
      fc.property(
        schedule,
        fc.constantFrom(...BACK),
        fc.integer({ min: 1, max: 40 }),
        fc.boolean(),
        (drawn, [zone, back], before, copied) => {
          // Names come again to the second only where files begin at whole parts of the hour.
          const even = { ...drawn, zone, begin: Date.parse(back) - before * 600_000, keyframes: 2000 };
          const all = recordedBy(even, true);
          const namesake = new Map(all.map((file) => [pathAt(file.start, LOCAL, even.zone), file]));
          const lost = all.filter((file) => namesake.get(pathAt(file.start, LOCAL, even.zone)) !== file);
          // Nobody can tell of what was there before the first file that is left.
          fc.pre(lost.length === 0 || lost[0] !== all[0]);
          const end = (all.at(-1)?.start ?? 0) + even.segment;
          const entries = onDisk(all, LOCAL, even).map((entry) =>
            copied ? { ...entry, modified: end + 90 * 86_400_000 } : entry,
          );
          const { found: diagnostics } = found(textOf(even, LOCAL, even.rate), entries, { now: end });
          const twice = diagnostics.filter(({ rule }) => rule.id === 'repeated-hour-recorded');
          const others = ids(diagnostics.filter((one) => !twice.includes(one)));
          if (lost.length === 0)
            assert.deepEqual([ids(twice.filter(({ severity }) => severity === 'warning')), others], [[], []]);
          if (lost.length === 0 || copied) return;
          overwritten++;
          assert.deepEqual([twice.length, others], [1, []]);
          const [, time] = /clocks showed twice, ([\w .]+) of gate are lost/.exec(twice[0]?.message ?? '') ?? [];
          const sum = lost.length * even.segment;
          assert.ok(Math.abs(milliseconds(time) - sum) <= shownWithin(sum), `${twice[0]?.message} for ${sum}`);
        },
      ),
      { numRuns: 400 },
    );
    assert.ok(overwritten > 5, `${overwritten} runs in which something was overwritten`);
  });

  it('the rate is what was written over the time in which it was', () => {
    fc.assert(
      fc.property(schedule, fc.double({ min: 0.3, max: 3, noNaN: true }), (drawn, factor) => {
        const files = onDisk(recordedBy(drawn, true), OFFSET, drawn);
        const declared = Math.round(drawn.rate / factor);
        const { found: diagnostics } = found(textOf(drawn, OFFSET, declared), files);
        const off = Math.abs(drawn.rate / declared - 1);
        // Between the two it depends on how names are rounded; and a few files show no rate.
        fc.pre(files.length > 3 && (off < 0.08 || off > 0.16));
        assert.deepEqual(ids(diagnostics), off > 0.1 ? ['recorded-bitrate-differs'] : []);
        const title = diagnostics[0]?.fixes?.()[0]?.title;
        if (title === undefined) return;
        const [, number, unit] = /measured ([\d.]+) (\S+)b\/s/.exec(title) ?? [];
        const written = Number(number) * ({ k: 1e3, M: 1e6 }[unit ?? ''] ?? NaN);
        assert.ok(Math.abs(written / drawn.rate - 1) < 0.03, `${title} for ${drawn.rate}`);
      }),
      { numRuns: 100 },
    );
  });
});
