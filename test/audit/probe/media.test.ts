/** Media that FFmpeg makes and ffprobe looks at, against what a site declares: each fault planted, and none. */

import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { auditProbe } from '../../../server/src/audit/probe/audit.ts';
import { readProbe } from '../../../server/src/audit/probe/ffprobe.ts';
import type { Audited } from '../../../server/src/audit/audited.ts';
import { SiteFolder } from '../../../server/src/site/folder.ts';
import { unavailable } from '../../availability.ts';
import { run } from '../../lab/run.ts';
import { edited, folderOf, foundIn } from '../../site.ts';
import { told } from '../counters/counted.ts';

const FILE = 'harrow-lane.site.yaml';

/** The bit rates are those that the encoder is told, which it keeps to within some per cent. */
const SITE = `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31}
streams:
  gate:
    source: gate-cam
    transport: rtsp
    port: 554
    video: {codec: h264, size: 640x360, frame-rate: 20, bitrate: 1 Mb/s, peak-bitrate: 1.5 Mb/s, keyframe-interval: 2 s}
    audio: {codec: pcma, bitrate: 64 kb/s, sample-rate: 8 kHz, channels: 1}
  gate-live: {source: recorder, carries: gate, transport: rtp, port: 5004, group: 239.192.20.31, audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 kHz, channels: 2}}
  ntsc: {source: gate-cam, transport: rtsp, port: 8554, video: {codec: h264, size: 640x360, frame-rate: 29.97, keyframe-interval: 2 s}}
  silent: {source: gate-cam, transport: rtsp, port: 9554, video: {codec: h264}}
`;

interface Wishes {
  readonly codec?: string;
  readonly size?: string;
  readonly rate?: string;
  /** Pictures. */
  readonly gop?: number;
  readonly bits?: number;
  readonly audio?: readonly string[];
  readonly form?: string;
}

const ALAW = ['-c:a', 'pcm_alaw', '-ar', '8000', '-ac', '1'];
const AAC = ['-c:a', 'aac', '-b:a', '96k', '-ar', '48000', '-ac', '2'];

describe('A probe of real media', function () {
  let folder: string;

  before(async function () {
    for (const tool of ['ffmpeg', 'ffprobe']) {
      await run(tool, ['-version']).catch(() => unavailable(this, `${tool} is not installed`));
    }
    folder = mkdtempSync(join(tmpdir(), 'plumbline-probe-'));
  });
  after(() => {
    if (folder !== undefined) rmSync(folder, { recursive: true });
  });

  /** Twelve seconds of noise, in which much moves, so that the encoder needs its bit rate. */
  async function probed(
    { codec = 'libx264', size = '640x360', rate = '20', gop = 40, bits = 1e6, audio = ALAW, form = 'mkv' }: Wishes,
    ...more: string[]
  ): Promise<string> {
    const path = join(folder, `media.${form}`);
    const [source, ...sound] =
      audio.length === 0 ? [[], '-an'] : [['-f', 'lavfi', '-i', 'anoisesrc=r=48000:a=0.3'], ...audio];
    await run('ffmpeg', [
      '-y',
      '-loglevel',
      'error',
      '-f',
      'lavfi',
      '-i',
      `testsrc2=size=${size}:rate=${rate},noise=alls=30:allf=t`,
      ...source,
      '-c:v',
      codec,
      ...(codec === 'libx264' ? ['-preset', 'ultrafast', '-sc_threshold', '0', '-keyint_min', String(gop)] : []),
      '-g',
      String(gop),
      '-bf',
      '0',
      '-b:v',
      String(bits),
      '-maxrate',
      String(bits),
      '-bufsize',
      String(bits / 2),
      '-pix_fmt',
      'yuv420p',
      ...sound,
      '-t',
      '12',
      path,
    ]);
    return run('ffprobe', [
      '-v',
      'error',
      '-read_intervals',
      '%+60',
      '-show_streams',
      '-show_format',
      ...(more.length > 0 ? more : ['-show_packets']),
      '-of',
      'json',
      path,
    ]);
  }

  function audited(json: string, stream = 'gate'): Audited {
    return auditProbe(folderOf({ [FILE]: SITE }).site(), readProbe(json), stream, 1000);
  }

  /** What the first fix of every finding makes of the site; nothing is found of it any more. */
  function isMended(json: string, { found }: Audited, stream = 'gate'): boolean {
    const texts = edited(
      { [FILE]: SITE },
      found.flatMap(({ fixes }) => fixes?.()[0]?.edits ?? []),
    );
    const site = new SiteFolder();
    site.set(FILE, texts[FILE] ?? '');
    return auditProbe(site.site(), readProbe(json), stream, 1000).found.length === 0;
  }

  /** The words that a finding is at. */
  function places({ found }: Audited): string[] {
    return found.map((one) => {
      const { line, start, end } = foundIn(SITE, one);
      return (SITE.split('\n')[line] ?? '').slice(start, end);
    });
  }

  it('finds nothing where it is as declared, in packets, in frames, and in both', async () => {
    for (const more of [['-show_packets'], ['-show_frames'], ['-show_packets', '-show_frames']]) {
      const { found, summary } = audited(await probed({}, ...more));
      assert.deepEqual(
        found.map(({ message }) => message),
        [],
      );
      assert.match(
        summary[0] ?? '',
        /^gate: video h264, 640x360, 20 pictures\/s, a keyframe every 2 s, [\d.]+ (Mb|kb)\/s, over 11\.95 s; audio pcma, 8 kHz, 1 channel, 64 kb\/s/,
      );
    }
  });

  it('finds nothing in an MP4 file and in a transport stream', async () => {
    const audio = ['-c:a', 'mp2', '-b:a', '192k', '-ar', '48000', '-ac', '2'];
    assert.deepEqual(told(audited(await probed({ form: 'ts', audio: [] }), 'silent')), []);
    assert.deepEqual(told(audited(await probed({ form: 'mp4', audio: AAC }), 'gate-live')), []);
    assert.deepEqual(told(audited(await probed({ form: 'ts', audio }), 'silent')).length, 1);
  });

  it('knows 30000/1001 pictures per second as 29.97', async () => {
    assert.deepEqual(told(audited(await probed({ rate: '30000/1001', gop: 60, audio: [] }), 'ntsc')), []);
  });

  for (const [title, wishes, expected, place] of [
    [
      'another codec',
      { codec: 'mpeg2video', rate: '25', gop: 50 },
      [
        /^warning codec-differs: gate is encoded as mpeg2, not as h264\. /,
        /^warning frame-rate-differs: gate has 25 pictures per second, not 20\./,
      ],
      ['h264', '20'],
    ],
    [
      'another size',
      { size: '480x272' },
      [/^warning size-differs: gate has pictures of 480x272, not 640x360\. Correct the encoder, or the site\.$/],
      ['640x360'],
    ],
    [
      'fewer pictures',
      { rate: '15', gop: 30 },
      [/^warning frame-rate-differs: gate has 15 pictures per second, not 20\./],
      ['20'],
    ],
    [
      'a rate that is no whole number',
      { rate: '24000/1001', gop: 48 },
      [/^warning frame-rate-differs: gate has 23\.98 pictures per second, not 20\./],
      ['20'],
    ],
    [
      'keyframes further apart',
      { gop: 80 },
      [/^warning keyframe-interval-differs: gate has a keyframe every 4 s, not every 2 s\./],
      ['2 s'],
    ],
    [
      'keyframes closer together',
      { gop: 10 },
      [/^warning keyframe-interval-differs: gate has a keyframe every 500 ms, not every 2 s\./],
      ['2 s'],
    ],
    [
      'a single keyframe',
      { gop: 1000 },
      [/^warning keyframe-interval-differs: gate had one keyframe in 11\.95 s, and not one every 2 s\./],
      ['2 s'],
    ],
    [
      'twice the bit rate',
      { bits: 2e6 },
      [
        /^warning bitrate-differs: gate sends [12][.\d]* Mb\/s of video on average, .* more than 1 Mb\/s\./,
        /^warning peak-bitrate-exceeded: gate sends [12][.\d]* Mb\/s of video in its busiest 2 s, more than 1\.5 Mb\/s\./,
      ],
      ['1 Mb/s', '1.5 Mb/s'],
    ],
    [
      'half the bit rate',
      { bits: 5e5 },
      [/^information bitrate-differs: gate sends [\d.]+ kb\/s of video on average, .* less than 1 Mb\/s\./],
      ['1 Mb/s'],
    ],
    [
      'other audio',
      { audio: AAC },
      [
        /^warning codec-differs: gate is encoded as aac, not as pcma/,
        /^warning sample-rate-differs: gate has 48 kHz of audio, not 8 kHz/,
        /^warning channels-differ: gate has 2 channels of audio, not 1/,
        /^warning bitrate-differs: gate sends [\d.]+ kb\/s of audio/,
      ],
      ['pcma', '8 kHz', '1', '64 kb/s'],
    ],
  ] as const) {
    it(`finds ${title}, at the key that says otherwise, with a fix that declares what was measured`, async () => {
      const json = await probed(wishes);
      const found = audited(json);
      const messages = told(found);
      assert.equal(messages.length, expected.length, messages.join('\n'));
      expected.forEach((pattern, index) => assert.match(messages[index] ?? '', pattern));
      assert.deepEqual(places(found), place);
      if (title !== 'a single keyframe') assert.ok(isMended(json, found));
    });
  }

  it('finds what is missing, and what is not declared', async () => {
    const found = audited(await probed({ audio: [] }));
    assert.deepEqual(told(found), [
      'warning media-missing: gate has no audio, although it is declared to. Turn it on at its source, or take it out of the site.',
    ]);
    assert.deepEqual(places(found), ['audio']);
    const more = audited(await probed({}), 'silent');
    assert.match(
      told(more).join('\n'),
      /^warning media-undeclared: silent has audio \(pcma, 8 kHz\) that the site does not declare\. Turn it off/,
    );
    assert.deepEqual(places(more), ['silent']);
  });

  it('reports a stream that carries another at the one that declares it', async () => {
    const json = await probed({ gop: 80, audio: AAC });
    const found = audited(json, 'gate-live');
    assert.deepEqual(told(found), [
      'warning keyframe-interval-differs: gate-live has a keyframe every 4 s, not every 2 s, as gate declares, which it carries. Correct the encoder, or the site.',
    ]);
    assert.deepEqual(places(found), ['2 s']);
    assert.ok(isMended(json, found, 'gate-live'));
  });

  it('says nothing of what ffprobe was not asked for', async () => {
    const { found, summary } = audited(await probed({ gop: 80, bits: 2e6 }, '-hide_banner'));
    assert.deepEqual(
      found.map(({ rule }) => rule.id),
      [],
    );
    assert.match(
      summary[0] ?? '',
      /^gate: video h264, 640x360, 20 pictures\/s; audio pcma, 8 kHz, 1 channel, 64 kb\/s\.$/,
    );
  });
});
