import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { audioRates } from '../../server/src/standards/audio-rates.ts';
import { unavailable } from '../availability.ts';

describe('bit rates of audio', () => {
  // RFC 3551 §4.5.14: 8 bits a sample; §4.5.11: 16 bits; §4.5.2: 64 kb/s.
  it('follow from the samples where the codec has no other', () => {
    assert.equal(audioRates('pcmu', 8000, 1)?.most, 64_000);
    assert.equal(audioRates('l16', 48_000, 2)?.least, 1_536_000);
    assert.equal(audioRates('g722', 16_000, 1)?.most, 64_000);
  });

  it('are not known of L16 without its sample rate, nor of what is no codec', () => {
    assert.deepEqual([audioRates('l16', undefined, 2), audioRates(undefined, 8000, 1)], [undefined, undefined]);
  });

  // FFmpeg's encoders refuse, or cut down, what lies outside.
  for (const [codec, encoder, sampleRate, channels] of [
    ['mp2', 'mp2', 48_000, 2],
    ['mp2', 'mp2', 24_000, 2],
    ['aac', 'aac', 48_000, 2],
    ['aac', 'aac', 16_000, 1],
    ['opus', 'libopus', 48_000, 1],
    ['opus', 'libopus', 48_000, 2],
  ] as const)
    it(`of ${codec} at ${sampleRate} Hz in ${channels} channels end where FFmpeg's encoder ends`, function () {
      const most = audioRates(codec, sampleRate, channels)?.most ?? 0;
      const complains = (rate: number): boolean => {
        const sine = `sine=sample_rate=${sampleRate}:duration=0.2`;
        const input = ['-loglevel', 'warning', '-f', 'lavfi', '-i', sine, '-ac', String(channels)];
        const { status, stderr, error } = spawnSync(
          'ffmpeg',
          [...input, '-c:a', encoder, '-b:a', String(rate), '-f', 'null', '-'],
          { encoding: 'utf8' },
        );
        if (error !== undefined) unavailable(this, 'FFmpeg is not installed');
        return status !== 0 || /clamping/.test(stderr);
      };
      assert.deepEqual([complains(most), complains(1.1 * most)], [false, true]);
    });
});
