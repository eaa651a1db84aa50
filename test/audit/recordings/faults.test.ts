/** Faults of a folder are reported, and nothing else. */

import assert from 'node:assert/strict';
import { type Entry, LOCAL, OFFSET, found, newestEnd, only, pathAt, recorded, siteText, told } from './folder.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const START = Date.parse('2026-06-01T00:00:00Z');
const hours = (count: number, from = START): Entry[] => recorded(from, count * 60);
const without = (entries: readonly Entry[], from: number, count: number): Entry[] => [
  ...entries.slice(0, from),
  ...entries.slice(from + count),
];
/** Files of an hour each, for when there are days of them. */
const HOURLY = { segment: '1 h' };
const daysOf = (count: number): Entry[] => recorded(START, count * 24, { length: HOUR });
const changed = (entries: readonly Entry[], index: number, change: Partial<Entry>): Entry[] =>
  entries.map((entry, at) => (at === index ? { ...entry, ...change } : entry));

describe('audit of recordings', () => {
  it('says nothing of a good run, through both changes of the clocks', () => {
    assert.deepEqual(told(siteText(), hours(2)), []);
    for (const day of ['2026-03-28T12:00:00Z', '2026-10-24T12:00:00Z'])
      assert.deepEqual(told(siteText(), hours(30, Date.parse(day))), []);
    assert.deepEqual(
      told(siteText({ file: LOCAL }), recorded(Date.parse('2026-03-28T12:00:00Z'), 1800, { pattern: LOCAL })),
      [],
    );
  });

  it('sums up what is there in a line for each recording', () => {
    const { summary } = found(siteText(), without(hours(2), 10, 10));
    assert.deepEqual(summary, [
      'recording  files     size  from                       to                             length  gaps  kept  measured  declared',
      'gate         110  4.95 GB  2026-06-01T01:00:00+01:00  2026-06-01T03:00:00+01:00  1 h 50 min     1   2 h    6 Mb/s    6 Mb/s',
      '110 files looked at.',
    ]);
  });

  it('takes the order of the files from their names, not from the folder', () => {
    const files = without(hours(2), 10, 5);
    assert.deepEqual(told(siteText(), [...files].reverse()), told(siteText(), files));
  });

  it('a recording without a file', () => {
    only(
      told(siteText(), [], { now: START }),
      'error recording-absent: There is no file of gate, which are named gate/%Y-%m-%d_%H-%M-%S%z.mp4.',
    );
  });

  it('one that has stopped', () => {
    const files = hours(2);
    assert.deepEqual(told(siteText(), files, { now: newestEnd(files) + MINUTE }), []);
    only(
      told(siteText(), files, { now: newestEnd(files) + 3 * HOUR }),
      'error recording-stopped: Nothing of gate',
      'since gate/2026-06-01_02-59-00+0100.mp4, which ends about 2026-06-01T03:00:00+01:00',
    );
  });

  it('a missing segment, and an hour of them', () => {
    only(
      told(siteText(), without(hours(2), 10, 1)),
      'warning recording-gap: gate lacks 1 min in 1 gap: from 2026-06-01T01:10:00+01:00 to 2026-06-01T01:11:00+01:00, behind gate/2026-06-01_01-09-00+0100.mp4',
    );
    only(
      told(siteText(), without(without(hours(6), 200, 60), 10, 3)),
      'gate lacks 1 h 3 min in 2 gaps: the first',
      'behind gate/2026-06-01_01-09',
      'the last',
      'behind gate/2026-06-01_04-19',
    );
  });

  it('keyframes that come a little too early or too late are none', () => {
    const slipping = hours(2).map((entry, index) => ({
      ...entry,
      path: pathAt(START + index * MINUTE + (index % 2 === 0 ? 0 : 2000), OFFSET),
    }));
    assert.deepEqual(told(siteText(), slipping), []);
    // 7 s with a keyframe each 3 s: FFmpeg cuts after 9, 6, 6, 9 …
    const times = [0, 9, 15, 21, 30, 36, 42, 51, 57, 63].map((second) => START + second * 1000);
    const files = times.map((start, index) => ({
      path: pathAt(start, OFFSET),
      size: ((times[index + 1] ?? start + 7000) - start) * 750,
      modified: start + 7000,
    }));
    assert.deepEqual(told(siteText({ segment: '7 s', keyframes: '3 s' }), files), []);
  });

  it('a recorder that began again', () => {
    const [before, after] = [recorded(START, 60), recorded(START + 59 * MINUTE + 20_000, 60)];
    const short = changed(before, 59, { size: 15_000_000, modified: START + 59 * MINUTE + 20_000 });
    only(
      told(siteText(), [...short, ...after]),
      'information segment-short: 1 file of gate was followed by the next after less than 1 min: gate/2026-06-01_01-59-00+0100.mp4, 20 s',
    );
    const often = [0, 1, 2, 3, 4, 5].flatMap((run) =>
      changed(recorded(START + run * 320_000, 6), 5, { size: 15_000_000 }),
    );
    only(told(siteText(), often), 'warning segment-short: 5 files');
  });

  it('one that began again while more moved than before is none that overlaps', () => {
    const [before, after] = [recorded(START, 60), recorded(START + 59 * MINUTE + 20_000, 60)];
    // A third more than at 6 Mb/s.
    only(
      told(siteText(), [...changed(before, 59, { size: 20_000_000 }), ...after]),
      'information segment-short: 1 file',
    );
  });

  it('a missing segment where each is as long as the keyframes are apart', () => {
    const files = without(hours(1), 30, 1);
    only(told(siteText({ keyframes: '60 s' }), files), 'recording-gap: gate lacks 1 min in 1 gap');
  });

  it('files by their time, where that does not say all of the name', () => {
    const pattern = 'gate/%Y-%m-%d_%H-%M-%S_%Z.mp4';
    const files = without(hours(1), 30, 1).map((entry) => ({ ...entry, path: entry.path.replace('+0100', '_BST') }));
    only(
      told(siteText({ file: pattern }), files),
      'recording-gap: gate lacks 1 min in 1 gap: from ',
      'behind the file of 2026-06-01T01:29:00+01:00.',
    );
  });

  it('nothing of times of writing that mean nothing', () => {
    const files = hours(1);
    assert.deepEqual(
      told(
        siteText(),
        files.map((entry) => ({ ...entry, modified: 0 })),
        { now: newestEnd(files) },
      ),
      [],
    );
  });

  it('the first file of a recorder that cuts by the clock is shorter, also after a gap', () => {
    const cutFrom = (entries: readonly Entry[], late: number): Entry[] =>
      entries.map((entry, index) =>
        index > 0 ? entry : { ...entry, path: pathAt(entry.modified - MINUTE + late, OFFSET), size: entry.size / 3 },
      );
    assert.deepEqual(told(siteText(), cutFrom(hours(1), 40_000)), []);
    only(
      told(siteText(), [...cutFrom(hours(1), 40_000), ...cutFrom(hours(1, START + 2 * HOUR), 40_000)]),
      'recording-gap: gate lacks 1 h 1 min in 1 gap',
    );
  });

  it('the first file of a recorder holds what was read before it was opened too, up to a keyframe interval and a second', () => {
    const longer = (at: number, by: number): string[] =>
      told(siteText({ keyframes: '2 s' }), hours(1), { lengths: new Map([['gate', new Map([[at, MINUTE + by]])]]) });
    assert.deepEqual(longer(START, 4_400), []);
    only(longer(START, 4_600), 'recording-overlap: gate has 5 s twice');
    only(longer(START + 10 * MINUTE, 1_600), 'recording-overlap: gate has 2 s twice');
  });

  it('files of another length', () => {
    only(
      told(siteText(), recorded(START, 60, { length: 300_000 })),
      'warning segment-length-differs: Files of gate follow each other after 5 min as a rule, and 1 min is planned',
    );
    only(
      told(siteText(), recorded(START, 60, { length: 10_000 })),
      'segment-length-differs',
      'after 10 s',
      'or two recorders write at once, which --probe tells apart',
    );
  });

  it('two files of one time, by their size and by what ffprobe said', () => {
    const twice: Entry[] = [...recorded(START, 30), ...recorded(START + 30 * MINUTE - 30_000, 30)];
    only(
      told(siteText(), twice),
      'warning recording-overlap: gate has 30 s twice, in 1 file that goes on after the next has begun: gate/2026-06-01_01-29-00+0100.mp4',
    );
    const lengths = new Map([['gate', new Map([[START + 29 * MINUTE, 60_000]])]]);
    only(told(siteText(), twice, { lengths }), 'recording-overlap: gate has 30 s twice');
  });

  it('with true lengths, a gap that names do not show', () => {
    const lengths = new Map([['gate', new Map([[START + 10 * MINUTE, 20_000]])]]);
    const shown = told(siteText(), changed(hours(1), 10, { size: 15_000_000 }), { lengths });
    assert.equal(shown.length, 2);
    only(
      shown.slice(0, 1),
      'recording-gap: gate lacks 40 s in 1 gap: from 2026-06-01T01:10:20+01:00 to 2026-06-01T01:11:00+01:00',
    );
    only(shown.slice(1), 'segment-short: 1 file of gate');
  });

  it('what ffprobe cannot read', () => {
    const lengths = new Map([['gate', new Map([[START, 'damaged' as const]])]]);
    only(
      told(siteText(), hours(1), { lengths }),
      'file-damaged: ffprobe cannot read 1 file of gate: gate/2026-06-01_01-00-00+0100.mp4.',
    );
  });

  it('empty files, but not the one that is being written', () => {
    const files = hours(1);
    assert.deepEqual(told(siteText(), changed(files, 59, { size: 0 })), []);
    only(
      told(siteText(), changed(changed(files, 59, { size: 0 }), 5, { size: 0 })),
      'file-empty: 1 file of gate is empty: gate/2026-06-01_01-05-00+0100.mp4.',
    );
    only(
      told(siteText(), changed(changed(files, 8, { size: 0 }), 5, { size: 0 })),
      '2 files of gate are empty: from gate/2026-06-01_01-05-00+0100.mp4 to gate/2026-06-01_01-08-00+0100.mp4',
    );
  });

  it('times that cannot be', () => {
    const files = hours(1);
    const now = newestEnd(files);
    const at = (time: number, modified: number): Entry => ({ path: pathAt(time, OFFSET), size: 1, modified });
    only(
      told(siteText(), [...files, at(now + DAY, now + DAY)], { now }),
      'recorder-clock: 1 file of gate bears a time in the future: gate/2026-06-02_02-00-00+0100.mp4',
    );
    only(
      told(siteText(), [...files, at(5000, 5000)], { now }),
      'recorder-clock: 1 file of gate bears a time before 2000, from a clock that was not set: gate/1970-01-01_01-00-05+0100.mp4',
    );
    const skipped = recorded(Date.parse('2026-03-29T00:58:00Z'), 5, { pattern: LOCAL });
    only(
      told(siteText({ file: LOCAL }), [...skipped, { path: 'gate/2026-03-29_01-30-00.mp4', size: 1, modified: 0 }]),
      'recorder-clock: 1 file of gate bears a time that no clock of the site has shown: gate/2026-03-29_01-30-00.mp4',
    );
  });

  it('a recorder that keeps the time of another zone', () => {
    const berlin = hours(1).map((entry, index) => ({
      ...entry,
      path: pathAt(START + index * MINUTE, LOCAL, 'Europe/Berlin'),
    }));
    only(
      told(siteText({ file: LOCAL }), berlin, { now: newestEnd(berlin) + HOUR }),
      'recorder-clock: 60 files of gate bear times after the one at which it was last written to: from gate/2026-06-01_02-00-00.mp4 to gate/2026-06-01_02-59-00.mp4',
    );
  });

  it('what nobody plans, by folder', () => {
    const other = ['old/a.mp4', 'old/b.mp4', 'gate/notes.txt', 'x.ts', '__proto__/constructor'].map((path) => ({
      path,
      size: 1000,
      modified: START,
    }));
    only(
      told(siteText(), [...hours(1), ...other]),
      'information file-unplanned: archive has 5 files of 5 kB that no recording plans, in old/ (2, such as a.mp4)',
      '__proto__/ (1, such as constructor)',
    );
  });

  it('so many folders of it as no memory should hold are counted as one', () => {
    const many = Array.from({ length: 3000 }, (_, index) => ({ path: `f${index}/a`, size: 1, modified: START }));
    only(told(siteText(), [...hours(1), ...many]), 'has 3000 files of 3 kB', 'further folders (2000, such as a)');
  });

  it('what names do not tell is said, and is no fault', () => {
    const files = hours(1).map((entry, index) => ({ ...entry, path: `gate/${index.toString().padStart(2, '0')}.mp4` }));
    const { found: diagnostics, summary } = found(siteText({ file: 'gate/%M.mp4' }), files);
    assert.deepEqual(
      diagnostics.map(({ rule }) => rule.id),
      [],
    );
    assert.ok(
      summary.includes('gate: its names do not tell when files are of, since they come again every hour.'),
      summary.join('\n'),
    );
  });

  it('stands at the words that planned it', () => {
    const [gap] = found(siteText(), without(hours(2), 10, 1)).found;
    const [kept] = found(siteText(HOURLY), daysOf(20)).found;
    const words = [gap, kept].map((one) =>
      one === undefined ? '' : one.at.piece.text.slice(one.at.start, one.at.end),
    );
    assert.deepEqual(words, ['gate', '14 d']);
  });

  it('is accepted where the site accepts it', () => {
    const lint =
      'lint:\n  rules: {file-empty: error}\n  accept: [{rule: recording-gap, at: gate, because: the camera was cleaned}]\n';
    assert.deepEqual(told(siteText({ more: lint }), without(hours(2), 10, 1)), []);
  });
});
