import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { unavailable } from '../availability.ts';
import {
  isTimeZone,
  LocalTimes,
  offsetMinutes,
  repeatedHours,
  zonedTime,
} from '../../server/src/standards/time-zone.ts';

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
    for (const name of ['', 'Harrow', 'Europe/Harrow', '+01:00', 'London', 'Europe/London ', 'T00:00Z', 'T00Z']) {
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
    const shown = (instant: number): string => zonedTime('Europe/London', instant).toPlainDateTime().toString();
    assert.equal(shown(1_792_888_200_000), '2026-10-25T01:30:00');
    assert.equal(shown(1_792_891_800_000), '2026-10-25T01:30:00');
    const offset = (instant: number): number => offsetMinutes(zonedTime('Europe/London', instant));
    assert.equal(offset(Date.UTC(2026, 2, 29, 0, 59, 59, 999)), 0);
    assert.equal(offset(Date.UTC(2026, 2, 29, 1)), 60);
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
        seconds.map((second) => offsetMinutes(zonedTime(zone, second * 1000))),
        expected[index],
        zone,
      );
    });
  });

  // PEP 495: `fold` chooses of two instants; a time that was skipped does not come back from UTC as it was.
  it('mean by a time on the clock the instants that zoneinfo has (by Python)', function () {
    const hard = [...zones, 'Africa/Casablanca', 'America/Recife', 'Europe/Lisbon'];
    // In order, as files are read, with each hour around every change of 2000 to 2031; and at random.
    const changes = (zone: string): number[] => {
      const found: number[] = [];
      let time = zonedTime(zone, Date.UTC(2000, 0));
      for (;;) {
        const next = time.getTimeZoneTransition('next');
        if (next === null || next.epochMilliseconds > Date.UTC(2031, 0)) return found;
        found.push(next.epochMilliseconds);
        time = next;
      }
    };
    const asked = hard.map((zone) => ({
      zone,
      seconds: [
        ...changes(zone).flatMap((change) =>
          Array.from({ length: 60 }, (_, index) => change / 1000 + (index - 30) * 1800 - 1 + (index % 3)),
        ),
        ...Array.from({ length: 300 }, (_, index) => 946_684_800 + ((index * 48_271) % 1009) * 970_201),
      ],
    }));
    const python = [
      'import json, sys, datetime, zoneinfo',
      'utc = datetime.timezone.utc',
      'def meant(zone, second):',
      '  local = datetime.datetime.fromtimestamp(second, utc).replace(tzinfo=zone)',
      '  both = [local.replace(fold=fold).astimezone(utc) for fold in (0, 1)]',
      '  return sorted({at.timestamp() for at in both if at.astimezone(zone).replace(tzinfo=None) == local.replace(tzinfo=None)})',
      'json.dump([[meant(zoneinfo.ZoneInfo(a["zone"]), s) for s in a["seconds"]] for a in json.load(sys.stdin)], sys.stdout)',
    ].join('\n');
    const { status, stdout } = spawnSync('python3', ['-c', python], {
      input: JSON.stringify(asked),
      encoding: 'utf8',
      maxBuffer: 1e8,
    });
    if (status !== 0) unavailable(this, 'no python3 with zoneinfo and time-zone data');
    const expected = JSON.parse(stdout) as number[][][];
    const counts = [0, 0, 0];
    asked.forEach(({ zone, seconds }, index) => {
      const times = new LocalTimes(zone);
      const found = seconds.map((second) => times.instants(second * 1000).map((instant) => instant / 1000));
      assert.deepEqual(found, expected[index], zone);
      for (const { length } of found) counts[length] = (counts[length] ?? 0) + 1;
    });
    assert.ok(
      counts.every((count) => count > 100),
      `times that are skipped, shown once and shown twice: ${counts.join(', ')}`,
    );
  });

  // zoneinfo, tzdata 2025b: Apia had no 2011-12-30; São Paulo no midnight on 2018-11-04.
  it('begin the day at the first instant that clocks show of it', () => {
    const begins = (zone: string, local: number): string =>
      new Date(new LocalTimes(zone).firstAtOrAfter(local)).toISOString();
    assert.equal(begins('Pacific/Apia', Date.UTC(2011, 11, 30)), '2011-12-30T10:00:00.000Z');
    assert.equal(begins('America/Sao_Paulo', Date.UTC(2018, 10, 4)), '2018-11-04T03:00:00.000Z');
    assert.equal(begins('America/Sao_Paulo', Date.UTC(2018, 10, 5)), '2018-11-05T02:00:00.000Z');
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
