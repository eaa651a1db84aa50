import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { type Carrier, ENCODERS, supports } from '../../../server/src/make/media/codec-support.ts';
import { unavailable } from '../../availability.ts';

/** Encoders of video, and what FFmpeg calls a codec that it reads back. */
const VIDEO: Readonly<Record<string, readonly [encoder: string, read: string]>> = {
  h264: ['libx264', 'h264'],
  h265: ['libx265', 'hevc'],
  mpeg2: ['mpeg2video', 'mpeg2video'],
  mjpeg: ['mjpeg', 'mjpeg'],
  av1: ['libaom-av1', 'av1'],
  vp9: ['libvpx-vp9', 'vp9'],
};

const AUDIO: Readonly<Record<string, string>> = {
  pcma: 'pcm_alaw',
  pcmu: 'pcm_mulaw',
  g722: 'adpcm_g722',
  aac: 'aac',
  opus: 'opus',
  mp2: 'mp2',
  ac3: 'ac3',
  l16: 'pcm_s16be',
};

const CARRIERS: readonly Carrier[] = ['rtp', 'mpegts', 'mp4', 'matroska'];

// By the FFmpeg at hand: what it writes and reads back as the same codec, it supports.
describe('what FFmpeg puts where', function () {
  let folder: string;

  before(function () {
    if (spawnSync('ffmpeg', ['-version']).status !== 0) unavailable(this, 'FFmpeg is not installed');
    folder = mkdtempSync(join(tmpdir(), 'plumbline-ability-'));
  });

  after(() => {
    if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
  });

  function ffmpeg(...args: readonly string[]): boolean {
    return spawnSync('ffmpeg', ['-nostdin', '-loglevel', 'error', '-y', ...args], { encoding: 'utf8' }).status === 0;
  }

  /** Whether a file of one codec gets into the carrier as a copy, and out of it as the same codec. */
  function carries(carrier: Carrier, source: string, read: string): boolean {
    const target = join(folder, `in.${carrier}`);
    if (carrier === 'rtp') return ffmpeg('-i', source, '-c', 'copy', '-f', 'rtp', 'rtp://127.0.0.1:9');
    if (!ffmpeg('-i', source, '-c', 'copy', '-f', carrier, target)) return false;
    return (
      spawnSync('ffprobe', ['-loglevel', 'error', '-show_entries', 'stream=codec_name', '-of', 'csv=p=0', target], {
        encoding: 'utf8',
      }).stdout.split(/[,\n]/)[0] === read
    );
  }

  for (const [codec, [encoder, read]] of Object.entries(VIDEO)) {
    it(`has ${codec} where it is said to go`, () => {
      const source = join(folder, `${codec}.mkv`);
      const small = [
        '-f',
        'lavfi',
        '-i',
        'testsrc2=size=160x96:rate=10',
        '-t',
        '1',
        '-pix_fmt',
        codec === 'mjpeg' ? 'yuvj420p' : 'yuv420p',
      ];
      const quick = codec === 'av1' ? ['-cpu-used', '8'] : [];
      assert.ok(ffmpeg(...small, '-c:v', encoder, ...quick, source), `${encoder} does not encode`);
      const found = CARRIERS.filter((carrier) => carries(carrier, source, read));
      assert.deepEqual(
        found,
        CARRIERS.filter((carrier) => supports(carrier, 'video', codec)),
      );
    });
  }

  for (const [codec, read] of Object.entries(AUDIO)) {
    it(`has ${codec} where it is said to go, and encodes it`, () => {
      const source = join(folder, `${codec}.nut`);
      const rate = codec === 'pcma' || codec === 'pcmu' ? '8000' : codec === 'g722' ? '16000' : '48000';
      const sound = ['-f', 'lavfi', '-i', `sine=frequency=440:sample_rate=${rate}`, '-t', '1', '-ac', '1'];
      assert.ok(ffmpeg(...sound, '-c:a', ENCODERS[codec] ?? '', source), `${ENCODERS[codec] ?? codec} does not encode`);
      const found = CARRIERS.filter((carrier) => carries(carrier, source, read));
      assert.deepEqual(
        found,
        CARRIERS.filter((carrier) => supports(carrier, 'audio', codec)),
      );
    });
  }
});
