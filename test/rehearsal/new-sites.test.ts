/**
 * What `plumbline new` writes, rehearsed: of each layout the network, the units that send on and record, and those that
 * delete run as they are made, and screens show what they are sent. Changed of the text is only that cameras have a
 * path, and that segments are short.
 */

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import type { Device } from '../../server/src/site/model.ts';
import { NEW_SITES, NEW_SITE_FILE } from '../../server/src/site/new-site/new-site.ts';
import { formatAddress } from '../../server/src/standards/ipv4.ts';
import { unavailable } from '../availability.ts';
import { plumbline } from '../cli/run.ts';
import { interfaceOf } from '../lab/addresses.ts';
import { PYTHON, whyNoCameras } from '../lab/cameras.ts';
import { planOfStreams } from '../lab/family.ts';
import { Lab } from '../lab/lab.ts';
import { Place } from '../lab/place.ts';
import { whyNoLab } from '../lab/probe.ts';
import { run } from '../lab/run.ts';
import { until } from '../lab/until.ts';
import { filesBelow } from './recorder.ts';
import { CAMERA } from './house.ts';
import { Screen } from './screens.ts';
import { Server, type Service } from './service.ts';
import { PATH, SIZE, wiring } from './site.ts';

const KINDS = ['iproute2', 'sdp', 'relays', 'recorders', 'deletion'];
const LASTING = /^plumbline-(?:ingest|relay|record)-.*\.service$/;
const FRAMES = 10;
const KEYFRAMES = 2 * FRAMES; // as the sites declare: every two seconds
/** Seconds of a recorded file. */
const SEGMENT = 4;
/** Pictures that each screen must show. */
const SHOWN = 5 * FRAMES;

for (const [layout, { text }] of Object.entries(NEW_SITES))
  describe(`what is made for the site of \`plumbline new --like ${layout}\``, function () {
    const place = new Place();
    let plan: Plan;
    let lab: Lab;
    let server: Server;
    let made: string;
    const services: Service[] = [];

    const host = (name: string): Device => plan.site.deviceByName.get(name) ?? assert.fail(`no ${name}`);
    const onServer = async (script: string): Promise<string> => {
      const shell = lab.start(host('recorder'), 'sh', ['-ec', script]);
      assert.equal(await shell.ended, 0, shell.output);
      return shell.output;
    };
    const said = (): string => services.map(({ unit, output }) => `${unit.name}: ${output.slice(-400)}`).join('\n');
    const filesOf = (recording: string): string[] => {
      const folder = join(server.root, 'srv', 'archive', recording);
      return readdirSync(folder).map((name) => join(folder, name));
    };

    before(async function () {
      const reason = (await whyNoLab()) ?? (await whyNoCameras('setpriv'));
      if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
      const written = text('Etc/UTC')
        .replaceAll('port: 554\n', `port: 554\n    path: ${PATH}\n`)
        .replaceAll('segment: 60 s', `segment: ${SEGMENT} s`);
      const site = join(place.folder, 'site');
      mkdirSync(site);
      writeFileSync(join(site, NEW_SITE_FILE), written);
      plan = planOfStreams({ [NEW_SITE_FILE]: written });
      made = join(place.folder, 'made');
      for (const kind of KINDS) {
        const { status, out, err } = plumbline(['make', kind, '--site', site, '--out', join(made, kind)]);
        assert.equal(status, 0, out + err);
      }
      lab = new Lab(planOfStreams({ [NEW_SITE_FILE]: wiring(written) }));
      place.atEnd(() => lab.end());
      await lab.build();
      const film = join(place.folder, 'film.mkv');
      const pictures = `testsrc2=size=${SIZE}:rate=${FRAMES}`;
      const encoding = ['-c:v', 'libx264', '-preset', 'ultrafast', '-bf', '0', '-g', String(KEYFRAMES)];
      const input = ['-nostdin', '-loglevel', 'error', '-f', 'lavfi', '-i', pictures];
      await run('ffmpeg', [...input, ...encoding, '-pix_fmt', 'yuv420p', '-t', '300', film]);
      const cameras = plan.site.devices.filter(({ kind }) => kind === 'camera');
      for (const camera of cameras)
        await lab.start(camera, PYTHON, [CAMERA, film, '554', '--codec', 'h264', '--silent']).says('ready');
    });

    after(async () => {
      // None is to start again once all that runs there is ended with the place.
      const stopped = server?.stop();
      place.clear();
      await stopped;
    });

    it('is the network of the server', async () => {
      const folder = join(made, 'iproute2', 'recorder');
      const bare = host('recorder').ports.map((port) => {
        const name = interfaceOf(port);
        return `ip link set ${name} down; ip address flush dev ${name}; ip link set ${name} name ${port.name}`;
      });
      await onServer([...bare, `sh ${folder}/set-network.sh`].join('\n'));
      assert.match(await onServer(`sh ${folder}/check-network.sh`), /recorder: all is as planned/);
    });

    it('records each camera in segments', async () => {
      server = new Server(lab, host('recorder'));
      for (const kind of ['relays', 'recorders', 'deletion']) server.install(filesBelow(join(made, kind)));
      server.volume('archive');
      await server.finish('plumbline-folders.service');
      for (const name of server.unitNames.filter((each) => LASTING.test(each))) services.push(server.start(name));
      assert.equal(services.length, 2, 'one to each camera');
      const { recordings } = plan.site;
      assert.equal(recordings.length, 2);
      // The second of three is whole: it begins and ends at a keyframe.
      await until(() => recordings.every(({ name }) => filesOf(name).length >= 3), said);
      for (const { name } of recordings) {
        const [, second = ''] = filesOf(name).sort();
        const length = ['-show_entries', 'format=duration', '-of', 'csv=p=0'];
        const seconds = Number(await run('ffprobe', ['-v', 'error', ...length, second]));
        assert.ok(Math.abs(seconds - SEGMENT) <= KEYFRAMES / FRAMES, `${second}: ${seconds} s`);
      }
    });

    it('shows each screen what it is sent', async () => {
      const screens = plan.network.deliveries.flatMap(({ stream, reaches }) =>
        stream.transport === 'rtsp'
          ? []
          : reaches.map((name) => {
              const [at] = plan.network.interfaces.of(host(name));
              const description = join(made, 'sdp', `${stream.name}.sdp`);
              const address = formatAddress(at?.address ?? 0);
              return new Screen(lab, host(name), { stream, frameRate: FRAMES, description, address });
            }),
      );
      assert.ok(screens.length > 0);
      await until(
        () => screens.every(({ pictures }) => pictures >= SHOWN),
        () => [...screens.map((screen) => screen.said), said()].join('\n'),
      );
    });

    it('deletes what is older than it is kept, and nothing else', async () => {
      const [old = '', ...others] = filesOf('gate').sort();
      const kept = plan.site.recordingByName.get('gate')?.keep ?? assert.fail('gate is kept for a time');
      const then = (Date.now() - kept) / 1000 - 3600;
      utimesSync(old, then, then);
      const [name = ''] = server.unitNames.filter((each) => /^plumbline-delet.*\.service$/.test(each));
      await server.finish(name);
      const left = filesOf('gate');
      assert.ok(!left.includes(old), `${old} is gone`);
      for (const other of others) assert.ok(left.includes(other) && statSync(other).size >= 0, `${other} is there`);
      assert.ok(readFileSync(others[0] ?? '').length > 0);
    });
  });
