// Figures beside the text and above it, against the report of the same site, which is held against sums by hand.
import assert from 'node:assert/strict';
import { spanOf } from '../../server/src/site/folder.ts';
import { inlayHints } from '../../server/src/features/inlay-hints.ts';
import { lensTitle, lenses } from '../../server/src/features/lenses.ts';
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
  - {from: core/2, to: recorder}  # east wall
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
const ALL = { streams: true, cables: true, cablesFrom: 0, volumes: true, ranges: true };

function shownHints(kinds = ALL, start = 0, end = file.text.length): string[] {
  return inlayHints(checked, file, start, end, kinds)
    .map(({ at, label }) => {
      const offset = spanOf(file, at).start;
      return `${file.text.slice(file.text.lastIndexOf('\n', offset - 1) + 1, offset).trim()}‹${label}›`;
    })
    .map(tail);
}

/** The end of a line, so that a test is read without its whole. */
function tail(line: string): string {
  return line.slice(-60);
}

describe('Inlay hints', () => {
  it('tell the rate of a stream, the load of a cable, the days of a volume and the end of a range', () => {
    const report = reportOf(checked.plan);
    const days = report.volumes[0]?.daysUntilFull ?? 0;
    // 6 Mb/s in packets of 1400 B, each 1478 B on the line: 6 × 1478 / 1400 (IEEE 802.3 as in RFC 5180 App. A.1).
    assert.deepEqual(
      shownHints({ ...ALL, cablesFrom: 9 }),
      [
        'ress: 192.168.20.60}, 9: {address: 192.168.20.70}}}‹8: 192.168.20.63›',
        '- {from: core/1, to: paddock-cam}‹← 9.5 % of 100 Mb/s›',
        '- {from: core/2, to: recorder}  # east wall‹→ 9.5 % of 100 Mb/s›',
        'te: 9 Mb/s}, receivers: [recorder]}‹6.34 Mb/s, at most 9.51›',
        `archive: {host: recorder, capacity: 8 TB}‹${Math.round(days)} d of footage›`,
      ].map(tail),
    );
  });

  it('report a cable from the load on that is set', () => {
    const cables = (cablesFrom: number): number =>
      shownHints({ ...ALL, cablesFrom }).filter((hint) => /[→←]/.test(hint)).length;
    assert.deepEqual([0, 9.5, 9.6, 100].map(cables), [2, 2, 0, 0]);
  });

  it('have the rest in a tooltip', () => {
    const tooltips = inlayHints(checked, file, 0, file.text.length, ALL).map(({ tooltip }) => tooltip);
    assert.equal(
      tooltips[1],
      'core/1 → paddock-cam/eth: 0 b/s at peak, 0 % of 100 Mb/s\npaddock-cam/eth → core/1: 9.51 Mb/s at peak, 9.5 % of 100 Mb/s',
    );
    assert.match(tooltips[3] ?? '', /It reaches recorder\.$/);
  });

  it('stand at the end of the line, before its line break', () => {
    const { checked: crlf, file: text } = atCursor(SITE.replaceAll('\n', '\r\n'));
    const hints = inlayHints(crlf, text, 0, text.text.length, ALL);
    assert.equal(hints.length, 5);
    for (const { at } of hints) assert.match(text.text.slice(spanOf(text, at).start), /^\r\n/);
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
  it('say who gets a stream, and when they are in sight how many more cameras fit', () => {
    const found = lenses(checked, file);
    assert.deepEqual(
      found.map(({ title }) => title),
      [undefined, '1 receiver: recorder', 'reaches nobody'],
    );
    const camera = checked.plan.site.deviceByName.get('paddock-cam');
    const stream = checked.plan.site.streamByName.get('paddock');
    assert.ok(camera !== undefined && stream !== undefined);
    assert.equal(
      lensTitle(checked, camera.item),
      '1 more like paddock-cam at core, then core has no free port left for a camera like paddock-cam.',
    );
    assert.equal(lensTitle(checked, stream.item), undefined);
  });
});
