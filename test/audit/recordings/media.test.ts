/**
 * Recordings that FFmpeg's segment muxer made by the clock, with the names that it gave, looked into by ffprobe: silent
 * as they are, and each fault told that is put into a copy of them.
 */

import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unavailable } from '../../availability.ts';
import { plumbline } from '../../cli/run.ts';

/** Seconds. */
const [SEGMENT, KEYFRAMES, RECORDED] = [6, 1, 32];
const RATE = 800_000;

/** A picture at a constant rate: filler makes up what it does not need (ITU-T H.264, 7.3.2.7). */
const SOURCE = [
  '-re',
  '-f',
  'lavfi',
  '-i',
  'testsrc2=s=320x180:r=25',
  '-c:v',
  'libx264',
  '-preset',
  'ultrafast',
  '-g',
  String(25 * KEYFRAMES),
  '-sc_threshold',
  '0',
  '-b:v',
  String(RATE),
  '-minrate',
  String(RATE),
  '-maxrate',
  String(RATE),
  '-bufsize',
  String(RATE),
  '-x264-params',
  'nal-hrd=cbr',
];

/** Kept for an hour, for which there is room wherever this runs. */
function site(folder: string, bitrate = '800 kb/s'): string {
  return `site: {name: Harrow Lane, timezone: UTC}
devices:
  gate-cam: {kind: camera}
  recorder: {kind: server}
streams:
  gate: {source: gate-cam, transport: rtsp, video: {codec: h264, bitrate: ${bitrate}, peak-bitrate: 4 Mb/s, keyframe-interval: ${KEYFRAMES} s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, path: ${JSON.stringify(folder)}}
recordings:
  gate: {stream: gate, volume: archive, segment: ${SEGMENT} s, keep: 1 h, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: gate, volume: archive, segment: ${SEGMENT} s, keep: 1 h, file: "yard/%Y-%m-%d_%H-%M-%S%z.mp4"}
`;
}

describe('audit of what FFmpeg recorded', function () {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-recorded-'));
  const good = join(folder, 'good');
  after(() => rmSync(folder, { recursive: true, force: true }));

  /** Records for so many seconds, to the end of the last file. */
  async function record(name: string, seconds: number): Promise<void> {
    const words = [
      ...SOURCE,
      '-t',
      String(seconds),
      '-f',
      'segment',
      '-segment_time',
      String(SEGMENT),
      '-reset_timestamps',
      '1',
      '-strftime',
      '1',
      join(good, name, '%Y-%m-%d_%H-%M-%S%z.mp4'),
    ];
    const run = spawn('ffmpeg', ['-v', 'error', '-nostdin', ...words], {
      env: { ...process.env, TZ: 'UTC' },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const status = await new Promise((resolve) => run.on('close', resolve));
    assert.equal(status, 0);
  }

  before(async function () {
    const encoders = spawnSync('ffmpeg', ['-hide_banner', '-encoders'], { encoding: 'utf8' });
    if (encoders.status !== 0 || !encoders.stdout.includes('libx264'))
      unavailable(this, 'ffmpeg with libx264 is needed (apt-get install ffmpeg)');
    for (const path of [join(good, 'gate'), join(good, 'yard')]) mkdirSync(path, { recursive: true });
    await Promise.all([record('gate', RECORDED), record('yard', RECORDED)]);
  });

  /** A copy of the good recordings, changed; what the audit says of it. */
  function audit(
    change: (root: string, gate: readonly string[]) => void = () => undefined,
    words: readonly string[] = [],
    bitrate?: string,
  ): string[] {
    const root = mkdtempSync(join(folder, 'copy-'));
    cpSync(good, root, { recursive: true, preserveTimestamps: true });
    const gate = readdirSync(join(root, 'gate'))
      .sort()
      .map((name) => join(root, 'gate', name));
    change(root, gate);
    mkdirSync(`${root}-site`);
    writeFileSync(join(`${root}-site`, 'a.site.yaml'), site(root, bitrate));
    const { out, err } = plumbline([
      'audit',
      'recordings',
      root,
      '--site',
      `${root}-site`,
      '--format',
      'json',
      ...words,
    ]);
    assert.equal(err, '');
    const { diagnostics } = JSON.parse(out) as { diagnostics: readonly { rule: string; message: string }[] };
    return diagnostics.map(({ rule, message }) => `${rule}: ${message}`);
  }

  const file = (files: readonly string[], index: number): string => {
    const path = files.at(index);
    assert.ok(path !== undefined, `there are only ${files.length} files`);
    return path;
  };

  it('is silent, by names and by the lengths that ffprobe tells', () => {
    assert.deepEqual(audit(), []);
    assert.deepEqual(audit(undefined, ['--probe', 'all']), []);
    assert.deepEqual(audit(undefined, ['--now', 'newest']), []);
  });

  it('reports a file that is gone', () => {
    const told = audit((_, gate) => unlinkSync(file(gate, 2)));
    assert.equal(told.length, 1, told.join('\n'));
    assert.match(told[0] ?? '', /^recording-gap: gate lacks [567] s in 1 gap: /);
    const probed = audit((_, gate) => unlinkSync(file(gate, 2)), ['--probe', '10']);
    assert.match(probed.join('\n'), /^recording-gap: gate lacks [567] s in 1 gap: [^\n]*$/);
  });

  it('reports an empty file', () => {
    assert.match(
      audit((_, gate) => truncateSync(file(gate, 1), 0)).join('\n'),
      /^file-empty: 1 file of gate is empty: [^\n]*$/,
    );
  });

  it('reports a file that was cut off before its index', () => {
    const cut = (_: string, gate: readonly string[]): void =>
      truncateSync(file(gate, 1), Math.floor(statSync(file(gate, 1)).size * 0.9));
    assert.match(
      audit(cut, ['--probe', 'all']).join('\n'),
      /^file-damaged: ffprobe cannot read 1 file of gate: [^\n]*$/,
    );
  });

  it('reports a file that ends early, where it was looked into', () => {
    const short = (_: string, gate: readonly string[]): void => {
      const path = file(gate, 1);
      const run = spawnSync('ffmpeg', ['-v', 'error', '-i', path, '-c', 'copy', '-t', '2', '-y', `${path}.short.mp4`], {
        encoding: 'utf8',
      });
      assert.equal(run.status, 0, run.stderr);
      copyFileSync(`${path}.short.mp4`, path);
      unlinkSync(`${path}.short.mp4`);
    };
    const told = audit(short, ['--probe', 'all']);
    assert.deepEqual(told.map((one) => one.split(':', 1)[0]).sort(), ['recording-gap', 'segment-short']);
    assert.match(told.join('\n'), /gate lacks [345] s in 1 gap/);
  });

  it('reports two recorders', () => {
    const twice = (root: string, gate: readonly string[]): void => {
      // The same files again, three seconds later each.
      for (const path of gate.slice(0, -1)) {
        const [, second = ''] = /-(\d\d)\+0000\.mp4$/.exec(path) ?? [];
        const [day, minute] = [path.slice(-28, -18), path.slice(-17, -12)];
        const later = new Date(Date.parse(`${day}T${minute.replace('-', ':')}:${second}Z`) + 3000)
          .toISOString()
          .slice(0, 19)
          .replace('T', '_')
          .replaceAll(':', '-');
        copyFileSync(path, join(root, 'gate', `${later}+0000.mp4`));
      }
    };
    const told = audit(twice, ['--probe', 'all']);
    assert.ok(
      told.some((one) => one.startsWith('recording-overlap: gate has ')),
      told.join('\n'),
    );
  });

  it('reports a file that nobody plans', () => {
    const told = audit((root, gate) => copyFileSync(file(gate, 0), join(root, 'old.mp4')));
    assert.match(
      told.join('\n'),
      /^file-unplanned: archive has 1 file of [^\n]* that no recording plans, in the volume itself \(1, such as old\.mp4\)\.$/,
    );
  });

  it('reports a recording without files', () => {
    assert.match(
      audit((root) => rmSync(join(root, 'yard'), { recursive: true })).join('\n'),
      /^recording-absent: There is no file of yard/,
    );
  });

  it('reports one that stopped', () => {
    const told = audit(undefined, ['--now', new Date(Date.now() + 600_000).toISOString()]);
    assert.deepEqual(
      told.map((one) => one.split(':', 1)[0]),
      ['recording-stopped', 'recording-stopped'],
    );
  });

  it('measures the bit rate as ffprobe does, and writes it into the site', () => {
    const root = mkdtempSync(join(folder, 'rate-'));
    writeFileSync(join(root, 'a.site.yaml'), site(good, '2 Mb/s'));
    const first = plumbline(['audit', 'recordings', good, '--site', root, '--fix']);
    assert.match(first.out, /gate and yard take|gate takes .* and yard takes /);
    const [, written] =
      /video: \{codec: h264, bitrate: (\d+) kb\/s/.exec(readFileSync(join(root, 'a.site.yaml'), 'utf8')) ?? [];
    const files = ['gate', 'yard'].flatMap((name) =>
      readdirSync(join(good, name))
        .sort()
        .slice(0, -1)
        .map((one) => join(good, name, one)),
    );
    const probed = files.map((path) =>
      spawnSync('ffprobe', ['-v', 'error', '-show_entries', 'format=bit_rate', '-of', 'csv=p=0', path], {
        encoding: 'utf8',
      }),
    );
    const mean = probed.reduce((sum, { stdout }) => sum + Number(stdout.trim()), 0) / probed.length / 1000;
    // Names tell whole seconds, of half a minute.
    assert.ok(Math.abs(Number(written) / mean - 1) < 0.06, `${written} for ${mean}`);
    assert.equal(plumbline(['audit', 'recordings', good, '--site', root]).status, 0);
  });
});
