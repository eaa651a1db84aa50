import assert from 'node:assert/strict';
import { MPDU_OVERHEAD, frameTime, groupAirtime } from '../../server/src/standards/wifi.ts';

/**
 * Held against ns-3 3.37 (Debian's libns3.37), a general network simulator: its durations of frames, and what a cell
 * saturated with group-addressed frames carried. IEEE 802.11 itself was not read.
 */
describe('Wi-Fi', () => {
  it('frames last as long as in ns-3', () => {
    for (const [bytes, rate, microseconds] of [
      [1476, 6e6, 1992],
      [1476, 24e6, 516],
      [32, 24e6, 32],
      [1476, 1e6, 12_000],
      [1476, 11e6, 1266],
    ] as const)
      assert.equal(frameTime(bytes, rate), microseconds, `${bytes} B at ${rate}`);
  });

  it('a cell full of groups carries what ns-3 counted, within 0.7 %, which its beacons take', () => {
    // 1412 bytes of UDP payload in a frame of 1476, without encryption.
    for (const [rate, counted] of [
      [6e6, 5.34],
      [12e6, 10.06],
      [24e6, 17.95],
    ] as const) {
      const megabits = (1412 * 8) / groupAirtime(1476 - MPDU_OVERHEAD, rate);
      assert.ok(megabits / counted > 1 && megabits / counted < 1.007, `${megabits} at ${rate}`);
    }
  });

  it('an encrypted RTP packet of 1400 bytes takes 2126.5 µs at 6 Mb/s, so that 6 Mb/s of video do not fit', () => {
    // By the formulas above: 110.5 µs of waiting, and 504 symbols of 4 µs after 20 µs.
    assert.equal(groupAirtime(1440, 6e6), 2126.5);
    assert.equal(groupAirtime(1440, 1e6), 12_504);
    assert.ok((groupAirtime(1440, 6e6) * 6e6) / (1400 * 8) > 1e6);
  });
});
