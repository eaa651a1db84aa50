import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { afterEach, before, beforeEach, describe, it } from 'mocha';
import { deletion } from '../../../server/src/make/media/deletion.ts';
import type { Made } from '../../../server/src/make/output.ts';
import { format } from '../../../server/src/standards/strftime-format.ts';
import { zonedTime } from '../../../server/src/standards/time-zone.ts';
import { unavailable } from '../../availability.ts';
import { Unit } from '../../rehearsal/unit.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, planOfData, planOfTexts, sampleTexts } from '../made.ts';

const DAY = 86_400;

interface Wanted {
  readonly file: string;
  readonly keep: string;
  readonly policy?: Readonly<Record<string, string>>;
}

function made(path: string, recordings: Readonly<Record<string, Wanted>>): Made {
  return deletion.make(
    planOfData({
      devices: { recorder: { kind: 'server' } },
      volumes: { archive: { host: 'recorder', capacity: '8 TB', path } },
      recordings: Object.fromEntries(
        Object.entries(recordings).map(([name, { file, keep }]) => [
          name,
          { stream: 'x', volume: 'archive', segment: '60 s', file, keep },
        ]),
      ),
      policies: {
        retention: Object.entries(recordings).flatMap(([name, { policy }]) =>
          policy === undefined ? [] : [{ recordings: [name], ...policy }],
        ),
      },
    }),
  );
}

const unitOf = (result: Made): Unit =>
  new Unit('deletion', fileOf(result, 'recorder/plumbline-deletion-archive.service'));

/** The minutes of the one `-mmin`. */
const minutesOf = (result: Made): string =>
  /-mmin \+(\d+)/.exec(fileOf(result, 'recorder/plumbline-deletion-archive.service'))?.[1] ?? '';

describe('make deletion', function () {
  let root: string;

  before(function () {
    if (spawnSync('find', ['--version']).status !== 0) unavailable(this, 'find of GNU findutils is not installed');
  });

  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'plumbline-deletion-'));
  });

  afterEach(() => rmSync(root, { recursive: true, force: true }));

  /** A file or, where the path ends in a slash, a folder, so many days old. */
  function put(path: string, days: number): void {
    const target = join(root, path);
    mkdirSync(path.endsWith('/') ? target : dirname(target), { recursive: true });
    if (!path.endsWith('/')) writeFileSync(target, 'x');
    const when = Date.now() / 1000 - days * DAY;
    utimesSync(target, when, when);
  }

  /** Runs the commands of the unit as it does: one after the other, and none after one that failed. */
  function run(result: Made): void {
    const unit = unitOf(result);
    for (const [program = '', ...args] of unit.commands('ExecStart')) {
      const { status, stderr } = spawnSync(program, args, { encoding: 'utf8', env: unit.environment() });
      assert.equal(status, 0, stderr);
      assert.equal(stderr, '');
    }
  }

  const left = (): string[] => readdirSync(root, { recursive: true, encoding: 'utf8' }).sort();

  it('deletes what is called as the recording says and is older than it is kept, and nothing else', () => {
    const result = made(root, {
      paddock: { file: 'paddock/%Y-%m-%d_%H-%M-%S%z.mp4', keep: '14 d' },
      gate: { file: 'gate/%s.mkv', keep: '2 d' },
    });
    put('paddock/2026-11-01_10-00-00+0000.mp4', 14.01);
    put('gate/1795600000.mkv', 2.01);
    const stay = [
      ['paddock/2026-11-01_10-01-00+0000.mp4', 13.99],
      ['gate/1795600001.mkv', 1.99],
      ['paddock/2026-11-01_10-00-00+0000.mp4.part', 90],
      ['paddock/2026-11-01_10-00-00+0000xmp4', 90],
      ['paddock/notes.txt', 90],
      ['paddock/x2026-11-01_10-00-00+0000.mp4', 90],
      ['paddock/kept/2026-11-01_10-00-00+0000.mp4', 90],
      ['gate/2026-11-01_10-00-00+0000.mp4', 90],
      ['2026-11-01_10-00-00+0000.mp4', 90],
      ['other/1795600000.mkv', 90],
    ] as const;
    for (const [path, days] of stay) put(path, days);
    run(result);
    assert.deepEqual(
      left().filter((path) => statSync(join(root, path)).isFile()),
      stay.map(([path]) => path).sort(),
    );
  });

  it('follows no link, neither to a file nor to a folder', () => {
    const result = made(join(root, 'volume'), {
      paddock: { file: 'paddock/%s.mp4', keep: '1 d' },
      gate: { file: 'gate/%s.mp4', keep: '1 d' },
    });
    put('elsewhere/1795600000.mp4', 90);
    put('volume/gate/', 0);
    symlinkSync(join(root, 'elsewhere'), join(root, 'volume/paddock'));
    symlinkSync(join(root, 'elsewhere/1795600000.mp4'), join(root, 'volume/gate/1795600000.mp4'));
    run(result);
    assert.ok(existsSync(join(root, 'elsewhere/1795600000.mp4')));
    assert.deepEqual(readdirSync(join(root, 'volume/gate')), ['1795600000.mp4']);
  });

  it('takes a volume that is itself reached by a link for the volume', () => {
    put('disk/1795600000.mp4', 90);
    symlinkSync(join(root, 'disk'), join(root, 'volume'));
    run(made(join(root, 'volume'), { paddock: { file: '%s.mp4', keep: '1 d' } }));
    assert.deepEqual(left(), ['disk', 'volume']);
  });

  it('takes dated folders away once they are empty, but none that was made ahead, nor another', () => {
    const result = made(root, { paddock: { file: 'paddock/%Y/%m-%d/%H-%M-%S.mp4', keep: '14 d' } });
    put('paddock/2026/11-01/10-00-00.mp4', 90);
    put('paddock/2026/10-01/', 0);
    put('paddock/2026/keep-me/', 0);
    for (const [folder, days] of [
      ['paddock/2026/10-01/', 3],
      ['paddock/2026/keep-me/', 90],
      ['paddock/2026/11-26/', 0.5],
    ] as const)
      put(folder, days);
    run(result);
    // That of the first of November was full a moment ago: it goes two days later.
    assert.deepEqual(left(), [
      'paddock',
      'paddock/2026',
      'paddock/2026/11-01',
      'paddock/2026/11-26',
      'paddock/2026/keep-me',
    ]);
    utimesSync(join(root, 'paddock/2026/11-01'), 0, 0);
    run(result);
    assert.ok(!existsSync(join(root, 'paddock/2026/11-01')));
  });

  it('is nothing but glad where nothing has been recorded yet', () => {
    run(made(root, { paddock: { file: 'paddock/%s.mp4', keep: '14 d' }, gate: { file: 'a/b/%s.mp4', keep: '14 d' } }));
    assert.deepEqual(left(), ['a', 'paddock']);
  });

  it('finds the names that the pattern writes, whatever the site calls them', () => {
    fc.assert(
      fc.property(
        hostileText,
        fc.constantFrom('%Y-%m-%d_%H-%M-%S%z', '%F %T', '%e %B %k.%M.%S %p', '%A %j %y %s', '%G-W%V-%u %I%p%M%S %Z'),
        (text, conversions) => {
          const file = `${text} ${conversions}.mp4`;
          const result = made(root, { paddock: { file, keep: '1 d' } });
          if (result.files.length === 0) return assert.equal(result.refused.length, 1);
          const time = zonedTime('Europe/London', Date.UTC(2026, 9, 5, 7, 8, 9));
          const name = format(file, time, 'BST')
            .split('/')
            .filter((part) => part !== '' && part !== '.')
            .join('/');
          put(name, 90);
          put(`${name}.txt`, 90);
          run(result);
          assert.ok(!existsSync(join(root, name)), `${name} of ${file}`);
          assert.ok(existsSync(join(root, `${name}.txt`)));
          rmSync(join(root, name.split('/')[0] ?? ''), { recursive: true, force: true });
          rmSync(join(root, `${name}.txt`), { force: true });
          return undefined;
        },
      ),
      { numRuns: 60 },
    );
  });

  // systemd 252, run: of a unit that requires two mounts, one missing disk kept the other from being looked through.
  it('has a unit and a timer for each disk, which need that disk alone', () => {
    const sample = deletion.make(planOfTexts(sampleTexts('harrow-lane')));
    for (const volume of ['archive', 'entrance']) {
      const unit = new Unit(volume, fileOf(sample, `recorder/plumbline-deletion-${volume}.service`));
      assert.deepEqual(unit.all('Unit', 'RequiresMountsFor'), [`/srv/${volume}`]);
      assert.deepEqual(unit.all('Service', 'ReadWritePaths'), [`/srv/${volume}`]);
      assert.doesNotMatch(unit.commands('ExecStart').flat().join(' '), volume === 'archive' ? /entrance/ : /archive/);
      assert.equal(
        new Unit(volume, fileOf(sample, `recorder/plumbline-deletion-${volume}.timer`)).one('Timer', 'Persistent'),
        'yes',
      );
    }
  });

  describe('and policy', () => {
    const kept = (keep: string, policy: Readonly<Record<string, string>>): Made =>
      made('/srv/archive', { paddock: { file: '%s.mp4', keep, policy } });

    it('lets files grow as old as is said, where policy leaves room', () => {
      assert.equal(minutesOf(kept('14 d', { 'at-least': '14 d', 'at-most': '30 d' })), String(14 * 24 * 60));
    });

    it('deletes sooner by the length of two files and the time to the next look, so that none gets older than policy allows', () => {
      assert.equal(minutesOf(kept('14 d', { 'at-most': '14 d' })), String(14 * 24 * 60 - 2 - 15));
    });

    it('deletes nothing where policy and `keep` contradict each other, or no time is between its bounds', () => {
      const refusedOf = (result: Made): string => {
        assert.deepEqual(result.files, []);
        return result.refused[0]?.message ?? '';
      };
      assert.match(refusedOf(kept('7 d', { 'at-least': '14 d' })), /kept for 7 d, and policy asks for 14 d at least/);
      assert.match(refusedOf(kept('31 d', { 'at-most': '30 d' })), /policy allows 30 d at most/);
      assert.match(refusedOf(kept('14 d', { 'at-least': '14 d', 'at-most': '14 d' })), /cannot be deleted between/);
    });

    it('is kept in the sample', () => {
      const sample = deletion.make(planOfTexts(sampleTexts('harrow-lane')));
      assert.deepEqual(sample.refused, []);
      assert.match(sample.notes.join('\n'), /local law/);
      assert.deepEqual(
        sample.files.map(({ path }) => path),
        ['archive', 'entrance'].flatMap((volume) =>
          ['service', 'timer'].map((type) => `recorder/plumbline-deletion-${volume}.${type}`),
        ),
      );
    });
  });
});
