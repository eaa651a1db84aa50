import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { deletion } from '../../../server/src/make/media/deletion.ts';
import { recorders } from '../../../server/src/make/media/recorders.ts';
import { relays } from '../../../server/src/make/media/relays.ts';
import type { Made } from '../../../server/src/make/output.ts';
import { format } from '../../../server/src/standards/strftime.ts';
import { unavailable } from '../../availability.ts';
import { Unit } from '../../rehearsal/unit.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, inFolder, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { loadedBySystemd } from './real-systemd.ts';

const harrowLane = planOfTexts(sampleTexts('harrow-lane'));

const NETWORK = `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  kitchen-screen: {kind: display, address: 192.168.20.61}
  hall-screen: {kind: display, address: 192.168.20.62}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: paddock-cam}
  - {from: core/3, to: kitchen-screen}
  - {from: core/4, to: hall-screen}
`;

/** A camera, a stream that carries it, and what else is said. */
function withStreams(live: string, { paddock = '', rest = '' } = {}): ReturnType<typeof planOfText> {
  return planOfText(`${NETWORK}
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, keyframe-interval: 2 s}, receivers: [recorder]${paddock}}
  live: {source: recorder, carries: paddock, port: 5004, ${live}}
${rest}`);
}

function recording(said: string, volume = ''): Made {
  return recorders.make(withStreams('transport: rtp, group: 239.192.20.31, receivers: [recorder]', {
    rest: `
volumes:
  archive: {host: recorder, capacity: 8 TB${volume}}
recordings:
  paddock: {stream: paddock, volume: archive, ${said}}
`,
  }));
}

const unitOf = (made: Made, name: string): Unit => new Unit(name, fileOf(made, `recorder/${name}`));
const commandOf = (made: Made, name: string): string => unitOf(made, name).commands('ExecStart').map((words) => words.join(' ')).join('\n');
const RELAY = 'plumbline-relay-live.service';
const RECORD = 'plumbline-record-paddock.service';

describe('make relays', () => {
  it('sends each camera of the sample on, and refuses RTSP, which FFmpeg does not serve', () => {
    const made = relays.make(harrowLane);
    assert.equal(made.files.length, 8);
    assert.match(made.refused.map(({ message }) => message).join('\n'), /^recorder cannot send gate-office by RTSP/);
    const command = commandOf(made, 'plumbline-relay-paddock-live.service');
    // RTP on the even port, sound on the next pair (RFC 3550 §11); dynamic payload types (RFC 3551 §3).
    assert.match(command, /-c:v copy .*-payload_type 96 -f rtp rtp:\/\/239\.192\.20\.41:5004\?rtcpport=5005&ttl=1&localaddr=192\.168\.20\.5&pkt_size=1412/);
    assert.match(command, /-c:a aac -b:a 96000 -ar 48000 -ac 2 -payload_type 97 -f rtp rtp:\/\/239\.192\.20\.41:5006\?/);
  });

  it('makes one stream, or those of one server', () => {
    assert.deepEqual(relays.make(harrowLane, 'yard-live').files.map(({ path }) => path), ['recorder/plumbline-relay-yard-live.service']);
    assert.equal(relays.make(harrowLane, 'recorder').files.length, 8);
    assert.ok(relays.subjects(harrowLane).includes('recorder'));
  });

  it('sends a transport stream in whole packets, at the rate that is declared, as far as is said', () => {
    const command = commandOf(relays.make(withStreams('transport: ts-udp, group: 239.192.20.31, ttl: 4, mux-rate: 8 Mb/s, receivers: [kitchen-screen]')), RELAY);
    // Seven packets of 188 bytes: RFC 2250 §2 asks for whole ones.
    assert.match(command, /-muxrate 8000000 -f mpegts udp:\/\/239\.192\.20\.31:5004\?ttl=4&localaddr=192\.168\.20\.5&pkt_size=1316$/);
    const inRtp = commandOf(relays.make(withStreams('transport: ts-rtp, group: 239.192.20.31, packet-size: 1000 B, receivers: [kitchen-screen]')), RELAY);
    assert.match(inRtp, /-f rtp_mpegts rtp:\/\/239\.192\.20\.31:5004\?rtcpport=5005&ttl=1&localaddr=192\.168\.20\.5&pkt_size=952$/);
  });

  it('sends a copy to each receiver where there is no group', () => {
    const command = commandOf(relays.make(withStreams('transport: ts-udp, receivers: [kitchen-screen, hall-screen]')), RELAY);
    assert.match(command, /udp:\/\/192\.168\.20\.61:5004\?localaddr=192\.168\.20\.5&pkt_size=1316 .*udp:\/\/192\.168\.20\.62:5004\?/);
  });

  it('copies sound that is the same, and refuses what FFmpeg does not send', () => {
    const sound = (camera: string, live: string): Made =>
      relays.make(withStreams(`transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]${live}`, { paddock: `, audio: {codec: ${camera}, sample-rate: 8 kHz, channels: 1}` }));
    assert.match(commandOf(sound('pcma', ''), RELAY), /-map 0:a:0 -c:a copy -payload_type 8 /);
    assert.match(sound('ac3', '').refused[0]?.message ?? '', /does not send ac3 in RTP/);
    const video = relays.make(withStreams('transport: rtp, group: 239.192.20.31, video: {codec: h265}, receivers: [kitchen-screen]'));
    assert.match(video.refused[0]?.message ?? '', /copied as it is/);
  });

  it('takes user and password from a credential, and says where it belongs', () => {
    const made = relays.make(withStreams('transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]', { paddock: ', credentials: barn' }));
    const unit = unitOf(made, RELAY);
    assert.deepEqual(unit.all('Service', 'LoadCredential'), ['barn:/etc/plumbline/credentials/barn']);
    assert.match(unit.commands('ExecStart')[0]?.join(' ') ?? '', /^\/usr\/local\/lib\/plumbline\/with-credentials barn rtsp:\/\/192\.168\.20\.31:554\/ .* -f concat -safe 0 -i pipe:3 /);
    assert.match(made.notes.join('\n'), /credentials\/barn must hold the user/);
    assert.ok(made.files.some(({ path, executable }) => path === 'recorder/lib/with-credentials' && executable === true));
  });
});

describe('make recorders', () => {
  it('records every recording of the sample, its own stream by way of the description that it brings along', () => {
    const made = recorders.make(harrowLane);
    assert.deepEqual(made.refused, []);
    assert.equal(made.files.filter(({ path }) => path.includes('plumbline-record-')).length, harrowLane.site.recordings.length);
    assert.ok(made.files.some(({ path }) => path === 'recorder/sdp/paddock-live.sdp'));
    const unit = unitOf(made, RECORD);
    assert.equal(unit.environment()['TZ'], 'Europe/London');
    assert.equal(unit.commands('ExecStart')[0]?.at(-1), '/srv/archive/paddock/%Y-%m-%d_%H-%M-%S%z.mp4');
    assert.match(made.notes.join('\n'), /privacy law/);
  });

  it('says of a camera that it is asked twice, to record it and to send it on, where the plan has it once', () => {
    const note = /^recorders: recorder asks gate-cam for gate by a connection of its own to record it, beside the one by which it sends gate-live and gate-office, .* or keep 9\.\d+ Mb\/s more free\.$/m;
    assert.match(recorders.make(harrowLane).notes.join('\n'), note);
    assert.match(recorders.make(harrowLane, 'gate').notes.join('\n'), note);
    // That is recorded as it is sent on; and this is sent on by nobody.
    for (const name of ['paddock', 'hayloft']) assert.doesNotMatch(recorders.make(harrowLane, name).notes.join('\n'), /a connection of its own/);
  });

  it('makes folders that bear the date a day ahead', () => {
    const made = recording('segment: 60 s, file: "paddock/%Y/%m-%d/%H-%M-%S.mkv"');
    assert.deepEqual(unitOf(made, 'plumbline-folders.service').commands('ExecStart'), [['/usr/local/lib/plumbline/make-folders', '/srv/archive', 'paddock/%Y/%m-%d']]);
    assert.ok(made.files.some(({ path }) => path === 'recorder/plumbline-folders.timer'));
    assert.ok(!recording('segment: 60 s, file: "paddock/%s.mkv"').files.some(({ path }) => path.includes('folders.')));
  });

  it('refuses what cannot be kept so, where it stands', () => {
    const refused = (said: string, volume = ''): string => recording(said, volume).refused.map(({ message }) => message).join('\n');
    assert.match(refused('segment: 60 s, file: "%s"'), /End them in \.mp4, \.mkv or \.ts/);
    assert.match(refused('segment: 500 ms, file: "%s.mkv"'), /Take 1 s or more/);
    assert.match(refused('segment: 60 s, file: "../%s.mkv"'), /leads out of the volume/);
    assert.match(refused('segment: 60 s, file: "%Q%s.mkv"'), /strftime knows no %Q/);
    assert.match(refused('segment: 60 s, file: "100 % %s.mkv"'), /stands for itself only as %%/);
    assert.match(refused('segment: 60 s, file: "%M/%s.mkv"'), /a folder for each minute/);
    assert.match(refused('segment: 60 s, file: "%D/%s.mkv"'), /brings slashes along/);
    assert.match(refused('segment: 60 s, file: "a\\nb%s.mkv"'), /control character/);
    assert.match(refused('segment: 60 s, file: "%s.mkv"', `, path: "/srv/\\"a'"`), /quotes of both kinds/);
    assert.match(refused('segment: 60 s, file: "%s.mkv"', ', path: /srv/../etc'), /\.\. in it/);
    assert.match(refused('file: "%s.mkv"'), /how long its files are/);
    const lawful = recorders.make(withStreams('transport: rtp, group: 239.192.20.31, receivers: [recorder]', {
      paddock: ', audio: {codec: pcma}',
      rest: 'volumes: {archive: {host: recorder, capacity: 8 TB}}\nrecordings: {paddock: {stream: paddock, volume: archive, segment: 60 s, file: "%s.mp4"}}',
    }));
    assert.match(lawful.refused[0]?.message ?? '', /pcma, which an \.mp4 file does not take/);
  });
});

describe('units of relays, recorders and deletion', function () {
  this.timeout(120_000);

  before(function () {
    if (spawnSync('systemd-analyze', ['--version']).status !== 0) unavailable(this, 'systemd-analyze is not installed');
  });

  it('of the sample are taken by systemd without complaint, and read by the rehearsal as by systemd', () => {
    const made = [relays, recorders, deletion].flatMap((output) => output.make(harrowLane).files).filter(({ path }) => path.endsWith('.service'));
    const checked = made.filter(({ path }) => /paddock-live|paddock\.|seedlings|deletion/.test(path));
    assert.ok(checked.length >= 4);
    for (const { path, text } of checked) {
      const { complaints, commands } = loadedBySystemd('made.service', text);
      assert.equal(complaints, '', path);
      const unit = new Unit(path, text);
      const ours = [...unit.commands('ExecStartPre'), ...unit.commands('ExecStart')].map((words) => words.slice(1));
      assert.deepEqual(commands.map((words) => words.slice(1)), ours, path);
    }
  });

  it('hand FFmpeg the path and the pattern that the site says, whatever is in them', () => {
    let wrote = 0;
    fc.assert(
      fc.property(hostileText, hostileText, hostileText, (path, file, rtsp) => {
        const volume = `/srv/${path}`;
        const pattern = `${file}%Y-%m-%d %H-%M-%S.mkv`;
        const made = recorders.make(planOfData({
          vlans: { video: { id: 20, subnet: '192.168.20.0/24' } },
          devices: { core: { kind: 'switch', ports: { '1-2': {} } }, recorder: { kind: 'server', address: '192.168.20.5' }, cam: { kind: 'camera', address: '192.168.20.31' } },
          cables: [{ from: 'core/1', to: 'recorder' }, { from: 'core/2', to: 'cam' }],
          streams: { paddock: { source: 'cam', transport: 'rtsp', path: `/${rtsp}`, receivers: ['recorder'] } },
          volumes: { archive: { host: 'recorder', capacity: '8 TB', path: volume } },
          recordings: { paddock: { stream: 'paddock', volume: 'archive', segment: '60 s', file: pattern } },
        }));
        // Either it is made, or refused where it stands.
        if (made.files.length === 0) return assert.equal(made.refused.length, 1);
        wrote++;
        const { complaints, commands } = loadedBySystemd('hostile.service', fileOf(made, `recorder/${RECORD}`));
        assert.equal(complaints, '');
        const words = (commands.at(-1) ?? []).map((word) => word.replaceAll('$$', '$'));
        const root = volume.replace(/\/+/g, '/').replace(/(.)\/$/, '$1');
        const below = pattern.split('/').filter((part) => part !== '' && part !== '.').join('/');
        assert.equal(words.at(-1), `${root.replaceAll('%', '%%')}/${below}`);
        // What strftime makes of that is below the volume: the doubled sign is one again.
        const fields = { year: 2026, month: 11, day: 25, hour: 7, minute: 5, second: 9, offsetMinutes: 0 };
        assert.ok(format(words.at(-1) ?? '', fields).startsWith(`${root}/`));
        const url = new URL(words[words.indexOf('-i') + 1] ?? '');
        assert.equal(`${url.protocol}//${url.host}`, 'rtsp://192.168.20.31:554');
        return undefined;
      }),
      { numRuns: 60 },
    );
    assert.ok(wrote >= 10, `${wrote} were made`);
  });

  it('run scripts that shellcheck has nothing to say of, and shellcheck does speak up', async function () {
    if (spawnSync('shellcheck', ['--version']).status !== 0) unavailable(this, 'shellcheck is not installed');
    const made = recording('segment: 60 s, file: "%Y/%s.mkv"').files.filter(({ executable }) => executable === true);
    const scripts = [...made, ...relays.make(withStreams('transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]', { paddock: ', credentials: barn' })).files.filter(({ executable }) => executable === true)];
    assert.equal(scripts.length, 2);
    await inFolder([...scripts, { path: 'fault', text: '#!/bin/bash\nrm -rf $1/*\n' }], (folder) => {
      for (const { path } of scripts) assert.equal(spawnSync('shellcheck', [`${folder}/${path}`], { encoding: 'utf8' }).stdout, '');
      assert.match(spawnSync('shellcheck', [`${folder}/fault`], { encoding: 'utf8' }).stdout, /SC2086/);
    });
  });
});
