/** How long recordings are kept, what rate they have and what room there is. */

import assert from 'node:assert/strict';
import { type Entry, found, newestEnd, only, recorded, siteText, told } from './folder.ts';
import type { Edit } from '../../../server/src/site/edit.ts';
import { edited } from '../../site.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const START = Date.parse('2026-06-01T00:00:00Z');
/** Files of an hour each, for when there are days of them. */
const HOURLY = { segment: '1 h' };
const daysOf = (count: number): Entry[] => recorded(START, count * 24, { length: HOUR });

describe('audit of the room that recordings take', () => {
  it('what is kept for longer than planned, and longer than may be', () => {
    const files = daysOf(20);
    const now = newestEnd(files);
    only(
      told(siteText(HOURLY), files, { now }),
      'warning kept-too-long: gate goes back 20 d, to 2026-06-01T01:00:00+01:00 (gate/2026-06-01_01-00-00+0100.mp4), and is to be kept for 14 d: ',
      'should be gone',
    );
    // Deleted once a day.
    assert.deepEqual(told(siteText(HOURLY), files.slice(122), { now }), []);
    const policy = 'policies:\n  retention:\n    - {recordings: [gate], at-most: 14 d}\n';
    only(
      told(siteText({ ...HOURLY, more: policy }), files.slice(122), { now }),
      'kept-too-long: gate goes back 14.9 d',
      'is to be kept for 14 d at most',
    );
  });

  it('what is deleted too early, where it is known that there was more', () => {
    const files = daysOf(5);
    const policy = 'policies:\n  retention:\n    - {recordings: [gate], at-least: 10 d}\n';
    assert.deepEqual(told(siteText({ ...HOURLY, more: policy }), files), []);
    only(
      told(siteText(HOURLY), files, { since: START - 20 * DAY }),
      'kept-too-short: gate goes back no more than 5 d',
      'is to be kept for 14 d, though it has been recorded since 2026-05-12',
    );
    only(
      told(siteText({ ...HOURLY, more: policy }), files, { since: START - 20 * DAY }),
      'to be kept for 10 d at least',
    );
    const daily = { ...HOURLY, file: 'gate/%Y/%m/%d/%H-%M-%S%z.mp4' };
    const byDay = recorded(START, 5 * 24, { length: HOUR, pattern: daily.file });
    assert.deepEqual(told(siteText(daily), byDay), []);
    only(told(siteText(daily), byDay, {}, ['gate/2026/05/28/']), 'kept-too-short', 'recorded since 2026-05-28');
  });

  it('another bit rate than declared, with a fix that agrees afterwards', () => {
    const files = recorded(START, 120, { rate: 10e6 });
    const {
      found: [finding, ...others],
    } = found(siteText(), files);
    assert.deepEqual(others, []);
    assert.equal(`${finding?.severity} ${finding?.rule.id}`, 'warning recorded-bitrate-differs');
    assert.match(
      finding?.message ?? '',
      /^gate takes 10 Mb\/s over 1 h 59 min \(10 Mb\/s in the middle one of its files\), 167 % of the 6 Mb\/s declared\./,
    );
    const text = fixed(siteText(), finding?.fixes?.()[0]?.edits);
    assert.ok(text.includes('bitrate: 10 Mb/s, peak-bitrate: 10 Mb/s'), text);
    assert.deepEqual(told(text, files), []);
    assert.match(
      told(siteText(), recorded(START, 120, { rate: 3e6 }))[0] ?? '',
      /^information recorded-bitrate-differs/,
    );
  });

  it('no bit rate that only rounded names make', () => {
    // Whole files of 6.1 s in all, which by their names are of 7 s.
    const starts = [900, 2900, 4900, 7000].map((begun) => START + begun);
    const files = starts.map((start, index) => {
      const length = (starts[index + 1] ?? start + 2000) - start;
      const [entry] = recorded(start, 1, { length });
      assert.ok(entry !== undefined);
      return entry;
    });
    assert.deepEqual(told(siteText({ segment: '2 s', keyframes: '100 ms' }), files), []);
  });

  it('writes the rate where it stands, and not where recordings of it disagree', () => {
    const more = `streams:
  gate-live: {source: recorder, carries: gate, transport: rtp, group: 239.192.20.31, port: 5004, audio: {codec: aac, bitrate: 100 kb/s}, receivers: [recorder]}
recordings:
  live: {stream: gate-live, volume: archive, segment: 60 s, file: "live/%Y-%m-%d_%H-%M-%S%z.mp4"}
`;
    const live = (rate: number): Entry[] => recorded(START, 120, { pattern: 'live/%Y-%m-%d_%H-%M-%S%z.mp4', rate });
    const text = siteText({ more });
    const {
      found: [finding, ...others],
    } = found(text, [...recorded(START, 120, { rate: 4e6 }), ...live(4.1e6)]);
    assert.deepEqual(others, []);
    assert.match(
      finding?.message ?? '',
      /^gate takes 4 Mb\/s.* and live takes 4\.1 Mb\/s.*Take what was measured into gate,/,
    );
    assert.ok(
      fixed(text, finding?.fixes?.()[0]?.edits).includes('video: {codec: h264, bitrate: 4 Mb/s, peak-bitrate: 9 Mb/s'),
    );
    const {
      found: [apart],
    } = found(text, [...recorded(START, 120), ...live(2.1e6)]);
    assert.match(apart?.message ?? '', /gate takes 6 Mb\/s.*live takes 2\.1 Mb\/s.*are not: is one another stream\?/);
    assert.equal(apart?.fixes, undefined);
  });

  it('room: the reserve, when it is full, and a disk that is not mounted', () => {
    const files = daysOf(1);
    const now = newestEnd(files);
    const TB = 1e12;
    assert.deepEqual(told(siteText(HOURLY), files, { now, space: { total: 8 * TB, free: 7 * TB } }), []);
    only(
      told(siteText(HOURLY), files, { now, space: { total: 8 * TB, free: 0.3 * TB } }),
      'volume-below-reserve: archive has 300 GB free of 8 TB, less than its reserve of 5 % (400 GB).',
    );
    // 64.8 GB a day; 13 days of 14 are still to come, and there is room for 200 GB.
    only(
      told(siteText(HOURLY), files, { now, space: { total: 8 * TB, free: 0.6 * TB } }),
      'volume-fills: archive has 200 GB free above its reserve',
      '842 GB are to be written: at the measured rates it is full in 3.1 d, about 2026-06-05',
    );
    only(
      told(siteText(HOURLY), files, { now, space: { total: 2 * TB, free: 1.9 * TB } }),
      'volume-smaller: The file system at /recordings has 2 TB, and archive is planned with 8 TB. Is its disk mounted?',
    );
  });
});

function fixed(text: string, edits: readonly Edit[] = []): string {
  const [after] = Object.values(edited({ 'file:///harrow-lane/all.site.yaml': text }, edits));
  return after ?? '';
}
