// The report as JSON: its schema, and the figures of a small site worked out by hand.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, it } from 'mocha';
import schema from '../../schemas/report.schema.json' with { type: 'json' };
import { planOf } from '../../server/src/plan.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { PADDOCK, planFrom } from './paddock.ts';

const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);

function assertFits(report: Report): void {
  // As a reader has it: written and read again.
  const fits = validate(JSON.parse(JSON.stringify(report)));
  assert.ok(fits, JSON.stringify(validate.errors));
}

describe('the report as JSON', () => {
  it('fits its schema for a site with everything', () => {
    assertFits(reportOf(planFrom(PADDOCK)));
  });

  it('fits its schema for a site with nothing', () => {
    const report = reportOf(planFrom(''));
    assertFits(report);
    assert.deepEqual(report, {
      site: null,
      links: [],
      streams: [],
      volumes: [],
      racks: [],
      poe: [],
      power: null,
      air: [],
      rf: { points: [], amplifiers: [], occasions: [] },
      traffic: [],
      uplinks: [],
    });
  });

  it('fits its schema where the site says little', () => {
    const report = reportOf(
      planFrom(`
devices:
  core: {kind: switch, poe-budget: , ports: {1: {poe: af}, 2: {}}}
  paddock-cam: {kind: camera, poe: {}}
  recorder: {kind: server}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, receivers: [recorder, nobody]}
  nothing: {}
  not-a-group: {source: paddock-cam, group: 192.168.20.1, receivers: [recorder]}
volumes:
  archive: {}
recordings:
  paddock: {stream: paddock, volume: archive}
`),
    );
    assertFits(report);
    assert.equal(report.links[0]?.capacity, null);
    assert.deepEqual(report.poe, [{ device: 'core', budget: null, draw: 15.4 }]);
    assert.deepEqual(
      report.volumes.map(({ usableBytes, daysUntilFull }) => [usableBytes, daysUntilFull]),
      [[null, null]],
    );
    assert.equal(report.streams.find(({ name }) => name === 'not-a-group')?.mac, null);
  });

  it('keeps names that mean something to JavaScript', () => {
    const report = reportOf(
      planFrom(`
devices: {a: {kind: camera, speed: 1 Gb/s}, b: {kind: server, speed: 1 Gb/s}}
cables: [{from: a, to: b}]
streams:
  __proto__: {source: a, transport: rtp, video: {codec: h264, bitrate: 1 Mb/s}, receivers: [b]}
  constructor: {source: a, transport: rtp, video: {codec: h264, bitrate: 1 Mb/s}, receivers: [b]}
`),
    );
    assertFits(report);
    assert.deepEqual(Object.keys(report.links[0]?.forward.streams ?? {}), ['__proto__', 'constructor']);
  });

  const samples = new URL('../../samples/', import.meta.url);
  for (const name of readdirSync(samples)) {
    it(`is the same to the letter for samples/${name} in whatever order its files are read`, () => {
      const files = readdirSync(new URL(`${name}/`, samples)).filter((file) => file.endsWith('.site.yaml'));
      const written = (order: readonly string[]): string => {
        const folder = new SiteFolder();
        for (const file of order)
          folder.set(`file:///${file}`, readFileSync(new URL(`${name}/${file}`, samples), 'utf8'));
        return JSON.stringify(reportOf(planOf(folder.site())));
      };
      assert.equal(written(files), written([...files].reverse()));
    });
  }
});

describe('the figures of a small site', () => {
  const report = reportOf(planFrom(PADDOCK));
  const [toCamera, toRecorder] = report.links;

  // RTSP over TCP. A full segment has 1500 - 20 IP - 20 TCP - 12 timestamps = 1448 B (RFC 791, 9293, 7323). Of each
  // 1400 + 12 RTP (RFC 3550 §5.1) + 4 interleaving (RFC 7826 §14) B in it, 1400 are media: 1448 × 1400/1416 =
  // 1431.638 B. So 6 Mb/s are 6,000,000 / 8 / 1431.638 = 523.8753 segments a second, and half a segment more for each
  // of
  // 20 pictures: 533.8753; at a peak of 9 Mb/s, 795.8129. Around the media of each are 52 + 16.362 B.
  // PCMA at 64 kb/s goes out every 20 ms (RFC 3551 §4.2): 50 packets/s of 160 + 12 + 4 + 32 + 20 = 228 B of IP.
  // A frame adds 14 B and 4 of FCS, the line 20 more (IEEE 802.3, RFC 5180 App. A.1).
  //   line     6,000,000 + 533.8753 × 106.362 × 8   + 50 × 266 × 8 = 106,400  →  6,560,671
  //   frame    6,000,000 + 533.8753 ×  82.362 × 8   + 50 × 242 × 8 =  96,800  →  6,448,567
  //   peak     9,000,000 + 795.8129 × 106.362 × 8   + 106,400                 →  9,783,551
  it('has what a camera sends over TCP', () => {
    assert.deepEqual(toCamera?.backward.streams['paddock'], {
      line: { nominal: 6_560_671, peak: 9_783_551 },
      frame: { nominal: 6_448_567, peak: 9_621_155 },
      frameWithFcs: { nominal: 6_467_251, peak: 9_648_221 },
      payload: { nominal: 6_064_000, peak: 9_064_000 },
    });
  });

  // One acknowledgement for two full segments (RFC 5681 §4.2), and one for each packet of sound, as Linux sends them:
  // 533.8753 / 2 + 50 = 316.93765/s of 20 + 32 B of IP, so 70 B with FCS and 90 on the line:
  // × 90 × 8 = 228,195.1; without FCS × 66 × 8 = 167,343.1.
  it('has the acknowledgements that go back to the camera', () => {
    assert.equal(toCamera?.forward.line.nominal, 228_195);
    assert.equal(toCamera?.forward.frame.nominal, 167_343);
    assert.equal(toCamera?.forward.payload.nominal, 0);
  });

  // RTP over UDP: 1400 + 12 + 8 + 20 = 1440 B of IP. 6 Mb/s / 8 / 1400 = 535.7143 packets/s, 545.7143 with half a
  // packet more for each of 20 pictures; 6,000,000 + 545.7143 × 78 × 8 = 6,340,525.7.
  // AAC has 1024 samples in a frame: 48,000 / 1024 = 46.875 packets/s of 96,000 / 8 / 46.875 = 256 B + 4 of AU header
  // (RFC 3640 §3.3.6) + 12 + 8 + 20 = 300 B of IP; × 338 × 8 = 126,750. Together 6,467,275.7.
  // At peak 9 Mb/s: 9,000,000 + 813.5714 × 78 × 8 = 9,507,668.6 + 126,750 = 9,634,418.6.
  it('has what the recorder sends as multicast', () => {
    assert.deepEqual(toRecorder?.backward.streams['paddock-live']?.line, { nominal: 6_467_276, peak: 9_634_419 });
    assert.deepEqual(toRecorder?.backward.streams['paddock-live']?.payload, { nominal: 6_096_000, peak: 9_096_000 });
  });

  it('adds up what crosses a link', () => {
    assert.equal(toRecorder?.from, 'core/2');
    assert.equal(toRecorder?.to, 'recorder/cams');
    assert.equal(toRecorder?.capacity, 1_000_000_000);
    assert.equal(toRecorder?.forward.line.nominal, 6_560_671);
    assert.equal(toRecorder?.backward.line.nominal, 228_195 + 6_467_276);
    assert.equal(toRecorder?.blocked, false);
  });

  // RFC 1112 §6.4: the low 23 bits of 239.192.20.31 are 64.20.31, in hexadecimal 40:14:1f.
  it('has the group, its MAC, and who gets it', () => {
    const live = report.streams.find(({ name }) => name === 'paddock-live');
    assert.equal(live?.group, '239.192.20.31');
    assert.equal(live?.mac, '01:00:5e:40:14:1f');
    assert.deepEqual(live?.reaches, ['recorder']);
    assert.deepEqual(live?.unreached, ['kitchen-screen']);
    assert.match(live?.reasons['kitchen-screen'] ?? '', /kitchen-screen has no cable/);
  });

  // 6,096,000 b/s × 86,400 s / 8 = 65,836,800,000 B a day; × 14 d = 921,715,200,000 B.
  // 8 TB less 5 % = 7.6 TB; / 65,836,800,000 = 115.437 d.
  it('has the days of a volume', () => {
    const [archive] = report.volumes;
    assert.equal(archive?.usableBytes, 7_600_000_000_000);
    assert.equal(archive?.bytesPerDay, 65_836_800_000);
    assert.deepEqual(
      archive?.recordings,
      Object.assign(Object.create(null), { paddock: { bytesPerDay: 65_836_800_000, bytesKept: 921_715_200_000 } }),
    );
    assert.ok(Math.abs((archive?.daysUntilFull ?? 0) - 115.437) < 0.001);
  });

  // A device of class 3 takes 15.4 W at the switch (IEEE 802.3bt, secondary).
  it('has the power that a switch sets aside', () => {
    assert.deepEqual(report.poe, [{ device: 'core', budget: 130, draw: 15.4 }]);
  });
});
