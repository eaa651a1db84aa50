// The fill of a volume: its figures are the report's, and those of a small case are worked out by hand.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { type Cell, USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { volumeFill } from '../../server/src/draw/volume.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { DAY } from '../../server/src/standards/time-units.ts';
import { bytes } from '../../server/src/text/words.ts';
import { planFrom } from '../report/paddock.ts';
import { faults } from './geometry.ts';
import { picture } from './picture.ts';

function rows(plan: Plan, name: string, title: string): string[][] {
  const { tables } = volumeFill.draw(plan, name, USUAL_OPTIONS);
  const text = (cell: Cell): string =>
    typeof cell === 'string' ? cell : 'figure' in cell ? cell.figure : cell.names.map((one) => one.name).join(', ');
  return (tables.find((table) => table.title === title)?.rows ?? []).map(({ cells }) => cells.map(text));
}

for (const sample of ['harrow-lane', 'first-draft', 'cottages'])
  describe(`the fill of the volumes of ${sample}`, () => {
    const plan = planOf(readSite(`samples/${sample}`).folder.site());

    it('follows from the figures of the report and the days that the site keeps', () => {
      for (const { name, recordings } of reportOf(plan).volumes)
        for (const [day = '', fill] of rows(plan, name, 'By day')) {
          const sum = Object.entries(recordings).reduce((total, [recording, { bytesPerDay }]) => {
            const keep = plan.site.recordingByName.get(recording)?.keep ?? Infinity;
            return total + Math.min(Number(day), keep / DAY) * bytesPerDay;
          }, 0);
          assert.equal(fill, bytes(sum), `${name}, day ${day}`);
        }
    });

    it('has each recording of the report with what it writes and keeps', () => {
      for (const { name, recordings } of reportOf(plan).volumes)
        assert.deepEqual(
          rows(plan, name, 'Recordings').map(([recording, daily, , kept]) => [recording, daily, kept]),
          Object.entries(recordings).map(([recording, { bytesPerDay, bytesKept }]) => [
            recording,
            bytes(bytesPerDay),
            bytesKept === null ? 'all' : bytes(bytesKept),
          ]),
        );
    });

    it('can be read', () => {
      for (const name of volumeFill.subjects(plan))
        assert.deepEqual(faults(picture(svgFile(volumeFill.draw(plan, name, USUAL_OPTIONS)))), []);
    });
  });

// By hand: 8 Mb/s are 1 MB/s, 86.4 GB a day. Two of them, one kept for 10 days and one for 20: on day 5 2 · 5 · 86.4,
// on day 10 1.728 TB, from day 20 on (10 + 20) · 86.4 GB.
const HOUSE = `
devices: {nas: {kind: server}, north: {kind: camera}, south: {kind: camera}}
streams:
  north: {source: north, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [nas]}
  south: {source: south, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [nas]}
volumes: {disk: {host: nas, capacity: 4 TB}}
recordings:
  north: {stream: north, volume: disk, keep: 10 d}
  south: {stream: south, volume: disk, keep: 20 d}
`;

describe('a picture of a volume', () => {
  it('has on each day what is worked out by hand', () => {
    const days = new Map(rows(planFrom(HOUSE), 'disk', 'By day').map(([day, fill]) => [day, fill]));
    assert.deepEqual(
      ['1', '7', '10', '20', '23'].map((day) => days.get(day)),
      ['173 GB', '1.21 TB', '1.73 TB', '2.59 TB', '2.59 TB'],
    );
  });

  it('has no line through the words of another, whenever what is deleted or full', () => {
    for (const [north, south, capacity] of [
      [10, 20, 1.5],
      [1, 30, 1.2],
      [5, 6, 0.9],
      [2, 29, 2.6],
      [28, 30, 4],
    ] as const) {
      const text = HOUSE.replace('10 d', `${north} d`).replace('20 d', `${south} d`).replace('4 TB', `${capacity} TB`);
      const { stretches, words } = picture(svgFile(volumeFill.draw(planFrom(text), 'disk', USUAL_OPTIONS)));
      const upright = stretches.filter(({ from, to }) => from[0] === to[0]);
      for (const word of words)
        for (const { from, to } of upright)
          assert.ok(
            from[0] <= word.left || from[0] >= word.right || to[1] <= word.top || from[1] >= word.bottom,
            `${word.what}: ${text}`,
          );
    }
  });

  it('does not count as nothing what nobody knows', () => {
    const plan = planFrom(HOUSE.replace(', bitrate: 8 Mb/s', ''));
    assert.deepEqual(rows(plan, 'disk', 'By day')[0], ['1', '86.4 GB + ?', '2.2 % + ?']);
    const { things, description } = picture(svgFile(volumeFill.draw(plan, 'disk', USUAL_OPTIONS)));
    assert.match(things.find(({ at }) => at === 'north')?.label ?? '', /^north: \? a day, \? on day /);
    assert.match(description, /Not in it, as their rate is not known: north\./);
  });

  it('says when the first is deleted, and by a sign that it is full', () => {
    const texts = (text: string): string[] =>
      picture(svgFile(volumeFill.draw(planFrom(text), 'disk', USUAL_OPTIONS))).words.map((word) => word.text);
    assert.ok(texts(HOUSE).some((text) => text === 'day 10: the first is deleted (north)'));
    assert.ok(!texts(HOUSE).some((text) => text.startsWith('▲')));
    // By hand: 1 TB at 172.8 GB a day is full after 5.79 days.
    assert.ok(texts(HOUSE.replace('4 TB', '1 TB')).includes('▲ full after 5.8 d'));
  });
});
