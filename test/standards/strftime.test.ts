import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { unavailable } from '../availability.ts';
import {
  distinguishesRepeatedHour,
  isSpecifier,
  parsePattern,
  repeatsEvery,
  resolution,
} from '../../server/src/standards/strftime.ts';
import { format } from '../../server/src/standards/strftime-format.ts';
import { zonedTime } from '../../server/src/standards/time-zone.ts';

describe('File patterns (strftime(3), read)', () => {
  it('are plain text and conversions', () => {
    assert.deepEqual(parsePattern('paddock/%Y-%-m.mp4'), [
      { literal: 'paddock/' },
      { specifier: 'Y', text: '%Y', flags: '', width: 0 },
      { literal: '-' },
      { specifier: 'm', text: '%-m', flags: '-', width: 0 },
      { literal: '.mp4' },
    ]);
    assert.deepEqual(parsePattern('100%%, %E'), [
      { literal: '100%, ' },
      { specifier: 'E', text: '%E', flags: '', width: 0 },
    ]);
    assert.deepEqual(parsePattern('%Ey %Od %03d 5 %'), [
      { specifier: 'y', text: '%Ey', flags: '', width: 0 },
      { literal: ' ' },
      { specifier: 'd', text: '%Od', flags: '', width: 0 },
      { literal: ' ' },
      { specifier: 'd', text: '%03d', flags: '0', width: 3 },
      { literal: ' 5 %' },
    ]);
    assert.deepEqual(parsePattern(''), []);
  });

  it('may hold letters that strftime does not know', () => {
    assert.deepEqual(
      ['Y', 'T', 's', 'z', 'n'].filter((letter) => !isSpecifier(letter)),
      [],
    );
    assert.deepEqual(['E', 'f', 'N', 'Q', 'i'].filter(isSpecifier), []);
  });

  // What each conversion and composite stands for: strftime(3), read (%F = %Y-%m-%d, %T = %H:%M:%S, %R = %H:%M …).
  for (const [pattern, unit, cycle] of [
    ['%Y-%m-%d_%H-%M-%S', 'second', undefined],
    ['%F_%T', 'second', undefined],
    ['%Y%j%H%M%S', 'second', undefined],
    ['%s', 'second', undefined],
    ['%c', 'second', undefined],
    ['%F %r', 'second', undefined],
    ['%F %I-%M-%S', 'second', 'half day'],
    ['%F %H-%S', 'second', 'minute'],
    ['%F %M-%S', 'second', 'hour'],
    ['%T', 'second', 'day'],
    ['%a %T', 'second', 'week'],
    ['%d %T', 'second', 'month'],
    ['%b %d %T', 'second', 'year'],
    ['%j %T', 'second', 'year'],
    ['%G-W%V-%u %T', 'second', undefined],
    ['%F_%R', 'minute', undefined],
    ['%F_%H', 'hour', undefined],
    ['%D', 'day', undefined],
    ['%A', 'day', 'week'],
    ['%G-W%V', 'week', undefined],
    ['%B', 'month', 'year'],
    ['%Y', 'year', undefined],
  ] as const) {
    it(`${pattern} tells ${unit}s apart, ${cycle === undefined ? 'for good' : `until the next ${cycle}`}`, () => {
      assert.equal(resolution(pattern), unit);
      assert.equal(repeatsEvery(pattern), cycle);
    });
  }

  it('may tell no time apart', () => {
    for (const pattern of ['paddock.mp4', '%%S', '%z', '%C', '%n%t', '%p']) {
      assert.equal(resolution(pattern), 'none', pattern);
    }
  });

  // London, 2026-10-25 01:30 comes at 00:30Z and at 01:30Z (zoneinfo, tzdata 2025b).
  it('tell the repeated hour apart by offset, zone or seconds since the epoch, and by nothing else', () => {
    const instants = [Date.UTC(2026, 9, 25, 0, 30), Date.UTC(2026, 9, 25, 1, 30)];
    const names = (pattern: string): string[] =>
      instants.map((instant) => format(pattern, zonedTime('Europe/London', instant)));
    assert.deepEqual(names('%Y%m%d-%H%M%S'), ['20261025-013000', '20261025-013000']);
    assert.deepEqual(names('%H%M%z'), ['0130+0100', '0130+0000']);
    assert.deepEqual(names('%s'), ['1792888200', '1792891800']);
    for (const pattern of ['%F_%T', '%c', '%Y%m%d-%H%M%S']) assert.equal(distinguishesRepeatedHour(pattern), false);
    for (const pattern of ['%F_%T%z', '%F_%T_%Z', '%s']) assert.equal(distinguishesRepeatedHour(pattern), true);
  });

  it('are filled in as the C library does it (by Python)', function () {
    const patterns = [
      ...[...'aAbBcCdDeFgGhHIjklmMnpPrRsStTuUVwWxXyYzZ'].map((letter) => `%${letter}`),
      'paddock/%Y-%m-%d_%H-%M-%S.mp4',
      '%-d.%-m.',
      '%_H',
      '%^a',
      '%^B',
      '%5d',
      '%_5j',
      '%-I%P',
      '100%%',
      '%10A',
    ];
    const zones = ['Europe/London', 'America/New_York', 'Asia/Kolkata', 'Australia/Sydney'];
    // Year ends are where the week numbers are hard; the rest is every 37 h or so over some years.
    const seconds = [2020, 2024, 2025, 2026, 2027].flatMap((year) =>
      [-3, -2, -1, 0, 1, 2, 3, 6].map((day) => Date.UTC(year, 0, 1 + day, 11, 5, 9) / 1000),
    );
    seconds.push(...Array.from({ length: 300 }, (_, index) => 1_700_000_000 + index * 133_337));
    const python = [
      'import json, sys, os, time',
      'asked = json.load(sys.stdin)',
      'answer = []',
      'for zone in asked["zones"]:',
      '  os.environ["TZ"] = zone; time.tzset()',
      '  for second in asked["seconds"]:',
      '    local = time.localtime(second)',
      '    answer.append([local.tm_zone] + [time.strftime(p, local) for p in asked["patterns"]])',
      'json.dump(answer, sys.stdout)',
    ].join('\n');
    const { status, stdout } = spawnSync('python3', ['-c', python], {
      input: JSON.stringify({ zones, seconds, patterns }),
      encoding: 'utf8',
      env: { ...process.env, LC_ALL: 'C' },
      maxBuffer: 1e8,
    });
    if (status !== 0) unavailable(this, 'no python3');
    const expected = JSON.parse(stdout) as string[][];
    const instants = zones.flatMap((zone) => seconds.map((second) => ({ zone, instant: second * 1000 })));
    assert.equal(expected.length, instants.length);
    instants.forEach(({ zone, instant }, index) => {
      const [abbreviation = '', ...texts] = expected[index] ?? [];
      const time = zonedTime(zone, instant);
      assert.deepEqual(
        patterns.map((pattern) => format(pattern, time, abbreviation)),
        texts,
        `${zone} ${instant}`,
      );
    });
  });
});
