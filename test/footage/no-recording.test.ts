// Files named like a recording that are none: no file that they name is opened, and the sidecar attests nothing.
import assert from 'node:assert/strict';
import { readdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { plumblineHere } from '../cli/run.ts';
import { H264, Recordings, ffmpeg, hasFrames, needsFfmpeg, numbersOf, range } from './recording.ts';

const START = Date.UTC(2026, 10, 20, 13);
const at = (seconds: number): string => new Date(START + seconds * 1000).toISOString();

/** Texts that FFmpeg takes for formats, whatever the file is called, and follows to another file. */
const LISTS: Readonly<Record<string, (film: string) => string>> = {
  // RFC 8216, 4.
  hls: (film) => `#EXTM3U\n#EXT-X-VERSION:3\n#EXT-X-TARGETDURATION:4\n#EXTINF:4,\n${film}\n#EXT-X-ENDLIST\n`,
  // FFmpeg's manual of formats, concat.
  concat: (film) => `ffconcat version 1.0\nfile '${basename(film)}'\n`,
  // ISO/IEC 23009-1, 5.
  dash: (film) => `<?xml version="1.0"?>
<MPD xmlns="urn:mpeg:dash:schema:mpd:2011" profiles="urn:mpeg:dash:profile:isoff-on-demand:2011" type="static" mediaPresentationDuration="PT4S">
<Period><AdaptationSet mimeType="video/mp4"><Representation id="1" bandwidth="1000"><BaseURL>${film}</BaseURL>
<SegmentBase/></Representation></AdaptationSet></Period></MPD>\n`,
  // RFC 8866, 5.
  sdp: () => 'v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=video 9 RTP/AVP 96\n',
};

describe('plumbline footage, of what is no recording', function () {
  let recordings: Recordings;
  let paths: readonly string[];
  before(function () {
    needsFfmpeg(this);
  });
  afterEach(() => recordings.remove());

  const pattern = (ending: string): string => `gate/%Y-%m-%d_%H-%M-%S%z.${ending}`;
  const record = (ending: string): void => {
    recordings = new Recordings({ gate: pattern(ending) });
    paths = recordings.record(pattern(ending), START, { video: H264, ending, seconds: 8, segment: 4 });
  };
  const file = (index: number): string => join(recordings.root, paths[index] ?? '');
  const get = (out: string, seconds = 8): ReturnType<Recordings['footageHere']> => {
    const words = ['--recording', 'gate', '--from', at(0), '--to', at(seconds), '--out', join(recordings.out, out)];
    return recordings.footageHere(...words);
  };
  /** A film that is none of the recordings; FFmpeg's HLS takes transport streams by their names alone. */
  const film = (folder = join(recordings.root, 'gate')): string => {
    const other = join(folder, 'private.ts');
    ffmpeg('-f', 'lavfi', '-i', 'testsrc2=s=192x64:r=25', '-t', '4', ...H264, other);
    return other;
  };

  for (const ending of ['mp4', 'mkv', 'ts'])
    for (const [format, text] of Object.entries(LISTS))
      it(`a list (${format}) that is named .${ending} is not followed, alone or among others`, async () => {
        record(ending);
        writeFileSync(file(1), text(film()));
        const { status, out } = await get('x.mkv');
        assert.equal(status, 1, out);
        hasFrames(numbersOf(join(recordings.out, 'x.mkv')), range(0, 100));
        const { outputs, 'left-out': leftOut } = recordings.sidecar('x.mkv');
        assert.deepEqual(
          outputs.flatMap(({ segments }) => segments.map(({ path }) => path)),
          [paths[0]],
        );
        assert.deepEqual(
          leftOut.map(({ path }) => path),
          [paths[1]],
        );
        // A demuxer that this FFmpeg does not have tells nothing of what it is.
        assert.match(
          String(leftOut[0]?.reason),
          /it is not opened, nor any file that it names$|there is no video in it/,
        );
        rmSync(file(0));
        assert.equal((await get('y.mkv')).status, 2);
        assert.deepEqual(readdirSync(recordings.out).sort(), ['x.mkv', 'x.mkv.json']);
      });

  it('says what a file is that is not what its name declares, and joins what is', async () => {
    record('mp4');
    ffmpeg('-i', file(1), '-c', 'copy', '-f', 'matroska', join(recordings.folder, 'other'));
    renameSync(join(recordings.folder, 'other'), file(1));
    const { status, out } = await get('x.mp4');
    assert.equal(status, 1);
    assert.match(
      out,
      /it is not the container that \.mp4 declares, but what FFmpeg calls matroska,webm: it is not opened/,
    );
    hasFrames(numbersOf(join(recordings.out, 'x.mp4')), range(0, 100));
  });

  it('a link to a file outside of the recordings is left out', async () => {
    record('ts');
    const outside = film(recordings.folder);
    rmSync(file(1));
    symlinkSync(outside, file(1));
    const { status, out } = await get('x.ts');
    assert.equal(status, 1);
    assert.match(out, /it is a link to a file outside of the recordings/);
    hasFrames(numbersOf(join(recordings.out, 'x.ts')), range(0, 100));
  });

  it('an audit that looks into files takes a list for damaged, and follows it no further', async () => {
    record('ts');
    writeFileSync(file(0), LISTS['hls']?.(film()) ?? '');
    const { out } = await plumblineHere([
      'audit',
      'recordings',
      '--probe',
      'all',
      '--now',
      'newest',
      '--site',
      recordings.site,
    ]);
    assert.match(out, /ffprobe cannot read 1 file of gate/);
  });
});
