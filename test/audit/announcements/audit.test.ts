// Captures over hours, which a real network has no time for; test/lab/announce.test.ts takes them from a real
// announcer.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { auditAnnouncements } from '../../../server/src/audit/announcements/audit.ts';
import { Heard } from '../../../server/src/audit/announcements/heard.ts';
import type { Audited } from '../../../server/src/audit/audited.ts';
import { sdp } from '../../../server/src/make/announcements/sdp.ts';
import { parseAddress } from '../../../server/src/standards/ipv4.ts';
import { SAP_PACE, encodeAnnouncement, messageHash, nextGap } from '../../../server/src/standards/sap.ts';
import { unavailable } from '../../availability.ts';
import { hostileText } from '../../make/hostile.ts';
import { fileOf, planOfTexts, sampleTexts } from '../../make/made.ts';
import { type Sent, captureFile, inFrame, ipPacket } from './captures.ts';

const plan = planOfTexts(sampleTexts('harrow-lane'));
const made = sdp.make(plan);
/** A copy to one receiver has a description too, and is announced to nobody. */
const NAMES = made.files
  .map(({ path }) => path.replace('.sdp', ''))
  .filter((name) => plan.site.streamByName.get(name)?.group !== undefined);
const START = 1_772_366_400;

function description(name: string): string {
  return fileOf(made, `${name}.sdp`);
}

interface Timed {
  readonly at: number;
  readonly text: string;
  readonly deletion?: boolean;
  readonly from?: string;
  readonly on?: readonly number[];
}

/** Announcements of a text for so many seconds, at times as RFC 2974 §3.1 sets them. */
function announced(
  text: string,
  seconds: number,
  how: Omit<Timed, 'at' | 'text'> & { readonly start?: number } = {},
): Timed[] {
  const times: Timed[] = [];
  // Unlike from one session to the next, and the same each time.
  let step = text.length;
  for (let at = how.start ?? 0; at < seconds; at += nextGap(300, (step++ % 11) / 10)) times.push({ at, text, ...how });
  return times;
}

function packet({ text, deletion = false, from = '192.168.20.5' }: Timed): Uint8Array {
  return encodeAnnouncement(
    deletion,
    messageHash(text),
    parseAddress(from) ?? 0,
    deletion ? `${/^o=.*$/m.exec(text)?.[0]}\r\n` : text,
  );
}

function audit(timed: readonly Timed[], more: readonly Sent[] = []): Audited {
  const sent = [
    ...timed.map((each): Sent => ({
      time: START + each.at,
      payload: packet(each),
      ...(each.on === undefined ? {} : { destination: each.on }),
    })),
    ...more,
  ];
  const frames = sent
    .sort((a, b) => a.time - b.time)
    .map((each) => ({ time: each.time, bytes: inFrame('ether', ipPacket(each)) }));
  const heard = new Heard();
  heard.push(captureFile('ether', frames));
  return auditAnnouncements(plan, heard, heard.end(), SAP_PACE);
}

function told({ found }: Audited): string[] {
  return found.map(({ rule, message }) => `${rule.id}: ${message}`);
}

const HOUR = 3600;
const allBut = (...names: readonly string[]): Timed[] =>
  NAMES.filter((name) => !names.includes(name)).flatMap((name) => announced(description(name), HOUR));

describe('audit of announcements', function () {
  before(function () {
    if (spawnSync('text2pcap', ['--version']).status !== 0)
      unavailable(this, 'text2pcap of Wireshark is not installed');
  });

  it('finds nothing in an hour as it should be', () => {
    const audited = audit(allBut());
    assert.deepEqual(told(audited), []);
    assert.match(audited.summary.join('\n'), /^\d+ packets of announcements of 10 sessions by 1 announcer in /);
  });

  it('says of a short capture that it shows too little', () => {
    const audited = audit(NAMES.slice(1).flatMap((name) => announced(description(name), 250)));
    assert.deepEqual(told(audited), []);
    assert.match(
      audited.summary.join('\n'),
      /announcements may be 6 min 49 s apart: that it has none of gate-live says nothing/,
    );
  });

  it('finds a stream that is not announced', () => {
    assert.deepEqual(
      told(audit(allBut('tv-two'))).map((line) => line.slice(0, 48)),
      ['stream-not-announced: tv-two was not announced i'],
    );
  });

  it('finds an announcer that has stopped, and announcements that were lost', () => {
    const stopped = [...allBut('tv-two'), ...announced(description('tv-two'), 1500)];
    assert.match(
      told(audit(stopped)).join('\n'),
      /^announced-too-rarely: tv-two was not announced for \d+ min; it should be at least every 6 min 49 s\.$/,
    );
    const lost = announced(description('tv-two'), HOUR).filter((_, index) => index < 4 || index > 6);
    assert.match(told(audit([...allBut('tv-two'), ...lost])).join('\n'), /^announced-too-rarely: tv-two/);
  });

  it('finds announcements that are too frequent, and forgives an announcer that was started again', () => {
    const every = (gap: number): Timed[] =>
      Array.from({ length: HOUR / gap }, (_, index) => ({ at: index * gap, text: description('tv-two') }));
    assert.match(
      told(audit([...allBut('tv-two'), ...every(60)])).join('\n'),
      /^announced-too-often: tv-two was announced after 1 min and after 1 min; it should be 3 min 15 s at least\.$/,
    );
    assert.deepEqual(told(audit([...allBut(), { at: 1700, text: description('tv-two') }])), []);
  });

  it('takes a modified description for the same session', () => {
    const modified = description('tv-two').replace(/^(o=- \d+) \d+/m, '$1 4004597690');
    const both = [...announced(description('tv-two'), 1000), ...announced(modified, HOUR, { start: 1010 })];
    assert.deepEqual(told(audit([...allBut('tv-two'), ...both])), []);
  });

  it('finds a stream that was withdrawn, unless it is announced again', () => {
    const text = description('tv-two');
    const until = [...announced(text, 1000), { at: 1100, text, deletion: true }];
    assert.deepEqual(told(audit([...allBut('tv-two'), ...until])), [
      'announcement-withdrawn: tv-two was withdrawn by 192.168.20.5 at 2026-03-01 12:18:20 UTC, and not announced again. Start its announcer, or take it out.',
    ]);
    assert.deepEqual(told(audit([...allBut('tv-two'), ...until, ...announced(text, HOUR, { start: 2500 })])), []);
  });

  it('finds a stream that two hosts announce', () => {
    const twice = announced(description('tv-two'), HOUR, { from: '192.168.20.9' });
    assert.deepEqual(told(audit([...allBut(), ...twice])), [
      'announced-twice: tv-two is announced 2 times: tv-two by 192.168.20.5 and tv-two by 192.168.20.9. End all but one.',
    ]);
  });

  // RFC 2974 §3 with RFC 2365 §6.2, read: 239.192.0.0/14 is announced on its highest address.
  it('finds a stream that is announced on the group of another scope', () => {
    const elsewhere = announced(description('tv-two'), HOUR, { on: [224, 2, 127, 254] });
    assert.deepEqual(told(audit([...allBut('tv-two'), ...elsewhere])), [
      'announced-elsewhere: tv-two is announced on 224.2.127.254; sessions of the scope of 239.192.30.2 are on 239.195.255.255.',
    ]);
  });

  for (const [what, changed, message] of [
    [
      'another name and number, by its group',
      (text: string) => text.replace(/^o=- \d+/m, 'o=- 1').replace('s=tv-two', 's=news'),
      undefined,
    ],
    ['names of codecs in small letters, which are the same', (text: string) => text.replace('MP2T', 'mp2t'), undefined],
    ['no source, so that any is taken', (text: string) => text.replace(/^a=source-filter.*\r\n/m, ''), undefined],
    [
      'another source',
      (text: string) => text.replace('239.192.30.2 192.168.20.9', '239.192.30.2 192.168.20.8'),
      'source 192.168.20.8 instead of 192.168.20.9',
    ],
    ['no rtpmap, where its type has a fixed number', (text: string) => text.replace(/^a=rtpmap.*\r\n/m, ''), undefined],
    ['video besides', (text: string) => `${text}m=video 5008 RTP/AVP 26\r\n`, 'video besides'],
  ] as const) {
    it(`knows a stream by ${what}`, () => {
      const said = announced(changed(description('tv-two')), HOUR);
      assert.deepEqual(
        told(audit([...allBut('tv-two'), ...said])),
        message === undefined ? [] : [`announced-otherwise: tv-two is announced by 192.168.20.5 with ${message}.`],
      );
    });
  }

  it('reports packets that it cannot read', () => {
    const bytes = (...numbers: readonly number[]): Sent => ({ time: START + 5, payload: Uint8Array.from(numbers) });
    const { found, summary } = audit(allBut(), [
      bytes(1, 2, 3),
      bytes(0x21, 0, 0, 1, 192, 168, 20, 5, 0x78),
      bytes(0x20, 0, 0, 1, 192, 168, 20, 5, ...new TextEncoder().encode('v=0\r\nx')),
    ]);
    assert.deepEqual(found, []);
    assert.deepEqual(summary.slice(1), [
      '1 packet could not be read: they are no announcements.',
      '1 packet could not be read: they are compressed.',
      '1 packet could not be read: of one, it has a line that is no field.',
    ]);
  });

  it('is silenced by what the site accepts', () => {
    const texts = sampleTexts('harrow-lane');
    const accepting = planOfTexts({
      ...texts,
      'accept.site.yaml':
        'lint:\n  accept:\n    - {rule: stream-not-announced, at: tv-two, because: the tuner announces it elsewhere}\n',
    });
    const heard = new Heard();
    heard.push(
      captureFile(
        'ether',
        allBut('tv-two')
          .sort((a, b) => a.at - b.at)
          .map((each) => ({
            time: START + each.at,
            bytes: inFrame('ether', ipPacket({ time: 0, payload: packet(each) })),
          })),
      ),
    );
    assert.deepEqual(told(auditAnnouncements(accepting, heard, heard.end(), SAP_PACE)), []);
  });

  it('takes whatever is announced without an error, and shows it as one line', () => {
    const line = fc.oneof(
      hostileText,
      fc.constantFrom(
        'v=0',
        'o=- 1 1 IN IP4 192.168.20.5',
        's=tv-two',
        'c=IN IP4 239.192.30.2/1',
        'm=video 5004 RTP/AVP 33',
        'm=audio 1 x 999',
        'a=rtpmap:33 MP2T/90000',
        'a=source-filter: incl IN IP4 * 1',
      ),
    );
    const payload = fc.oneof(
      fc.uint8Array({ maxLength: 80 }),
      fc
        .array(line)
        .map((lines) =>
          encodeAnnouncement(lines.length % 2 === 1, 7, 1, `v=0\r\no=- 1 1 IN IP4 1.2.3.4\r\n${lines.join('\r\n')}`),
        ),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(5000), payload), { minLength: 1 }), (sent) => {
        const frames = sent.map(([time, bytes]) => ({
          linkType: 101,
          time: time * 1000,
          bytes: ipPacket({ time: 0, payload: bytes }),
          length: 0,
        }));
        const heard = new Heard();
        heard.push(rawCapture(frames));
        const { found, summary } = auditAnnouncements(plan, heard, heard.end(), SAP_PACE);
        assert.equal(heard.packets, sent.length);
        for (const text of [...found.map(({ message }) => message), ...summary])
          assert.doesNotMatch(text, /[\0-\u001f\u007f-\u009f\u2028\u2029\u202e]/);
      }),
    );
  });
});

/** A classic capture file of raw IP, as text2pcap would write it, without the time that takes. */
function rawCapture(frames: readonly { readonly time: number; readonly bytes: Uint8Array }[]): Uint8Array {
  const words = (...numbers: readonly number[]): Uint8Array => new Uint8Array(Uint32Array.from(numbers).buffer);
  const parts = [
    words(0xa1b2c3d4, 0x00040002, 0, 0, 262_144, 101),
    ...frames.flatMap(({ time, bytes }) => [words(time / 1000, 0, bytes.length, bytes.length), bytes]),
  ];
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}
