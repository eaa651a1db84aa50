import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { unavailable } from '../availability.ts';
import {
  FCS,
  frameBytes,
  INTER_PACKET_GAP,
  MAC_HEADER,
  MAX_PAYLOAD,
  maxFrameRate,
  MIN_FRAME,
  PREAMBLE_AND_SFD,
} from '../../server/src/standards/ethernet.ts';
import { IPV4_HEADER, UDP_HEADER } from '../../server/src/standards/internet.ts';
import { RTP_HEADER } from '../../server/src/standards/rtp.ts';

describe('Ethernet (RFC 2544, RFC 5180)', () => {
  // RFC 2544 §9.1 (64, 1518) and RFC 5180 App. A (1522), read.
  it('has frames of 64 to 1518 bytes, 1522 with a tag', () => {
    assert.equal(frameBytes(46, false).withFcs, 64);
    assert.equal(frameBytes(MAX_PAYLOAD, false).withFcs, 1518);
    assert.equal(frameBytes(MAX_PAYLOAD, true).withFcs, 1522);
  });

  it('pads a short packet to the shortest frame, and tags behind that', () => {
    assert.deepEqual(frameBytes(28, false), { withoutFcs: 60, withFcs: 64, line: 84 });
    assert.deepEqual(frameBytes(28, true), { withoutFcs: 64, withFcs: 68, line: 88 });
    fc.assert(
      fc.property(fc.integer({ min: 20, max: MAX_PAYLOAD }), fc.boolean(), (bytes, tagged) => {
        const { withoutFcs, withFcs, line } = frameBytes(bytes, tagged);
        assert.ok(withFcs >= MIN_FRAME && withFcs >= bytes + 18);
        assert.equal(withFcs - withoutFcs, FCS);
        assert.equal(line - withFcs, 20); // RFC 5180 App. A.1, read: 20 bytes beyond the frame
      }),
    );
  });

  it('agrees with the kernel on the sizes of its header', function () {
    const header = '/usr/include/linux/if_ether.h';
    if (!existsSync(header)) unavailable(this, `no ${header}; install the kernel's user-space headers`);
    const text = readFileSync(header, 'utf8');
    const constant = (name: string): number => Number(new RegExp(`#define ${name}\\s+(\\d+)`).exec(text)?.[1]);
    assert.equal(MAC_HEADER, constant('ETH_HLEN'));
    assert.equal(FCS, constant('ETH_FCS_LEN'));
    assert.equal(MAX_PAYLOAD, constant('ETH_DATA_LEN'));
    assert.equal(MIN_FRAME - FCS, constant('ETH_ZLEN'));
  });

  // RFC 5180 App. A.1, read: frames per second at 10 Mb/s, 100 Mb/s, 1 Gb/s and 10 Gb/s. For 9216 bytes at 1 Gb/s the
  // RFC prints 13 534, though its rule, rounding down, gives 13 533.
  for (const [size, rates] of [
    [64, [14_880, 148_809, 1_488_095, 14_880_952]],
    [128, [8445, 84_459, 844_594, 8_445_945]],
    [256, [4528, 45_289, 452_898, 4_528_985]],
    [512, [2349, 23_496, 234_962, 2_349_624]],
    [1518, [812, 8127, 81_274, 812_743]],
    [1522, [810, 8106, 81_063, 810_635]],
    [9216, [135, 1353, 13_533, 135_339]],
  ] as const) {
    it(`carries ${rates.join(', ')} frames/s of ${size} bytes`, () => {
      assert.deepEqual(
        [1e7, 1e8, 1e9, 1e10].map((speed) => maxFrameRate(speed, size)),
        rates,
      );
    });
  }

  // Worked by hand from the headers of RFC 791, RFC 768 and RFC 3550 (read): 7.5 Mb/s of payload.
  for (const [what, payload, headers, tagged, frame, line] of [
    ['RTP in 1400 bytes', 1400, IPV4_HEADER + UDP_HEADER + RTP_HEADER, false, 7.811, 7.918],
    ['the same, tagged', 1400, IPV4_HEADER + UDP_HEADER + RTP_HEADER, true, 7.832, 7.939],
    ['a transport stream in RTP', 1316, IPV4_HEADER + UDP_HEADER + RTP_HEADER, false, 7.831, 7.945],
    ['the same, tagged', 1316, IPV4_HEADER + UDP_HEADER + RTP_HEADER, true, 7.853, 7.967],
    ['a transport stream in UDP', 1316, IPV4_HEADER + UDP_HEADER, false, 7.762, 7.876],
  ] as const) {
    it(`makes ${line} Mb/s on the line of 7.5 Mb/s of ${what}`, () => {
      const bytes = frameBytes(payload + headers, tagged);
      assert.equal(((7.5 * bytes.withFcs) / payload).toFixed(3), frame.toFixed(3));
      assert.equal(((7.5 * bytes.line) / payload).toFixed(3), line.toFixed(3));
    });
  }

  it('counts preamble and gap as 64 and 96 bits', () => {
    // RFC 2544 App. B, read.
    assert.equal(PREAMBLE_AND_SFD * 8, 64);
    assert.equal(INTER_PACKET_GAP * 8, 96);
  });
});
