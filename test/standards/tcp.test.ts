import assert from 'node:assert/strict';
import { frameBytes } from '../../server/src/standards/ethernet.ts';
import {
  ACK_EVERY,
  ACK_FRAME_WITHOUT_FCS,
  HEADERS,
  MAXIMUM_SEGMENT,
  TIMESTAMP_OPTION,
} from '../../server/src/standards/tcp.ts';

describe('TCP (RFC 9293, RFC 7323)', () => {
  // RFC 6691 §2 (from memory): 1460 without options, which the segment loses to the options that it carries.
  it('puts 1448 bytes into a segment over Ethernet', () => {
    assert.equal(MAXIMUM_SEGMENT, 1448);
    assert.equal(MAXIMUM_SEGMENT + TIMESTAMP_OPTION, 1460);
    assert.equal(frameBytes(MAXIMUM_SEGMENT + HEADERS, false).withFcs, 1518); // longest frame, RFC 2544 §9.1, read
  });

  // 14 + 20 + 20 + 12, as packet captures show it; it needs no padding.
  it('acknowledges every second segment with a frame of 66 bytes before FCS', () => {
    assert.equal(ACK_EVERY, 2); // RFC 1122 §4.2.3.2, RFC 5681 §4.2 (read)
    assert.equal(ACK_FRAME_WITHOUT_FCS, 66);
    assert.equal(frameBytes(HEADERS, false).withoutFcs, ACK_FRAME_WITHOUT_FCS);
  });

  // By hand: 70 bytes + 20 of preamble and gap for two frames of 1538 on the line.
  it('sends back 2.9 % of what came', () => {
    const back = frameBytes(HEADERS, false).line;
    const forth = ACK_EVERY * frameBytes(MAXIMUM_SEGMENT + HEADERS, false).line;
    assert.equal(back, 90);
    assert.equal(forth, 3076);
    assert.equal((back / forth).toFixed(3), '0.029');
  });
});
