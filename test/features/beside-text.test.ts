// Figures beside the text and above it, against the report of the same site, which is held against sums by hand.
import assert from 'node:assert/strict';
import { spanOf } from '../../server/src/site/folder.ts';
import { inlayHints } from '../../server/src/features/inlay-hints.ts';
import { lenses } from '../../server/src/features/lenses.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { atCursor } from '../cursor.ts';

const SITE = `$0vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, address: 192.168.20.2, igmp-snooping: true, ports: {1-4: {speed: 100 Mb/s, vlan: video}}}
  doors: {kind: computer, ports: {5-8: {address: 192.168.20.60}, 9: {address: 192.168.20.70}}}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 100 Mb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: doors/5}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}, receivers: [recorder]}
  idle: {source: paddock-cam}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive}
`;

const { checked, file } = atCursor(SITE);
const ALL = { streams: true, cables: true, volumes: true, ranges: true };

function shownHints(kinds = ALL, start = 0, end = file.text.length): string[] {
  return inlayHints(checked, file, start, end, kinds).map(({ at, label }) => {
    const offset = spanOf(file, at).start;
    return `${file.text
      .slice(file.text.lastIndexOf('\n', offset - 1) + 1, offset)
      .trim()
      .slice(-14)}‹${label}›`;
  });
}

describe('Inlay hints', () => {
  it('tell the rate of a stream, the load of a cable, the days of a volume and the end of a range', () => {
    const report = reportOf(checked.plan);
    const days = report.volumes[0]?.daysUntilFull ?? 0;
    // 6 Mb/s in packets of 1400 B, each 1478 B on the line: 6 × 1478 / 1400 (IEEE 802.3 as in RFC 5180 App. A.1).
    assert.deepEqual(shownHints(), [
      ' 192.168.20.60‹to 192.168.20.63›',
      'o: paddock-cam‹→ 0 % ← 9.5 %›',
      ', to: recorder‹→ 9.5 % ← 0 %›',
      'paddock:‹6.34 Mb/s, at most 9.51 Mb/s›',
      `archive:‹${Math.round(days)} d of footage›`,
    ]);
  });

  it('are off kind by kind', () => {
    assert.equal(shownHints({ ...ALL, streams: false }).length, 4);
    assert.equal(shownHints({ ...ALL, cables: false }).length, 3);
    assert.equal(shownHints({ ...ALL, volumes: false }).length, 4);
    assert.equal(shownHints({ ...ALL, ranges: false }).length, 4);
  });

  it('are worked out for the lines that are looked at', () => {
    assert.deepEqual(
      shownHints(ALL, file.text.indexOf('volumes:') + 9, file.text.indexOf('recordings:') - 1).length,
      1,
    );
  });
});

describe('Code lenses', () => {
  it('say who gets a stream, and where the first limit is to more like it', () => {
    assert.deepEqual(
      lenses(checked, file).map(({ title }) => title),
      [
        '1 receiver: recorder',
        '8 more like this, then paddock-cam/eth → core/1 reaches 90 % of 100 Mb/s.',
        'reaches nobody',
      ],
    );
  });
});
