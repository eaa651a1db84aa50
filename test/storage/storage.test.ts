import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import type { Storage, VolumeFigures } from '../../server/src/storage/storage.ts';
import { siteOf } from '../site-of.ts';

const GB = 1e9;
const TB = 1e12;

function storageFrom(text: string): Storage {
  return planOf(siteOf(text)).storage;
}

/** Recordings by bit rate and what else is said of them, on one volume. */
function volumeOf(volume: string, ...recordings: readonly (readonly [bitrate: string, more: string])[]): VolumeFigures {
  const {
    volumes: [figures],
  } = storageFrom(`
streams:
${recordings.map(([bitrate], i) => `  s${i}: {source: cam${i}, transport: rtsp, video: {codec: h264, bitrate: ${bitrate}, keyframe-interval: 2 s}}`).join('\n')}
volumes:
  archive: {host: recorder, ${volume}}
recordings:
${recordings.map(([, more], i) => `  r${i}: {stream: s${i}, volume: archive${more}}`).join('\n')}
`);
  assert.ok(figures !== undefined);
  return figures;
}

// By hand from ISO/IEC 13818-1, in test/standards/transport-stream.test.ts, which holds it against files of FFmpeg: 2
// Mb/s of video at 20 pictures a second are 2,096,265 b/s in a transport stream.
describe('What a recording in a transport stream takes', () => {
  it('is its packets of 188 bytes', () => {
    const bytesPerDay = (ending: string): number | undefined =>
      storageFrom(`
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, frame-rate: 20, bitrate: 2 Mb/s}}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%s.${ending}"}
`).recordings[0]?.bytesPerDay;
    assert.equal(bytesPerDay('ts'), 2_096_265 * 10_800);
    assert.equal(bytesPerDay('mkv'), 2_000_000 * 10_800);
  });
});

// Mb/s × 86 400 s / 8 = × 10.8 GB a day of 10⁹ bytes; derived.
describe('What recordings take', () => {
  for (const [rate, gigabytes] of [
    [1, 10.8],
    [4, 43.2],
    [8, 86.4],
  ] as const) {
    it(`${rate} Mb/s are ${gigabytes} GB a day`, () => {
      assert.equal(volumeOf('capacity: 8 TB', [`${rate} Mb/s`, '']).bytesPerDay, gigabytes * GB);
    });
  }

  it('8 Mb/s kept for 30 d are 2.592 TB', () => {
    assert.equal(volumeOf('capacity: 8 TB', ['8 Mb/s', ', keep: 30 d']).bytesKept, 2.592 * TB);
  });

  it('four cameras of 6 Mb/s kept for 14 d are 3628.8 GB', () => {
    const camera = ['6 Mb/s', ', keep: 14 d'] as const;
    assert.equal(volumeOf('capacity: 8 TB', camera, camera, camera, camera).bytesKept, 3628.8 * GB);
  });

  it('sound is recorded too, and a stream that is carried on has what it carries', () => {
    const { recordings } = storageFrom(`
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s}, audio: {codec: pcma, bitrate: 64 kb/s}}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, audio: {codec: aac, bitrate: 96 kb/s}}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  as-sent: {stream: paddock, volume: archive}
  as-shown: {stream: paddock-live, volume: archive}
`);
    assert.deepEqual(
      recordings.map(({ rate }) => rate.nominal),
      [6_064_000, 6_096_000],
    );
  });

  it('files a day and in all; where keyframes come more seldom than files should end, they count', () => {
    const [minute, second] = volumeOf(
      'capacity: 8 TB',
      ['6 Mb/s', ', segment: 60 s, keep: 14 d'],
      ['6 Mb/s', ', segment: 1 s'],
    ).recordings;
    assert.deepEqual([minute?.filesPerDay, minute?.filesKept], [1440, 20_160]);
    // Cut at keyframes alone: FFmpeg's segment muxer, documented and measured (10 s files where 4 s were asked for
    // and keyframes came every 10 s).
    assert.deepEqual([second?.filesPerDay, second?.filesKept], [43_200, undefined]);
  });

  it('writes a stream at its peak', () => {
    const { writeRate } = volumeOf('capacity: 8 TB', ['8 Mb/s, peak-bitrate: 12 Mb/s', ''], ['4 Mb/s', '']);
    assert.deepEqual(writeRate, { nominal: 1_500_000, peak: 2_000_000 });
  });
});

describe('What a volume holds', () => {
  it('8 TB less a reserve of 5 % are 7.6 TB', () => {
    // The reserve that mke2fs takes where it is not told otherwise: mke2fs(8) -m, read.
    assert.equal(volumeOf('capacity: 8 TB, reserve: 5 %').usableBytes, 7.6 * TB);
  });

  // n disks of s: RAID 5 (n−1)·s, RAID 6 (n−2)·s, RAID 10 n·s/2, a mirror s. What each survives is md(4), read; the
  // formulas are from memory.
  for (const [redundancy, terabytes] of [
    ['none', 32],
    ['mirror', 8],
    ['raid5', 24],
    ['raid6', 16],
    ['raid10', 16],
  ] as const) {
    it(`four disks of 8 TB as ${redundancy} hold ${terabytes} TB`, () => {
      assert.equal(volumeOf(`capacity: 8 TB, disks: 4, redundancy: ${redundancy}`).usableBytes, terabytes * TB);
    });
  }

  it('without a number of disks the capacity is that of the whole', () => {
    assert.equal(volumeOf('capacity: 24 TB, redundancy: raid5').usableBytes, 24 * TB);
  });

  it('counts a TiB as 2⁴⁰ bytes (IEC 80000-13; units(7), read)', () => {
    assert.equal(volumeOf('capacity: 8 TiB').usableBytes, 8 * 2 ** 40);
  });
});

describe('When a volume is full', () => {
  it('7.6 TB at 86.4 GB a day after 87.96 d', () => {
    const { daysUntilFull } = volumeOf('capacity: 8 TB, reserve: 5 %', ['8 Mb/s', '']);
    assert.equal(daysUntilFull?.toFixed(2), '87.96');
  });

  it('never, where what is kept fits: nothing is left to grow', () => {
    const { daysUntilFull, daysUntilFullKept } = volumeOf('capacity: 8 TB', ['8 Mb/s', ', keep: 30 d']);
    assert.equal(daysUntilFull?.toFixed(1), '92.6');
    assert.equal(daysUntilFullKept, undefined);
  });

  it('later, where some of the recordings are deleted meanwhile', () => {
    // 1 TB: both write 86.4 GB a day for 5 d, 864 GB; then one alone has 136 GB left, 1.574 d more.
    const { daysUntilFullKept } = volumeOf('capacity: 1 TB', ['8 Mb/s', ', keep: 5 d'], ['8 Mb/s', ', keep: 30 d']);
    assert.equal(daysUntilFullKept?.toFixed(3), '6.574');
  });

  it('never, where nothing is written', () => {
    const { daysUntilFull, daysUntilFullKept } = volumeOf('capacity: 8 TB');
    assert.deepEqual([daysUntilFull, daysUntilFullKept], [undefined, undefined]);
  });
});
