import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unavailable } from '../availability.ts';
import { levelFor } from '../../server/src/standards/levels.ts';

// Macroblocks and samples per second by hand, limits as FFmpeg's source transcribes H.264 Table A-1 and H.265
// Tables A.8 and A.9 (secondary).
const pictures = [
  [352, 288, 25, '1.3', '2'],
  [640, 360, 25, '3', '2.1'],
  [704, 576, 25, '3', '3'],
  [1280, 720, 30, '3.1', '3.1'],
  [1920, 1080, 30, '4', '4'],
  [1920, 1080, 60, '4.2', '4.1'],
  [2560, 1440, 20, '5', '5'],
  [2560, 1440, 30, '5', '5'],
  [3840, 2160, 30, '5.1', '5'],
] as const;

describe('Levels (H.264 Table A-1, H.265 Tables A.8 and A.9)', () => {
  for (const [width, height, rate, h264, h265] of pictures) {
    it(`${width}×${height} at ${rate}/s needs H.264 level ${h264}, H.265 level ${h265}`, () => {
      assert.equal(levelFor('h264', { width, height }, rate)?.name, h264);
      assert.equal(levelFor('h265', { width, height }, rate)?.name, h265);
    });
  }

  // Secondary, as above; H.264 High is 1.25 × Main.
  it('allow so much and no more', () => {
    const size = { width: 1920, height: 1080 };
    assert.deepEqual(levelFor('h264', size, 30), {
      name: '4',
      maxBitsPerSecond: 20_000_000,
      highMaxBitsPerSecond: 25_000_000,
    });
    assert.deepEqual(levelFor('h265', size, 30), {
      name: '4',
      maxBitsPerSecond: 12_000_000,
      highMaxBitsPerSecond: 30_000_000,
    });
  });

  // By hand: level 3 has 1620 macroblocks, so a side of √(8 × 1620) = 113.8 macroblocks, 1808 samples.
  it('limit the longer side too', () => {
    assert.equal(levelFor('h264', { width: 1808, height: 16 }, 25)?.name, '2.2');
    assert.equal(levelFor('h264', { width: 1824, height: 16 }, 25)?.name, '3.1');
    assert.equal(levelFor('h264', { width: 16, height: 1824 }, 25)?.name, '3.1');
  });

  it('end somewhere', () => {
    assert.equal(levelFor('h264', { width: 15_360, height: 8640 }, 30), undefined);
    assert.equal(levelFor('h265', { width: 7680, height: 4320 }, 300), undefined);
  });

  for (const [codec, encoder, options] of [
    ['h264', 'libx264', ['-x264-params', 'ref=1:bframes=0']],
    ['h265', 'libx265', ['-x265-params', 'log-level=none:ref=1:bframes=0']],
  ] as const) {
    it(`are those that FFmpeg's ${encoder} chooses for ${codec} with one reference picture`, function () {
      const encoders = spawnSync('ffmpeg', ['-v', 'error', '-encoders'], { encoding: 'utf8' });
      if (encoders.status !== 0 || !encoders.stdout.includes(encoder)) unavailable(this, `no FFmpeg with ${encoder}`);
      const folder = mkdtempSync(join(tmpdir(), 'levels-'));
      try {
        for (const [width, height, rate] of pictures) {
          const file = join(folder, `${width}x${height}.mp4`);
          execFileSync('ffmpeg', [
            '-v',
            'error',
            '-nostdin',
            '-y',
            '-f',
            'lavfi',
            '-i',
            `testsrc2=size=${width}x${height}:rate=${rate}`,
            '-frames:v',
            '2',
            '-c:v',
            encoder,
            '-preset',
            'ultrafast',
            ...options,
            '-pix_fmt',
            'yuv420p',
            file,
          ]);
          const written = Number(
            execFileSync('ffprobe', ['-v', 'error', '-show_entries', 'stream=level', '-of', 'csv=p=0', file], {
              encoding: 'utf8',
            }),
          );
          // Written as ten times the level in H.264, thirty times in H.265.
          const expected = written / (codec === 'h264' ? 10 : 30);
          assert.equal(Number(levelFor(codec, { width, height }, rate)?.name), expected, `${width}x${height} ${rate}`);
        }
      } finally {
        rmSync(folder, { recursive: true });
      }
    });
  }
});
