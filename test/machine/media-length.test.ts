// Files that FFmpeg wrote, and what happens to them: killed, and begun again.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mediaLength } from '../../server/src/machine/media-length.ts';
import { unavailable } from '../availability.ts';

const PICTURES = '-v error -nostdin -y -f lavfi -i testsrc2=s=320x180:r=25:d=4 -c:v libx264 -preset ultrafast -g 25';

describe('how long a recorded file is', function () {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-length-'));
  after(() => rmSync(folder, { recursive: true, force: true }));

  /**
   * What FFmpeg writes to a pipe, where it cannot go back to fill in a length: as a recorder that is killed leaves it.
   */
  function written(...words: readonly string[]): Buffer {
    const { status, stdout } = spawnSync('ffmpeg', [...PICTURES.split(' '), ...words, 'pipe:1'], { maxBuffer: 1e8 });
    assert.equal(status, 0);
    return stdout;
  }

  function file(name: string, ...parts: readonly Uint8Array[]): string {
    const path = join(folder, name);
    writeFileSync(path, Buffer.concat(parts));
    return path;
  }

  before(function () {
    const encoders = spawnSync('ffmpeg', ['-hide_banner', '-encoders'], { encoding: 'utf8' });
    if (encoders.status !== 0 || !encoders.stdout.includes('libx264'))
      unavailable(this, 'ffmpeg with libx264 is needed (apt-get install ffmpeg)');
  });

  it('is that of its packets where a Matroska file was left unfinished', async () => {
    const whole = written('-f', 'matroska');
    assert.equal(await mediaLength(file('whole.mkv', whole)), 4000);
    const killed = await mediaLength(file('killed.mkv', whole.subarray(0, whole.length / 2)));
    assert.ok(typeof killed === 'number' && killed > 1500 && killed < 2600, String(killed));
  });

  it('is that of its parts where a transport stream was begun again, at whatever time', async () => {
    const [once, later] = [written('-f', 'mpegts'), written('-output_ts_offset', '5000', '-f', 'mpegts')];
    assert.equal(await mediaLength(file('once.ts', once)), 4000);
    for (const [name, second] of Object.entries({ same: once, later }))
      assert.equal(await mediaLength(file(`${name}.ts`, once, second)), 8000, name);
    assert.equal(await mediaLength(file('earlier.ts', later, once)), 8000);
  });

  it('is not known of nothing', async () => {
    assert.equal(await mediaLength(join(folder, 'gone.mkv')), undefined);
    assert.equal(await mediaLength(file('damaged.mkv', readFileSync('package.json'))), 'damaged');
  });
});
