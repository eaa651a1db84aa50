import assert from 'node:assert/strict';
import {
  defaultSampleRate,
  INTERLEAVED_HEADER,
  packetInterval,
  payloadHeader,
  RTP_HEADER,
  rtpPort,
  staticPayloadTypes,
} from '../../server/src/standards/rtp.ts';

describe('RTP (RFC 3550, RFC 3551)', () => {
  it('has a header of 12 bytes, 16 with the interleaving in front', () => {
    assert.equal(RTP_HEADER, 12); // RFC 3550 §5.1, read
    assert.equal(RTP_HEADER + INTERLEAVED_HEADER, 16); // RFC 2326 §10.12, from memory: $, channel, 2 bytes of length
  });

  // RFC 3550 §11, read; 5004 and 5005 are its own example and the pair that RFC 3551 §8 registers.
  for (const [given, rtp, rtcp] of [
    [5004, 5004, 5005],
    [5005, 5004, 5005],
    [49_170, 49_170, 49_171],
  ] as const) {
    it(`takes ${rtp} and ${rtcp} where ${given} was given`, () => assert.deepEqual(rtpPort(given), { rtp, rtcp }));
  }

  // RFC 3551 §6, Tables 4 and 5, read.
  it('knows the static payload types', () => {
    const types = new Map(staticPayloadTypes.map(({ number, name, clockRate }) => [number, `${name}/${clockRate}`]));
    assert.deepEqual(
      [0, 8, 9, 10, 14, 26, 33].map((number) => types.get(number)),
      ['PCMU/8000', 'PCMA/8000', 'G722/8000', 'L16/44100', 'MPA/90000', 'JPEG/90000', 'MP2T/90000'],
    );
    assert.equal(types.size, staticPayloadTypes.length);
    assert.ok(
      [...types.keys()].every((number) => number < 35),
      'the table ends at 34',
    );
  });

  // RFC 3551 §4.2, read: 20 ms by default, so 160 bytes of G.711; RFC 7587 §4.2, from memory, for Opus.
  for (const [codec, samples, rate] of [
    ['pcma', 160, 8000],
    ['pcmu', 160, 8000],
    ['g722', 320, 16_000],
    ['l16', 960, 48_000],
    ['opus', 960, 48_000],
  ] as const) {
    it(`puts 20 ms of ${codec}, ${samples} samples, into a packet`, () => {
      assert.deepEqual(packetInterval(codec), { samples, rate });
      assert.equal(samples / rate, 0.02);
    });
  }

  // Frame sizes from memory (ISO/IEC 14496-3, ISO/IEC 11172-3, ATSC A/52); test/standards/transport-stream.test.ts
  // counts those of AAC and layer II in FFmpeg's output.
  for (const [codec, samples] of [
    ['aac', 1024],
    ['mp2', 1152],
    ['ac3', 1536],
  ] as const) {
    it(`puts one frame of ${codec}, ${samples} samples, into a packet at any rate`, () => {
      assert.deepEqual(packetInterval(codec), { samples, rate: 48_000 });
      assert.deepEqual(packetInterval(codec, 44_100), { samples, rate: 44_100 });
    });
  }

  it('keeps whole samples where 20 ms is not a whole number of them', () => {
    assert.deepEqual(packetInterval('l16', 11_025), { samples: 220, rate: 11_025 });
    assert.deepEqual(packetInterval('l16', 44_100), { samples: 882, rate: 44_100 });
  });

  it('samples at 8 kHz for telephone codecs, 16 kHz for G.722, 48 kHz for others', () => {
    assert.deepEqual((['pcma', 'g722', 'aac'] as const).map(defaultSampleRate), [8000, 16_000, 48_000]);
  });

  // RFC 6184 §5.8 and RFC 7798 §4.4.3, read; RFC 3640 §3.3.6 (sizeLength 13 + indexLength 3 = 16 bits), read.
  it('knows what the payload formats add', () => {
    assert.deepEqual((['h264', 'h265', 'aac', 'pcma'] as const).map(payloadHeader), [2, 3, 4, 0]);
  });
});
