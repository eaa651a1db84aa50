/**
 * Harrow Lane, set up once for all examples of the rehearsal: its switches, hosts and cables as in the lab, real RTSP
 * cameras that play films, and on its server and screens nothing but what `plumbline make` writes. What is changed of
 * the sample is said in site.ts.
 *
 * The lab gives all hosts their addresses; those of the server are taken away again, and set by the script that was
 * made. Each step is taken when an example first asks for it, so that one example alone can be run by `-g`.
 */

import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plan } from '../../server/src/plan.ts';
import type { Device, Stream } from '../../server/src/site/model.ts';
import { formatAddress } from '../../server/src/standards/ipv4.ts';
import { plumbline } from '../cli/run.ts';
import { interfaceOf } from '../lab/addresses.ts';
import { PYTHON } from '../lab/cameras.ts';
import { planOfStreams } from '../lab/family.ts';
import type { HostProgram } from '../lab/host-program.ts';
import { Lab } from '../lab/lab.ts';
import type { Place } from '../lab/place.ts';
import { allOf, sleep } from '../lab/run.ts';
import { until } from '../lab/until.ts';
import { Counting } from './counting.ts';
import { type Film, makeFilms, makeMultiplex } from './films.ts';
import { type Outage, unplug } from './outage.ts';
import { Recorder } from './recorder.ts';
import { Screen, screensOf } from './screens.ts';
import { ACCESS, rehearsed, wiring } from './site.ts';

export const CAMERA = fileURLToPath(new URL('../lab/camera.py', import.meta.url));
const TELEVISION = ['tv-one', 'tv-two'];

/** The screen that hears announcements, and the group that those of the site's groups go to (RFC 2365 §6.2). */
const LISTENER = 'kitchen-screen';
const ANNOUNCEMENTS = '239.195.255.255';

export class House {
  /** The folder of its site. */
  readonly site: string;
  readonly plan: Plan;
  readonly lab: Lab;
  /** A folder that is gone when the house is. */
  readonly folder: string;

  /** The folder of what is made, one folder a kind. */
  readonly made = once(() => this.make());
  /** Its server with the network that was made, and nothing on it yet. */
  readonly network = once(() => this.setNetwork());
  /** A capture of the announcements that a screen hears. */
  readonly capture = once(() => this.listen());
  /** Its server, announcing, sending on and recording. */
  readonly recorder = once(() => this.record());
  /** Its screens, once they show all that is sent to them. */
  readonly screens = once(() => this.watch());
  /** Its ports, counted while screens watch. */
  readonly counting = once(async () => new Counting(this, await this.screens()));
  /** A camera has been unplugged and plugged in again. */
  readonly outage = once(async (): Promise<Outage> => unplug(this, await this.recorder()));
  /** Its server when all of that is over, and nothing is written any more. */
  readonly over = once(() => this.stop());

  private running: Recorder | undefined;

  private constructor(place: Place, site: string, plan: Plan, lab: Lab) {
    [this.folder, this.site, this.plan, this.lab] = [place.folder, site, plan, lab];
  }

  static async build(place: Place): Promise<House> {
    const [films, multiplexes] = await allOf([
      makeFilms(place.folder),
      allOf(TELEVISION.map((name) => makeMultiplex(place.folder, name))),
    ]);
    const text = rehearsed(new Map([...films].map(([name, { rate }]) => [name, rate])));
    const site = join(place.folder, 'site');
    mkdirSync(site);
    writeFileSync(join(site, 'harrow-lane.site.yaml'), text);
    const lab = new Lab(planOfStreams({ 'harrow-lane.site.yaml': wiring(text) }));
    place.atEnd(() => lab.end());
    await lab.build();
    const house = new House(place, site, planOfStreams({ 'harrow-lane.site.yaml': text }), lab);
    const cameras = [...films].map(([name, film]) => house.startCamera(house.stream(name), film));
    await allOf(cameras.map((camera) => camera.says('ready')));
    TELEVISION.forEach((name, index) => house.sendTelevision(house.stream(name), multiplexes[index] ?? ''));
    return house;
  }

  async end(): Promise<void> {
    await this.running?.stop();
  }

  host(name: string): Device {
    return this.plan.site.deviceByName.get(name) ?? assert.fail(`no ${name}`);
  }

  stream(name: string): Stream {
    return this.plan.site.streamByName.get(name) ?? assert.fail(`no ${name}`);
  }

  async onHost(device: string, script: string): Promise<string> {
    const shell = this.lab.start(this.host(device), 'sh', ['-ec', script]);
    assert.equal(await shell.ended, 0, shell.output);
    return shell.output;
  }

  private startCamera({ source = '' }: Stream, { path, codec, sound }: Film): HostProgram {
    const access = ACCESS.get(source);
    const file = join(this.folder, `access-${source}`);
    if (access !== undefined) writeFileSync(file, `${access.user}\n${access.password}\n`, { mode: 0o600 });
    return this.lab.start(this.host(source), PYTHON, [
      CAMERA,
      path,
      '554',
      '--codec',
      codec,
      ...(sound ? [] : ['--silent']),
      ...(access === undefined ? [] : ['--access', file, '--scheme', access.scheme]),
    ]);
  }

  private sendTelevision({ group = 0, port = 0, ttl, muxRate = 0, source = '' }: Stream, film: string): void {
    this.lab.start(this.host(source), 'ffmpeg', [
      '-nostdin',
      '-loglevel',
      'error',
      '-re',
      '-stream_loop',
      '-1',
      '-i',
      film,
      '-map',
      '0',
      '-c',
      'copy',
      '-f',
      'rtp_mpegts',
      '-mpegts_muxer_options',
      `muxrate=${muxRate}`,
      `rtp://${formatAddress(group)}:${port}?ttl=${ttl}&pkt_size=1328`,
    ]);
  }

  private async make(): Promise<string> {
    const folder = join(this.folder, 'made');
    for (const kind of ['iproute2', 'sdp', 'announcements', 'relays', 'recorders', 'deletion']) {
      const { status, out, err } = plumbline(['make', kind, '--site', this.site, '--out', join(folder, kind)]);
      assert.equal(status, 0, out + err);
    }
    return folder;
  }

  private async setNetwork(): Promise<void> {
    const folder = join(await this.made(), 'iproute2', 'recorder');
    const bare = this.host('recorder').ports.map((port) => {
      const name = interfaceOf(port);
      return `ip link set ${name} down; ip address flush dev ${name}; ip link set ${name} name ${port.name}`;
    });
    await this.onHost('recorder', [...bare, `sh ${folder}/set-network.sh`].join('\n'));
  }

  /** As `plumbline audit announcements --help` says. */
  private async listen(): Promise<string> {
    const capture = join(this.folder, 'announcements.pcap');
    const [at] = this.plan.network.interfaces.of(this.host(LISTENER));
    const sniffer = this.lab.start(this.host(LISTENER), 'sh', [
      '-ec',
      `
      i=$(ip -o -4 address show to ${formatAddress(at?.address ?? 0)} | cut -d' ' -f2)
      ip address add ${ANNOUNCEMENTS}/32 dev "$i" autojoin
      exec tcpdump -i "$i" --immediate-mode -U -w ${capture} igmp or udp port 9875`,
    ]);
    await sniffer.says('listening on');
    await this.joined(ANNOUNCEMENTS);
    return capture;
  }

  /** Until the switch of the server knows that somebody wants a group. */
  private async joined(group: string): Promise<void> {
    let known = '';
    // A query comes every two seconds.
    for (let tries = 0; tries < 100; tries++) {
      known = await this.lab.groups(this.host('core'));
      if (known.split(/\s+/).includes(group)) return;
      await sleep(100);
    }
    assert.fail(`nobody has joined ${group}:\n${known}`);
  }

  private async record(): Promise<Recorder> {
    await this.network();
    await this.capture();
    this.running = new Recorder(this, await this.made());
    await this.running.start();
    return this.running;
  }

  private async watch(): Promise<readonly Screen[]> {
    const recorder = await this.recorder();
    const screens = screensOf(this, join(await this.made(), 'sdp'));
    for (const { group } of this.plan.site.streams) if (group !== undefined) await this.joined(formatAddress(group));
    await until(
      () => screens.every(({ pictures, frameRate }) => pictures > 2 * frameRate),
      () => [...screens.map(({ said }) => said), recorder.said].join('\n'),
    );
    return screens;
  }

  private async stop(): Promise<Recorder> {
    await this.outage();
    const recorder = await this.recorder();
    await recorder.stop();
    return recorder;
  }
}

/** Begins work when it is first asked for, and never again. */
function once<T>(work: () => Promise<T>): () => Promise<T> {
  let begun: Promise<T> | undefined;
  return () => (begun ??= work());
}
