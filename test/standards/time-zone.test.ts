import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { unavailable } from '../availability.ts';
import { isTimeZone, localFields, offsetMinutes, repeatedHours } from '../../server/src/standards/time-zone.ts';

const zones = [
  'Europe/London',
  'Europe/Dublin',
  'America/New_York',
  'America/St_Johns',
  'America/Sao_Paulo',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Australia/Sydney',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
  'UTC',
];

describe('Time zones (IANA time-zone database)', () => {
  it('go by names of the database', () => {
    for (const name of [...zones, 'Etc/GMT+5', 'EST5EDT']) assert.equal(isTimeZone(name), true, name);
    for (const name of ['', 'Harrow', 'Europe/Harrow', '+01:00', 'London', 'Europe/London ']) {
      assert.equal(isTimeZone(name), false, name);
    }
  });

  // zoneinfo, tzdata 2025b, produced with zdump.
  for (const [zone, year, utc, before, after] of [
    ['Europe/London', 2026, '2026-10-25T01:00Z', 60, 0],
    ['Europe/London', 2027, '2027-10-31T01:00Z', 60, 0],
    ['Australia/Sydney', 2026, '2026-04-04T16:00Z', 660, 600],
    ['Australia/Sydney', 2027, '2027-04-03T16:00Z', 660, 600],
    ['America/New_York', 2026, '2026-11-01T06:00Z', -240, -300],
    ['America/New_York', 2027, '2027-11-07T06:00Z', -240, -300],
  ] as const) {
    it(`${zone} goes back at ${utc}`, () => {
      assert.deepEqual(repeatedHours(zone, Date.UTC(year, 0), Date.UTC(year + 1, 0)), [
        { instant: Date.parse(utc), before, after },
      ]);
    });
  }

  it('count the first instant of the span and not the last', () => {
    const instant = Date.UTC(2026, 9, 25, 1);
    const repeated = [{ instant, before: 60, after: 0 }];
    assert.deepEqual(repeatedHours('Europe/London', instant, instant + 1), repeated);
    assert.deepEqual(repeatedHours('Europe/London', instant - 1, instant + 1), repeated);
    assert.deepEqual(repeatedHours('Europe/London', instant - 3_600_000, instant), []);
    assert.deepEqual(repeatedHours('Europe/London', instant + 1, instant + 3_600_000), []);
    assert.deepEqual(repeatedHours('UTC', 0, instant), []);
  });

  // zoneinfo, tzdata 2025b: 01:30 on 2026-10-25 in London is both 00:30Z and 01:30Z; 2026-03-29 has 23 h there.
  it('show what clocks on the wall show', () => {
    const halfPastOne = { year: 2026, month: 10, day: 25, hour: 1, minute: 30, second: 0 };
    assert.deepEqual(localFields('Europe/London', 1_792_888_200_000), halfPastOne);
    assert.deepEqual(localFields('Europe/London', 1_792_891_800_000), halfPastOne);
    assert.equal(offsetMinutes('Europe/London', Date.UTC(2026, 2, 29, 0, 59, 59, 999)), 0);
    assert.equal(offsetMinutes('Europe/London', Date.UTC(2026, 2, 29, 1)), 60);
  });

  it('have the offsets that zoneinfo has (by Python)', function () {
    const seconds = Array.from({ length: 2000 }, (_, index) => 946_684_800 + index * 500_009); // 2000 to 2031
    const python = [
      'import json, sys, datetime, zoneinfo',
      'asked = json.load(sys.stdin)',
      'json.dump([[datetime.datetime.fromtimestamp(s, zoneinfo.ZoneInfo(z)).utcoffset().total_seconds() / 60',
      '  for s in asked["seconds"]] for z in asked["zones"]], sys.stdout)',
    ].join('\n');
    const { status, stdout } = spawnSync('python3', ['-c', python], {
      input: JSON.stringify({ zones, seconds }),
      encoding: 'utf8',
      maxBuffer: 1e8,
    });
    if (status !== 0) unavailable(this, 'no python3 with zoneinfo and time-zone data');
    const expected = JSON.parse(stdout) as number[][];
    zones.forEach((zone, index) => {
      assert.deepEqual(
        seconds.map((second) => offsetMinutes(zone, second * 1000)),
        expected[index],
        zone,
      );
    });
  });

  it('go back just when zdump says', function () {
    for (const zone of zones) {
      const { status, stdout } = spawnSync('zdump', ['-v', '-c', '2000,2031', zone], { encoding: 'utf8' });
      if (status !== 0) unavailable(this, 'no zdump; it comes with the C library');
      const changes = [...stdout.matchAll(/\w+ (\w+ +\d+ [\d:]+ \d{4}) UTC? = .* gmtoff=(-?\d+)/g)].map(
        ([, utc = '', offset = '']) => ({ instant: Date.parse(`${utc} UTC`), offset: Number(offset) / 60 }),
      );
      const back = changes.flatMap(({ instant, offset }, index) => {
        const next = changes[index + 1];
        return next !== undefined && next.instant - instant === 1000 && next.offset < offset
          ? [{ instant: next.instant, before: offset, after: next.offset }]
          : [];
      });
      assert.deepEqual(repeatedHours(zone, Date.UTC(2000, 0), Date.UTC(2031, 0)), back, zone);
      if (zone === 'Europe/London') assert.equal(back.length, 31, 'zdump was understood');
    }
  });
});
