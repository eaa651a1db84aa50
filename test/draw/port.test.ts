// A port in time: counters as IF-MIB has them, over the load of the report.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { IfMibTable } from '../../server/src/audit/counters/if-mib-table.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { portTime } from '../../server/src/draw/port.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { bitRate } from '../../server/src/text/words.ts';
import { planFrom } from '../report/paddock.ts';
import { faults } from './geometry.ts';
import { picture } from './picture.ts';

const plan = planFrom(`
devices:
  core: {kind: switch, ports: {1-2: {speed: 100 Mb/s}}}
  cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  nas: {kind: server, address: 192.168.20.5, speed: 100 Mb/s}
cables: [{from: core/1, to: cam}, {from: core/2, to: nas}]
streams: {door: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [nas]}}
`);

/** Each 10 s: 10,000,000 octets come in, which are 8 Mb/s; of 10 s nothing is known. */
function counters(): ReturnType<IfMibTable['end']> {
  const reader = new IfMibTable();
  const lines = ['time,device,ifName,ifHCInOctets,ifHCOutOctets,ifCounterDiscontinuityTime'];
  for (let index = 0; index < 12; index++) {
    const seconds = String((index % 6) * 10).padStart(2, '0');
    const anew = index >= 6;
    lines.push(
      `2026-03-01T12:0${Math.floor(index / 6)}:${seconds}Z,core,1,${(anew ? index - 6 : index) * 10_000_000},0,${anew ? 1 : 0}`,
    );
  }
  lines.forEach((line, index) => reader.line(line, index + 1));
  return reader.end();
}

describe('a picture of a port in time', () => {
  const drawing = portTime.draw(plan, 'core/1', {
    ...USUAL_OPTIONS,
    measured: { counters: { readings: counters(), device: undefined } },
  });
  const seen = picture(svgFile(drawing));

  it('has what was counted, worked out by hand, over what the report plans', () => {
    const [link] = reportOf(plan).links;
    // Source: RFC 2863, ifInOctets: with framing characters, which are the check sequence too.
    const { nominal } = link?.backward.frameWithFcs ?? assert.fail();
    const row = drawing.tables[0]?.rows.find(({ cells }) => cells[0] === 'cam/eth → core/1')?.cells;
    assert.deepEqual(row?.[1], { figure: '8 Mb/s' });
    assert.deepEqual(row?.[4], { figure: bitRate(nominal) });
  });

  it('has both directions, and breaks the line where nothing is known', () => {
    assert.equal(drawing.tables[0]?.rows.length, 2);
    const texts = seen.words.map(({ text }) => text);
    assert.ok(texts.some((text) => text.startsWith('core/1 → cam/eth: 0 b/s')));
    assert.equal([...svgFile(drawing).matchAll(/<path class="main"/g)].length, 4);
  });

  it('can be read', () => assert.deepEqual(faults(seen), []));
});
