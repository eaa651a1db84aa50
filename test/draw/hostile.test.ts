// Text of a site stays text in a picture: it neither becomes marks nor turns what stands beside it.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, it } from 'mocha';
import { IfMibTable } from '../../server/src/audit/counters/if-mib-table.ts';
import { lookedAt } from '../../server/src/audit/recordings/looked.ts';
import { readVolumes } from '../../server/src/machine/volumes.ts';
import { asButton } from '../../server/src/report/page/cells.ts';
import { USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { svgEscaped } from '../../server/src/draw/escape.ts';
import { KINDS } from '../../server/src/draw/kinds.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { drawingPage } from '../../server/src/draw/page.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { planOf } from '../../server/src/plan.ts';
import { planFrom } from '../report/paddock.ts';
import { needs } from '../availability.ts';
import { picture } from './picture.ts';

const HOSTILE = [
  '</title><script>alert(1)</script>',
  '"><a href="javascript:alert(1)">',
  "' onload='alert(1)",
  '&lt;b&gt; &#60; ]]>',
  '<!-- -->',
  'x'.repeat(300),
];

/** A site with something for every kind of picture, named so. What is named elsewhere too has a right name. */
function houseNamed(evil: string): string {
  const q = JSON.stringify(evil);
  return `site: {name: ${q}}
vlans: {${q}: {id: 20, subnet: 192.168.20.0/24}}
racks: {rack: {units: 6}}
devices:
  ${q}: {kind: switch, poe-budget: 60 W, address: 192.168.20.2, rack: rack, unit: 2, power: {at-most: 20 W}, location: ${q}, ports: {1-3: {speed: 1 Gb/s, poe: at}}}
  hub: {kind: switch, ports: {1-3: {speed: 1 Gb/s}}}
  camera: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, location: ${q}}
  server: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  panel: {kind: patch-panel, ports: {1-2: {}, ${q}: {}}}
  ${JSON.stringify(`aerial ${evil}`)}: {kind: aerial, receives: {mux: 60 dB\u00b5V}}
cables:
  - {from: hub/1, to: camera, through: [panel/1], label: ${q}}
  - {from: hub/2, to: server, label: ${q}}
streams: {${q}: {source: camera, transport: rtsp, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [server]}}
volumes: {volume: {host: server, capacity: 1 TB}}
recordings: {${q}: {stream: ${q}, volume: volume, segment: 60 s, keep: 7 d, file: "%Y-%m-%d_%H-%M-%S%z.mp4"}}
`;
}

describe('text of a site in a picture', () => {
  for (const name of HOSTILE)
    it(`stays text: ${name.slice(0, 30)}`, () => {
      const drawing = networkPicture.draw(planFrom(`site: {name: ${JSON.stringify(name)}}\n`), '', USUAL_OPTIONS);
      const { title } = picture(svgFile(drawing));
      assert.ok(title.includes(name), title);
      for (const page of [drawingPage(drawing), drawingPage(drawing, asButton)])
        assert.doesNotMatch(page, /<script|<a href="javascript|onload='|<!--/);
    });

  it('stays text in every kind of picture, whatever is named so', () => {
    for (const evil of HOSTILE) {
      const plan = planFrom(houseNamed(evil));
      const counters = { readings: new IfMibTable().end(), device: undefined };
      const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
      const { volumes } = readVolumes(plan.site, plan.site.volumes, folder, () => undefined);
      rmSync(folder, { recursive: true });
      const recordings = { looked: volumes.flatMap(({ survey }) => lookedAt(survey, 0)), now: 0 };
      for (const kind of KINDS) {
        const subjects = subjectsOf(kind, plan);
        assert.ok(subjects.length > 0, `${kind.kind}: ${evil}`);
        const evilOnes = subjects.filter((subject) => subject.includes(evil));
        for (const subject of [...evilOnes, ...subjects].slice(0, 2)) {
          const drawing = kind.draw(plan, subject, { ...USUAL_OPTIONS, measured: { counters, recordings } });
          const { things } = picture(svgFile(drawing));
          assert.ok(
            things.some(({ at, label }) => `${at} ${label}`.includes(evil)),
            `${kind.kind}: ${evil}`,
          );
          for (const page of [svgFile(drawing), drawingPage(drawing), drawingPage(drawing, asButton)])
            assert.doesNotMatch(page, /<script|<a href="javascript|onload='|<!--|<b>/, `${kind.kind}: ${evil}`);
        }
      }
    }
  });

  it('has nothing that cannot be seen, or that turns the direction of writing', () => {
    const marks = ['\u202e', '\u2066', '\u200f', '\u0000', '\u001b', '\ufffe', '\uffff', '\ud800'];
    for (const mark of marks) assert.equal(svgEscaped(`a${mark}b`), 'a\ufffdb', JSON.stringify(mark));
  });

  it('is XML, as libxml2 reads it', function () {
    needs(this, 'xmllint', 'libxml2-utils');
    for (const sample of ['harrow-lane', 'cottages', 'first-draft']) {
      const plan = planOf(readSite(`samples/${sample}`).folder.site());
      for (const kind of KINDS.filter(({ measured }) => measured?.needed !== true))
        for (const subject of subjectsOf(kind, plan)) {
          const input = svgFile(kind.draw(plan, subject, USUAL_OPTIONS));
          const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '-'], { input, encoding: 'utf8' });
          assert.equal(status, 0, `${kind.kind} ${subject}: ${stderr}`);
        }
    }
  });
});
