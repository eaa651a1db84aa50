import assert from 'node:assert/strict';
import fc from 'fast-check';
import { candidatesOf, passOf } from '../../server/src/footage/candidates.ts';
import { clockOf, readTime } from '../../server/src/footage/clock.ts';
import { type Piece, cutExactly, cutOnKeyframes, extentOf } from '../../server/src/footage/cut.ts';
import { concatList } from '../../server/src/footage/ffmpeg-arguments.ts';
import type { Frame } from '../../server/src/footage/probed-file.ts';
import { nameOf } from '../../server/src/footage/outputs.ts';
import { timelineOf } from '../../server/src/footage/timeline.ts';

describe('a time that is asked for', () => {
  const shown = clockOf('Europe/London');
  const read = (text: string, zone: string | undefined = 'Europe/London'): string => {
    const instant = readTime(text, zone);
    return typeof instant === 'number' ? new Date(instant).toISOString() : instant.refused;
  };

  it('is read with its offset, or by the clock of the site', () => {
    for (const text of [
      '2026-07-01T13:00',
      '2026-07-01 13:00:00',
      '2026-07-01T12:00Z',
      '2026-07-01T13:00+01:00',
      '2026-07-01T13:00:00.000+0100',
      '2026-07-01T08:30-03:30',
      '2026-07-01T14:00:00,0+02',
    ])
      assert.equal(read(text), '2026-07-01T12:00:00.000Z', text);
    assert.equal(read('2026-07-01T13:00:00.04'), '2026-07-01T12:00:00.040Z');
    assert.equal(readTime('2026-07-01T12:00Z', undefined), Date.UTC(2026, 6, 1, 12));
  });

  it('is refused where it came twice, with both, or not at all', () => {
    assert.equal(
      read('2026-10-25T01:30'),
      'Clocks in Europe/London showed 2026-10-25T01:30 twice. Say which is meant: 2026-10-25T01:30:00.000+01:00 or 2026-10-25T01:30:00.000+00:00.',
    );
    assert.equal(read('2026-10-25T01:30+01:00'), '2026-10-25T00:30:00.000Z');
    assert.equal(
      read('2026-03-29T01:30'),
      'Clocks in Europe/London skipped 2026-03-29T01:30: they went straight to 2026-03-29T02:00:00.000+01:00.',
    );
  });

  it('is refused where it is no time', () => {
    for (const text of [
      '',
      'yesterday',
      '13:00',
      '2026-02-29T13:00',
      '2026-07-01',
      '2026-07-01T24:00',
      '2026-07-01T13:60',
      '2026-07-01T13:00+25:00',
      '2026-07-01T13:00 UTC',
      '2026-07-01T13:00\n',
    ])
      assert.match(read(text), /is no time of|does not exist|has no offset/, text);
    assert.equal(typeof readTime('2026-07-01T13:00', undefined), 'object');
  });

  it('is shown with its offset', () => {
    assert.equal(shown(Date.UTC(2026, 9, 25, 0, 30)), '2026-10-25T01:30:00.000+01:00');
    assert.equal(shown(Date.UTC(2026, 9, 25, 1, 30, 0, 40)), '2026-10-25T01:30:00.040+00:00');
    assert.equal(clockOf('America/St_Johns')(Date.UTC(2026, 0, 1)), '2025-12-31T20:30:00.000-03:30');
  });
});

describe('files in time', () => {
  const at = (named: number, length: number): { named: number; length: number } => ({ named, length });

  it('that follow each other tell to less than a second when they began', () => {
    // Keyframes every 3 s and 0.7 s after the second: named 0, 3 (3.7), 6 (6.7) … until lengths bring them to it.
    const { placed, breaks } = timelineOf([at(0, 3000), at(3000, 3400), at(7000, 3000)], 1000, 0);
    assert.deepEqual(
      placed.map(({ start }) => start),
      [600, 3600, 7000],
    );
    assert.deepEqual(breaks, []);
  });

  it('have a gap where no rounding of names explains the time between them', () => {
    const { breaks } = timelineOf([at(0, 4000), at(4000, 4000), at(12_000, 4000)], 1000, 0);
    assert.deepEqual(breaks, [{ kind: 'gap', from: 8000, to: 12_000 }]);
    assert.deepEqual(
      timelineOf([at(0, 4000), at(5000, 4000)], 1000, 0).breaks,
      [],
      'the first may have ended at 4.9 s',
    );
    assert.deepEqual(timelineOf([at(0, 4000), at(60_000, 4000)], 60_000, 0).breaks, [], 'named to the minute');
  });

  it('overlap where two have the same time', () => {
    assert.deepEqual(timelineOf([at(0, 10_000), at(4000, 4000), at(10_000, 4000)], 1000, 0).breaks, [
      { kind: 'overlap', from: 4000, to: 8000 },
    ]);
  });

  it('begin before the first of them is named, where those that follow say so', () => {
    // Opened at 0.9 s with 1.2 s in hand: 5.2 s to the first keyframe after, and whole lengths from there on.
    const files = [at(0, 5200), at(4000, 4000), at(8000, 4000)];
    assert.deepEqual(timelineOf(files, 1000, 3000), {
      placed: [
        { file: files[0], start: -1200, end: 4000 },
        { file: files[1], start: 4000, end: 8000 },
        { file: files[2], start: 8000, end: 12_000 },
      ],
      breaks: [],
    });
    // By less than names tell: nobody knows, so it is as it is named.
    assert.deepEqual(
      timelineOf([at(0, 4300), at(4000, 4000)], 1000, 3000).placed.map(({ start }) => start),
      [0, 4300],
    );
    // By more than can be in hand, or in one that is not the first: two have the same time.
    assert.deepEqual(timelineOf([at(0, 10_000), at(4000, 4000)], 1000, 3000).breaks, [
      { kind: 'overlap', from: 4000, to: 8000 },
    ]);
    assert.equal(timelineOf([at(0, 4000), at(4000, 6000), at(8000, 4000)], 1000, 3000).breaks.length, 1);
  });

  it('do not fall apart where the clock of a camera drifts', () => {
    // 1 s in an hour: 277 parts in a million, more than any crystal.
    const files = Array.from({ length: 600 }, (_, index) => at(Math.floor((index * 60_016.7) / 1000) * 1000, 60_000));
    assert.deepEqual(timelineOf(files, 1000, 0).breaks, []);
  });

  it('are looked for as long before as they are long, and the last one before in any case', () => {
    const found = [0, 10, 20, 30, 40].map((instant) => ({ path: instant.toString(), instants: [instant] }));
    const paths = (from: number, to: number, reach: number): string[] =>
      candidatesOf(found, { from, to, exact: false }, reach).map(({ path }) => path);
    assert.deepEqual(paths(25, 40, 8), ['20', '30']);
    assert.deepEqual(paths(25, 41, 16), ['10', '20', '30', '40']);
    assert.deepEqual(paths(1000, 2000, 8), ['40']);
  });

  it('with a name that fits two are of that at whose end they were last written to', () => {
    const [first, second] = [Date.UTC(2026, 9, 25, 0, 30), Date.UTC(2026, 9, 25, 1, 30)];
    assert.equal(passOf([first, second], 60_000, first + 61_000, undefined), first);
    assert.equal(passOf([first, second], 60_000, second + 61_000, undefined), second);
    assert.equal(passOf([first, second], 60_000, Date.UTC(2026, 10, 1), undefined), undefined, 'copied since');
    assert.equal(passOf([first, second], 60_000, Date.UTC(2026, 10, 1), 'second'), second);
    assert.equal(passOf([first], 60_000, 0, 'second'), first);
  });
});

/** Groups of pictures as encoders make them; `open` ones begin with frames that are shown before their keyframe. */
const groups = fc
  .array(
    fc.record({ length: fc.integer({ min: 1, max: 12 }), back: fc.integer({ min: 0, max: 3 }), open: fc.boolean() }),
    { minLength: 1, maxLength: 8 },
  )
  .map((list) => {
    const frames: Frame[] = [];
    for (const [index, { length, back, open }] of list.entries()) {
      const start = frames.length;
      const lead = open && index > 0 ? Math.min(back, length - 1) : 0;
      const order = [lead, ...Array.from({ length: lead }, (_, place) => place)];
      // The rest in runs that are decoded after the frame that they are shown before.
      for (let next = lead + 1; next < length; next += back + 1) {
        const last = Math.min(next + back, length - 1);
        order.push(last, ...Array.from({ length: last - next }, (_, place) => next + place));
      }
      for (const place of order)
        frames.push({
          shown: (start + place) / 25,
          decoded: frames.length / 25 - 0.16,
          duration: 0.04,
          key: place === lead && order[0] === place,
        });
    }
    return frames;
  });

describe('cutting', () => {
  const span = fc
    .tuple(fc.integer({ min: -100, max: 4000 }), fc.integer({ min: 1, max: 4000 }))
    .map(([from, length]) => ({ from: from / 1000, to: (from + length) / 1000 }));
  const wantedOf = (frames: readonly Frame[], from: number, to: number): number[] =>
    frames
      .map(({ shown }) => shown)
      .filter((shown) => shown >= from - 0.0005 && shown < to - 0.0005)
      .sort((a, b) => a - b);

  it('on keyframes leaves out nothing of what was asked for, begins with a keyframe and takes no group too many', () => {
    fc.assert(
      fc.property(groups, span, (frames, { from, to }) => {
        const piece = cutOnKeyframes(frames, from, to);
        const [first, end] = piece.kind === 'copied' ? [piece.first, piece.end] : [0, frames.length];
        const taken = frames.slice(first, end);
        assert.ok(taken[0]?.key);
        const shown = new Set(taken.map((frame) => frame.shown));
        for (const wanted of wantedOf(frames, from, to))
          assert.ok(shown.has(wanted), `${wanted.toString()} is missing`);
        const nextKey = taken.findIndex((frame, index) => index > 0 && frame.key);
        if (nextKey !== -1) assert.ok((taken[nextKey]?.shown ?? 0) > from + 0.0004, 'the first group was not needed');
      }),
      { numRuns: 2000 },
    );
  });

  it('exactly takes each frame that was asked for once, and no other', () => {
    fc.assert(
      fc.property(groups, span, (frames, { from, to }) => {
        const shownBy = (piece: Piece): number[] => {
          if (piece.kind === 'encoded') return wantedOf(frames, piece.from, piece.last + 0.001);
          const [first, end] = piece.kind === 'copied' ? [piece.first, piece.end] : [0, frames.length];
          assert.ok(frames[first]?.key, 'what is copied begins with a keyframe');
          assert.ok(
            frames.slice(first, end).every(({ shown }) => shown >= (frames[first]?.shown ?? 0)),
            'and needs nothing before it',
          );
          return frames
            .slice(first, end)
            .map(({ shown }) => shown)
            .sort((a, b) => a - b);
        };
        const pieces = cutExactly(frames, from, to);
        assert.deepEqual(pieces.flatMap(shownBy), wantedOf(frames, from, to));
        for (const piece of pieces) assert.equal(extentOf(piece, frames).frames, shownBy(piece).length);
      }),
      { numRuns: 2000 },
    );
  });

  it('exactly at a keyframe encodes nothing', () => {
    const frames = Array.from({ length: 100 }, (_, index): Frame => ({
      shown: index / 25,
      decoded: index / 25,
      duration: 0.04,
      key: index % 25 === 0,
    }));
    assert.deepEqual(cutExactly(frames, 1, 3), [{ kind: 'copied', first: 25, end: 75 }]);
    assert.deepEqual(cutExactly(frames, -5, 30), [{ kind: 'whole' }]);
    assert.deepEqual(cutExactly(frames, 1.2, 1.4), [
      { kind: 'encoded', frames: 5, from: 1.2, last: 1.36, to: 1.4000000000000001 },
    ]);
    assert.deepEqual(cutExactly(frames, 5, 6), []);
  });
});

describe('the list of the concat demuxer', () => {
  // FFmpeg's manual of formats, concat; of utilities, Quoting and escaping.
  it('quotes what has a meaning, and adds up without rounding', () => {
    const thirds = Array.from({ length: 3000 }, (_, index) => ({
      path: index === 0 ? "/it's %d -x.mp4" : '/b',
      container: 'mov',
      lead: 0,
      span: 1 / 3,
    }));
    const lines = concatList(thirds).split('\n');
    assert.equal(lines[1], String.raw`file 'file:/it'\''s %d -x.mp4'`);
    const sum = lines
      .filter((line) => line.startsWith('duration '))
      .reduce((total, line) => total + Math.round(Number(line.slice(9)) * 1e6), 0);
    assert.equal(sum, 1e9);
  });

  it('lets the first frame of each come where the last of the one before ends, wherever their containers start', () => {
    const list = concatList([
      { path: 'a', container: 'mov', lead: 0.064, span: 4 },
      { path: 'b', container: 'mov', lead: 0, span: 4 },
      { path: 'c', container: 'mov', lead: 0.1, span: 4 },
    ]);
    assert.deepEqual(list.match(/(?<=duration ).*/g), ['4.064000', '3.900000', '4.100000']);
  });

  it('several results are numbered', () => {
    assert.equal(nameOf('a.b/gate.mp4', 0, 1), 'a.b/gate.mp4');
    assert.equal(nameOf('a.b/gate.mp4', 2, 12), 'a.b/gate-03.mp4');
  });
});
