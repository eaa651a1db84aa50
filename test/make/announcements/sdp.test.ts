import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { sdp } from '../../../server/src/make/announcements/sdp.ts';
import { together } from '../../../server/src/make/output.ts';
import { encodeAnnouncement, messageHash } from '../../../server/src/standards/sap.ts';
import { readDescription } from '../../../server/src/standards/sdp.ts';
import { WIRESHARK, captureFile, ipPacket, withTool } from '../../audit/announcements/captures.ts';
import { unavailable } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { CODECS, MORE_CODECS } from './every-codec.ts';

/** A stream of the recorder to one group, with these keys besides. */
function site(keys: string): string {
  return `
devices:
  core: {kind: switch}
  recorder: {kind: server, address: 192.168.20.5}
streams:
  paddock-live: {source: recorder, ${keys}}
`;
}

const GROUP = 'transport: rtp, group: 239.192.20.41, port: 5004';

describe('make sdp', function () {
  it('describes the streams of Harrow Lane that are sent in datagrams, and no others', () => {
    const plan = planOfTexts(sampleTexts('harrow-lane'));
    const made = sdp.make(plan);
    assert.deepEqual(made.refused, []);
    assert.deepEqual(
      made.files.map(({ path }) => path.replace('.sdp', '')),
      sdp.subjects(plan),
    );
    assert.ok(sdp.subjects(plan).includes('gate-office'), 'a copy to one receiver has a description too');
    assert.ok(!sdp.subjects(plan).includes('gate'), 'RTSP describes its own');
  });

  // RFC 8866 §5, RFC 3551 §6, RFC 3640 §4.1, RFC 4570 §3, read; the rates are those of the report, with IP and UDP.
  it('says group, source, ports, payload types and what decoding takes', () => {
    const text = fileOf(sdp.make(planOfTexts(sampleTexts('harrow-lane')), 'paddock-live'), 'paddock-live.sdp');
    assert.deepEqual(text.replace(/^o=.*\r\n/m, '').split('\r\n'), [
      'v=0',
      's=paddock-live',
      'c=IN IP4 239.192.20.41/1',
      't=0 0',
      'a=tool:plumbline make sdp paddock-live, of the site Harrow Lane',
      'a=source-filter: incl IN IP4 239.192.20.41 192.168.20.5',
      'a=recvonly',
      'm=video 5004 RTP/AVP 96',
      'b=AS:9261',
      'a=rtpmap:96 H264/90000',
      'a=fmtp:96 packetization-mode=1',
      'a=framerate:20',
      'm=audio 5006 RTP/AVP 97',
      'b=AS:113',
      'a=rtpmap:97 MPEG4-GENERIC/48000/2',
      'a=fmtp:97 streamtype=5; profile-level-id=41; mode=AAC-hbr; sizeLength=13; indexLength=3; indexDeltaLength=3; config=1190',
      '',
    ]);
  });

  // RFC 8866 §5.2, read: what tells a session from all others stays, its version changes.
  it('keeps the session and changes the version when what is described changes', () => {
    const origin = (keys: string): readonly string[] =>
      /^o=- (\d+) (\d+) IN IP4 192\.168\.20\.5\r$/m
        .exec(fileOf(sdp.make(planOfText(site(keys))), 'paddock-live.sdp'))
        ?.slice(1) ?? [];
    const [session, version] = origin(`${GROUP}, video: {codec: h264}`);
    assert.deepEqual(origin(`${GROUP}, video: {codec: h264}`), [session, version]);
    const [sameSession, otherVersion] = origin(`${GROUP}, video: {codec: h265}`);
    assert.equal(sameSession, session);
    assert.notEqual(otherVersion, version);
  });

  it('tells the port of RTCP where RTP has an odd one (RFC 8866 §5.14)', () => {
    assert.match(
      fileOf(
        sdp.make(planOfText(site('transport: rtp, group: 239.192.20.41, port: 5005, video: {codec: h264}'))),
        'paddock-live.sdp',
      ),
      /^a=rtcp:5006\r$/m,
    );
  });

  it('describes a copy to each receiver in its own folder, where there is no group', () => {
    const made = sdp.make(
      planOfText(`
devices:
  core: {kind: switch, ports: {1-3: {}}}
  recorder: {kind: server, address: 192.168.20.5}
  kitchen-screen: {kind: display, address: 192.168.20.60}
  barn-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: barn-screen}
streams:
  live: {source: recorder, transport: rtp, port: 5004, video: {codec: h264}, receivers: [kitchen-screen, barn-screen]}
`),
    );
    assert.deepEqual(made.refused, []);
    assert.match(fileOf(made, 'kitchen-screen/live.sdp'), /^c=IN IP4 192\.168\.20\.60\r$/m);
    assert.match(fileOf(made, 'barn-screen/live.sdp'), /^c=IN IP4 192\.168\.20\.61\r$/m);
  });

  for (const [keys, at, part] of [
    ['transport: rtp, group: 239.192.20.41, video: {codec: h264}', 'paddock-live', 'has no port yet'],
    [`transport: rtp, port: 5004, group: 192.168.20.7, video: {codec: h264}`, '192.168.20.7', 'is no multicast group'],
    [`${GROUP}, video: {bitrate: 1 Mb/s}`, '{bitrate: 1 Mb/s}', 'the codec of its video'],
    [
      `${GROUP}, audio: {codec: aac, sample-rate: 48 kHz}`,
      '{codec: aac, sample-rate: 48 kHz}',
      'how many channels of its AAC',
    ],
    [
      `${GROUP}, audio: {codec: aac, sample-rate: 47 kHz, channels: 2}`,
      '{codec: aac, sample-rate: 47 kHz, channels: 2}',
      'AAC has no number',
    ],
    [`${GROUP}, video: {codec: mjpeg, size: 2560x1440}`, '2560x1440', 'up to 2040x2040'],
    [GROUP, 'paddock-live', 'neither video nor audio'],
  ] as const) {
    it(`refuses what cannot be described: ${part}`, () => {
      const { files, refused } = sdp.make(planOfText(site(keys)));
      assert.deepEqual(files, []);
      assert.equal(refused.length, 1);
      const [{ at: place, message } = assert.fail()] = refused;
      assert.equal(place.piece.text.slice(place.start, place.end), at);
      assert.ok(message.includes(part), message);
    });
  }

  describe('by tshark', () => {
    before(function () {
      const missing = WIRESHARK.find((tool) => spawnSync(tool, ['--version']).status !== 0);
      if (missing !== undefined) unavailable(this, `${missing} of Wireshark is not installed`);
    });

    /** What tshark complains of in announcements of the descriptions, and the descriptions as it reads them. */
    function readByTshark(texts: readonly string[]): {
      readonly complaints: string;
      readonly names: readonly string[];
      readonly encodings: string;
    } {
      const payloads = texts.map((text) => encodeAnnouncement(false, messageHash(text), 0xc0a81405, text));
      const capture = captureFile(
        'rawip',
        payloads.map((payload, time) => ({ time, bytes: ipPacket({ time, payload }) })),
      );
      const fields = (...names: readonly string[]): string =>
        withTool('tshark', capture, '-r', 'IN', '-T', 'fields', ...names.flatMap((name) => ['-e', name])).out.trim();
      return {
        complaints: withTool('tshark', capture, '-r', 'IN', '-q', '-z', 'expert,warn').out.trim(),
        names: fields('sdp.session_name').split('\n'),
        encodings: fields('sdp.mime.type'),
      };
    }

    it('is read without a warning, with every codec', () => {
      const { files, refused } = together([CODECS, MORE_CODECS].map((text) => sdp.make(planOfText(text))));
      assert.deepEqual(refused, []);
      const { complaints, names, encodings } = readByTshark(files.map(({ text }) => text));
      assert.equal(complaints, '');
      assert.deepEqual(
        names.map((name) => `${name}.sdp`),
        files.map(({ path }) => path),
      );
      for (const name of [
        'H264',
        'H265',
        'VP9',
        'AV1',
        'MPV',
        'JPEG',
        'MPEG4-GENERIC',
        'opus',
        'PCMA',
        'PCMU',
        'G722',
        'L16',
        'MPA',
        'MP2T',
        'ac3',
      ])
        assert.ok(encodings.includes(name), name);
    });

    it('is read without a warning whatever the site and the stream say', () => {
      const texts = fc
        .sample(fc.tuple(hostileText, hostileText), { numRuns: 100, seed: 8866 })
        .map(([name, description]) =>
          fileOf(
            sdp.make(
              planOfData({
                site: { name },
                devices: { recorder: { kind: 'server', address: '192.168.20.5' } },
                streams: {
                  live: {
                    source: 'recorder',
                    transport: 'rtp',
                    group: '239.192.20.41',
                    port: 5004,
                    description,
                    video: { codec: 'h264' },
                  },
                },
              }),
            ),
            'live.sdp',
          ),
        );
      const { complaints, names } = readByTshark(texts);
      assert.equal(complaints, '');
      assert.deepEqual(
        names,
        texts.map(() => 'live'),
      );
    });
  });

  it('puts no hostile text anywhere but into the line that it is for', () => {
    fc.assert(
      fc.property(hostileText, hostileText, (name, description) => {
        const plan = planOfData({
          site: { name },
          devices: { recorder: { kind: 'server', address: '192.168.20.5' } },
          streams: {
            live: {
              source: 'recorder',
              transport: 'rtp',
              group: '239.192.20.41',
              port: 5004,
              description,
              video: { codec: 'h264' },
            },
          },
        });
        const text = fileOf(sdp.make(plan), 'live.sdp');
        const lines = text.split(/\r\n|[\r\n\u2028\u2029\u0085]/);
        assert.deepEqual(
          lines.filter((line) => !line.startsWith('i=')).map((line) => line.slice(0, 2)),
          ['v=', 'o=', 's=', 'c=', 't=', 'a=', 'a=', 'a=', 'm=', 'a=', 'a=', ''],
        );
        assert.doesNotMatch(text.replaceAll('\r\n', ''), /[\0-\u001f\u007f-\u009f\u202a-\u202e]/);
        assert.ok(!('unreadable' in readDescription(text)));
        assert.ok(new TextEncoder().encode(text).length < 1000, 'small enough to be announced (RFC 2974 §6)');
      }),
    );
  });
});
