import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { fileNames } from '../../server/src/recordings/file-names.ts';
import { format } from '../../server/src/standards/strftime-format.ts';
import { repeatedHours, zonedTime } from '../../server/src/standards/time-zone.ts';
import { unavailable } from '../availability.ts';

function read(pattern: string, path: string, zone = 'Europe/London'): string[] | undefined {
  return fileNames(pattern, zone)
    .read(path)
    ?.instants.map((instant) => new Date(instant).toISOString().replace('.000', ''));
}

/** The names that GNU date gives at the times, in seconds since 1970. */
function namesByDate(context: Mocha.Context, zone: string, pattern: string, seconds: readonly number[]): string[] {
  const input = seconds.map((second) => `@${second.toString()}\n`).join('');
  const run = spawnSync('date', ['-f', '-', `+${pattern}`], {
    input,
    env: { TZ: zone, LC_ALL: 'C', PATH: process.env['PATH'] },
    encoding: 'utf8',
  });
  if (run.error !== undefined || run.status !== 0)
    unavailable(context, `GNU date is needed (coreutils): ${run.stderr}`);
  return run.stdout.split('\n').slice(0, -1);
}

const zones = [
  'Europe/London',
  'Europe/Dublin',
  'America/New_York',
  'America/St_Johns',
  'America/Sao_Paulo',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
  'UTC',
];

/** Each tells the second, in another way. */
const patterns = [
  'paddock/%Y-%m-%d_%H-%M-%S.mp4',
  '%Y/%m/%d/%H%M%S.ts',
  '%y%j-%T',
  '%C%y %b %e %k.%M.%S',
  '%d%B%Y %I:%M:%S %p',
  '%G-W%V-%u/%H-%M-%S',
  '%Y/%U/%w %H-%M-%S',
  '%Y/%W/%a %H-%M-%S',
  '%c.mkv',
  '%D %r',
  '%F/%F_%X',
  '%-d.%-m.%Y %-H.%-M.%-S',
  '%_d|%_m|%Y %_H:%_M:%_S',
  '%^b %^A %d %Y %l-%M-%S %P',
  '%10B%d%Y %H%M%S',
  '%Y-%m-%d (%H.%M.%S)[a-z]+.mp4',
  '%06d %Y%m %H%M%S',
];

describe('file names, read backwards', () => {
  it('one with an offset is exact, in the repeated hour too', () => {
    const pattern = 'paddock/%Y-%m-%d_%H-%M-%S%z.mp4';
    assert.deepEqual(read(pattern, 'paddock/2026-10-25_01-30-00+0100.mp4'), ['2026-10-25T00:30:00Z']);
    assert.deepEqual(read(pattern, 'paddock/2026-10-25_01-30-00+0000.mp4'), ['2026-10-25T01:30:00Z']);
    assert.deepEqual(read(pattern, 'paddock/2026-10-25_01-30-00-0330.mp4'), ['2026-10-25T05:00:00Z']);
    assert.equal(fileNames(pattern, undefined).read('paddock/2026-10-25_01-30-00+0545.mp4')?.offset, 345);
    assert.deepEqual(read('%s.mp4', '1792888200.mp4'), ['2026-10-25T00:30:00Z']);
  });

  it('one without has two readings in the repeated hour, and none in the skipped one', () => {
    const pattern = '%Y-%m-%d_%H-%M-%S.mp4';
    assert.deepEqual(read(pattern, '2026-10-25_00-59-59.mp4'), ['2026-10-24T23:59:59Z']);
    assert.deepEqual(read(pattern, '2026-10-25_01-00-00.mp4'), ['2026-10-25T00:00:00Z', '2026-10-25T01:00:00Z']);
    assert.deepEqual(read(pattern, '2026-10-25_02-00-00.mp4'), ['2026-10-25T02:00:00Z']);
    assert.deepEqual(read(pattern, '2026-03-29_01-00-00.mp4'), []);
    assert.deepEqual(read(pattern, '2026-03-29_02-00-00.mp4'), ['2026-03-29T01:00:00Z']);
  });

  it('stand for the beginning of what they name', () => {
    assert.deepEqual(read('%Y-%m-%d_%H.mp4', '2026-11-25_13.mp4'), ['2026-11-25T13:00:00Z']);
    assert.deepEqual(read('%Y-%m-%d.mp4', '2026-07-25.mp4'), ['2026-07-24T23:00:00Z']);
    assert.deepEqual(read('%Y-%m.mp4', '2026-11.mp4'), ['2026-11-01T00:00:00Z']);
    assert.deepEqual(read('%G-W%V.mp4', '2026-W01.mp4'), ['2025-12-29T00:00:00Z']);
    // zoneinfo: clocks in São Paulo went from 23:59:59 to 01:00 on 2018-11-04, 03:00Z.
    assert.deepEqual(read('%Y-%m-%d.mp4', '2018-11-04.mp4', 'America/Sao_Paulo'), ['2018-11-04T03:00:00Z']);
  });

  it('have an abbreviation of the zone skipped: the database of the engine does not have them', () => {
    assert.deepEqual(read('%F %T %Z.mp4', '2026-10-25 01:30:00 BST.mp4'), [
      '2026-10-25T00:30:00Z',
      '2026-10-25T01:30:00Z',
    ]);
    assert.deepEqual(read('%F %T %Z.mp4', '2026-11-25 13:00:00 -03.mp4', 'America/Sao_Paulo'), [
      '2026-11-25T16:00:00Z',
    ]);
  });

  it('of two digits for the year are of 1969 to 2068 (POSIX strptime, %y; from memory)', () => {
    assert.deepEqual(read('%y%m%d', '690101', 'UTC'), ['1969-01-01T00:00:00Z']);
    assert.deepEqual(read('%y%m%d', '680101', 'UTC'), ['2068-01-01T00:00:00Z']);
  });

  it('that the pattern does not write are no names of it', () => {
    const names = fileNames('gate (a+b)/%Y-%m-%d_%H-%M-%S.mp4', 'Europe/London');
    assert.ok(names.matches('gate (a+b)/2026-11-25_13-00-00.mp4'));
    for (const path of [
      'gate (a+b)/2026-11-25_13-00-00.mp4.tmp',
      'gate aab/2026-11-25_13-00-00.mp4',
      'gate (a+b)/2026-11-25_24-00-00.mp4',
      'gate (a+b)/2026-11-25_1-00-00.mp4',
      'gate (a+b)/2026-11-25_13-00-60.mp4',
      'x/gate (a+b)/2026-11-25_13-00-00.mp4',
      '',
      'gate (a+b)/２026-11-25_13-00-00.mp4',
    ])
      assert.equal(names.matches(path), false, path);
    assert.equal(read('%Y-%m-%d', '2026-02-29'), undefined);
    assert.equal(read('%Y/%Y-%m-%d', '2025/2026-11-25'), undefined, 'in the folder of another year');
    assert.equal(read('%a %Y-%m-%d', 'Mon 2026-11-25'), undefined, 'it was a Wednesday');
    assert.equal(read('%-H %Y-%m-%d', '07 2026-11-25'), undefined);
  });

  it('that tell no instant say why', () => {
    const why = (pattern: string, zone: string | undefined = 'Europe/London'): string | undefined =>
      fileNames(pattern, zone).noInstant;
    assert.equal(why('%H-%M-%S.mp4'), 'they come again every day');
    assert.equal(why('%Y-%m-%d_%M.mp4'), 'they come again every hour');
    assert.equal(why('%Y-%m-%d_%I-%M.mp4'), 'they come again every half day');
    assert.equal(why('%m-%d_%H.mp4'), 'they come again every year');
    assert.equal(why('gate.mp4'), 'they tell no time');
    assert.equal(why('%Y%m%d%-H%M'), 'it cannot be told where in them one conversion ends and the next part begins');
    assert.equal(why('../%Y%m%d'), 'they lead out of their folder by “..”');
    assert.equal(
      fileNames('%Y-%m-%d', undefined).noInstant,
      'they have no offset from UTC, and the time zone of the site is not declared',
    );
    assert.equal(why('%Y%m%d%9999999d'), 'they are longer than any path can be, 4096 bytes');
    assert.equal(why('%Y-%m-%d_%H-%M-%S'), undefined);
    // What comes again every day still has its shape.
    assert.ok(fileNames('%H-%M-%S.mp4', 'UTC').matches('13-00-00.mp4'));
    assert.equal(fileNames('%H-%M-%S.mp4', 'UTC').read('13-00-00.mp4'), undefined);
  });

  it('lie in a folder that is the same for all', () => {
    const at = (pattern: string): unknown[] => [fileNames(pattern, 'UTC').folder, fileNames(pattern, 'UTC').depth];
    assert.deepEqual(at('./cameras//gate/%Y/%m/x-%d.mp4'), ['cameras/gate/', 4]);
    assert.deepEqual(at('gate-%Y/%m-%d.mp4'), ['', 1]);
    assert.deepEqual(at('%Y-%m-%d.mp4'), ['', 0]);
  });

  // GNU coreutils' date writes the names, from the system's zoneinfo.
  for (const pattern of patterns) {
    it(`${pattern} as GNU date writes it means the instant, and no other than those of the same name`, function () {
      for (const zone of zones) {
        const changes = repeatedHours(zone, Date.UTC(2009, 0), Date.UTC(2030, 0)).flatMap(({ instant }) =>
          [-5400, -3600, -1800, -1, 0, 1799, 3599, 3600].map((seconds) => instant / 1000 + seconds),
        );
        const seconds = [...changes, ...Array.from({ length: 150 }, (_, index) => 1_230_768_000 + index * 4_321_987)];
        // Those that can have the same name: clocks go back by half an hour, an hour, or not at all.
        const around = seconds.flatMap((second) => [-3600, -1800, 0, 1800, 3600].map((shift) => second + shift));
        const written = namesByDate(this, zone, pattern, around);
        const names = fileNames(pattern, zone);
        for (const [index, second] of seconds.entries()) {
          const name = written[index * 5 + 2] ?? '';
          const same = around.slice(index * 5, index * 5 + 5).filter((_, shift) => written[index * 5 + shift] === name);
          assert.deepEqual(
            names.read(name)?.instants,
            same.map((candidate) => candidate * 1000),
            `${zone} ${second.toString()} ${name}`,
          );
        }
      }
    });
  }

  it('of any pattern mean the instant that they were written at', () => {
    const conversion = fc
      .tuple(
        fc.constantFrom('', '-', '_', '0', '^', '#'),
        fc.constantFrom('', '', '', '3', '5', '12'),
        fc.constantFrom(...'aAbBcCdDeFgGhHIjklmMnpPrRsStTuUVwWxXyYzZ'),
      )
      .map(([flag, width, letter]) => `%${flag}${width}${letter}`);
    const literal = fc.string({ minLength: 1, maxLength: 3 }).filter((text) => !/[%/]/.test(text));
    // From 2001, since when seconds have had ten digits.
    const instant = fc.integer({ min: 1_000_000_000, max: 2_900_000_000 });
    let told = 0;
    fc.assert(
      fc.property(
        fc.array(fc.oneof(conversion, literal), { maxLength: 9 }),
        fc.constantFrom(...zones),
        instant,
        (parts, zone, second) => {
          const pattern = `${parts.join('')}|%Y-%j|%H:%M:%S`;
          const names = fileNames(pattern, zone);
          const name = format(pattern, zonedTime(zone, second * 1000), 'ABC');
          if (names.noInstant !== undefined) return;
          told += 1;
          assert.ok(names.read(name)?.instants.includes(second * 1000), `${pattern} ${name}`);
        },
      ),
      { numRuns: 3000 },
    );
    assert.ok(told > 1000, `only ${told.toString()} could be told`);
  });

  it('take no longer to read because a pattern is hostile', () => {
    // Reading never goes back, so the steps taken are bounded by the length of the path.
    const names = fileNames(`${'%-d'.repeat(40)}%Y%m%d`, 'UTC');
    assert.notEqual(names.noInstant, undefined);
    assert.equal(fileNames(`${'%-d '.repeat(400)}%Y%m`, 'UTC').matches('1 '.repeat(2000)), false);
  });
});
