/**
 * What is refused, left out, copied first and kept, on a machine that the test makes up; real media are in
 * join.test.ts.
 */

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { posix } from 'node:path';
import { getFootage } from '../../server/src/footage/get.ts';
import { Refused } from '../../server/src/footage/refused.ts';
import type { MadeFootage } from '../../server/src/footage/sidecar.ts';
import type { Finished, FootageTools, Ran } from '../../server/src/footage/tools.ts';
import { type Request, wantedFootage } from '../../server/src/footage/wanted.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

const ROOT = '/srv/recordings';
const START = Date.UTC(2026, 10, 20, 13);
const RATE = 25;

const folder = new SiteFolder();
folder.set(
  'file:///home/a.site.yaml',
  `site: {name: Harrow Lane, timezone: Europe/London}
volumes:
  archive: {path: ${ROOT}}
recordings:
  gate: {stream: gate, volume: archive, segment: 4 s, file: "gate/%Y-%m-%d_%H-%M-%S%z.ts"}
`,
);

interface File {
  size: number;
  modified: number;
  /** How often it was written to without a trace in the above. */
  forged?: number;
  /** 25 a second. */
  frames: number;
}

/** A file of so many seconds, named by when it begins. */
function nameOf(seconds: number): string {
  return `gate/2026-11-20_13-00-${seconds.toString().padStart(2, '0')}+0000.ts`;
}

/** A machine of files with a size and frames, where FFmpeg keeps every frame unless the test has it lose some. */
class Machine implements FootageTools {
  readonly versions = { plumbline: '0', ffmpeg: '0' };
  readonly files = new Map<string, File>();
  readonly folders = new Set(['/', '/home', ROOT, `${ROOT}/gate`]);
  readonly commands: (readonly string[])[] = [];
  readonly read: string[] = [];
  saved: readonly Finished[] = [];
  sidecar = '';
  time = START + 3_600_000;
  free = Infinity;
  /** Frames that FFmpeg loses. */
  lost = 0;
  /** What happens when a file is first read whole. */
  meanwhile: (path: string) => void = () => undefined;

  constructor() {
    for (const seconds of [0, 4, 8]) this.record(seconds);
  }
  record(seconds: number): File {
    const file = { size: 1000, modified: START + 1000 * (seconds + 4), frames: 4 * RATE };
    this.files.set(`${ROOT}/${nameOf(seconds)}`, file);
    return file;
  }

  kindOf(path: string): 'folder' | 'other' | undefined {
    return this.folders.has(path) ? 'folder' : this.files.has(path) ? 'other' : undefined;
  }
  isFolder(path: string): boolean {
    return this.folders.has(path);
  }
  isWithin(path: string, other: string): boolean {
    return `${path}/`.startsWith(`${other}/`);
  }
  isSame(path: string, other: string): boolean {
    return this.files.has(path) && this.files.get(path) === this.files.get(other);
  }
  folderOf(path: string): string {
    return posix.dirname(path);
  }
  baseName(path: string): string {
    return posix.basename(path);
  }
  absolute(path: string): string {
    return posix.resolve('/', path);
  }

  find(root: string): ReturnType<FootageTools['find']> {
    const paths = [...this.files.keys()]
      .filter((path) => path.startsWith(root))
      .map((path) => path.slice(ROOT.length + 1));
    return {
      found: paths.map((path) => ({ path, instants: [START + 1000 * Number(path.slice(22, 24))] })),
      skipped: [],
    };
  }
  recorded(root: string, path: string): string {
    return `${root}/${path}`;
  }
  workFile(name: string): string {
    return `/work-folder/${name}`;
  }
  now(): number {
    return this.time;
  }
  private file(path: string): File {
    const file = this.files.get(path);
    if (file === undefined) throw Object.assign(new Error(path), { code: 'EIO' });
    return file;
  }
  stat(path: string): ReturnType<FootageTools['stat']> {
    return Promise.resolve().then(() => {
      const file = this.file(path);
      return { isFile: true, ...file, stamp: [file.size, file.modified, file.forged ?? 0].join(' ') };
    });
  }
  head(): Promise<Uint8Array> {
    return Promise.resolve(new Uint8Array());
  }
  copy(from: string, to: string): Promise<void> {
    this.files.set(to, { ...this.file(from) });
    return Promise.resolve();
  }
  write(path: string, text: string): Promise<void> {
    this.files.set(path, { size: text.length, modified: this.time, frames: 0 });
    return Promise.resolve();
  }
  sync(): Promise<void> {
    return Promise.resolve();
  }
  hash(path: string, read: (bytes: number) => void): Promise<string> {
    this.read.push(path);
    this.meanwhile(path);
    read(this.file(path).size);
    return Promise.resolve(createHash('sha256').update(path).digest('hex'));
  }
  run(program: 'ffmpeg' | 'ffprobe', words: readonly string[]): Promise<Ran> {
    const path = (words.at(-1) ?? '').replace(/^file:/, '');
    if (program === 'ffmpeg') {
      this.commands.push(words);
      const frames = [...this.files]
        .filter(([name]) => name.startsWith(ROOT))
        .reduce((sum, [, file]) => sum + file.frames, 0);
      this.files.set(this.workFile(path), { size: 3000, modified: this.time, frames: frames - this.lost });
      return Promise.resolve({ status: 0, out: '', err: '' });
    }
    if (words.includes('-count_packets')) {
      const { frames } = this.file(this.workFile(path));
      return Promise.resolve({
        status: 0,
        out: json({ streams: [{ codec_type: 'video', nb_read_packets: `${frames}` }] }),
        err: '',
      });
    }
    return Promise.resolve({ status: 0, out: json(probed(this.file(path).frames)), err: '' });
  }
  freeBeside(): number {
    return this.free;
  }
  save(files: readonly Finished[], { text }: { readonly text: string }): void {
    this.saved = files;
    this.sidecar = text;
  }
  progress(): void {}
  reasonOf(error: unknown): string | undefined {
    return error instanceof Error && 'code' in error ? 'the disk has an error' : undefined;
  }
}

const json = JSON.stringify;

/** As ffprobe 5.1 writes of a transport stream of H.264 with a keyframe each second. */
function probed(frames: number): unknown {
  return {
    format: { format_name: 'mpegts', start_time: '0.000000' },
    streams: [
      {
        index: 0,
        codec_type: 'video',
        codec_name: 'h264',
        codec_tag_string: '[27][0][0][0]',
        width: 1920,
        height: 1080,
        pix_fmt: 'yuv420p',
        has_b_frames: 0,
        field_order: 'progressive',
        time_base: '1/90000',
      },
    ],
    packets: Array.from({ length: frames }, (_, index) => ({
      stream_index: 0,
      pts_time: (index / RATE).toFixed(6),
      dts_time: (index / RATE).toFixed(6),
      duration_time: (1 / RATE).toFixed(6),
      flags: index % RATE === 0 ? 'K__' : '___',
    })),
  };
}

describe('footage, on a machine that is made up', () => {
  let machine: Machine;
  beforeEach(() => (machine = new Machine()));
  const at = (seconds: number): string => new Date(START + 1000 * seconds).toISOString();
  const get = (request: Partial<Request> = {}): Promise<MadeFootage> => {
    const asked = { recording: 'gate', from: at(0), to: at(12), out: '/home/x.ts', ...request };
    return getFootage(wantedFootage(folder.site(), asked, machine), machine);
  };
  const refused = async (why: RegExp, request: Partial<Request> = {}): Promise<void> => {
    await assert.rejects(
      async () => get(request),
      (error) => error instanceof Refused && why.test(error.message),
    );
    assert.deepEqual(machine.saved, [], 'nothing gets its name');
  };

  it('keeps all of three files, and reads each once for its checksum', async () => {
    const made = await get();
    assert.deepEqual(machine.saved, [{ file: '/work-folder/result-1', out: '/home/x.ts' }]);
    assert.deepEqual(
      machine.read.slice(0, 3),
      [0, 4, 8].map((seconds) => `${ROOT}/${nameOf(seconds)}`),
    );
    assert.deepEqual([made.leftOut, made.breaks], [[], []]);
  });

  it('works from a copy of the newest file where it was written to a moment ago, and says that it grows', async () => {
    machine.time = START + 13_000;
    const newest = `${ROOT}/${nameOf(8)}`;
    machine.meanwhile = () => Object.assign(machine.files.get(newest) ?? {}, { size: 1100, modified: machine.time });
    const made = await get();
    assert.deepEqual(
      made.outputs.flatMap(({ pieces }) => pieces.map(({ segment }) => segment.growing)),
      [false, false, true],
    );
    assert.ok(machine.read.includes('/work-folder/newest') && !machine.read.includes(newest));
  });

  it('reads the newest file in place where nobody has written to it for long', async () => {
    machine.time = START + 12_000 + 60_000;
    await get();
    assert.ok(!machine.read.includes('/work-folder/newest'));
  });

  it('keeps nothing where another file is written to while it is read', async () => {
    const first = machine.files.get(`${ROOT}/${nameOf(0)}`);
    machine.meanwhile = () => Object.assign(first ?? {}, { modified: START + 5_000_000 });
    await refused(/13-00-00\+0000\.ts was written to while it was read/);
  });

  it('keeps nothing where another file is written to, and its size and time are put back', async () => {
    const first = machine.files.get(`${ROOT}/${nameOf(0)}`);
    machine.meanwhile = () => Object.assign(first ?? {}, { forged: 1 });
    await refused(/13-00-00\+0000\.ts was written to while it was read/);
  });

  it('keeps nothing where a single frame is lost in joining', async () => {
    machine.lost = 1;
    await refused(/has 299 frames, and its parts have 300/);
  });

  it('starts nothing where there is no room', async () => {
    machine.free = 2999;
    await refused(/has 3 kB free, and the footage needs 3 kB/);
    assert.deepEqual([machine.read, machine.commands], [[], []]);
    machine.free = 3000;
    await get();
  });

  it('leaves out a file that the system does not let it read, with the reason, and a gap', async () => {
    const stat = machine.stat.bind(machine);
    machine.stat = (path) =>
      path.endsWith(nameOf(4)) ? Promise.reject(Object.assign(new Error(), { code: 'EIO' })) : stat(path);
    machine.lost = 4 * RATE;
    const made = await get();
    assert.deepEqual(made.leftOut, [{ path: nameOf(4), reason: 'the disk has an error' }]);
    assert.deepEqual(made.breaks, [{ kind: 'gap', from: START + 4000, to: START + 8000 }]);
  });

  it('does not hide a mistake of the program behind a file that cannot be read', async () => {
    machine.stat = () => Promise.reject(new TypeError('a mistake'));
    await assert.rejects(get(), TypeError);
  });

  it('leaves out an empty file', async () => {
    machine.record(4).size = 0;
    machine.lost = 4 * RATE;
    assert.deepEqual((await get()).leftOut, [{ path: nameOf(4), reason: 'it is empty' }]);
  });

  for (const [what, request, why] of [
    ['among the recordings', { out: `${ROOT}/x.ts` }, /lies among the recordings/],
    [
      'over a recording, even where asked to',
      { out: `${ROOT}/${nameOf(0)}`, overwrite: true },
      /lies among the recordings/,
    ],
    ['into a folder that is not there', { out: '/nowhere/x.ts' }, /\/nowhere is no folder/],
    ['without a known ending', { out: '/home/x' }, /let it end in \.mp4, \.mov, \.mkv, \.ts/],
    ['to a name that is an ending alone', { out: '/home/.ts' }, /let it end in/],
  ] as const)
    it(`does not write ${what}`, async () => refused(why, request));

  it('does not write over what is there, nor over an old description, unless asked to', async () => {
    for (const there of ['/home/x.ts', '/home/x.ts.json']) {
      machine = new Machine();
      machine.files.set(there, { size: 1, modified: 0, frames: 0 });
      await refused(/is there already and is left as it is/);
    }
    await get({ overwrite: true });
    assert.equal(machine.saved.length, 1);
  });

  it('does not write over a recording by another name', async () => {
    machine.files.set('/home/x.ts', machine.files.get(`${ROOT}/${nameOf(0)}`) ?? machine.record(0));
    await refused(/by another name/, { overwrite: true });
  });
});
