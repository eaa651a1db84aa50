// Recordings made by a real FFmpeg, in which every frame bears its number: its bits are columns of black and white.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import footageSchema from '../../schemas/footage.schema.json' with { type: 'json' };
import { format } from '../../server/src/standards/strftime-format.ts';
import { zonedTime } from '../../server/src/standards/time-zone.ts';
import { unavailable } from '../availability.ts';
import { type Result, plumbline, plumblineHere } from '../cli/run.ts';

export const RATE = 25;
const [BITS, COLUMN, HEIGHT] = [12, 16, 64];

export function ffmpeg(...words: string[]): string {
  const run = spawnSync('ffmpeg', ['-hide_banner', '-nostdin', '-v', 'error', '-y', ...words], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  assert.equal(run.status, 0, `ffmpeg ${words.join(' ')}\n${run.stderr}`);
  return run.stdout;
}

export function needsFfmpeg(context: Mocha.Context): void {
  const run = spawnSync('ffmpeg', ['-hide_banner', '-encoders'], { encoding: 'utf8' });
  if (run.status !== 0 || !run.stdout.includes('libx265'))
    unavailable(context, 'ffmpeg with libx264 and libx265 is needed (apt-get install ffmpeg)');
}

export interface Source {
  /** Encoder and its options. */
  readonly video: readonly string[];
  readonly audio?: readonly string[];
  /** Ending of the files, which says their container. */
  readonly ending: string;
  readonly seconds: number;
  readonly segment: number;
  /** The number of the first frame. */
  readonly number?: number;
  readonly scale?: number;
}

export const H264 = ['-c:v', 'libx264', '-preset', 'veryfast', '-bf', '0', '-g', '50', '-sc_threshold', '0'];
export const H265 = [
  '-c:v',
  'libx265',
  '-preset',
  'veryfast',
  '-x265-params',
  'log-level=error:keyint=75:min-keyint=75:scenecut=0:open-gop=0',
  '-tag:v',
  'hev1',
];
export const AAC = ['-c:a', 'aac', '-b:a', '48k'];

export class Recordings {
  readonly folder = mkdtempSync(join(tmpdir(), 'plumbline-footage-'));
  readonly root = join(this.folder, 'recordings');
  readonly site = join(this.folder, 'site');
  readonly out = join(this.folder, 'out');

  /** @param patterns of the recordings, by name */
  constructor(patterns: Readonly<Record<string, string>>, zone = 'Europe/London') {
    for (const folder of [this.root, this.site, this.out]) mkdirSync(folder);
    const recordings = Object.entries(patterns).map(
      ([name, file]) => `  ${name}: {stream: gate, volume: archive, segment: 4 s, file: ${JSON.stringify(file)}}\n`,
    );
    writeFileSync(
      join(this.site, 'a.site.yaml'),
      `site: {name: Harrow Lane, timezone: ${zone}}\nvolumes:\n  archive: {path: ${JSON.stringify(this.root)}}\nrecordings:\n${recordings.join('')}`,
    );
    this.zone = zone;
  }

  private readonly zone: string;

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }

  /**
   * Has the segment muxer write files, and names each by when it began if the first did so at `start`.
   *
   * @returns their paths from the root, in order
   */
  record(pattern: string, start: number, source: Source): string[] {
    let begins = start;
    return segmentsOf(source).map(({ path: made, frames }) => {
      const path = format(pattern, zonedTime(this.zone, begins));
      begins += (frames * 1000) / RATE;
      mkdirSync(dirname(join(this.root, path)), { recursive: true });
      copyFileSync(made, join(this.root, path));
      utimesSync(join(this.root, path), begins / 1000, begins / 1000);
      return path;
    });
  }

  /** By a process of its own. */
  footage(...words: string[]): Result {
    return plumbline(['footage', ...words, this.site]);
  }

  footageHere(...words: string[]): Promise<Result> {
    return plumblineHere(['footage', ...words, this.site]);
  }

  /** What the sidecar says, which has to fit its schema. */
  sidecar(name: string): Sidecar {
    const read: unknown = JSON.parse(readFileSync(join(this.out, `${name}.json`), 'utf8'));
    assert.ok(validSidecar(read), JSON.stringify(validSidecar.errors));
    return read as unknown as Sidecar;
  }
}

interface Segment {
  readonly path: string;
  readonly frames: number;
}

/** By what they are of: many tests begin with the same. */
const segments = new Map<string, readonly Segment[]>();

/** What the segment muxer writes of it, made once. */
function segmentsOf(source: Source): readonly Segment[] {
  const key = JSON.stringify(source);
  const known = segments.get(key) ?? makeSegments(source);
  segments.set(key, known);
  return known;
}

function makeSegments({ video, audio, ending, seconds, segment, number = 0, scale = 1 }: Source): Segment[] {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-segments-'));
  process.once('exit', () => rmSync(folder, { recursive: true }));
  const numbered =
    `color=black:s=${(BITS * COLUMN * scale).toString()}x${HEIGHT.toString()}:r=${RATE.toString()},format=gray,` +
    `geq=lum='255*mod(floor((N+${number.toString()})/pow(2,floor(X/${(COLUMN * scale).toString()}))),2)',format=yuv420p`;
  ffmpeg(
    '-f',
    'lavfi',
    '-i',
    numbered,
    ...(audio === undefined ? [] : ['-f', 'lavfi', '-i', 'sine=r=16000']),
    '-t',
    seconds.toString(),
    ...video,
    ...(audio ?? []),
    '-f',
    'segment',
    '-segment_time',
    segment.toString(),
    '-reset_timestamps',
    '1',
    join(folder, `%03d.${ending}`),
  );
  return readdirSync(folder)
    .sort()
    .map((name) => join(folder, name))
    .map((path) => ({ path, frames: numbersOf(path).length }));
}

const validSidecar = new Ajv2020({ allErrors: true, allowUnionTypes: true, strict: false }).compile(footageSchema);

export interface Sidecar {
  readonly 'got': { readonly from: string; readonly to: string };
  readonly 'gaps': readonly { readonly from: string; readonly to: string; readonly seconds: number }[];
  readonly 'overlaps': readonly { readonly from: string; readonly to: string }[];
  readonly 'left-out': readonly { readonly path: string; readonly reason: string }[];
  readonly 'outputs': readonly {
    readonly path: string;
    readonly size: number;
    readonly sha256: string;
    readonly frames: number;
    readonly segments: readonly {
      readonly path: string;
      readonly size: number;
      readonly sha256: string;
      readonly taken: string;
      readonly frames: number;
      readonly position: number;
      readonly from: string;
      readonly growing: boolean;
      readonly damaged: string | null;
    }[];
  }[];
}

/** The numbers that the frames of a file bear, in the order in which they are shown. Any error of decoding fails. */
export function numbersOf(file: string): number[] {
  const width = BITS;
  const run = spawnSync(
    'ffmpeg',
    [
      '-hide_banner',
      '-nostdin',
      '-v',
      'error',
      '-xerror',
      '-i',
      `file:${file}`,
      '-map',
      '0:v',
      '-fps_mode',
      'passthrough',
      '-vf',
      `scale=${width.toString()}:1:flags=area,format=gray`,
      '-f',
      'rawvideo',
      '-',
    ],
    { maxBuffer: 1 << 28 },
  );
  assert.equal(run.stderr.toString(), '', file);
  assert.equal(run.status, 0);
  const numbers: number[] = [];
  for (let at = 0; at + width <= run.stdout.length; at += width)
    numbers.push(
      [...run.stdout.subarray(at, at + width)].reduce((sum, level, bit) => sum + (level > 127 ? 2 ** bit : 0), 0),
    );
  return numbers;
}

/** When the frames are shown, in seconds after the first, by ffprobe. */
export function timesOf(file: string): number[] {
  const words = [
    '-v',
    'error',
    '-select_streams',
    'v',
    '-show_entries',
    'frame=best_effort_timestamp_time',
    '-of',
    'csv=p=0',
    `file:${file}`,
  ];
  const run = spawnSync('ffprobe', words, { encoding: 'utf8', maxBuffer: 1 << 28 });
  const times = (run.stdout.match(/^[\d.]+/gm) ?? []).map(Number);
  return times.map((time) => time - (times[0] ?? 0));
}

/** The checksums of all decoded frames, by FFmpeg's framemd5. */
export function framesOf(file: string): string[] {
  return (
    ffmpeg('-i', `file:${file}`, '-map', '0:v', '-fps_mode', 'passthrough', '-f', 'framemd5', '-').match(
      /[0-9a-f]{32}$/gm,
    ) ?? []
  );
}

/** Seconds of audio, and its codec. */
export function audioOf(file: string): { codec: string; seconds: number } {
  const words = [
    '-v',
    'error',
    '-select_streams',
    'a',
    '-show_entries',
    'stream=codec_name:packet=duration_time',
    '-of',
    'json',
    `file:${file}`,
  ];
  const read = JSON.parse(spawnSync('ffprobe', words, { encoding: 'utf8', maxBuffer: 1 << 28 }).stdout) as {
    streams: { codec_name: string }[];
    packets?: { duration_time?: string }[];
  };
  return {
    codec: read.streams[0]?.codec_name ?? 'none',
    seconds: (read.packets ?? []).reduce((sum, packet) => sum + Number(packet.duration_time ?? 0), 0),
  };
}

export function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, index) => from + index);
}

/** Frames by their numbers, told in runs: `0 to 99, 200 to 299`. */
export function hasFrames(actual: readonly number[], expected: readonly number[]): void {
  const told = (numbers: readonly number[]): string => {
    const runs: [number, number][] = [];
    for (const number of numbers) {
      const run = runs.at(-1);
      if (run?.[1] === number - 1) run[1] = number;
      else runs.push([number, number]);
    }
    return runs.map(([first, last]) => `${first.toString()} to ${last.toString()}`).join(', ');
  };
  assert.equal(told(actual), told(expected));
}
