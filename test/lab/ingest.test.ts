/**
 * A unit by which a server pulls a camera once, to re-send and to record it, run unchanged on a host of the lab:
 * the disk fills and is emptied again, a card has no address, a receiver is off.
 */

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, describe, it } from 'mocha';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import { recorders } from '../../server/src/make/media/recorders.ts';
import { relays } from '../../server/src/make/media/relays.ts';
import { type Made, together } from '../../server/src/make/output.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device } from '../../server/src/site/model.ts';
import { unavailable } from '../availability.ts';
import { Server, type Service } from '../rehearsal/service.ts';
import { interfaceOf } from './addresses.ts';
import { PYTHON, whyNoCameras } from './cameras.ts';
import { makeClip, repeat } from './clip.ts';
import { planFrom } from './family.ts';
import type { HostProgram } from './host-program.ts';
import { Lab } from './lab.ts';
import { Place } from './place.ts';
import { whyNoLab } from './probe.ts';
import { run, runAnyway } from './run.ts';
import { until } from './until.ts';

const CAMERA = fileURLToPath(new URL('./camera.py', import.meta.url));
const FRAME_RATE = 20;
/** How often the film is played: for longer than the tests take. */
const TIMES = 20;
const SEGMENT = 2;
const FOLDERS = ['gate', 'briefly'];

/** Both recordings fill it in a quarter of a minute. */
const DISK = '4m';

const SITE = `
site: {name: Harrow Lane, timezone: Europe/London}
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    address: 192.168.20.2
    igmp-snooping: true
    unregistered-multicast: drop
    ports: {1-3: {vlan: video}, 4-5: {vlan: house}}
  recorder:
    kind: server
    ports: {cams: {address: 192.168.20.5}, lan: {address: 192.168.10.5}}
    routes: [{to: 224.0.0.0/4, port: cams}]
  gate-cam: {kind: camera, address: 192.168.20.31}
  kitchen-screen: {kind: display, address: 192.168.20.61}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: recorder/cams}
  - {from: core/2, to: gate-cam}
  - {from: core/3, to: kitchen-screen}
  - {from: core/4, to: recorder/lan}
  - {from: core/5, to: office-pc}
streams:
  gate:
    source: gate-cam
    transport: rtsp
    port: 8554
    path: /camera
    video: {codec: h264, frame-rate: ${FRAME_RATE}, bitrate: 1 Mb/s, keyframe-interval: 2 s}
    audio: {codec: pcma, bitrate: 64 kb/s, sample-rate: 8 kHz, channels: 1}
    receivers: [recorder]
  gate-live:
    source: recorder
    carries: gate
    transport: rtp
    group: 239.192.20.31
    port: 5004
    audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 kHz, channels: 2}
    receivers: [kitchen-screen]
  gate-office:
    source: recorder
    carries: gate
    transport: ts-udp
    port: 5004
    audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 kHz, channels: 2}
    receivers: [office-pc]
volumes:
  archive: {host: recorder, capacity: 1 TB, path: /srv}
recordings:
  gate: {stream: gate, volume: archive, segment: ${SEGMENT} s, file: "gate/%Y-%m-%d_%H-%M-%S%z.mkv"}
  briefly: {stream: gate, volume: archive, segment: ${SEGMENT} s, file: "briefly/%s.mkv"}
`;

describe('a stream that a server takes in once, for several things', function () {
  const place = new Place();
  const film = join(place.folder, 'film.mkv');
  let plan: Plan;
  let lab: Lab;
  let server: Server;
  let made: Made;
  let service: Service;
  let screen: HostProgram;
  /** A checksum of each picture of the film, in order. */
  let frames: readonly string[];
  let unmount = (): void => undefined;

  before(async function () {
    const reason = (await whyNoLab()) ?? (await whyNoCameras('setpriv', 'ss'));
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
    const once = join(place.folder, 'once.mkv');
    await makeClip(once, { seconds: 30, frameRate: FRAME_RATE, keyframeEvery: 2, videoRate: 1_000_000, sound: true });
    await repeat(once, TIMES, film);
    const played = await framesOf(once);
    frames = Array.from({ length: TIMES }, () => played).flat();
    plan = planFrom({ 'ingest.site.yaml': SITE });
    made = together([relays.make(plan), recorders.make(plan)]);
    assert.deepEqual(made.refused, []);
    lab = new Lab(plan);
    await lab.build();
    await lab.start(host('gate-cam'), PYTHON, [CAMERA, film, '8554']).says('ready');
    server = new Server(lab, host('recorder'));
    const disk = join(server.root, 'srv');
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${DISK},mode=0777`, 'none', disk]);
    unmount = () => runAnyway('umount', ['--lazy', disk]);
    server.install(made.files);
    await onHost('office-pc', `ip link set ${portOf('office-pc')} down`);
    screen = lab.start(host('kitchen-screen'), 'ffmpeg', [
      ...PLAYER,
      ...described('gate-live', '192.168.20.61'),
      ...PICTURES,
    ]);
    service = server.start('plumbline-ingest-gate.service');
    // It begins without the folders, as with a disk that is not there yet.
    server.start('plumbline-folders.service');
  });

  after(async () => {
    await server?.stop();
    unmount();
    lab?.end();
    place.clear();
  });

  const PLAYER = ['-nostdin', '-loglevel', 'fatal'];
  const PICTURES = ['-map', '0:v', '-fps_mode', 'passthrough', '-flush_packets', '1', '-f', 'framemd5', '-'];

  function host(name: string): Device {
    return plan.site.deviceByName.get(name) ?? assert.fail(`no ${name}`);
  }

  function portOf(device: string, name = 'eth'): string {
    return interfaceOf(
      host(device).ports.find((port) => port.name === name) ?? assert.fail(`${device} has no ${name}`),
    );
  }

  async function onHost(device: string, script: string): Promise<string> {
    const shell = lab.start(host(device), 'sh', ['-ec', script]);
    assert.equal(await shell.ended, 0, shell.output);
    return shell.output;
  }

  function described(stream: string, address: string): string[] {
    const path = join(place.folder, `${stream}.sdp`);
    writeFileSync(
      path,
      sdp.make(plan).files.find((file) => file.path === `${stream}.sdp`)?.text ?? assert.fail(`no ${stream}.sdp`),
    );
    return ['-protocol_whitelist', 'file,rtp,udp', '-localaddr', address, '-i', path];
  }

  const shown = (player: HostProgram): string[] => picturesIn(player.output);
  const said = (): string =>
    `${service.starts} starts, ${shown(screen).length} pictures, ${FOLDERS.map((folder) => filesOf(folder).length).join(' + ')} files\n${service.output.slice(-1500)}`;

  function filesOf(folder: string): string[] {
    const path = join(server.root, 'srv', folder);
    mkdirSync(path, { recursive: true });
    return readdirSync(path)
      .map((name) => join(path, name))
      .sort();
  }

  /** Waits until the screen has shown so many seconds more. */
  async function showsOn(seconds: number): Promise<void> {
    const goal = shown(screen).length + seconds * FRAME_RATE;
    await until(() => shown(screen).length >= goal, said);
  }

  async function connections(): Promise<number> {
    const open = await onHost('gate-cam', 'ss --no-header --tcp --numeric state established "( sport = :8554 )"');
    return open.split('\n').filter((line) => line.trim() !== '').length;
  }

  it('has one unit', () => {
    const units = new Set(made.files.map(({ path }) => path).filter((path) => path.endsWith('.service')));
    assert.deepEqual([...units], ['recorder/plumbline-ingest-gate.service', 'recorder/plumbline-folders.service']);
  });

  it('comes by one connection to the camera, and goes to the screen and into all recordings', async () => {
    await showsOn(3);
    await until(() => FOLDERS.every((folder) => filesOf(folder).length >= 3), said);
    assert.equal(await connections(), 1);
    for (const folder of FOLDERS) await assertFilm(filesOf(folder).slice(0, -1), folder);
  });

  /** The files, joined, are the film from one of its pictures on. */
  async function assertFilm(files: readonly string[], what: string): Promise<void> {
    const joined = (await Promise.all(files.map(framesOf))).flat();
    assert.ok(joined.length >= FRAME_RATE, `${what}: ${joined.length} pictures`);
    const first = frames.indexOf(joined[0] ?? '');
    assert.deepEqual(
      joined,
      frames.slice(first, first + joined.length),
      `${what} is the film from picture ${first} on`,
    );
  }

  it('is shown on while the disk is full, and recorded again when there is room', async () => {
    const srv = join(server.root, 'srv');
    await until(() => statfsSync(srv).bavail === 0, said);
    // Longer than FFmpeg waits until it tries again.
    await showsOn(8);
    assert.equal(statfsSync(srv).bavail, 0);
    const full = new Set(FOLDERS.flatMap(filesOf));
    for (const path of full) rmSync(path);
    await until(() => FOLDERS.every((folder) => filesOf(folder).length >= 3), said);
    for (const folder of FOLDERS) {
      // The first begins with what comes when the disk is tried again: pictures before a keyframe cannot be decoded.
      const whole = filesOf(folder).slice(1, -1);
      await assertFilm(whole, folder);
      for (const path of whole) assert.ok(!full.has(path), path);
    }
    assert.equal(service.starts, 1, 'it has not been begun anew');
    assert.equal(await connections(), 1);
    const pictures = new Set(frames);
    assert.deepEqual(
      shown(screen).filter((picture) => !pictures.has(picture)),
      [],
      'the screen shows pictures that the camera never sent',
    );
  });

  it('is shown and recorded on while another card has no address, and sent there again when it has', async () => {
    const lan = portOf('recorder', 'lan');
    for (const path of FOLDERS.flatMap(filesOf)) rmSync(path);
    await onHost('recorder', `ip address flush dev ${lan}`);
    await until(() => service.output.includes('Cannot assign requested address'), said);
    await showsOn(4);
    await until(() => FOLDERS.every((folder) => filesOf(folder).length >= 3), said);
    for (const folder of FOLDERS) await assertFilm(filesOf(folder).slice(0, -1), folder);
    await onHost('recorder', `ip address add 192.168.10.5/24 dev ${lan}`);
    await onHost('office-pc', `ip link set ${portOf('office-pc')} up`);
    const office = lab.start(host('office-pc'), 'ffmpeg', [
      ...PLAYER,
      '-i',
      'udp://192.168.10.20:5004?timeout=60000000',
      ...PICTURES,
    ]);
    await until(
      () => shown(office).length >= FRAME_RATE,
      () => `${office.output}\n${said()}`,
    );
    assert.equal(service.starts, 1);
    assert.equal(await connections(), 1);
  });

  it('ends in order when it is asked to: the last file is whole', async () => {
    for (const path of FOLDERS.flatMap(filesOf)) rmSync(path);
    await until(() => FOLDERS.every((folder) => filesOf(folder).length >= 3), said);
    await service.stop();
    for (const folder of FOLDERS) await assertFilm(filesOf(folder).slice(1), folder);
  });
});

function picturesIn(output: string): string[] {
  // The last line may be incomplete.
  return output
    .split('\n')
    .slice(0, -1)
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').at(-1)?.trim() ?? '');
}

/** A checksum of each picture. */
async function framesOf(path: string): Promise<string[]> {
  return picturesIn(
    await run('ffmpeg', [
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
    ]),
  );
}
