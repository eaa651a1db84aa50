// How figures are explained: every figure of the report has an explanation that ends in it.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { describe, it } from 'mocha';
import type { Load } from '../../server/src/network/rates.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { explain } from '../../server/src/report/explain.ts';
import { type Explanation, explanationMarkdown, explanationText } from '../../server/src/report/explain/explanation.ts';
import { HEADER_SOURCES } from '../../server/src/report/explain/sources.ts';
import { type WireReport, reportOf } from '../../server/src/report/report.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { PADDOCK, planFrom } from './paddock.ts';

function sample(name: string): Plan {
  const folder = new SiteFolder();
  const files = new URL(`../../samples/${name}/`, import.meta.url);
  for (const file of readdirSync(files))
    if (file.endsWith('.site.yaml')) folder.set(`file:///${file}`, readFileSync(new URL(file, files), 'utf8'));
  return planOf(folder.site());
}

function explained(plan: Plan, path: string): readonly Explanation[] {
  const found = explain(plan, path.split(' '));
  assert.ok('explanations' in found, 'problem' in found ? `${path}: ${found.problem}` : path);
  return found.explanations;
}

/** The figure that the explanation of a path ends in. */
function total(plan: Plan, path: string): number | string | undefined {
  const [only, ...others] = explained(plan, path);
  assert.equal(others.length, 0, path);
  const [cell, ...more] = only?.total?.cells ?? [];
  assert.equal(more.length, 0, path);
  return typeof cell === 'object' ? cell.value : cell;
}

/** The sum of an explanation's lines, column by column. */
function sums(explanation: Explanation | undefined): number[] {
  const all: number[] = [];
  for (const { cells } of explanation?.lines ?? [])
    cells.forEach((cell, index) => (all[index] = (all[index] ?? 0) + (typeof cell === 'object' ? cell.value : 0)));
  return all;
}

const WIRES = ['line', 'frame', 'frameWithFcs', 'payload'] as const;
const PARTS = ['nominal', 'peak'] as const satisfies readonly (keyof Load)[];

function* wireFigures(path: string, report: WireReport): Iterable<[string, number]> {
  for (const wire of WIRES) for (const part of PARTS) yield [`${path} ${wire} ${part}`, report[wire][part]];
}

/** Every figure of a report that is a number, by its path. */
function* figures(plan: Plan): Iterable<[string, number]> {
  const report = reportOf(plan);
  for (const link of report.links) {
    if (link.capacity !== null) yield [`links ${link.from} capacity`, link.capacity];
    for (const way of ['forward', 'backward'] as const) {
      yield* wireFigures(`links ${link.from} ${way}`, link[way]);
      for (const [stream, share] of Object.entries(link[way].streams))
        yield* wireFigures(`links ${link.to} ${way} streams ${stream}`, share);
    }
  }
  for (const stream of report.streams) yield* wireFigures(`streams ${stream.name}`, stream);
  for (const volume of report.volumes) {
    yield [`volumes ${volume.name} bytesPerDay`, volume.bytesPerDay];
    if (volume.usableBytes !== null) yield [`volumes ${volume.name} usableBytes`, volume.usableBytes];
    if (volume.daysUntilFull !== null) yield [`volumes ${volume.name} daysUntilFull`, volume.daysUntilFull];
    for (const [name, { bytesKept }] of Object.entries(volume.recordings)) {
      if (bytesKept !== null) yield [`volumes ${volume.name} recordings ${name} bytesKept`, bytesKept];
    }
  }
  for (const { device, draw } of report.poe) yield [`poe ${device} draw`, draw];
}

describe('plumbline explain', () => {
  for (const name of ['harrow-lane', 'first-draft']) {
    it(`ends in every figure of the report for samples/${name}`, () => {
      const plan = sample(name);
      let count = 0;
      for (const [path, value] of figures(plan)) {
        assert.equal(total(plan, path), value, path);
        count++;
      }
      assert.ok(count > 500, `${count} figures`);
    });

    it(`has lines that add up to the load of every link for samples/${name}`, () => {
      const plan = sample(name);
      for (const { from, forward, backward } of reportOf(plan).links) {
        const [out, back] = explained(plan, `links ${from}`);
        if (forward.line.peak > 0) assert.deepEqual(sums(out), [forward.line.nominal, forward.line.peak]);
        if (backward.line.peak > 0) assert.deepEqual(sums(back), [backward.line.nominal, backward.line.peak]);
      }
    });

    it(`names a source for every header in samples/${name}`, () => {
      const { site, network } = sample(name);
      for (const stream of site.streams) {
        const { runs, replies } = network.rates(stream);
        for (const { headers } of [...runs, ...replies])
          for (const header of headers) assert.ok(HEADER_SOURCES[header.name], header.name);
      }
    });
  }

  const plan = planFrom(PADDOCK);

  it("adds up packets of every kind to a stream's rate", () => {
    for (const kind of ['line', 'frame', 'frameWithFcs'] as const) {
      const [explanation] = explained(plan, `streams paddock ${kind}`);
      const [first] = plan.site.streams;
      assert.ok(first !== undefined);
      const ratesOfFirst = plan.network.rates(first);
      const packets = explanation?.lines.filter(({ label }) => label.endsWith(' in all')) ?? [];
      assert.equal(packets.length, 2);
      // Rates are rounded once, to whole bits.
      const [nominal = 0] = sums({ title: '', columns: [], lines: packets });
      assert.equal(Math.round(nominal), ratesOfFirst.untagged[kind].nominal);
    }
  });

  it('counts every byte of a packet, each with its source', () => {
    const text = explained(plan, 'streams paddock-live line nominal').map(explanationText).join('');
    for (const line of [
      /^ {2}video packets +545\.714 packets\/s +half of one more for each picture than fill them$/m,
      /^ {4}media +1,374\.3 B$/m,
      /^ {4}IPv4 +20 B +\[RFC 791 §3\.1\]$/m,
      /^ {4}UDP +8 B +\[RFC 768\]$/m,
      /^ {4}RTP +12 B +\[RFC 3550 §5\.1\]$/m,
      /^ {4}together +1,452\.3 B$/m,
      /^ {2}video in all +6,340,525\.7 b\/s +packets × bytes × 8$/m,
      /^ {2}audio in all +126,750 b\/s/m,
      /^ {2}line rate +6,467,276 b\/s = 6\.47 Mb\/s$/m,
    ])
      assert.match(text, line);
  });

  it('explains a tagged copy with 4 bytes more in each packet', () => {
    // 6,000,000 + 545.7143 × 82 × 8 + 46.875 × 342 × 8 = 6,357,988.6 + 128,250
    const [explanation] = explained(plan, 'streams paddock-live line tagged nominal');
    assert.deepEqual(explanation?.total?.cells, [{ value: 6_486_239, unit: 'b/s' }]);
  });

  it('explains what goes back to a source', () => {
    const [explanation] = explained(plan, 'streams paddock reply line nominal');
    assert.deepEqual(explanation?.total?.cells, [{ value: 228_195, unit: 'b/s' }]);
  });

  it('says that a peak which is not declared is the nominal rate', () => {
    assert.match(
      explained(plan, 'streams paddock').map(explanationText).join(''),
      /audio +64,000 b\/s +64,000 b\/s +as declared; no peak is declared/,
    );
  });

  it('says that a peak is not taken over where the bitrate is given anew', () => {
    const small = planFrom(`
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}}
  paddock-small: {source: recorder, carries: paddock, transport: rtp, video: {bitrate: 2 Mb/s}}
  paddock-live: {source: recorder, carries: paddock, transport: rtp}
`);
    const text = (name: string): string => explained(small, `streams ${name}`).map(explanationText).join('');
    assert.match(
      text('paddock-small'),
      /video +2,000,000 b\/s +2,000,000 b\/s +as declared; no peak is declared, nor taken over from paddock/,
    );
    assert.match(text('paddock-live'), /video +6,000,000 b\/s +9,000,000 b\/s +as in paddock/);
  });

  it('shows how redundancy and reserve take from a capacity', () => {
    // md(4): RAID 5 leaves all disks but one. 3 × 4 TB → 8 TB, less 5 %.
    const raid = planFrom('volumes: {archive: {capacity: 4 TB, disks: 3, redundancy: raid5, reserve: 5 %}}');
    const [explanation] = explained(raid, 'volumes archive usableBytes');
    assert.deepEqual(
      explanation?.lines.map(({ cells }) => cells[0]),
      [
        { value: 4e12, unit: 'B' },
        { value: 8e12, unit: 'B' },
        { value: -4e11, unit: 'B' },
      ],
    );
    assert.deepEqual(explanation?.total?.cells, [{ value: 7.6e12, unit: 'B' }]);
  });

  it('writes quantities in their other units', () => {
    const text = (words: string): string => explained(plan, `quantity ${words}`).map(explanationText).join('');
    assert.match(text('6 Mb/s'), /750 kB\/s[^]*64\.8 GB/); // 6,000,000 / 8 = 750,000; × 86,400
    assert.match(text('8 TB'), /7\.28 TiB/); // 8e12 / 1024⁴ = 7.276
    assert.match(text('90 min'), /5,400 s[^]*1\.5 h/);
    assert.match(text('12.5 %'), /0\.125/);
    assert.match(text('100 W'), /2\.4 kWh/); // × 24 h
    assert.match(text('120 MB/s'), /114 MiB\/s[^]*960 Mb\/s/);
  });

  for (const [path, problem] of [
    ['links cor/1', 'There is no link at cor/1. The nearest is core/1.'],
    ['link core/1', 'There is no kind of figure link. The nearest is links.'],
    ['links', 'Say which link, by a port at either end, such as core/1.'],
    ['links core/1 forwards', 'There is no figure of a link forwards. The nearest is forward.'],
    ['links core/1 forward lines', 'There is no rate lines. The nearest is line.'],
    ['links core/1 forward line line', 'There is no rate line. The nearest is line.'],
    ['streams padock', 'There is no stream padock. The nearest is paddock.'],
    ['streams paddock mac', 'paddock has no group: it is unicast.'],
    ['volumes', 'Say which volume: archive.'],
    ['poe core draw watts', 'Nothing follows there; watts is too much.'],
    ['addresses 192.168.1', '192.168.1 is no IPv4 address.'],
    ['quantity 6 Mbps', '6 Mbps is no quantity: write a number, a space and a unit, such as 6 Mb/s.'],
  ] as const) {
    it(`says what is wrong with ${path}`, () => {
      assert.deepEqual(explain(plan, path.split(' ')), { problem });
    });
  }

  it('knows no kind of figure by what every object has', () => {
    assert.match(JSON.stringify(explain(plan, ['toString'])), /There is no kind of figure toString\./);
  });

  it('shows text of the site as it is, on a terminal and in Markdown', () => {
    const nasty = planFrom(`
devices:
  "[x](command:y)": {kind: camera, speed: 100 Mb/s, address: 10.0.0.1}
  "\\e[31m<img>": {kind: server, speed: 1 Gb/s, address: 10.0.0.2}
streams: {"![a](b)": {source: "[x](command:y)", transport: rtp, video: {bitrate: 1 Mb/s}, receivers: ["\\e[31m<img>"]}}
`);
    const all = [
      ...nasty.site.devices.map(({ name }) => ['devices', name]),
      ['streams', '![a](b)'],
      ['addresses', '10.0.0.1'],
    ]
      .map((path) => explain(nasty, path))
      .flatMap((found) => ('explanations' in found ? found.explanations : []));
    assert.equal(all.length, 5);
    for (const explanation of all) {
      assert.doesNotMatch(explanationMarkdown(explanation), /(?<!\\)[[<]/);
      assert.doesNotMatch(explanationText(explanation), /\u001b/);
    }
  });
});
