import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { unavailable } from '../availability.ts';
import { program } from '../cli/run.ts';
import {
  AAC,
  H264,
  H265,
  Recordings,
  ffmpeg,
  framesOf,
  hasFrames,
  needsFfmpeg,
  numbersOf,
  range,
} from './recording.ts';

const START = Date.UTC(2026, 10, 20, 13);
const at = (seconds: number): string => new Date(START + seconds * 1000).toISOString();
const shown = (seconds: number): string => at(seconds).replace('Z', '+00:00');

describe('plumbline footage, where something is wrong', function () {
  // Encoding takes a second or two each; a loaded machine may take ten times that.
  let recordings: Recordings;
  /** Options and a result of its own. */
  const words = (out: string, from = 0, to = 20): string[] => [
    '--recording',
    'gate',
    '--from',
    at(from),
    '--to',
    at(to),
    '--out',
    join(recordings.out, out),
  ];
  const pattern = (ending: string): string => `gate/%Y-%m-%d_%H-%M-%S%z.${ending}`;
  const record = (ending: string, seconds = 20, video = H264): string[] => {
    recordings = new Recordings({
      gate: pattern(ending),
      unseen: 'unseen/%H-%M-%S.mp4',
      bare: 'bare/%Y-%m-%d_%H-%M-%S.mp4',
    });
    return recordings.record(pattern(ending), START, { video, audio: AAC, ending, seconds, segment: 4 });
  };

  before(function () {
    needsFfmpeg(this);
  });
  afterEach(() => recordings.remove());

  it('refuses what it cannot do, and says what to do', () => {
    const [path = ''] = record('mp4', 4);
    writeFileSync(join(recordings.out, 'there.mp4'), 'mine');
    linkSync(join(recordings.root, path), join(recordings.out, 'link.mp4'));
    symlinkSync(recordings.root, join(recordings.out, 'elsewhere'));
    for (const [asked, why] of [
      [
        ['--recording', 'gat', '--from', at(0), '--to', at(4), '--out', 'x.mp4'],
        /no recording gat\. The nearest is gate\./,
      ],
      [['--recording', 'unseen', '--from', at(0), '--to', at(4), '--out', 'x.mp4'], /they come again every day/],
      [
        ['--recording', 'bare', '--from', at(0), '--to', at(4), '--out', 'x.mp4'],
        /bare\/ cannot be read: it does not exist/,
      ],
      [words('x.avi'), /let it end in \.mp4, \.mov, \.mkv, \.ts/],
      [words('x'), /let it end in/],
      [words('nowhere/x.mp4'), /nowhere is no folder/],
      [words('there.mp4'), /is there already and is left as it is/],
      [[...words('link.mp4'), '--overwrite'], /by another name/],
      [words('elsewhere/x.mp4'), /among the recordings/],
      [
        ['--recording', 'gate', '--from', at(0), '--to', at(4), '--out', join(recordings.root, 'gate/x.mp4')],
        /among the recordings/,
      ],
      [words('x.mp4', 4, 4), /--to comes after --from/],
      [words('x.mp4', 100, 200), /gate has nothing from 2026-11-20T13:01:40/],
      [words('x.mp4', -200, -100), /the first after is of 2026-11-20T13:00:00/],
      [
        ['--recording', 'gate', '--from', '2026-03-29T01:30', '--to', at(4), '--out', 'x.mp4'],
        /skipped 2026-03-29T01:30/,
      ],
      [
        ['--recording', 'gate', '--from', '2026-10-25T01:30', '--to', at(4), '--out', 'x.mp4'],
        /2026-10-25T01:30:00\.000\+01:00 or 2026-10-25T01:30:00\.000\+00:00/,
      ],
      [[...words('x.mp4'), '--recordings', join(recordings.folder, 'none')], /is no folder on this machine/],
    ] as const) {
      const { status, err } = recordings.footage(...asked);
      assert.equal(status, 2, err);
      assert.match(err, why);
    }
    assert.equal(readFileSync(join(recordings.out, 'there.mp4'), 'utf8'), 'mine');
    assert.deepEqual(readdirSync(recordings.out).sort(), ['elsewhere', 'link.mp4', 'there.mp4']);
    chmodSync(join(recordings.out, 'there.mp4'), 0o600);
    assert.equal(recordings.footage(...words('there.mp4', 0, 4), '--overwrite').status, 0);
    assert.equal(statSync(join(recordings.out, 'there.mp4')).mode & 0o777, 0o600, 'nobody else may see it now either');
    hasFrames(numbersOf(join(recordings.out, 'there.mp4')), range(0, 100));
  });

  it('files of an mp4 that was cut short are left out, and the others kept', () => {
    const paths = record('mp4');
    const last = paths.at(-1) ?? '';
    truncateSync(join(recordings.root, last), 5000);
    assert.match(
      recordings.footage(...words('y.mp4')).out,
      /written to a moment ago, and its index \(moov\), which comes last, is not there yet/,
    );
    utimesSync(join(recordings.root, last), START / 1000, START / 1000);
    const { status, out } = recordings.footage(...words('x.mp4'));
    assert.equal(status, 1);
    assert.match(out, /cut short, before its index \(moov\) was written\. Its 5 kB still hold pictures/);
    hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(0, 400));
    const { gaps, 'left-out': leftOut } = recordings.sidecar('x.mp4');
    assert.deepEqual(gaps, [{ from: shown(16), to: shown(20), seconds: 4 }]);
    assert.deepEqual(
      leftOut.map(({ path }) => path),
      [last],
    );
    assert.equal(statSync(join(recordings.root, last)).size, 5000);
  });

  it('an empty file, one of something else and a folder of such a name are reported and left out', () => {
    const paths = record('mp4');
    const [a = '', b = '', c = ''] = paths.map((path) => join(recordings.root, path));
    writeFileSync(a, '');
    writeFileSync(b, 'no pictures');
    rmSync(c);
    mkdirSync(c);
    const { status, out } = recordings.footage(...words('x.mp4'));
    assert.equal(status, 1);
    assert.match(out, /it is empty\n/);
    assert.match(out, /there is no video in it \(/);
    hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(300, 500));
  });

  for (const ending of ['ts', 'mkv', 'mp4']) {
    it(`what can be read of a ${ending} that was cut short is used, and what follows it too`, () => {
      const paths = record(ending);
      const damaged = join(recordings.root, paths[1] ?? '');
      // An index in front, as of a file that was copied only in part.
      if (ending === 'mp4') {
        const moved = join(recordings.folder, 'moved.mp4');
        ffmpeg('-i', damaged, '-c', 'copy', '-movflags', '+faststart', moved);
        renameSync(moved, damaged);
      }
      truncateSync(damaged, Math.round(statSync(damaged).size * 0.6));
      const { status, out, err } = recordings.footage(...words(`x.${ending}`));
      assert.equal(status, 1, out + err);
      const {
        outputs: [output],
        gaps,
      } = recordings.sidecar(`x.${ending}`);
      const taken = output?.segments[1]?.frames ?? 0;
      assert.ok(taken > 20 && taken < 100, `${taken.toString()} frames`);
      assert.equal(gaps.length, 1, 'what is lost is a gap');
      // The last frame that is there may be there in part.
      const frames = framesOf(join(recordings.out, `x.${ending}`));
      const whole = paths.filter((_, index) => index !== 1).flatMap((path) => framesOf(join(recordings.root, path)));
      assert.deepEqual([...frames.slice(0, 100), ...frames.slice(-300)], whole);
      assert.ok(frames.length >= 400 + taken - 1);
    });
  }

  it('reports what two files have, and keeps both', () => {
    const paths = record('mp4', 12);
    const third = join(recordings.root, paths[2] ?? '');
    // Two seconds sooner than it was.
    renameSync(third, third.replace('13-00-08', '13-00-06'));
    const { status, out } = recordings.footage(...words('x.mp4', 0, 10));
    assert.equal(status, 0);
    assert.match(out, /Twice: 2026-11-20T13:00:06\.000\+00:00 to 2026-11-20T13:00:08\.000\+00:00, 2 s/);
    hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(0, 300));
  });

  it('where sizes and codecs change there is a file for each; in a transport stream sizes may change', () => {
    record('mp4', 8);
    recordings.record(pattern('mp4'), START + 8000, {
      video: H264,
      audio: AAC,
      ending: 'mp4',
      seconds: 8,
      segment: 4,
      number: 200,
      scale: 2,
    });
    recordings.record(pattern('mp4'), START + 16_000, {
      video: H265,
      audio: AAC,
      ending: 'mp4',
      seconds: 6,
      segment: 4,
      number: 400,
    });
    const { status, out, err } = recordings.footage(...words('x.mp4', 0, 22));
    assert.equal(status, 0, out + err);
    const parts = ['x-1.mp4', 'x-2.mp4', 'x-3.mp4'];
    assert.deepEqual(readdirSync(recordings.out).sort(), [...parts, 'x.mp4.json']);
    hasFrames(
      parts.flatMap((name) => numbersOf(join(recordings.out, name))),
      range(0, 550),
    );
    assert.deepEqual(
      recordings.sidecar('x.mp4').outputs.map(({ path, frames }) => [path, frames]),
      [
        ['x-1.mp4', 200],
        ['x-2.mp4', 200],
        ['x-3.mp4', 150],
      ],
    );
    assert.equal(recordings.footage(...words('x.ts', 0, 22)).status, 0);
    hasFrames(
      ['x-1.ts', 'x-2.ts'].flatMap((name) => numbersOf(join(recordings.out, name))),
      range(0, 550),
    );
    assert.equal(recordings.footage(...words('x.mp4', 0, 22)).status, 2, 'the results are there already');
  });

  it('where the parameters of the encoder change, one file holds both', () => {
    for (const [video, other] of [
      [H264, ['-c:v', 'libx264', '-profile:v', 'baseline', '-g', '50']],
      [H265, ['-c:v', 'libx265', '-x265-params', 'log-level=error:keyint=50:rd=1:ctu=16:open-gop=0']],
    ] as const) {
      record('mp4', 6, [...video]);
      recordings.record(pattern('mp4'), START + 6000, {
        video: other,
        audio: AAC,
        ending: 'mp4',
        seconds: 8,
        segment: 4,
        number: 150,
      });
      for (const ending of ['mp4', 'mkv', 'ts']) {
        const { status, err } = recordings.footage(...words(`x.${ending}`, 0, 14));
        assert.equal(status, 0, err);
        hasFrames(numbersOf(join(recordings.out, `x.${ending}`)), range(0, 350));
      }
      recordings.remove();
    }
  });

  it('says where a container cannot hold the audio, and writes nothing', () => {
    recordings = new Recordings({ gate: pattern('mkv') });
    recordings.record(pattern('mkv'), START, {
      video: H264,
      audio: ['-c:a', 'pcm_alaw', '-ar', '8000'],
      ending: 'mkv',
      seconds: 4,
      segment: 4,
    });
    const { status, err } = recordings.footage(...words('x.mp4', 0, 4));
    assert.equal(status, 2);
    assert.match(err, /cannot hold h264 192 × 64, pcm_alaw as it is\. Let --out end in \.mkv/);
    assert.deepEqual(readdirSync(recordings.out), []);
  });

  it('cuts no codec to the frame that it cannot encode again', () => {
    recordings = new Recordings({ gate: pattern('mkv') });
    recordings.record(pattern('mkv'), START, {
      video: ['-c:v', 'mpeg4', '-g', '50'],
      ending: 'mkv',
      seconds: 4,
      segment: 4,
    });
    const { status, err } = recordings.footage(...words('x.mkv', 1, 3), '--exact');
    assert.equal(status, 2);
    assert.match(err, /is mpeg4, which cannot be encoded again: .* Ask without --exact/);
    assert.equal(recordings.footage(...words('x.mkv', 1, 3)).status, 0);
  });

  it('joins open groups of pictures, and says where they cannot be cut to the frame', () => {
    const open = ['-c:v', 'libx265', '-x265-params', 'log-level=error:keyint=50:min-keyint=50:scenecut=0:open-gop=1'];
    record('mp4', 12, open);
    assert.equal(recordings.footage(...words('x.mp4', 0, 12)).status, 0);
    hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(0, 300));
    const { status, err } = recordings.footage(...words('y.mp4', 1, 11), '--exact');
    assert.equal(status, 2);
    assert.match(err, /without the end of the file before \(open groups of pictures\)/);
    assert.equal(recordings.footage(...words('y.mp4', 0.6, 3), '--exact').status, 0);
    hasFrames(numbersOf(join(recordings.out, 'y.mp4')), range(15, 75));
  });

  it('takes any name of files, folders and results for what it is', () => {
    const strange = "-o 'g' \"%%d\" $(id)\n;/-%Y-%m-%d_%H-%M-%S%z's.mp4";
    recordings = new Recordings({ gate: strange });
    recordings.record(strange, START, { video: H264, ending: 'mp4', seconds: 12, segment: 4 });
    for (const [index, extra] of [[], ['--exact']].entries()) {
      const name = `-${index.toString()} 'o' %d \n$(id).mp4`;
      const { status, err } = recordings.footage(
        '--recording',
        'gate',
        '--from',
        at(1),
        '--to',
        at(11),
        '--out',
        join(recordings.out, name),
        ...extra,
      );
      assert.equal(status, 0, err);
      hasFrames(numbersOf(join(recordings.out, name)), index === 0 ? range(0, 300) : range(25, 275));
      recordings.sidecar(name);
    }
  });

  it('takes what is there of a file that is still being written', async () => {
    recordings = new Recordings({ gate: 'gate/%Y-%m-%d_%H-%M-%S%z.ts' });
    mkdirSync(join(recordings.root, 'gate'));
    const from = new Date(Date.now() - 60_000).toISOString();
    const to = new Date(Date.now() + 3_600_000).toISOString();
    // At the pace of a camera, and named by FFmpeg itself.
    const recorder = spawn(
      'ffmpeg',
      [
        '-v',
        'error',
        '-nostdin',
        '-re',
        '-f',
        'lavfi',
        '-i',
        'testsrc2=s=640x360:r=25',
        ...H264,
        '-g',
        '25',
        '-tune',
        'zerolatency',
        '-f',
        'segment',
        '-segment_time',
        '2',
        '-strftime',
        '1',
        '-reset_timestamps',
        '1',
        join(recordings.root, 'gate/%Y-%m-%d_%H-%M-%S%z.ts'),
      ],
      { env: { ...process.env, TZ: 'Europe/London' } },
    );
    const closed = new Promise((resolve) => recorder.on('close', resolve));
    try {
      const files = (): string[] => readdirSync(join(recordings.root, 'gate')).sort();
      while (files().length < 3 || statSync(join(recordings.root, 'gate', files()[2] ?? '')).size === 0)
        await new Promise((resolve) => setTimeout(resolve, 50));
      const { status, out, err } = recordings.footage(
        '--recording',
        'gate',
        '--from',
        from,
        '--to',
        to,
        '--out',
        join(recordings.out, 'x.mp4'),
      );
      assert.equal(status, 1, out + err);
      const {
        outputs: [output],
        gaps,
      } = recordings.sidecar('x.mp4');
      assert.equal(framesOf(join(recordings.out, 'x.mp4')).length, output?.frames);
      assert.ok((output?.segments.length ?? 0) >= 3);
      assert.equal(gaps.length, 2, 'what is before and after; nothing in between');
    } finally {
      recorder.kill('SIGKILL');
      await closed;
    }
  });

  describe('in the hour that comes twice', () => {
    // IANA time-zone database: on 2026-10-25 clocks in London went back from 02:00 to 01:00 at 01:00Z.
    const change = Date.UTC(2026, 9, 25, 1);

    it('takes that which the offset says', () => {
      recordings = new Recordings({ gate: pattern('mp4') });
      recordings.record(pattern('mp4'), change - 1_800_000, { video: H264, ending: 'mp4', seconds: 12, segment: 4 });
      recordings.record(pattern('mp4'), change + 1_800_000, {
        video: H264,
        ending: 'mp4',
        seconds: 12,
        segment: 4,
        number: 1000,
      });
      for (const [offset, number] of [
        ['+01:00', 0],
        ['+00:00', 1000],
      ] as const) {
        const out = join(recordings.out, `${number.toString()}.mp4`);
        const { status, err } = recordings.footage(
          '--recording',
          'gate',
          '--from',
          `2026-10-25T01:30:01${offset}`,
          '--to',
          `2026-10-25T01:30:11${offset}`,
          '--out',
          out,
          '--exact',
        );
        assert.equal(status, 0, err);
        hasFrames(numbersOf(out), range(number + 25, number + 275));
        assert.equal(recordings.sidecar(`${number.toString()}.mp4`).got.from, `2026-10-25T01:30:01.000${offset}`);
      }
    });

    it('goes on across the change without a gap', () => {
      recordings = new Recordings({ gate: pattern('mp4') });
      recordings.record(pattern('mp4'), change - 8000, { video: H264, ending: 'mp4', seconds: 16, segment: 4 });
      const { status, err } = recordings.footage(
        '--recording',
        'gate',
        '--from',
        '2026-10-25T01:59:52+01:00',
        '--to',
        '2026-10-25T01:00:08+00:00',
        '--out',
        join(recordings.out, 'x.mp4'),
      );
      assert.equal(status, 0, err);
      hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(0, 400));
      assert.deepEqual(recordings.sidecar('x.mp4').got, {
        from: '2026-10-25T01:59:52.000+01:00',
        to: '2026-10-25T01:00:08.000+00:00',
      });
    });

    it('tells names without an offset apart by when the files were written, or asks', () => {
      const bare = 'gate/%Y-%m-%d_%H-%M-%S.mp4';
      recordings = new Recordings({ gate: bare });
      const paths = recordings.record(bare, change + 1_800_000, { video: H264, ending: 'mp4', seconds: 8, segment: 4 });
      const second = [
        '--recording',
        'gate',
        '--from',
        '2026-10-25T01:30:00+00:00',
        '--to',
        '2026-10-25T01:30:08+00:00',
        '--out',
      ];
      assert.equal(recordings.footage(...second, join(recordings.out, 'a.mp4')).status, 0);
      const first = second.map((word) => word.replace('+00:00', '+01:00'));
      assert.match(
        recordings.footage(...first, join(recordings.out, 'b.mp4')).err,
        /gate has nothing from 2026-10-25T01:30:00\.000\+01:00/,
      );
      // As after copying without times.
      for (const path of paths) utimesSync(join(recordings.root, path), START / 1000, START / 1000);
      const { status, err } = recordings.footage(...second, join(recordings.out, 'c.mp4'));
      assert.equal(status, 2);
      assert.match(err, /was there twice, and the name does not say which is meant: --repeated-hour does/);
      assert.equal(recordings.footage(...second, join(recordings.out, 'c.mp4'), '--repeated-hour', 'second').status, 0);
      assert.equal(recordings.footage(...first, join(recordings.out, 'd.mp4'), '--repeated-hour', 'first').status, 0);
    });
  });

  describe('on a full disk', () => {
    let disk: string;
    const mounted = (context: Mocha.Context, kilobytes: number): void => {
      disk = join(recordings.folder, 'disk');
      mkdirSync(disk);
      const mount = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes.toString()}k`, 'tmpfs', disk], {
        encoding: 'utf8',
      });
      if (mount.status !== 0)
        unavailable(context, `a small disk of its own needs root (mount -t tmpfs): ${mount.stderr}`);
    };
    afterEach(() => void spawnSync('umount', [disk]));

    const fullWords = (...extra: string[]): string[] => [
      '--recording',
      'gate',
      '--from',
      at(1),
      '--to',
      at(19),
      '--out',
      join(disk, 'x.mp4'),
      ...extra,
    ];

    it('nothing is begun where there is no room', function () {
      const paths = record('mp4');
      mounted(this, 40);
      const { status, err } = recordings.footage(...fullWords());
      assert.equal(status, 2);
      assert.match(err, /has 41 kB free, and the footage needs \d+ kB\. Nothing was written\./);
      assert.deepEqual(readdirSync(disk), []);
      assert.equal(paths.length, readdirSync(join(recordings.root, 'gate')).length);
    });

    it('nothing is kept where it fills up on the way', function () {
      const paths = record('mp4');
      const sizes = paths.map((path) => statSync(join(recordings.root, path)).size);
      const total = sizes.reduce((sum, size) => sum + size, 0);
      // Room for the pieces and not for the result; a page is 4 KiB.
      mounted(this, Math.ceil(total / 4096) * 4 + 12);
      const { status, err } = recordings.footage(...fullWords('--exact'));
      assert.equal(status, 2);
      assert.match(err, /The disk of .* is full\. Nothing was kept there; the originals are as they were\./);
      assert.deepEqual(readdirSync(disk), []);
      assert.deepEqual(
        paths.map((path) => statSync(join(recordings.root, path)).size),
        sizes,
      );
    });
  });

  for (const signal of ['SIGTERM', 'SIGINT', 'SIGKILL'] as const) {
    it(`nothing bears the name of a result where it is stopped by ${signal}`, async () => {
      const paths = record('mp4');
      copyFileSync(join(recordings.root, paths[0] ?? ''), join(recordings.out, 'old.mp4'));
      const old = readFileSync(join(recordings.out, 'old.mp4'));
      const running = spawn(
        process.execPath,
        [program, 'footage', ...words('old.mp4', 1, 19), '--exact', '--overwrite', recordings.site],
        { stdio: ['ignore', 'ignore', 'pipe'] },
      );
      let err = '';
      running.stderr.on('data', (text: Buffer) => (err += text.toString()));
      const closed = new Promise((resolve) => running.on('close', resolve));
      while (!readdirSync(recordings.out).some((name) => name.startsWith('.plumbline-')))
        await new Promise((resolve) => setTimeout(resolve, 5));
      running.kill(signal);
      const status = await closed;
      assert.deepEqual(readFileSync(join(recordings.out, 'old.mp4')), old, 'what was there before is there');
      assert.equal(existsSync(join(recordings.out, 'old.mp4.json')), false);
      if (signal === 'SIGKILL') {
        // The next one clears what it has left.
        assert.equal(recordings.footage(...words('new.mp4', 1, 19)).status, 0);
        assert.deepEqual(readdirSync(recordings.out).sort(), ['new.mp4', 'new.mp4.json', 'old.mp4']);
        return;
      }
      assert.equal(status, 2);
      assert.match(err, /Stopped\. Nothing was written\./);
      assert.deepEqual(readdirSync(recordings.out), ['old.mp4'], 'and nothing else');
    });
  }
});
