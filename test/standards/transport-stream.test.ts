import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unavailable } from '../availability.ts';
import {
  ADTS_HEADER,
  HEADER,
  multiplexRate,
  PACKET,
  PACKETS_PER_DATAGRAM,
  PAYLOAD,
} from '../../server/src/standards/transport-stream.ts';

describe('MPEG transport stream (ISO/IEC 13818-1, as FFmpeg multiplexes it)', () => {
  // RFC 2250 §2, read: whole packets of 188 bytes; 20 + 8 + 12 + 1316 = 1356 bytes fit 1500, 8 × 188 = 1504 don't.
  it('puts seven packets into a datagram', () => {
    assert.equal(PACKETS_PER_DATAGRAM * PACKET, 1316);
    assert.equal(PAYLOAD + HEADER, 188);
    assert.ok(20 + 8 + 12 + PACKETS_PER_DATAGRAM * PACKET <= 1500);
    assert.ok((PACKETS_PER_DATAGRAM + 1) * PACKET > 1500);
  });

  // By hand from the layout: 2 Mb/s at 20/s. 250 000 B of video, 20 × (6 + 19 + 91.5) B of headers and mean stuffing,
  // 10 × 8 B of clock references make 252 410 B, in 184s 1371.793…; 20 of PAT and PMT, 2 of SDT; × 1504 bit.
  it('adds headers, stuffing, clock references and tables to video', () => {
    assert.equal(multiplexRate({ videoBitsPerSecond: 2_000_000, framesPerSecond: 20, audio: [] }), 2_096_265);
  });

  it('takes 25 frames per second where none are given', () => {
    assert.equal(
      multiplexRate({ videoBitsPerSecond: 4_000_000, audio: [] }),
      multiplexRate({ videoBitsPerSecond: 4_000_000, framesPerSecond: 25, audio: [] }),
    );
  });

  it('carries sound without video', () => {
    const sound = { bitsPerSecond: 256_000, packetsPerSecond: 125 / 3 };
    const rate = multiplexRate({ videoBitsPerSecond: 0, audio: [sound] });
    assert.ok(rate > 256_000 && rate < 320_000, `${rate}`);
  });

  describe('against FFmpeg', () => {
    const seconds = 10;
    let folder: string | undefined;
    const at = (name: string): string => join(folder ?? '', name);
    const ffmpeg = (...args: string[]): void => {
      execFileSync('ffmpeg', ['-v', 'error', '-nostdin', '-y', ...args]);
    };

    before(function () {
      for (const tool of ['ffmpeg', 'ffprobe']) {
        if (spawnSync(tool, ['-version']).status !== 0) unavailable(this, `no ${tool}; install FFmpeg`);
      }
      folder = mkdtempSync(join(tmpdir(), 'transport-stream-'));
      for (const codec of ['aac', 'mp2']) {
        ffmpeg('-f', 'lavfi', '-i', `anoisesrc=r=48000:d=${seconds}`, '-c:a', codec, '-b:a', '96k', at(`${codec}.mp4`));
      }
    });

    after(() => {
      if (folder !== undefined) rmSync(folder, { recursive: true });
    });

    for (const { megabits, frameRate, preset } of [
      { megabits: 0.5, frameRate: 10, preset: 'ultrafast' },
      { megabits: 2, frameRate: 20, preset: 'ultrafast' },
      { megabits: 2, frameRate: 25, preset: 'veryfast' }, // with B-frames, so with decoding times
      { megabits: 6, frameRate: 20, preset: 'ultrafast' },
      { megabits: 6, frameRate: 25, preset: 'ultrafast' },
    ]) {
      it(`agrees within 0.5 % for ${megabits} Mb/s at ${frameRate}/s: alone, with AAC, with MPEG audio`, function () {
        const video = `${megabits}-${frameRate}.mp4`;
        ffmpeg(
          '-f',
          'lavfi',
          '-i',
          `testsrc2=size=640x360:rate=${frameRate}:duration=${seconds},noise=alls=40:allf=t`,
          '-c:v',
          'libx264',
          '-preset',
          preset,
          '-g',
          `${2 * frameRate}`,
          '-b:v',
          `${megabits}M`,
          '-maxrate',
          `${megabits}M`,
          '-bufsize',
          `${megabits}M`,
          at(video),
        );
        const pictures = access(at(video));
        for (const sound of [undefined, 'aac', 'mp2']) {
          const multiplex = `${megabits}-${frameRate}-${sound ?? 'silent'}.ts`;
          const inputs = sound === undefined ? [] : ['-i', at(`${sound}.mp4`)];
          ffmpeg('-i', at(video), ...inputs, '-c', 'copy', '-f', 'mpegts', at(multiplex));
          const units = sound === undefined ? undefined : access(at(`${sound}.mp4`));
          const predicted = multiplexRate({
            videoBitsPerSecond: (pictures.bytes * 8) / seconds,
            framesPerSecond: pictures.count / seconds,
            audio:
              units === undefined
                ? []
                : [
                    {
                      bitsPerSecond: (units.bytes * 8) / seconds,
                      packetsPerSecond: units.count / seconds,
                      framingBytes: sound === 'aac' ? ADTS_HEADER : 0,
                    },
                  ],
          });
          const measured = (statSync(at(multiplex)).size * 8) / seconds;
          const difference = predicted / measured - 1;
          assert.ok(
            Math.abs(difference) < 0.005,
            `${multiplex}: predicted ${predicted} bit/s, ` +
              `FFmpeg wrote ${measured}, ${(difference * 100).toFixed(2)} %`,
          );
        }
      });
    }
  });
});

/** The coded frames in a file with one stream, and their bytes. */
function access(file: string): { count: number; bytes: number } {
  const sizes = execFileSync('ffprobe', ['-v', 'error', '-show_entries', 'packet=size', '-of', 'csv=p=0', file], {
    encoding: 'utf8',
  })
    .split('\n')
    .map((line) => Number.parseInt(line, 10))
    .filter((size) => size > 0);
  return { count: sizes.length, bytes: sizes.reduce((sum, size) => sum + size, 0) };
}
