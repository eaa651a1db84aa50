import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { aacLevel, audioSpecificConfig } from '../../server/src/standards/aac.ts';
import { unavailable } from '../availability.ts';

describe('AAC (ISO/IEC 14496-3)', () => {
  // Object type 2 (00010), frequency index 4 (0100), channels 2 (0010): 0x1210; by hand from the tables, from memory.
  it('puts object type, frequency and channels into 16 bits', () => {
    assert.equal(audioSpecificConfig(44_100, 2), '1210');
    assert.equal(audioSpecificConfig(48_000, 2), '1190');
  });

  it('has none for what has no number in the tables', () => {
    assert.deepEqual(
      [audioSpecificConfig(47_000, 2), audioSpecificConfig(48_000, 7), audioSpecificConfig(48_000, 0)],
      [undefined, undefined, undefined],
    );
  });

  // FFmpeg's encoder puts the same in front of an extension that old receivers pass over.
  for (const [rate, channels] of [
    [48_000, 2],
    [44_100, 1],
    [16_000, 1],
    [8000, 2],
    [48_000, 6],
  ] as const) {
    it(`says of ${rate} Hz and ${channels} channels what FFmpeg does`, function () {
      const { status, stdout } = spawnSync(
        'ffmpeg',
        [
          '-loglevel',
          'error',
          '-f',
          'lavfi',
          '-i',
          `sine=sample_rate=${rate}:duration=0.1`,
          '-ac',
          String(channels),
          '-c:a',
          'aac',
          '-f',
          'rtp',
          'rtp://127.0.0.1:9',
        ],
        { encoding: 'utf8' },
      );
      if (status === null) unavailable(this, 'FFmpeg is not installed');
      assert.equal(/config=([0-9A-F]{4})/.exec(stdout)?.[1]?.toLowerCase(), audioSpecificConfig(rate, channels));
    });
  }

  it('says a level that is enough', () => {
    assert.deepEqual(
      [aacLevel(16_000, 1), aacLevel(48_000, 2), aacLevel(48_000, 6), aacLevel(96_000, 6), aacLevel(96_000, 8)],
      [40, 41, 42, 43, 254],
    );
  });
});
