/**
 * The systemd units made for a server, run unchanged on a host of the lab: RTSP cameras are re-sent as multicast,
 * recorded, unplugged and plugged in again.
 */

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, describe, it } from 'mocha';
import { recorders } from '../../server/src/make/media/recorders.ts';
import { relays } from '../../server/src/make/media/relays.ts';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import { type Made, type MadeFile, together } from '../../server/src/make/output.ts';
import type { Plan } from '../../server/src/plan.ts';
import { fileNames } from '../../server/src/recordings/file-names.ts';
import type { Device } from '../../server/src/site/model.ts';
import { unavailable } from '../availability.ts';
import { Server, type Service } from '../rehearsal/service.ts';
import { makeClip, repeat } from './clip.ts';
import { planFrom } from './family.ts';
import { PYTHON, whyNoCameras } from './cameras.ts';
import { until } from './until.ts';
import { Lab } from './lab.ts';
import { Place } from './place.ts';
import { whyNoLab } from './probe.ts';
import { run, sleep } from './run.ts';

const CAMERA = fileURLToPath(new URL('./camera.py', import.meta.url));
const FRAME_RATE = 20;
/** How often the film is played: for longer than the tests take. */
const TIMES = 20;
const SEGMENT = 4;
/** How many pictures a screen decodes: three seconds. */
const PICTURES = 60;
/** Unlikely to be the zone of the machine that runs the tests, and not a whole number of hours from UTC. */
const ZONE = 'Asia/Kathmandu';
const USER = 'groom';
const PASSWORD = 'p@ss:w/o rd%41#?é\'"\\$;&+';

const SITE = `
site: {name: Harrow Lane, timezone: ${ZONE}}
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, address: 192.168.20.2, igmp-snooping: true, unregistered-multicast: drop, ports: {1-4: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  yard-cam: {kind: camera, address: 192.168.20.32}
  kitchen-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: paddock-cam}
  - {from: core/3, to: yard-cam}
  - {from: core/4, to: kitchen-screen}
streams:
  paddock:
    source: paddock-cam
    transport: rtsp
    port: 8554
    path: /camera
    credentials: paddock-cam
    video: {codec: h264, frame-rate: ${FRAME_RATE}, bitrate: 1 Mb/s, keyframe-interval: 2 s}
    audio: {codec: pcma, bitrate: 64 kb/s, sample-rate: 8 kHz, channels: 1}
    receivers: [recorder]
  paddock-live:
    source: recorder
    carries: paddock
    transport: rtp
    group: 239.192.20.31
    port: 5004
    audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 kHz, channels: 2}
    receivers: [kitchen-screen, recorder]
  yard:
    source: yard-cam
    transport: rtsp
    port: 8554
    path: /camera
    video: {codec: h264, frame-rate: ${FRAME_RATE}, bitrate: 1 Mb/s, keyframe-interval: 2 s}
    receivers: [recorder]
  yard-live:
    source: recorder
    carries: yard
    transport: ts-udp
    group: 239.192.20.32
    port: 5004
    mux-rate: 2 Mb/s
    receivers: [kitchen-screen, recorder]
  yard-live-rtp:
    source: recorder
    carries: yard
    transport: ts-rtp
    group: 239.192.20.33
    port: 5004
    receivers: [kitchen-screen]
volumes:
  archive: {host: recorder, capacity: 1 TB, path: "/srv/archive 100% \\"full\\""}
recordings:
  paddock: {stream: paddock-live, volume: archive, segment: ${SEGMENT} s, file: "paddock $HOME/%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: yard, volume: archive, segment: ${SEGMENT} s, file: "yard/%Y/%m-%d/é'%H-%M-%S%z 100%%.mkv"}
  yard-live: {stream: yard-live, volume: archive, segment: ${SEGMENT} s, file: "yard-live/%s.ts"}
  all-in-one: {stream: yard, volume: archive, segment: ${SEGMENT} s, file: "all in one/%Y.mkv"}
`;

const VOLUME = 'archive 100% "full"';

describe('units that are made for a server, run on it', function () {
  const place = new Place();
  const film = join(place.folder, 'film.mkv');
  let plan: Plan;
  let lab: Lab;
  let server: Server;
  let made: Made;
  /** A checksum of each picture of the film, in order. */
  let order: readonly string[];
  let frames: ReadonlySet<string>;
  const services = new Map<string, Service>();

  before(async function () {
    const reason = (await whyNoLab()) ?? (await whyNoCameras('setpriv'));
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
    const once = join(place.folder, 'once.mkv');
    await makeClip(once, { seconds: 30, frameRate: FRAME_RATE, keyframeEvery: 2, videoRate: 1_000_000, sound: true });
    await repeat(once, TIMES, film);
    const played = await framesOf(once);
    order = Array.from({ length: TIMES }, () => played).flat();
    frames = new Set(order);
    plan = planFrom({ 'relays.site.yaml': SITE });
    made = together([relays.make(plan), recorders.make(plan)]);
    assert.deepEqual(made.refused, []);
    lab = new Lab(plan);
    await lab.build();
    const access = join(place.folder, 'access');
    writeFileSync(access, `${USER}\n${PASSWORD}\n`);
    startCamera('paddock-cam', ['--access', access]);
    // A receiver that joins the multicast has not seen the description, and still needs the parameter sets.
    startCamera('yard-cam', ['--described-only']);
    server = new Server(lab, host('recorder'));
    server.install(made.files);
    server.credentials('paddock-cam', `${USER}\n${PASSWORD}\n`);
    server.volume(VOLUME);
    const folders = server.start('plumbline-folders.service');
    await until(
      () => existsSync(join(server.root, 'srv', VOLUME, 'yard')),
      () => folders.output,
    );
    for (const name of new Set(made.files.filter(isService).map(({ path }) => path.slice('recorder/'.length))))
      services.set(name, server.start(name));
  });

  after(async () => {
    await server?.stop();
    lab?.end();
    place.clear();
  });

  function host(name: string): Device {
    return plan.site.deviceByName.get(name) ?? assert.fail(`no ${name}`);
  }

  function startCamera(name: string, options: readonly string[]): void {
    lab.start(host(name), PYTHON, [CAMERA, film, '8554', ...options]);
  }

  function service(name: string): Service {
    return services.get(`plumbline-${name}.service`) ?? assert.fail(`no ${name}`);
  }

  function filesOf(recording: string): string[] {
    const folder = join(server.root, 'srv', VOLUME, recording);
    if (!existsSync(folder)) return [];
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(mp4|mkv|ts)$/.test(path))
      .map((path) => join(folder, path))
      .sort();
  }

  const FOLDERS = ['paddock $HOME', 'yard', 'yard-live'];

  /** Waits until each recording has so many files; all but the last of each are then complete. */
  async function recorded(files: number, since = new Set<string>()): Promise<void> {
    const fresh = (folder: string): number => filesOf(folder).filter((path) => !since.has(path)).length;
    await until(
      () => FOLDERS.every((folder) => fresh(folder) >= files),
      () => `${FOLDERS.map((folder) => `${folder}: ${fresh(folder)}`).join(', ')}\n${said()}`,
    );
  }

  function said(): string {
    return [...services].map(([name, { output, starts }]) => `${name} (${starts}): ${output.slice(-600)}`).join('\n');
  }

  it('lets a screen that joins later decode what the camera sends, frame by frame', async () => {
    await recorded(1);
    const folder = join(place.folder, 'screen');
    const files = sdp.make(plan).files;
    for (const [name, input] of [
      ['paddock-live', descriptionOf(files, 'paddock-live', folder)],
      ['yard-live-rtp', descriptionOf(files, 'yard-live-rtp', folder)],
      ['yard-live', ['-i', 'udp://239.192.20.32:5004?localaddr=192.168.20.61&timeout=5000000']],
    ] as const) {
      const screen = lab.start(host('kitchen-screen'), 'ffmpeg', [
        '-nostdin',
        '-loglevel',
        'fatal',
        ...input,
        '-map',
        '0:v',
        '-frames:v',
        String(PICTURES),
        '-f',
        'framemd5',
        '-',
      ]);
      assert.equal(await screen.ended, 0, screen.output);
      const seen = screen.output
        .split('\n')
        .filter((line) => /^\d/.test(line))
        .map((line) => line.split(',').at(-1)?.trim() ?? '');
      assert.equal(seen.length, PICTURES, `${name}: ${screen.output}`);
      assert.deepEqual(
        seen.filter((picture) => !frames.has(picture)),
        [],
        `${name} shows pictures that the camera never sent`,
      );
    }
  });

  it('sends audio as the site declares it anew', async () => {
    const input = descriptionOf(sdp.make(plan).files, 'paddock-live', join(place.folder, 'sound'));
    const probe = lab.start(host('kitchen-screen'), 'ffprobe', [
      '-loglevel',
      'fatal',
      '-select_streams',
      'a',
      '-show_entries',
      'stream=codec_name,sample_rate,channels',
      '-of',
      'csv=p=0',
      ...input,
    ]);
    assert.equal(await probe.ended, 0, probe.output);
    assert.match(probe.output, /^aac,48000,2$/m);
  });

  it('tells nobody the password: not the process list, the environment, a file of the unit or what is said', async () => {
    await until(() => service('relay-paddock-live').commandLine[0] === '/usr/bin/ffmpeg', said);
    const secrets = [PASSWORD, encodeURIComponent(PASSWORD), 'w%2Fo%20rd'];
    const seen: string[] = [];
    let looked = 0;
    for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
      for (const what of ['cmdline', 'environ']) {
        const text = readIfThere(`/proc/${pid}/${what}`);
        // The camera of this test gets it from us.
        if (text.includes(CAMERA)) continue;
        looked++;
        if (secrets.some((secret) => text.includes(secret))) seen.push(`${pid} ${what}: ${text.replaceAll('\0', ' ')}`);
      }
    }
    assert.deepEqual(seen, []);
    assert.ok(looked > 10);
    for (const { text } of made.files) assert.ok(!secrets.some((secret) => text.includes(secret)));
  });

  // Many cameras lock out a client that they refuse a few times in a row (common practice).
  it('leaves a camera in peace for a minute that refuses the password', async () => {
    server.credentials('paddock-cam', `${USER}\nanother\n`);
    const asking = server.start('plumbline-relay-paddock-live.service');
    await until(
      () => asking.output.includes('is asked again in a minute'),
      () => asking.output,
    );
    await sleep(6000);
    assert.equal(asking.starts, 2, asking.output);
    await asking.stop();
    assert.match(asking.output, /401 Unauthorized/);
    assert.ok(!asking.output.includes('another@'), asking.output);
    server.credentials('paddock-cam', `${USER}\n${PASSWORD}\n`);
  });

  it('names files by the clock of the site, when they are opened', async () => {
    await recorded(3);
    const names = { 'paddock': 'paddock $HOME', 'yard': 'yard', 'yard-live': 'yard-live' };
    for (const [name, folder] of Object.entries(names)) {
      const pattern = plan.site.recordingByName.get(name)?.file ?? '';
      const read = fileNames(pattern, ZONE);
      for (const path of filesOf(folder)) {
        const below = relative(join(server.root, 'srv', VOLUME), path);
        const [instant = 0] = read.read(below)?.instants ?? [];
        const { birthtimeMs } = statSync(path);
        // The name is made just before the file, in whole seconds.
        if (birthtimeMs > 0)
          assert.ok(
            birthtimeMs - instant > -100 && birthtimeMs - instant < 2500,
            `${below}: opened ${birthtimeMs - instant} ms later`,
          );
        assert.equal(statSync(path).mode & 0o777, 0o440, 'nobody else may look, and nobody writes over it');
      }
    }
  });

  it('begins a file every so many seconds, and loses no picture between them', async () => {
    await recorded(4);
    for (const folder of FOLDERS) {
      const whole = filesOf(folder).slice(1, -1);
      for (const path of whole) {
        const count = (await framesOf(path)).length;
        // By the clock, to the next keyframe: a keyframe interval more or less.
        assert.ok(Math.abs(count - SEGMENT * FRAME_RATE) <= 2 * FRAME_RATE, `${path}: ${count} pictures`);
      }
      const joined = (await Promise.all(whole.map(framesOf))).flat();
      const first = order.indexOf(joined[0] ?? '');
      assert.deepEqual(
        joined,
        order.slice(first, first + joined.length),
        `${folder} is the film from picture ${first} on`,
      );
    }
  });

  it('goes on recording when a camera is unplugged and plugged in again, and overwrites nothing', async () => {
    const past = FOLDERS.flatMap((folder) => filesOf(folder).slice(0, -1));
    const all = new Set(FOLDERS.flatMap(filesOf));
    const before = new Map(past.map((path) => [path, hashOf(path)]));
    const begun = new Map([...services].map(([name, each]) => [name, each.starts]));
    for (const camera of ['paddock-cam', 'yard-cam']) await unplug(camera, 'down');
    await until(() => [...services].every(([name, { starts }]) => starts > (begun.get(name) ?? 0)), said);
    const gone = new Set(FOLDERS.flatMap(filesOf));
    for (const camera of ['paddock-cam', 'yard-cam']) await unplug(camera, 'up');
    await recorded(3, gone);
    for (const [path, hash] of before) assert.equal(hashOf(path), hash, path);
    for (const path of all) assert.ok(existsSync(path), path);
    const unreadable: string[] = [];
    for (const path of FOLDERS.flatMap((folder) => filesOf(folder).slice(0, -1)).filter((each) => !before.has(each)))
      if ((await framesOf(path)).some((picture) => !frames.has(picture))) unreadable.push(path);
    assert.deepEqual(unreadable, []);
    assert.ok(!said().includes('w%2Fo'), said());
  });

  async function unplug(camera: string, how: 'down' | 'up'): Promise<void> {
    const cable = lab.start(host(camera), 'sh', [
      '-c',
      `for i in /sys/class/net/*; do i=\${i##*/}; [ $i = lo ] || ip link set $i ${how}; done; ip route show`,
    ]);
    assert.equal(await cable.ended, 0, cable.output);
  }

  it('overwrites no file even where names come again: that one is tried again later, and all else goes on', async () => {
    // No site without errors has such names: the rule file-name-collision reports them.
    const [path = '', ...others] = filesOf('all in one');
    assert.deepEqual(others, []);
    assert.match(service('ingest-yard').output, /Failed to open segment '[^']*\/all in one\//);
    assert.ok((await framesOf(path)).length >= FRAME_RATE);
    const { birthtimeMs, mtimeMs } = statSync(path);
    const next = filesOf('yard').filter((other) => statSync(other).birthtimeMs > birthtimeMs + 3 * SEGMENT * 1000);
    assert.ok(next.length > 0 && mtimeMs < birthtimeMs + 3 * SEGMENT * 1000, 'it has not been written to since');
  });

  it('leaves a file that plays up to the last keyframes when it is killed', async () => {
    for (const [name, folder] of [
      ['record-paddock', 'paddock $HOME'],
      ['ingest-yard', 'yard'],
    ] as const) {
      const files = filesOf(folder).length;
      await until(() => filesOf(folder).length > files, said);
      const path = filesOf(folder).at(-1) ?? '';
      // Two keyframes on: what came before the second is there.
      await until(() => statSync(path).size > 250_000, said);
      service(name).kill();
      assert.ok((await framesOf(path)).length >= FRAME_RATE, path);
    }
  });
});

function isService({ path }: MadeFile): boolean {
  return path.endsWith('.service') && !path.endsWith('plumbline-folders.service');
}

function descriptionOf(files: readonly MadeFile[], name: string, folder: string): string[] {
  const server = new URL(`file://${folder}-${name}.sdp`);
  const text = files.find(({ path }) => path === `${name}.sdp`)?.text ?? assert.fail(`no ${name}.sdp`);
  writeFileSync(server, text);
  return ['-protocol_whitelist', 'file,rtp,udp', '-localaddr', '192.168.20.61', '-i', fileURLToPath(server)];
}

/** A checksum of each picture. */
async function framesOf(path: string): Promise<string[]> {
  const out = await run('ffmpeg', [
    '-nostdin',
    '-loglevel',
    'error',
    '-i',
    `file:${path}`,
    '-map',
    '0:v',
    '-fps_mode',
    'passthrough',
    '-f',
    'framemd5',
    '-',
  ]);
  return out
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').at(-1)?.trim() ?? '');
}

function hashOf(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

function readIfThere(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    // The process has ended meanwhile.
    return '';
  }
}
