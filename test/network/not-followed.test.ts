// A site whose streams cross more links than can be followed says so, and is planned as far as it is followed.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { check } from '../../server/src/check.ts';
import { MOST_COPIES } from '../../server/src/network/delivery.ts';
import { folderOf } from '../site.ts';

const SWITCHES = 1000;
const each = (make: (index: number) => string, between = ''): string =>
  Array.from({ length: SWITCHES }, (_, index) => make(index)).join(between);

/** A row of switches with a screen at each; the camera at its end sends to every screen, so each further one costs more. */
const ROW = `devices:
  paddock-cam: {kind: camera, speed: 10 Gb/s}
${each((i) => `  s${i}: {kind: switch, ports: {1-3: {speed: 10 Gb/s}}}\n  screen-${i}: {kind: display, speed: 10 Gb/s}\n`)}cables:
  - {from: paddock-cam, to: s0/1}
${each((i) => `  - {from: s${i}/3, to: screen-${i}}\n${i === 0 ? '' : `  - {from: s${i - 1}/2, to: s${i}/1}\n`}`)}streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 kb/s}, receivers: [${each((i) => `screen-${i}`, ', ')}]}
  paddock-sub: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 kb/s}, receivers: [screen-0]}
`;

describe('streams that cross more links than can be followed', () => {
  it('are followed up to the bound, and one finding names what is not', () => {
    const { plan, diagnostics } = check(folderOf({ 'row.site.yaml': ROW }));
    const [first, second] = plan.network.deliveries;
    assert.ok(first !== undefined && second !== undefined);
    // There and back, a screen at the switch i is i + 2 links away.
    const crossed = first.reaches.reduce((sum, _, i) => sum + 2 * (i + 2), 0);
    assert.ok(crossed > MOST_COPIES && crossed < MOST_COPIES + 2 * SWITCHES + 2, String(crossed));
    assert.equal(first.reaches.length + first.unreached.length, SWITCHES);
    assert.deepEqual(second.unreached, [{ receiver: 'screen-0', why: { obstacle: 'not-followed' } }]);
    const found = diagnostics.filter(({ rule }) => rule.id === 'unreached-receiver');
    assert.equal(found.length, 1);
    assert.match(found[0]?.message ?? '', /cross links more than 500,000 times.+Divide the site/);
  });
});
