/** What is left of an hour that clocks showed twice, where names do not tell which is meant. */

import assert from 'node:assert/strict';
import { type Entry, LOCAL, newestEnd, only, recorded, siteText, told } from './folder.ts';

const DAY = 86_400_000;
const without = (entries: readonly Entry[], from: number, count: number): Entry[] => [
  ...entries.slice(0, from),
  ...entries.slice(from + count),
];

describe('audit of the hour that comes twice', () => {
  const before = Date.parse('2026-10-24T23:00:00Z');
  const night = recorded(before, 240, { pattern: LOCAL });
  const text = siteText({ file: LOCAL });

  it('is reported where the second pass overwrote the first', () => {
    // Files of one name: the last one stays.
    const left = [...new Map(night.map((entry) => [entry.path, entry])).values()];
    assert.equal(left.length, 180);
    only(
      told(text, left),
      'warning repeated-hour-recorded: Of the time from 2026-10-25T01:00:00+01:00 to 2026-10-25T02:00:00+00:00, which clocks showed twice, 1 h of gate are lost',
      'files of the second pass overwrote those of the first',
    );
  });

  it('is reported where nobody can say which pass is left', () => {
    const copied = [...new Map(night.map((entry) => [entry.path, { ...entry, modified: before + DAY }])).values()];
    only(
      told(text, copied, { now: newestEnd(night) }),
      'warning repeated-hour-recorded',
      '60 files of gate are there, and about 1 h are lost',
    );
  });

  it('is complete where seconds differ, but nobody can say what is when once it is copied', () => {
    const second = recorded(Date.parse('2026-10-25T01:00:20Z'), 120, { pattern: LOCAL });
    const both = [...night.slice(0, 120), ...second];
    const copied = both.map((entry) => ({ ...entry, modified: before + DAY }));
    only(
      told(text, copied, { now: newestEnd(both) }),
      'information repeated-hour-recorded',
      '120 files of gate are there, and nobody can tell which are of the first pass',
    );
  });

  it('may lack a file or two without being called lost', () => {
    const second = recorded(Date.parse('2026-10-25T01:00:20Z'), 120, { pattern: LOCAL });
    const both = without([...night.slice(0, 120), ...second], 90, 1).map((entry) => ({
      ...entry,
      modified: before + DAY,
    }));
    only(
      told(text, both, { now: newestEnd(second) }),
      'information repeated-hour-recorded',
      '119 files of gate are there',
    );
  });

  it('is apart from what was missing before it', () => {
    const copied = [
      ...night.slice(0, 30),
      ...night.slice(60, 120),
      ...recorded(Date.parse('2026-10-25T01:00:20Z'), 120, { pattern: LOCAL }),
    ].map((entry) => ({ ...entry, modified: before + DAY }));
    const shown = told(text, copied, { now: newestEnd(night) });
    assert.equal(shown.length, 2);
    only(
      shown.slice(0, 1),
      'recording-gap: gate lacks 30 min in 1 gap: from 2026-10-25T00:30:00+01:00 to 2026-10-25T01:00:00+01:00',
    );
    only(shown.slice(1), 'information repeated-hour-recorded');
  });

  it('is apart from what was missing in the first pass, which no file of the second has the name of', () => {
    // Off from the 80th minute to the end of the first pass, and off again ten minutes into the second.
    const ran = [...night.slice(0, 80), ...night.slice(120, 130), ...night.slice(180)];
    const left = [...new Map(ran.map((entry) => [entry.path, entry])).values()];
    const shown = told(text, left);
    assert.equal(shown.length, 2);
    only(
      shown.slice(0, 1),
      'recording-gap: gate lacks 1 h 30 min in 2 gaps: the first from 2026-10-25T01:20:00+01:00 to 2026-10-25T01:00:00+00:00',
    );
    only(shown.slice(1), 'warning repeated-hour-recorded', '10 min of gate are lost');
  });

  it('is nothing special with an offset in the names', () => {
    assert.deepEqual(told(siteText(), recorded(before, 240)), []);
  });
});
