import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parseAddress } from '../../server/src/standards/ipv4.ts';
import {
  baseInterval,
  decodeAnnouncement,
  encodeAnnouncement,
  implicitTimeout,
  messageHash,
  nextGap,
} from '../../server/src/standards/sap.ts';

const PAYLOAD = 'v=0\r\no=- 1 1 IN IP4 192.168.20.5\r\ns=paddock-live\r\nt=0 0\r\n';
const SOURCE = parseAddress('192.168.20.5') ?? 0;

describe('SAP (RFC 2974)', () => {
  // §6, read: version 1 in the upper three bits, A R T E C below, length of authentication, hash, source, type, NUL.
  it('writes the header bit for bit', () => {
    const packet = encodeAnnouncement(false, 0x1234, SOURCE, PAYLOAD);
    assert.deepEqual([...packet.subarray(0, 8)], [0x20, 0, 0x12, 0x34, 192, 168, 20, 5]);
    assert.equal(new TextDecoder().decode(packet.subarray(8)), `application/sdp\0${PAYLOAD}`);
    assert.equal(encodeAnnouncement(true, 1, SOURCE, 'o=')[0], 0x24);
  });

  it('reads what it writes', () => {
    for (const deletion of [false, true]) {
      const read = decodeAnnouncement(encodeAnnouncement(deletion, 0xfffe, SOURCE, PAYLOAD));
      assert.deepEqual(read, { deletion, hash: 0xfffe, source: '192.168.20.5', payload: PAYLOAD });
    }
  });

  // §6, read: the type may be left out before a description; an IPv6 source takes 16 bytes; authentication is counted
  // in words.
  it('reads a payload without its type, an IPv6 source, and past authentication', () => {
    const body = new TextEncoder().encode(PAYLOAD);
    const bare = decodeAnnouncement(Uint8Array.of(0x20, 1, 0, 9, 192, 168, 20, 5, 1, 2, 3, 4, ...body));
    assert.deepEqual(bare, { deletion: false, hash: 9, source: '192.168.20.5', payload: PAYLOAD });
    const wide = decodeAnnouncement(
      Uint8Array.of(0x30, 0, 0, 9, 0x20, 1, 0xd, 0xb8, ...new Uint8Array(11), 2, ...body),
    );
    assert.ok(!('unreadable' in wide) && wide.source === '2001:db8:0:0:0:0:0:2' && wide.payload === PAYLOAD);
  });

  for (const [first, sealed] of [
    [0x21, 'compressed'],
    [0x22, 'encrypted'],
  ] as const) {
    it(`does not take ${sealed} for text`, () => {
      assert.deepEqual(decodeAnnouncement(Uint8Array.of(first, 0, 0, 9, 192, 168, 20, 5, 1)), {
        deletion: false,
        hash: 9,
        source: '192.168.20.5',
        payload: { sealed },
      });
    });
  }

  it('reads any bytes or says what is wrong with them', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) =>
        assert.equal(typeof decodeAnnouncement(bytes), 'object'),
      ),
    );
  });

  // §6, read: never 0; another text, another hash; unique among an announcer's own.
  it('takes a hash that is not 0 and not taken', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const hash = messageHash(text);
        assert.ok(hash > 0 && hash < 0x10000);
        assert.notEqual(messageHash(text, new Set([hash])), hash);
      }),
    );
    assert.equal(messageHash(PAYLOAD), messageHash(PAYLOAD));
    assert.notEqual(messageHash(PAYLOAD), messageHash(PAYLOAD.replace('1 1', '1 2')));
  });

  // §3.1, read; the values follow from its formula at 4000 bit/s.
  for (const [count, size, seconds] of [
    [10, 400, 300],
    [300, 500, 300],
    [376, 400, 300.8],
    [1000, 600, 1200],
  ] as const) {
    it(`announces ${count} sessions of ${size} bytes every ${seconds} s`, () =>
      assert.equal(baseInterval(count, size), seconds));
  }

  it('varies the interval by a third each way, and gives a session up after ten or an hour', () => {
    assert.deepEqual([nextGap(300, 0), nextGap(300, 0.5), nextGap(300, 1)], [200, 300, 400]);
    assert.deepEqual([implicitTimeout(300), implicitTimeout(1200)], [3600, 12_000]);
  });
});
