// A recording in time: files as FFmpeg's segment muxer names them, read as the audit reads them.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { type Cell, type Drawing, type Measured, USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { columnsOf, recordingTime } from '../../server/src/draw/recording.ts';
import { daysBetween } from '../../server/src/draw/recording/local-days.ts';
import { duration } from '../../server/src/text/words.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { volumeFill } from '../../server/src/draw/volume.ts';
import { lookedAt } from '../../server/src/audit/recordings/looked.ts';
import { newestOf, readVolumes } from '../../server/src/machine/volumes.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../../server/src/standards/time-units.ts';
import { plumblineHere } from '../cli/run.ts';
import { planFrom } from '../report/paddock.ts';
import { faults } from './geometry.ts';
import { picture } from './picture.ts';

const SITE = `
site: {name: Harrow Lane, timezone: Europe/London}
devices: {nas: {kind: server}, gate-cam: {kind: camera}}
streams: {gate: {source: gate-cam, transport: rtsp, video: {codec: h264, bitrate: 800 b/s, keyframe-interval: 2 s}, receivers: [nas]}}
volumes: {disk: {host: nas, capacity: 1 GB}}
recordings: {gate: {stream: gate, volume: disk, segment: 60 s, keep: 7 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}}
`;

/** 60 s at 800 b/s. */
const SIZE = 6000;

describe('a picture of a recording', () => {
  let folder = '';
  let drawing: Drawing;
  let measured: NonNullable<Measured['recordings']>;
  const plan = planFrom(SITE);

  // Of Saturday to Monday when clocks go back in London: 2026-10-25 has 25 h. One gap of an hour, one of 4 s.
  const [first, last] = [Date.UTC(2026, 9, 24, 5), Date.UTC(2026, 9, 26, 12)];
  const long = Date.UTC(2026, 9, 25, 10);
  const slight = Date.UTC(2026, 9, 26, 3, 10);

  before(() => {
    folder = mkdtempSync(join(tmpdir(), 'drawn-'));
    mkdirSync(join(folder, 'gate'));
    for (let at = first; at < last; at += at === slight ? MINUTE + 4 * SECOND : MINUTE) {
      if (at >= long && at < long + HOUR) continue;
      const isSummer = at < Date.UTC(2026, 9, 25, 1);
      const shown = new Date(at + (isSummer ? HOUR : 0)).toISOString();
      const name = `${shown.slice(0, 10)}_${shown.slice(11, 19).replaceAll(':', '-')}${isSummer ? '+0100' : '+0000'}.mp4`;
      writeFileSync(join(folder, 'gate', name), Buffer.alloc(SIZE));
    }
    const { volumes } = readVolumes(plan.site, plan.site.volumes, folder, () => undefined);
    const now = newestOf(volumes);
    measured = { looked: volumes.flatMap(({ survey }) => lookedAt(survey, now)), now };
    drawing = recordingTime.draw(plan, 'gate', { ...USUAL_OPTIONS, measured: { recordings: measured } });
  });

  after(() => rmSync(folder, { recursive: true, force: true }));

  const table = (title: string): string[][] => {
    const text = (cell: Cell): string =>
      typeof cell === 'string' ? cell : 'figure' in cell ? cell.figure : cell.names.map((one) => one.name).join(', ');
    return (drawing.tables.find((one) => one.title === title)?.rows ?? []).map(({ cells }) => cells.map(text));
  };

  it('counts the gaps that the audit counts, in words', () => {
    const { gaps } = measured.looked[0]?.course ?? assert.fail();
    assert.equal(gaps.count, 2);
    assert.match(drawing.description, /2 gaps, 1 h/);
    assert.equal(table('Gaps').length, 2);
    assert.deepEqual(table('Gaps')[1], ['2026-10-26T03:11:00+00:00', '2026-10-26T03:11:04+00:00', '4 s']);
  });

  it('draws each gap no thinner than 3 px, in the row of its day', () => {
    const { boxes } = picture(svgFile(drawing));
    const thin = boxes.filter(({ left, right }) => right - left < 60);
    assert.equal(thin.length, 2);
    for (const { left, right } of thin) assert.ok(right - left >= 3);
    assert.deepEqual(faults(picture(svgFile(drawing))), []);
  });

  it('has a row of 25 h where clocks go back, and says which hour comes twice', () => {
    assert.deepEqual(
      table('By day').map(([date, hours, , gaps, , remark]) => [date, hours, gaps, remark]),
      [
        ['2026-10-24', '24', '0', ''],
        ['2026-10-25', '25', '1', '25 h: 01:00 to 02:00 twice'],
        ['2026-10-26', '24', '1', ''],
      ],
    );
  });

  it('shows over the fill of its volume what the newest days take', () => {
    const { tables } = volumeFill.draw(plan, 'disk', { ...USUAL_OPTIONS, measured: { recordings: measured } });
    const [row] = tables.find(({ title }) => title === 'Measured')?.rows ?? [];
    // By hand: 1440 files of a day, the two gaps left out.
    const inDay = Math.floor((DAY - 4 * SECOND) / MINUTE) + 1;
    const [, there] = row?.cells ?? [];
    assert.deepEqual(there, { figure: `${((inDay * SIZE) / 1e6).toFixed(2)} MB` });
  });

  it('is drawn by the command, which says what is missing where it has no folder', async () => {
    writeFileSync(join(folder, 'house.site.yaml'), SITE);
    const drawn = await plumblineHere([
      'draw',
      'recording',
      'gate',
      '--site',
      folder,
      '--folder',
      folder,
      '--now',
      'newest',
    ]);
    assert.equal(drawn.status, 0);
    assert.equal(drawn.out, svgFile(drawing));
    const none = await plumblineHere(['draw', 'recording', 'gate', '--site', folder]);
    assert.equal(none.status, 2);
    assert.match(none.err, /\/srv\/disk/);
  });
});

describe('a picture of a recording that overlaps itself, over a day of 23 h', () => {
  // Clocks go forward in London on 2026-03-29 at 01:00. A file a minute from the 28th on, kept for a day by the plan; one
  // of them is there half a minute early as well, as where two units write at once.
  const plan = planFrom(SITE.replace('keep: 7 d', 'keep: 1 d'));
  const [first, last] = [Date.UTC(2026, 2, 28, 12), Date.UTC(2026, 2, 30, 9)];
  const twice = Date.UTC(2026, 2, 29, 15, 0, 30);
  let drawing: Drawing;
  let looked: NonNullable<Measured['recordings']>['looked'][number] | undefined;

  before(() => {
    const folder = mkdtempSync(join(tmpdir(), 'drawn-'));
    mkdirSync(join(folder, 'gate'));
    const put = (at: number): void => {
      const shown = new Date(at).toISOString();
      writeFileSync(
        join(folder, 'gate', `${shown.slice(0, 10)}_${shown.slice(11, 19).replaceAll(':', '-')}+0000.mp4`),
        Buffer.alloc(SIZE),
      );
    };
    for (let at = first; at < last; at += MINUTE) put(at);
    put(twice);
    const { volumes } = readVolumes(plan.site, plan.site.volumes, folder, () => undefined);
    rmSync(folder, { recursive: true });
    const all = volumes.flatMap(({ survey }) => lookedAt(survey, last));
    looked = all[0];
    drawing = recordingTime.draw(plan, 'gate', {
      ...USUAL_OPTIONS,
      measured: { recordings: { looked: all, now: last } },
    });
  });

  const rowsOf = (title: string): (string | undefined)[][] =>
    (drawing.tables.find((one) => one.title === title)?.rows ?? []).map(({ cells }) =>
      cells.map((cell) => (typeof cell === 'string' ? cell : 'figure' in cell ? cell.figure : undefined)),
    );

  it('marks overlaps above their row, no thinner than 3 px, and counts those that the audit counts', () => {
    const { count = 0, total = 0 } = looked?.course.overlaps ?? {};
    assert.ok(count > 0);
    assert.ok(drawing.description.includes(`△ ${count} overlap${count === 1 ? '' : 's'}, ${duration(total)} twice`));
    assert.equal(rowsOf('Overlaps').length, count);
    const lines = [...svgFile(drawing).matchAll(/<path class="warn" d="M([\d.]+) ([\d.]+)L([\d.]+) \2"/g)];
    assert.equal(lines.length, 1);
    const [, from = '', , to = ''] = lines[0] ?? [];
    assert.ok(Number(to) - Number(from) >= 3);
  });

  it('underlines what is older than it is kept, to the pixel', () => {
    // By hand: what is before 09:00 UTC of the 29th, 9 h after its midnight at 30 px each, and all of the 28th from noon on.
    const old = [...svgFile(drawing).matchAll(/<path class="idle" d="M([\d.]+) ([\d.]+)L([\d.]+) \2"/g)];
    assert.deepEqual(
      old.map(([, from, , to]) => Number(to) - Number(from)),
      [12 * 30, 9 * 30],
    );
    const remarks = rowsOf('By day').map((row) => row.at(-1));
    assert.match(remarks[0] ?? '', /^older than it is kept/);
    assert.match(remarks[1] ?? '', /partly older than it is kept/);
    assert.equal(remarks[2], '');
  });

  it('has a shorter row for the day of 23 h', () => {
    assert.deepEqual(
      rowsOf('By day').map((row) => row[1]),
      ['24', '23', '24'],
    );
    const widths = picture(svgFile(drawing)).boxes.map(({ left, right }) => right - left);
    // Whole: the 29th, 23 h at 30 px.
    assert.ok(widths.includes(23 * 30));
    assert.ok(drawing.tables.some(({ rows: all }) => JSON.stringify(all).includes('23 h: no 01:00 to 02:00')));
    assert.deepEqual(faults(picture(svgFile(drawing))), []);
  });
});

describe('days of the clock', () => {
  // Source: the clocks of London go forward on 2026-03-29 at 01:00, and back on 2026-10-25 at 02:00.
  it('have 23, 24 or 25 hours', () => {
    const hours = (from: number, to: number): string[] =>
      daysBetween('Europe/London', from, to).map(
        (day) => `${day.date} ${(day.to - day.from) / HOUR}${day.change === '' ? '' : ` ${day.change}`}`,
      );
    assert.deepEqual(hours(Date.UTC(2026, 2, 28, 12), Date.UTC(2026, 2, 30, 12)), [
      '2026-03-28 24',
      '2026-03-29 23 23 h: no 01:00 to 02:00',
      '2026-03-30 24',
    ]);
    assert.deepEqual(hours(Date.UTC(2026, 9, 25, 12), Date.UTC(2026, 9, 25, 13)), [
      '2026-10-25 25 25 h: 01:00 to 02:00 twice',
    ]);
  });

  // Source: common practice in Brazil until 2019, by the IANA database: midnight was skipped on 2018-11-04.
  it('begin where midnight is skipped', () => {
    const [day] = daysBetween('America/Sao_Paulo', Date.UTC(2018, 10, 4, 12), Date.UTC(2018, 10, 4, 13));
    assert.equal(day?.date, '2018-11-04');
    assert.equal(((day?.to ?? 0) - (day?.from ?? 0)) / HOUR, 23);
  });
});

describe('columns of gaps', () => {
  const day = { from: 0, to: DAY };
  it('are 3 px at the least, and one where gaps touch', () => {
    assert.deepEqual(columnsOf([{ from: 5 * HOUR, to: 5 * HOUR + 1 }], day), [{ x: 150, width: 3 }]);
    assert.deepEqual(columnsOf([{ from: DAY - 1, to: DAY }], day), [{ x: 717, width: 3 }]);
    assert.deepEqual(
      columnsOf(
        [
          { from: 0, to: 1 },
          { from: 6 * MINUTE, to: 6 * MINUTE + 1 },
        ],
        day,
      ),
      [{ x: 0, width: 6 }],
    );
    assert.deepEqual(columnsOf([{ from: 0, to: DAY }], day), [{ x: 0, width: 720 }]);
  });
});
