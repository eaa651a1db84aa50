// Unicast streams re-sent as groups.
import assert from 'node:assert/strict';
import { assertSound, plain, refactored, reportFrom, titlesAt } from './refactored.ts';

const HOME = 'file:///harrow-lane/home.site.yaml';

const NETWORK = `vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1-8: {speed: 1 Gb/s, vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  kitchen-screen: {kind: display, address: 192.168.20.61, speed: 1 Gb/s}
  stable-screen: {kind: display, address: 192.168.20.62, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
  - {from: core/2, to: recorder, type: cat6, length: 2 m}
  - {from: core/3, to: kitchen-screen, type: cat6, length: 20 m}
  - {from: core/4, to: stable-screen, type: cat6, length: 20 m}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "%Y-%m-%d_%H-%M-%S%z.mp4"}
`;

const PADDOCK = (receivers: string): string => `${NETWORK}streams:
  paddock:
    source: padd$0ock-cam
    transport: rtsp
    port: 554
    video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 2 s}
    receivers: ${receivers}   # who watches
`;

describe('Re-sending by the server', () => {
  const title = 'Re-send paddock by recorder as a group';

  it('leaves the server alone at the camera, and gives the others a free group', () => {
    const texts = { [HOME]: PADDOCK('[kitchen-screen, recorder, stable-screen]') };
    const after = refactored(texts, title);
    assert.equal(
      after[HOME],
      plain({ [HOME]: PADDOCK('[recorder]') })[HOME] +
        `  paddock-live:
    source: recorder
    carries: paddock
    transport: rtp
    group: 239.192.0.1
    port: 5004
    receivers: [kitchen-screen, stable-screen]
`,
    );
    assertSound(plain(texts), after);
    const { links, streams } = reportFrom(after);
    const rates = streams.find(({ name }) => name === 'paddock');
    const camera = links.find(({ to }) => to === 'paddock-cam/eth');
    assert.ok(rates !== undefined && camera !== undefined);
    assert.deepEqual(camera.backward.line, rates.line, 'one copy leaves the camera');
    const before = reportFrom(plain(texts)).links.find(({ to }) => to === 'paddock-cam/eth');
    assert.equal(before?.backward.line.nominal, 3 * rates.line.nominal);
    assert.deepEqual(streams.find(({ name }) => name === 'paddock-live')?.reaches, ['kitchen-screen', 'stable-screen']);
  });

  it('takes receivers on lines of their own along, with their comments', () => {
    const texts = {
      [HOME]: PADDOCK(
        '\n      - kitchen-screen   # by the window\n      # under cover\n      - stable-screen\n      - recorder   # keeps it',
      ).replace('   # who watches', ''),
    };
    const after = refactored(texts, title);
    assert.ok(
      after[HOME]?.endsWith(`    receivers: \n      - recorder   # keeps it
  paddock-live:
    source: recorder
    carries: paddock
    transport: rtp
    group: 239.192.0.1
    port: 5004
    receivers:
      - kitchen-screen   # by the window
      # under cover
      - stable-screen
`),
      after[HOME],
    );
    assertSound(plain(texts), after);
  });

  it('does so at the end of a file without a line feed', () => {
    const receivers = '\n      - kitchen-screen\n      - recorder';
    const texts = { [HOME]: PADDOCK(receivers).replace('   # who watches\n', '') };
    const after = refactored(texts, title);
    assert.match(after[HOME] ?? '', /- recorder\n {2}paddock-live:\n[^]*- kitchen-screen\n$/);
    assertSound(plain(texts), after);
  });

  it('brings the server in where it did not receive, in braces as well', () => {
    const text =
      NETWORK.replace(/volumes:[^]*/, '') +
      'streams: {pad$0dock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [kitchen-screen]}}';
    const after = refactored(text, title);
    assert.match(
      Object.values(after)[0] ?? '',
      /receivers: \[recorder\]}, paddock-live: {source: recorder, .*receivers: \[kitchen-screen\]}}$/,
    );
    assertSound(plain({ a: text }), after);
  });

  it('says by which port it leaves, and gives the server the route that it needs', () => {
    const two = PADDOCK('[kitchen-screen, recorder]')
      .replace('  video: {', '  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}\n  video: {')
      .replace(
        'address: 192.168.20.5, speed: 1 Gb/s',
        'ports: {lan: {speed: 1 Gb/s, address: 192.168.10.5}, cams: {speed: 1 Gb/s, address: 192.168.20.5}}',
      )
      .replace('  kitchen', '  router: {kind: router, address: 192.168.10.1, speed: 1 Gb/s}\n  kitchen')
      .replace(
        '1-8: {speed: 1 Gb/s, vlan: video}',
        '1-5: {speed: 1 Gb/s, vlan: video}, 6-8: {speed: 1 Gb/s, vlan: house}',
      )
      .replace('to: recorder,', 'to: recorder/cams,')
      .replace(
        'cables:\n',
        'cables:\n  - {from: core/6, to: router, type: cat6, length: 1 m}\n  - {from: core/7, to: recorder/lan, type: cat6, length: 1 m}\n',
      );
    const after = refactored(two, title);
    const [text = ''] = Object.values(after);
    assert.match(text, /cams: {.*}}, routes: \[{to: 224.0.0.0\/4, port: cams}\]}/);
    assert.match(text, /egress: cams\n/);
    assertSound(plain({ a: two }), after);
  });

  it('offers each of several servers that receive it', () => {
    const text = PADDOCK('[recorder, attic]')
      .replace('  kitchen-screen: {kind: display,', '  attic: {kind: server,')
      .replace('to: kitchen-screen', 'to: attic');
    // What the recorder keeps is what the camera sends, so that it cannot be the one that goes over.
    assert.deepEqual(titlesAt(text), [title]);
    assert.deepEqual(titlesAt(text.replace(/recordings:[^]*?(?=streams)/, '')), [
      title,
      'Re-send paddock by attic as a group',
    ]);
  });

  for (const [why, text] of [
    ['nobody but the server receives it', PADDOCK('[recorder]')],
    [
      'it is a group already',
      PADDOCK('[recorder, kitchen-screen]').replace('port: 554', 'port: 554\n    group: 239.192.20.31'),
    ],
    [
      'a receiver is nowhere near the server',
      PADDOCK('[recorder, kitchen-screen]').replace(
        '  - {from: core/3, to: kitchen-screen, type: cat6, length: 20 m}\n',
        '',
      ),
    ],
    ['there is no server', PADDOCK('[recorder, kitchen-screen]').replace('kind: server', 'kind: computer')],
    ['another item refers to its text', PADDOCK('&all [recorder, kitchen-screen]')],
  ] as const) {
    it(`is not offered where ${why}`, () => assert.deepEqual(titlesAt(text), []));
  }
});
