import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { deletion } from '../../../server/src/make/media/deletion.ts';
import { recorders } from '../../../server/src/make/media/recorders.ts';
import { relays } from '../../../server/src/make/media/relays.ts';
import type { Made } from '../../../server/src/make/output.ts';
import { format } from '../../../server/src/standards/strftime-format.ts';
import { zonedTime } from '../../../server/src/standards/time-zone.ts';
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
  return recorders.make(
    planOfText(`${NETWORK}
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, keyframe-interval: 2 s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB${volume}}
recordings:
  paddock: {stream: paddock, volume: archive, ${said}}
`),
  );
}

const unitOf = (made: Made, name: string): Unit => new Unit(name, fileOf(made, `recorder/${name}`));
/** Of FFmpeg, by their names without `plumbline-` and `.service`. */
const unitsOf = ({ files }: Made): string[] =>
  files.flatMap(({ path }) => /\/plumbline-((?:ingest|relay|record)-.*)\.service$/.exec(path)?.[1] ?? []).sort();
const commandOf = (made: Made, name: string): string =>
  unitOf(made, name)
    .commands('ExecStart')
    .map((words) => words.join(' '))
    .join('\n');
const RELAY = 'plumbline-relay-live.service';
const RECORD = 'plumbline-record-paddock.service';

describe('make relays', () => {
  it('sends each camera of the sample on', () => {
    const made = relays.make(harrowLane);
    assert.deepEqual(made.refused, []);
    assert.deepEqual(unitsOf(made), [
      'ingest-gate',
      'ingest-paddock-north',
      'ingest-porch',
      'ingest-seedlings',
      'ingest-stable-aisle',
      'ingest-yard',
      'relay-foaling-box-live',
      'relay-paddock-live',
    ]);
    const command = commandOf(made, 'plumbline-relay-paddock-live.service');
    // RTP on the even port, sound on the next pair (RFC 3550 §11); dynamic payload types (RFC 3551 §3).
    assert.match(
      command,
      /-c:v copy .*-payload_type 96 -f rtp rtp:\/\/239\.192\.20\.41:5004\?rtcpport=5005&ttl=1&localaddr=192\.168\.20\.5&pkt_size=1412/,
    );
    assert.match(
      command,
      /-c:a aac -b:a 96000 -ar 48000 -ac 2 .*-payload_type 97 -f rtp rtp:\/\/239\.192\.20\.41:5006\?/,
    );
  });

  it('asks for RTSP over UDP where the site says so', () => {
    const made = recorders.make(
      planOfText(`
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
  recorder: {kind: server, address: 192.168.20.5}
cables: [{from: paddock-cam, to: recorder}]
streams:
  paddock: {source: paddock-cam, transport: rtsp-udp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes: {archive: {host: recorder, capacity: 8 TB}}
recordings: {paddock: {stream: paddock, volume: archive, segment: 60 s, file: "%s.mkv"}}
`),
    );
    assert.match(made.files.map(({ text }) => text).join(''), /-rtsp_transport udp/);
  });

  it('refuses to send by RTSP, which FFmpeg does not serve, and says what it can do', () => {
    const { files, refused } = relays.make(withStreams('transport: rtsp, receivers: [kitchen-screen]'));
    assert.deepEqual(files, []);
    assert.match(
      refused[0]?.message ?? '',
      /^No unit of recorder is made for live: .* Let another program serve it, or take the transport rtp or ts-udp, by which FFmpeg sends a copy to each receiver\.$/,
    );
  });

  // systemd.exec(5): what is written to standard error goes where standard output goes, unless it is said.
  it('keeps out of the journal the descriptions that FFmpeg prints, and nothing of what it complains of', () => {
    for (const { path, text } of relays
      .make(harrowLane)
      .files.filter(({ path }) => /plumbline-(?:relay|ingest)-/.test(path))) {
      const unit = new Unit(path, text);
      assert.deepEqual(
        [unit.one('Service', 'StandardOutput'), unit.one('Service', 'StandardError')],
        ['null', 'journal'],
        path,
      );
    }
  });

  it('makes one stream, or those of one server', () => {
    assert.deepEqual(unitsOf(relays.make(harrowLane, 'paddock-live')), ['relay-paddock-live']);
    assert.deepEqual(unitsOf(relays.make(harrowLane, 'yard-live')), ['ingest-yard']);
    assert.equal(unitsOf(relays.make(harrowLane, 'recorder')).length, 8);
    assert.ok(relays.subjects(harrowLane).includes('recorder'));
  });

  it('sends a transport stream in whole packets, at the rate that is declared, as far as is said', () => {
    const command = commandOf(
      relays.make(
        withStreams('transport: ts-udp, group: 239.192.20.31, ttl: 4, mux-rate: 8 Mb/s, receivers: [kitchen-screen]'),
      ),
      RELAY,
    );
    // Seven packets of 188 bytes: RFC 2250 §2 asks for whole ones.
    assert.match(
      command,
      / -muxrate 8000000 -f mpegts udp:\/\/239\.192\.20\.31:5004\?ttl=4&localaddr=192\.168\.20\.5&pkt_size=1316$/,
    );
    const inRtp = commandOf(
      relays.make(
        withStreams('transport: ts-rtp, group: 239.192.20.31, packet-size: 1000 B, receivers: [kitchen-screen]'),
      ),
      RELAY,
    );
    assert.match(
      inRtp,
      /-f rtp_mpegts rtp:\/\/239\.192\.20\.31:5004\?rtcpport=5005&ttl=1&localaddr=192\.168\.20\.5&pkt_size=952$/,
    );
  });

  it('sends a copy to each receiver where there is no group', () => {
    const command = commandOf(
      relays.make(withStreams('transport: ts-udp, receivers: [kitchen-screen, hall-screen]')),
      RELAY,
    );
    assert.match(
      command,
      /udp:\/\/192\.168\.20\.61:5004\?localaddr=192\.168\.20\.5&pkt_size=1316 .*udp:\/\/192\.168\.20\.62:5004\?/,
    );
  });

  it('copies sound that is the same, and refuses what FFmpeg does not send', () => {
    const sound = (camera: string, live: string): Made =>
      relays.make(
        withStreams(`transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]${live}`, {
          paddock: `, audio: {codec: ${camera}, sample-rate: 8 kHz, channels: 1}`,
        }),
      );
    assert.match(commandOf(sound('pcma', ''), RELAY), /-map 0:a:0 -c:a copy .*-payload_type 8 /);
    assert.match(sound('ac3', '').refused[0]?.message ?? '', /does not send ac3 in RTP/);
    const video = relays.make(
      withStreams('transport: rtp, group: 239.192.20.31, video: {codec: h265}, receivers: [kitchen-screen]'),
    );
    assert.match(video.refused[0]?.message ?? '', /copies video here and encodes none/);
  });

  it('takes user and password from a credential, and says where it belongs', () => {
    const made = relays.make(
      withStreams('transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]', {
        paddock: ', credentials: barn',
      }),
    );
    const unit = unitOf(made, RELAY);
    assert.deepEqual(unit.all('Service', 'LoadCredential'), ['barn:/etc/plumbline/credentials/barn']);
    assert.match(
      unit.commands('ExecStart')[0]?.join(' ') ?? '',
      /^\/usr\/local\/lib\/plumbline\/with-credentials barn rtsp:\/\/192\.168\.20\.31:554\/ .* -f concat -safe 0 -i pipe:3 /,
    );
    assert.match(made.notes.join('\n'), /credentials\/barn must hold the user/);
    assert.ok(
      made.files.some(({ path, executable }) => path === 'recorder/lib/with-credentials' && executable === true),
    );
  });
});

describe('make recorders', () => {
  it('records every recording of the sample, its own stream by way of the description that it brings along', () => {
    const made = recorders.make(harrowLane);
    assert.deepEqual(made.refused, []);
    assert.equal(unitsOf(made).length, harrowLane.site.recordings.length);
    assert.ok(made.files.some(({ path }) => path === 'recorder/sdp/paddock-live.sdp'));
    const unit = unitOf(made, RECORD);
    assert.equal(unit.environment()['TZ'], 'Europe/London');
    assert.equal(unit.commands('ExecStart')[0]?.at(-1), '/srv/archive/paddock/%Y-%m-%d_%H-%M-%S%z.mp4');
    assert.match(made.notes.join('\n'), /privacy law/);
  });

  it('makes folders that bear the date a day ahead', () => {
    const made = recording('segment: 60 s, file: "paddock/%Y/%m-%d/%H-%M-%S.mkv"');
    assert.deepEqual(unitOf(made, 'plumbline-folders.service').commands('ExecStart'), [
      ['/usr/local/lib/plumbline/make-folders', '/srv/archive', 'paddock/%Y/%m-%d'],
    ]);
    assert.ok(made.files.some(({ path }) => path === 'recorder/plumbline-folders.timer'));
    assert.ok(!recording('segment: 60 s, file: "paddock/%s.mkv"').files.some(({ path }) => path.includes('folders.')));
  });

  // systemd 252, run: a unit whose disk is not there at the start is not begun, does not count as failed, and stays so.
  it('begins what waits for a disk when that is mounted later', () => {
    const made = recording('segment: 60 s, file: "%Y/%s.mkv"', ', path: "/srv/entrance hall"');
    assert.deepEqual(unitOf(made, RECORD).all('Install', 'WantedBy'), [
      'multi-user.target',
      'srv-entrance\\x20hall.mount',
    ]);
    assert.deepEqual(unitOf(made, 'plumbline-folders.service').all('Install', 'WantedBy'), [
      'srv-entrance\\x20hall.mount',
    ]);
  });

  it('makes the folders of all recordings of a server, whichever of them is asked for: they have one timer', () => {
    const folders = (subject?: string): string =>
      fileOf(recorders.make(harrowLane, subject), 'recorder/plumbline-folders.service');
    assert.equal(folders('gate'), folders());
    assert.equal(folders('gate').match(/\/srv\/(?:archive|entrance) /g)?.length, harrowLane.site.recordings.length);
  });

  it('refuses what cannot be kept so, where it stands', () => {
    const refused = (said: string, volume = ''): string =>
      recording(said, volume)
        .refused.map(({ message }) => message)
        .join('\n');
    assert.match(refused('segment: 60 s, file: "%s"'), /End them in \.mkv, \.mp4 or \.ts/);
    assert.match(refused('segment: 500 ms, file: "%s.mkv"'), /Take 1 s or more/);
    assert.match(refused('segment: 60 s, file: "../%s.mkv"'), /leads out of the volume/);
    assert.match(refused('segment: 60 s, file: "%Q%s.mkv"'), /strftime knows no %Q/);
    assert.match(refused('segment: 60 s, file: "100 % %s.mkv"'), /stands for itself only as %%/);
    assert.match(refused('segment: 60 s, file: "%M/%s.mkv"'), /a folder for each minute/);
    assert.match(refused('segment: 60 s, file: "%D/%s.mkv"'), /brings slashes along/);
    assert.match(refused('segment: 60 s, file: "a\\nb%s.mkv"'), /control character/);
    assert.match(refused('segment: 60 s, file: "%s.mkv"', `, path: "/srv/\\"a'"`), /quotes of both kinds/);
    assert.match(refused('segment: 60 s, file: "%s.mkv"', ', path: /srv/../etc'), /\.\. in it/);
    const lawful = recorders.make(
      withStreams('transport: rtp, group: 239.192.20.31, receivers: [recorder]', {
        paddock: ', audio: {codec: pcma}',
        rest: 'volumes: {archive: {host: recorder, capacity: 8 TB}}\nrecordings: {paddock: {stream: paddock, volume: archive, segment: 60 s, file: "%s.mp4"}}',
      }),
    );
    assert.match(lawful.refused[0]?.message ?? '', /pcma, which an \.mp4 file does not take/);
  });
});

// The plan counts one copy of a unicast stream to each receiver.
describe('a stream that a server takes in for several things', () => {
  const RECORDINGS = `
volumes:
  archive: {host: recorder, capacity: 8 TB, path: "/srv/archive 100% x"}
  entrance: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%s.mkv"}
  briefly: {stream: paddock, volume: entrance, segment: 10 s, file: "%s.mkv"}
`;
  const LIVE = 'transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]';
  const INGEST = 'recorder/plumbline-ingest-paddock.service';

  it('is taken in once on each server, in the sample and whatever is done with it', () => {
    const plans = [
      harrowLane,
      withStreams(LIVE, { rest: RECORDINGS }),
      withStreams(LIVE),
      withStreams('transport: ts-udp, receivers: [hall-screen]'),
    ];
    for (const plan of plans) {
      const files = [relays, recorders].flatMap((output) => output.make(plan).files);
      const asked = new Map(
        files.flatMap(({ path, text }) =>
          [...text.matchAll(/ -i (rtsp:\S+)/g)].map(([, url = '']) => [path, url] as const),
        ),
      );
      assert.ok(asked.size > 0);
      assert.equal(new Set(asked.values()).size, asked.size, [...asked].join('\n'));
    }
  });

  it('has one unit, which relays and recorders write alike, with all that belongs to it', () => {
    const plan = withStreams(LIVE, { rest: RECORDINGS });
    const [sent, written] = [relays.make(plan, 'live'), recorders.make(plan, 'briefly')];
    assert.deepEqual(unitsOf(sent), ['ingest-paddock']);
    assert.deepEqual(sent.files, written.files);
    assert.deepEqual(
      sent.files.map(({ path }) => path),
      [INGEST, 'recorder/lib/make-folders', 'recorder/plumbline-folders.service', 'recorder/plumbline-folders.timer'],
    );
    for (const { notes } of [sent, written]) {
      assert.match(
        notes.join('\n'),
        /takes paddock in once, as planned, and sends it on as live and records it as briefly and paddock\. Where plumbline-relay-live\.service, /,
      );
      assert.match(notes.join('\n'), /privacy law/);
    }
  });

  it('is the same in whichever order the site has them', () => {
    const [head = '', ...items] = RECORDINGS.split(/\n(?= {2}(?:paddock|briefly):)/);
    const turned = [head, ...items.map((item) => item.trimEnd()).reverse()].join('\n');
    assert.notEqual(turned, RECORDINGS);
    assert.equal(
      fileOf(recorders.make(withStreams(LIVE, { rest: turned })), INGEST),
      fileOf(recorders.make(withStreams(LIVE, { rest: RECORDINGS })), INGEST),
    );
  });

  it('has a queue for each that it goes to, and none waits for a disk that is missing', () => {
    const unit = new Unit('ingest', fileOf(relays.make(withStreams(LIVE, { rest: RECORDINGS })), INGEST));
    const [words = []] = unit.commands('ExecStart');
    assert.equal(words.filter((word) => word === '-i').length, 1);
    assert.deepEqual(
      words.filter((_, at) => words[at - 1] === '-fifo_format'),
      ['rtp', 'segment', 'segment'],
    );
    assert.deepEqual(unit.all('Unit', 'RequiresMountsFor'), []);
    // As systemd-escape(1) says; the sum of what is mounted above, too.
    assert.match(
      unit.all('Unit', 'After').join(' '),
      /plumbline-folders\.service srv\.mount srv-entrance\.mount srv-archive\\x20100\\x25\\x20x\.mount$/,
    );
    assert.deepEqual(unit.all('Service', 'ReadWritePaths'), ['-/srv/entrance', '"-/srv/archive 100%% x"']);
    assert.deepEqual([unit.one('Service', 'User'), unit.one('Service', 'UMask')], ['plumbline', '0227']);
  });

  it('is not shared where it is multicast, which comes once however many join it', () => {
    const made = recorders.make(
      withStreams('transport: rtp, group: 239.192.20.31, receivers: [recorder]', {
        rest: RECORDINGS.replaceAll('stream: paddock', 'stream: live'),
      }),
    );
    assert.deepEqual(unitsOf(made), ['record-briefly', 'record-paddock']);
  });

  it('is taken in for the rest where one of them cannot be made', () => {
    const plan = withStreams('transport: rtsp, receivers: [kitchen-screen]', {
      rest: RECORDINGS.replace('"%s.mkv"', '"%s.txt"'),
    });
    assert.match(relays.make(plan).refused[0]?.message ?? '', /serves none/);
    const { files, refused } = recorders.make(plan);
    assert.match(refused.map(({ message }) => message).join('\n'), /^The files of briefly end in \.txt/);
    assert.deepEqual(unitsOf({ files, refused, notes: [] }), ['record-paddock']);
  });
});

describe('units of relays, recorders and deletion', function () {
  before(function () {
    if (spawnSync('systemd-analyze', ['--version']).status !== 0) unavailable(this, 'systemd-analyze is not installed');
  });

  it('of the sample are taken by systemd without complaint, and read by the rehearsal as by systemd', () => {
    const made = [relays, recorders, deletion]
      .flatMap((output) => output.make(harrowLane).files)
      .filter(({ path }) => path.endsWith('.service'));
    const checked = made.filter(({ path }) => /paddock-live|paddock\.|seedlings|gate|folders|deletion/.test(path));
    assert.ok(checked.length >= 6);
    for (const { path, text } of checked) {
      const { complaints, commands } = loadedBySystemd('made.service', text);
      assert.equal(complaints, '', path);
      const unit = new Unit(path, text);
      const ours = [...unit.commands('ExecStartPre'), ...unit.commands('ExecStart')].map((words) => words.slice(1));
      assert.deepEqual(
        commands.map((words) => words.slice(1)),
        ours,
        path,
      );
    }
  });

  it('hand FFmpeg the path and the pattern that the site says, whatever is in them', () => {
    let wrote = 0;
    fc.assert(
      fc.property(hostileText, hostileText, hostileText, fc.boolean(), (path, file, rtsp, twice) => {
        const besides = twice
          ? { again: { stream: 'paddock', volume: 'archive', segment: '10 s', file: '%s.mkv' } }
          : {};
        const unitPath = `recorder/${twice ? 'plumbline-ingest-paddock.service' : RECORD}`;
        const volume = `/srv/${path}`;
        const pattern = `${file}%Y-%m-%d %H-%M-%S.mkv`;
        const made = recorders.make(
          planOfData({
            vlans: { video: { id: 20, subnet: '192.168.20.0/24' } },
            devices: {
              core: { kind: 'switch', ports: { '1-2': {} } },
              recorder: { kind: 'server', address: '192.168.20.5' },
              cam: { kind: 'camera', address: '192.168.20.31' },
            },
            cables: [
              { from: 'core/1', to: 'recorder' },
              { from: 'core/2', to: 'cam' },
            ],
            streams: { paddock: { source: 'cam', transport: 'rtsp', path: `/${rtsp}`, receivers: ['recorder'] } },
            volumes: { archive: { host: 'recorder', capacity: '8 TB', path: volume } },
            recordings: {
              paddock: { stream: 'paddock', volume: 'archive', segment: '60 s', file: pattern },
              ...besides,
            },
          }),
        );
        // Either it is made, or refused where it stands.
        if (!made.files.some(({ path: where }) => where === unitPath)) return assert.ok(made.refused.length >= 1);
        wrote++;
        const { complaints, commands } = loadedBySystemd('hostile.service', fileOf(made, unitPath));
        assert.equal(complaints, '');
        const words = (commands.at(-1) ?? []).map((word) => word.replaceAll('$$', '$'));
        const root = volume.replace(/\/+/g, '/').replace(/(.)\/$/, '$1');
        const below = pattern
          .split('/')
          .filter((part) => part !== '' && part !== '.')
          .join('/');
        assert.equal(words.at(-1), `${root.replaceAll('%', '%%')}/${below}`);
        // What strftime makes of that is below the volume: the doubled sign is one again.
        const time = zonedTime('UTC', Date.UTC(2026, 10, 25, 7, 5, 9));
        assert.ok(format(words.at(-1) ?? '', time).startsWith(`${root}/`));
        const url = new URL(words[words.indexOf('-i') + 1] ?? '');
        assert.equal(`${url.protocol}//${url.host}`, 'rtsp://192.168.20.31:554');
        return undefined;
      }),
      { numRuns: 80 },
    );
    assert.ok(wrote >= 10, `${wrote} were made`);
  });

  it('run scripts that shellcheck has nothing to say of, and shellcheck does speak up', async function () {
    if (spawnSync('shellcheck', ['--version']).status !== 0) unavailable(this, 'shellcheck is not installed');
    const made = recording('segment: 60 s, file: "%Y/%s.mkv"').files.filter(({ executable }) => executable === true);
    const scripts = [
      ...made,
      ...relays
        .make(
          withStreams('transport: rtp, group: 239.192.20.31, receivers: [kitchen-screen]', {
            paddock: ', credentials: barn',
          }),
        )
        .files.filter(({ executable }) => executable === true),
    ];
    assert.equal(scripts.length, 2);
    await inFolder([...scripts, { path: 'fault', text: '#!/bin/bash\nrm -rf $1/*\n' }], (folder) => {
      for (const { path } of scripts)
        assert.equal(spawnSync('shellcheck', [`${folder}/${path}`], { encoding: 'utf8' }).stdout, '');
      assert.match(spawnSync('shellcheck', [`${folder}/fault`], { encoding: 'utf8' }).stdout, /SC2086/);
    });
  });
});
