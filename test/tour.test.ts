// The README's tour, from an empty folder to joined footage: its own lines, run in their order. What runs on the
// server between the two blocks is rehearsed in test/rehearsal; here FFmpeg writes what a recorder would have.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unavailable } from './availability.ts';
import { type Result, plumbline } from './cli/run.ts';

const FRAME_RATE = 5;

describe('the tour of the README', function () {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-tour-'));
  const archive = join(folder, 'srv', 'archive');
  const text = readFileSync('README.md', 'utf8');
  const tour = text.slice(text.indexOf('## From an empty folder to footage'), text.indexOf('### What can be made'));
  const [planning = [], serving = []] = [...tour.matchAll(/^```sh\n(.*?)^```/gms)].map(([, block = '']) =>
    block.split('\n').filter((line) => line.startsWith('plumbline ')),
  );

  after(() => rmSync(folder, { recursive: true }));

  function run(line: string): Result {
    const words = line.replace(/#.*/, '').replaceAll('/srv/archive', archive).trim().split(/\s+/).slice(1);
    return plumbline(words, { cwd: folder });
  }

  before(function () {
    if (spawnSync('ffmpeg', ['-version']).status !== 0) unavailable(this, 'FFmpeg is not installed');
  });

  it('plans, checks and makes', () => {
    assert.ok(planning.length >= 8, `${planning.length} lines`);
    for (const line of planning) {
      const { status, err } = run(line);
      assert.equal(status, 0, `${line}\n${err}`);
    }
    for (const made of ['papers', 'made'])
      assert.ok(readdirSync(join(folder, made), { recursive: true }).length > 2, made);
  });

  it('audits what was recorded, and joins it: as many frames as were filmed', () => {
    mkdirSync(join(archive, 'gate'), { recursive: true });
    for (const minute of ['00', '01', '02']) {
      const file = join(archive, 'gate', `2026-11-25_13-${minute}-00+0000.mp4`);
      const picture = `testsrc2=size=320x180:rate=${FRAME_RATE}:duration=60`;
      execFileSync('ffmpeg', [
        '-v',
        'error',
        '-f',
        'lavfi',
        '-i',
        picture,
        '-g',
        String(2 * FRAME_RATE),
        '-pix_fmt',
        'yuv420p',
        file,
      ]);
    }
    const [audit = '', footage = '', ...more] = serving;
    assert.deepEqual(more, []);
    // Nothing was recorded of the yard, and the pictures are far smaller than the site says.
    const audited = run(audit);
    assert.equal(audited.status, 1, audited.err);
    assert.match(audited.out, /yard/);
    const joined = run(footage);
    assert.equal(joined.status, 0, `${joined.out}\n${joined.err}`);
    const result = join(folder, 'gate.mp4');
    assert.ok(existsSync(`${result}.json`));
    const frames = execFileSync(
      'ffprobe',
      [
        '-v',
        'error',
        '-count_frames',
        '-select_streams',
        'v',
        '-show_entries',
        'stream=nb_read_frames',
        '-of',
        'csv=p=0',
        result,
      ],
      { encoding: 'utf8' },
    );
    assert.equal(Number(frames), 2 * 60 * FRAME_RATE);
  });
});
