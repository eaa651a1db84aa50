// What the cameras and the tuner of the rehearsal send: films with the codec, picture rate, keyframes and sound that
// the site declares, of noise, so that every picture takes its part of the rate.
import { join } from 'node:path';
import { rateOfVideo } from '../lab/cameras.ts';
import { repeat } from '../lab/clip.ts';
import { run } from '../lab/run.ts';
import { SCALE, SIZE, TELEVISION_SOUND, bitsOf, declared, televised } from './site.ts';

/** Seconds after which a film begins again, over which its rate is exactly what was measured. */
export const LOOP = 20;

/** How often: for longer than the rehearsal takes. */
const TIMES = 30;

const ENCODERS: Readonly<Record<string, (rate: number, gop: number) => readonly string[]>> = {
  h264: (rate, gop) => [
    '-c:v',
    'libx264',
    '-preset',
    'ultrafast',
    '-bf',
    '0',
    '-g',
    String(gop),
    '-keyint_min',
    String(gop),
    '-sc_threshold',
    '0',
    ...bounded(rate),
  ],
  h265: (rate, gop) => [
    '-c:v',
    'libx265',
    '-preset',
    'ultrafast',
    '-b:v',
    String(rate),
    '-x265-params',
    `log-level=none:repeat-headers=1:keyint=${gop}:min-keyint=${gop}:scenecut=0:bframes=0:vbv-maxrate=${Math.round(rate / 1000)}:vbv-bufsize=${Math.round(rate / 1000)}`,
  ],
  mpeg2: (rate) => ['-c:v', 'mpeg2video', '-bf', '0', '-g', '12', ...bounded(rate)],
};

function bounded(rate: number): string[] {
  return [
    '-b:v',
    String(Math.round(rate)),
    '-maxrate',
    String(Math.round(rate)),
    '-bufsize',
    String(Math.round(rate / 2)),
  ];
}

export interface Film {
  readonly path: string;
  readonly codec: string;
  readonly sound: boolean;
  readonly frameRate: number;
  /** bit/s of its video. */
  readonly rate: number;
}

interface Declared {
  readonly 'codec': string;
  readonly 'frame-rate': number;
  readonly 'bitrate': string;
  readonly 'keyframe-interval'?: string;
}

/** A film for each stream of a camera; what is declared alike is one. By name of the stream. */
export async function makeFilms(folder: string): Promise<Map<string, Film>> {
  const made = new Map<string, Promise<Film>>();
  const films = new Map<string, Promise<Film>>();
  for (const [name, { transport, carries, video, audio }] of Object.entries(declared().streams)) {
    if (transport !== 'rtsp' || carries !== undefined || video === undefined) continue;
    const key = JSON.stringify([video, audio]);
    const film =
      made.get(key) ?? makeFilm(join(folder, `${made.size}.mkv`), video as unknown as Declared, audio !== undefined);
    made.set(key, film);
    films.set(name, film);
  }
  return new Map(await Promise.all([...films].map(async ([name, film]) => [name, await film] as const)));
}

async function makeFilm(path: string, video: Declared, sound: boolean): Promise<Film> {
  const { codec, 'frame-rate': frameRate, bitrate } = video;
  const gop = frameRate * Number.parseFloat(video['keyframe-interval'] ?? '2');
  const encoder = ENCODERS[codec];
  if (encoder === undefined) throw new Error(`no film of ${codec}`);
  const once = `${path}.once.mkv`;
  await run('ffmpeg', [
    '-nostdin',
    '-loglevel',
    'error',
    '-f',
    'lavfi',
    '-i',
    `testsrc2=size=${SIZE}:rate=${frameRate},noise=alls=20:allf=t`,
    ...(sound ? ['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=8000', '-c:a', 'pcm_alaw', '-ac', '1'] : []),
    ...encoder(bitsOf(bitrate) * SCALE, gop),
    '-pix_fmt',
    'yuv420p',
    '-t',
    String(LOOP),
    once,
  ]);
  await repeat(once, TIMES, path);
  return { path, codec, sound, frameRate, rate: await rateOfVideo(once, LOOP) };
}

/** What the tuner sends as a stream: a transport stream of constant rate. */
export async function makeMultiplex(folder: string, name: string): Promise<string> {
  const { video, 'mux-rate': mux } = declared().streams[name] ?? {};
  const { codec = '', 'frame-rate': frameRate = 25 } = (video ?? {}) as unknown as Partial<Declared>;
  const encoder = ENCODERS[codec];
  if (encoder === undefined || mux === undefined) throw new Error(`no multiplex for ${name}`);
  const path = join(folder, `${name}.ts`);
  await run('ffmpeg', [
    '-nostdin',
    '-loglevel',
    'error',
    '-f',
    'lavfi',
    '-i',
    `testsrc2=size=${SIZE}:rate=${frameRate},noise=alls=20:allf=t`,
    '-f',
    'lavfi',
    '-i',
    'sine=frequency=440:sample_rate=48000',
    ...encoder(televised(mux), frameRate),
    '-pix_fmt',
    'yuv420p',
    '-c:a',
    'mp2',
    '-ac',
    '2',
    '-b:a',
    String(TELEVISION_SOUND),
    '-muxrate',
    String(bitsOf(mux) * SCALE),
    '-t',
    String(LOOP),
    '-f',
    'mpegts',
    path,
  ]);
  return path;
}
