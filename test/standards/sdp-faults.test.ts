// What RFC 8866 and RFC 4570 forbid in a session description, each as its section has it; read.
import assert from 'node:assert/strict';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import { faultIn } from '../../server/src/standards/sdp-faults.ts';
import { planOfTexts, sampleTexts } from '../make/made.ts';

/** The example of RFC 8866 §5, with the addresses of RFC 4570 §3.2.1. */
const GOOD = [
  'v=0',
  'o=jdoe 3724394400 3724394405 IN IP4 198.51.100.1',
  's=Call to John Smith',
  'i=SDP Offer #1',
  'c=IN IP4 232.3.4.5/127',
  't=0 0',
  'a=source-filter: incl IN IP4 232.3.4.5 192.0.2.10',
  'm=audio 49170 RTP/AVP 0',
  'm=video 51372 RTP/AVP 99',
  'b=AS:66781',
  'a=rtpmap:99 h263-1998/90000',
];

const without = (line: string): string[] => GOOD.filter((each) => each !== line);
const changed = (line: string, to: string): string[] => GOOD.map((each) => (each === line ? to : each));
const FILTER = 'a=source-filter: incl IN IP4 232.3.4.5 192.0.2.10';

describe('session descriptions that must not be announced', () => {
  for (const [why, lines, part] of [
    ['a group without TTL (RFC 8866 §5.7)', changed('c=IN IP4 232.3.4.5/127', 'c=IN IP4 232.3.4.5'), 'no TTL'],
    ['a TTL of one host (§5.7)', changed('c=IN IP4 232.3.4.5/127', 'c=IN IP4 192.0.2.9/127'), 'which only a group has'],
    ['no connection at all (§5.7)', without('c=IN IP4 232.3.4.5/127'), 'has no c= line'],
    ['no time (§5)', without('t=0 0'), 'no t= line'],
    ['an attribute before the time (§5)', [...GOOD.slice(0, 5), FILTER, 't=0 0', ...GOOD.slice(7)], 'comes after a='],
    ['a bandwidth behind the attributes of a medium (§5)', [...without('b=AS:66781'), 'b=AS:66781'], 'comes after a='],
    [
      'a dynamic type that is not mapped (§6.6)',
      without('a=rtpmap:99 h263-1998/90000'),
      'payload type 99 of its video',
    ],
    [
      'a word as payload type (§5.14)',
      changed('m=audio 49170 RTP/AVP 0', 'm=audio 49170 RTP/AVP pcmu'),
      'no payload type',
    ],
    ['a prefix in a filter (RFC 4570 §3)', changed(FILTER, `${FILTER}/24`), 'without a prefix'],
    [
      'a TTL in a filter (RFC 4570 §3)',
      changed(FILTER, FILTER.replace('3.4.5 ', '3.4.5/127 ')),
      'without a prefix or a TTL',
    ],
    [
      'a filter of another group (RFC 4570 §3)',
      changed(FILTER, FILTER.replace('3.4.5 ', '3.4.6 ')),
      'no address of a c= line',
    ],
    ['a filter without source (RFC 4570 §3)', changed(FILTER, FILTER.replace(' 192.0.2.10', '')), 'and sources'],
  ] as const) {
    it(`are those with ${why}`, () => {
      const fault = faultIn(lines.join('\r\n'));
      assert.ok(fault?.includes(part), fault ?? 'no fault');
    });
  }

  it('are not those of the standards, nor those that are made', () => {
    assert.equal(faultIn(GOOD.join('\r\n')), undefined);
    // RFC 8866 §5.9 and §5.10: times, each with its repeats.
    const repeated = ['t=3034423619 3042462419', 'r=604800 3600 0 90000', 't=3725395200 3725398800', 'r=7d 1h 0 25h'];
    assert.equal(faultIn(GOOD.flatMap((line) => (line === 't=0 0' ? repeated : line)).join('\n')), undefined);
    const { files } = sdp.make(planOfTexts(sampleTexts('harrow-lane')));
    assert.ok(files.length > 5);
    for (const { path, text } of files) assert.equal(faultIn(text), undefined, path);
  });
});
