import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import {
  AAC,
  H264,
  H265,
  RATE,
  Recordings,
  type Source,
  audioOf,
  framesOf,
  hasFrames,
  needsFfmpeg,
  numbersOf,
  range,
  timesOf,
} from './recording.ts';

const PATTERN = 'gate/%Y-%m-%d_%H-%M-%S%z.';
const START = Date.UTC(2026, 10, 20, 13);
const at = (seconds: number): string => new Date(START + seconds * 1000).toISOString();

const H264_REORDERED = ['-c:v', 'libx264', '-preset', 'veryfast', '-bf', '2', '-g', '75', '-sc_threshold', '0'];
const PCMA = ['-c:a', 'pcm_alaw', '-ar', '8000'];

const sources: Readonly<
  Record<string, Omit<Source, 'seconds' | 'segment'> & { readonly keyframe: number; readonly into: readonly string[] }>
> = {
  'H.264, a keyframe every 2 s, no audio, mp4': { video: H264, ending: 'mp4', keyframe: 2, into: ['mp4', 'mkv', 'ts'] },
  'H.264, a keyframe every 3 s, reordered frames, AAC, mp4': {
    video: H264_REORDERED,
    audio: AAC,
    ending: 'mp4',
    keyframe: 3,
    into: ['mp4', 'mov'],
  },
  'H.264, a keyframe every 3 s, reordered frames, AAC, ts': {
    video: H264_REORDERED,
    audio: AAC,
    ending: 'ts',
    keyframe: 3,
    into: ['mp4', 'ts'],
  },
  'H.264, a keyframe every 2 s, A-law, mkv': {
    video: H264,
    audio: PCMA,
    ending: 'mkv',
    keyframe: 2,
    into: ['mkv', 'mov'],
  },
  'H.265, a keyframe every 3 s, AAC, mp4': {
    video: H265,
    audio: AAC,
    ending: 'mp4',
    keyframe: 3,
    into: ['mp4', 'mkv', 'ts'],
  },
  'H.265, a keyframe every 3 s, no audio, ts': { video: H265, ending: 'ts', keyframe: 3, into: ['ts', 'mp4'] },
};

describe('plumbline footage', function () {
  // Encoding takes a second or two each; a loaded machine may take ten times that.
  before(function () {
    needsFfmpeg(this);
  });

  for (const [title, { keyframe, into, ...source }] of Object.entries(sources)) {
    describe(`of ${title}`, () => {
      let recordings: Recordings;
      let paths: string[];
      /** What each frame of the files looks like. */
      let originals: readonly string[];

      before(() => {
        recordings = new Recordings({ gate: PATTERN + source.ending });
        paths = recordings.record(PATTERN + source.ending, START, { ...source, seconds: 20, segment: 4 });
        originals = paths.flatMap((path) => framesOf(join(recordings.root, path)));
      });
      after(() => recordings.remove());

      for (const ending of into) {
        it(`joins whole files into ${ending}, every frame as it was`, async () => {
          const out = join(recordings.out, `whole.${ending}`);
          const before = paths.map((path) => statSync(join(recordings.root, path)).mtimeMs);
          const {
            status,
            out: said,
            err,
          } = await recordings.footageHere('--recording', 'gate', '--from', at(0), '--to', at(20), '--out', out);
          assert.equal(status, 0, said + err);
          hasFrames(numbersOf(out), range(0, 500));
          assert.deepEqual(framesOf(out), originals);
          for (const [index, time] of timesOf(out).entries())
            assert.ok(Math.abs(time - index / RATE) < 0.0011, `frame ${index.toString()} at ${time.toString()} s`);
          const {
            outputs: [output],
            got,
            gaps,
            overlaps,
          } = recordings.sidecar(`whole.${ending}`);
          assert.deepEqual(
            [got.from, got.to, gaps, overlaps],
            ['2026-11-20T13:00:00.000+00:00', '2026-11-20T13:00:20.000+00:00', [], []],
          );
          assert.deepEqual([output?.frames, output?.size, output?.sha256], [500, statSync(out).size, sha256(out)]);
          assert.deepEqual(
            output?.segments.map(({ path, size, sha256: sum }) => [path, size, sum]),
            paths.map((path) => [
              path,
              statSync(join(recordings.root, path)).size,
              sha256(join(recordings.root, path)),
            ]),
          );
          assert.deepEqual(
            paths.map((path) => statSync(join(recordings.root, path)).mtimeMs),
            before,
            'the originals are as they were',
          );
          if (source.audio === undefined) return;
          const sounds = paths.map((path) => audioOf(join(recordings.root, path)));
          const audio = audioOf(out);
          assert.equal(audio.codec, sounds[0]?.codec);
          const seconds = sounds.reduce((sum, sound) => sum + sound.seconds, 0);
          assert.ok(
            Math.abs(audio.seconds - seconds) < 0.07,
            `${audio.seconds.toString()} s of audio, not ${seconds.toString()} s`,
          );
        });
      }

      it('cuts on keyframes, not later than from and not earlier than to', async () => {
        const out = join(recordings.out, `cut.${into[0] ?? ''}`);
        const {
          status,
          out: said,
          err,
        } = await recordings.footageHere('--recording', 'gate', '--from', at(4.5), '--to', at(15.5), '--out', out);
        assert.equal(status, 0, said + err);
        const [first, last] = [Math.floor(4.5 / keyframe) * keyframe, Math.ceil(15.5 / keyframe) * keyframe];
        hasFrames(numbersOf(out), range(first * RATE, last * RATE));
        assert.deepEqual(recordings.sidecar(`cut.${into[0] ?? ''}`).got, {
          from: at(first).replace('Z', '+00:00'),
          to: at(last).replace('Z', '+00:00'),
        });
        assert.match(said, /Cut at keyframes: /);
      });

      // Not on frames of 0.04 s: the first is that which begins at from or after it, and the last begins before to.
      const edges = [
        [4.47, 15.5],
        [4.5, 5.3],
        [3.98, 8.02],
        [6, 12],
      ] as const;
      const cuts = into.flatMap((ending, index) =>
        (index === 0 && source.ending === 'mp4' ? edges : edges.slice(0, 1)).map((edge) => [...edge, ending] as const),
      );
      for (const [from, to, ending] of cuts) {
        it(`cuts exactly from ${from.toString()} s to ${to.toString()} s, into ${ending}`, async () => {
          const name = `exact-${from.toString()}.${ending}`;
          const out = join(recordings.out, name);
          const {
            status,
            out: said,
            err,
          } = await recordings.footageHere(
            '--recording',
            'gate',
            '--from',
            at(from),
            '--to',
            at(to),
            '--exact',
            '--out',
            out,
          );
          assert.equal(status, 0, said + err);
          const [first, end] = [Math.ceil(from * RATE - 1e-6), Math.ceil(to * RATE - 1e-6)];
          hasFrames(numbersOf(out), range(first, end));
          for (const [index, time] of timesOf(out).entries())
            assert.ok(Math.abs(time - index / RATE) < 0.0011, `frame ${index.toString()} at ${time.toString()} s`);
          const {
            got,
            outputs: [output],
          } = recordings.sidecar(name);
          assert.deepEqual(got, {
            from: at(first / RATE).replace('Z', '+00:00'),
            to: at(end / RATE).replace('Z', '+00:00'),
          });
          // What is not encoded anew is as it was.
          const made = framesOf(out);
          let index = 0;
          for (const segment of output?.segments ?? []) {
            if (segment.taken !== 'encoded')
              assert.deepEqual(
                made.slice(index, index + segment.frames),
                originals.slice(first + index, first + index + segment.frames),
              );
            index += segment.frames;
          }
          assert.equal(index, end - first);
          if (source.audio === undefined) return;
          const { seconds } = audioOf(out);
          assert.ok(Math.abs(seconds - (end - first) / RATE) < 0.2, `${seconds.toString()} s of audio`);
        });
      }

      it('reports a gap, and joins what is on either side', async () => {
        const gone = paths.splice(2, 1)[0] ?? '';
        const frames = numbersOf(join(recordings.root, gone));
        rmSync(join(recordings.root, gone));
        const out = join(recordings.out, `gap.${into[0] ?? ''}`);
        const { status, out: said } = await recordings.footageHere(
          '--recording',
          'gate',
          '--from',
          at(0),
          '--to',
          at(20),
          '--out',
          out,
        );
        assert.equal(status, 1);
        hasFrames(
          numbersOf(out),
          range(0, 500).filter((number) => !frames.includes(number)),
        );
        const [from, to] = [(frames[0] ?? 0) / RATE, ((frames.at(-1) ?? 0) + 1) / RATE].map((seconds) =>
          at(seconds).replace('Z', '+00:00'),
        );
        assert.deepEqual(recordings.sidecar(`gap.${into[0] ?? ''}`).gaps, [
          { from, to, seconds: frames.length / RATE },
        ]);
        assert.ok(said.includes(`Gap: ${from ?? ''} to ${to ?? ''}, ${(frames.length / RATE).toString()} s`), said);
      });

      it('leaves nothing else behind', () => {
        assert.deepEqual(
          readdirSync(recordings.out).filter(
            (name) => !/^(whole|cut|exact-[\d.]+|gap)\.[a-z0-9]+(\.json)?$/.test(name),
          ),
          [],
        );
        assert.deepEqual(readdirSync(join(recordings.root, 'gate')).length, paths.length);
      });
    });
  }
});

function sha256(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}
