import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  type SessionDescription,
  connectionOf,
  mappingOf,
  readDescription,
  sourcesOf,
  writeDescription,
} from '../../server/src/standards/sdp.ts';
import { anyText } from '../any-text.ts';

/** The example of RFC 8866 §5, from memory. */
const EXAMPLE = [
  'v=0',
  'o=jdoe 3724394400 3724394405 IN IP4 198.51.100.1',
  's=Call to John Smith',
  'i=SDP Offer #1',
  'u=http://www.jdoe.example.com/home.html',
  'e=Jane Doe <jane@jdoe.example.com>',
  'p=+1 617 555-6011',
  'c=IN IP4 198.51.100.1',
  't=0 0',
  'm=audio 49170 RTP/AVP 0',
  'm=audio 49180 RTP/AVP 0',
  'm=video 51372 RTP/AVP 99',
  'c=IN IP6 2001:db8::2',
  'a=rtpmap:99 h263-1998/90000',
  '',
];

const PADDOCK: SessionDescription = {
  origin: { username: '-', sessionId: '17', version: '3', address: '192.168.20.5' },
  name: 'paddock-live',
  connection: { address: '239.192.20.41', ttl: 1 },
  attributes: [{ name: 'source-filter', value: ' incl IN IP4 239.192.20.41 192.168.20.5' }, { name: 'recvonly' }],
  media: [
    {
      medium: 'video',
      port: 5004,
      protocol: 'RTP/AVP',
      formats: ['96'],
      bandwidth: 9258,
      attributes: [{ name: 'rtpmap', value: '96 H264/90000' }],
    },
  ],
};

function read(text: string): SessionDescription {
  const description = readDescription(text);
  if ('unreadable' in description) assert.fail(description.unreadable);
  return description;
}

describe('SDP (RFC 8866)', () => {
  for (const [end, how] of [
    ['\r\n', 'CR LF'],
    ['\n', 'LF alone, as §5 asks'],
  ] as const) {
    it(`reads the example of the standard with lines that end in ${how}`, () => {
      const description = read(EXAMPLE.join(end));
      assert.deepEqual(description.origin, {
        username: 'jdoe',
        sessionId: '3724394400',
        version: '3724394405',
        address: '198.51.100.1',
      });
      assert.equal(description.name, 'Call to John Smith');
      assert.deepEqual(
        description.media.map(({ medium, port }) => `${medium} ${port}`),
        ['audio 49170', 'audio 49180', 'video 51372'],
      );
      const [first, , last] = description.media;
      assert.ok(first !== undefined && last !== undefined);
      assert.equal(connectionOf(description, first)?.address, '198.51.100.1');
      assert.equal(connectionOf(description, last)?.address, '2001:db8::2');
      assert.equal(mappingOf(last, '99'), 'h263-1998/90000');
    });
  }

  // RFC 8866 §5, read: the order of the fields; §5.7: the TTL of IPv4 multicast behind its address.
  it('writes fields in their order, each line with CR LF', () => {
    const text = writeDescription(PADDOCK);
    assert.equal(text.replaceAll('\r\n', '').search(/[\r\n]/), -1);
    assert.deepEqual(
      text.split('\r\n').map((line) => line[0] ?? ''),
      ['v', 'o', 's', 'c', 't', 'a', 'a', 'm', 'b', 'a', ''],
    );
    assert.match(text, /^c=IN IP4 239\.192\.20\.41\/1\r$/m);
  });

  it('reads what it writes', () => assert.deepEqual(read(writeDescription(PADDOCK)), PADDOCK));

  // The example of RFC 4570 §3.2.1, read.
  it('knows the sources that a filter takes', () => {
    const description = {
      ...PADDOCK,
      attributes: [{ name: 'source-filter', value: ' incl IN IP4 232.3.4.5 192.0.2.10' }],
    };
    assert.deepEqual(sourcesOf(description, description.media[0] ?? assert.fail()), ['192.0.2.10']);
  });

  for (const [what, text] of [
    ['an empty text', ''],
    ['another version', 'v=1\r\n'],
    ['no origin', 'v=0\r\ns=x\r\n'],
    ['no name', 'v=0\r\no=- 1 1 IN IP4 192.0.2.1\r\n'],
    ['a port above 65535', 'v=0\r\no=- 1 1 IN IP4 192.0.2.1\r\ns=x\r\nm=video 65536 RTP/AVP 96\r\n'],
  ] as const) {
    it(`says what is wrong with ${what}`, () => assert.ok('unreadable' in readDescription(text)));
  }

  it('reads any text or says what is wrong with it', () => {
    const line = fc.oneof(fc.constantFrom(...EXAMPLE), fc.string(), anyText());
    fc.assert(
      fc.property(fc.array(line), (lines) => {
        assert.equal(typeof readDescription(lines.join('\r\n')), 'object');
      }),
    );
  });

  it('lets no text become a line of its own', () => {
    fc.assert(
      fc.property(anyText(), fc.string(), (name, username) => {
        let text: string;
        try {
          text = writeDescription({ ...PADDOCK, name, origin: { ...PADDOCK.origin, username } });
        } catch (error) {
          assert.ok(error instanceof RangeError);
          return;
        }
        assert.equal(text.split(/[\r\n]+/).length, writeDescription(PADDOCK).split('\r\n').length);
        assert.deepEqual([read(text).name, read(text).origin.username], [name, username]);
      }),
    );
  });
});
