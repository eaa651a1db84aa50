// Text of a site stays text in a picture: it neither becomes marks nor turns what stands beside it.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { describe, it } from 'mocha';
import { asButton } from '../../server/src/report/page/cells.ts';
import { USUAL, subjectsOf } from '../../server/src/draw/drawing.ts';
import { escaped } from '../../server/src/draw/escape.ts';
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

describe('text of a site in a picture', () => {
  for (const name of HOSTILE)
    it(`stays text: ${name.slice(0, 30)}`, () => {
      const drawing = networkPicture.draw(planFrom(`site: {name: ${JSON.stringify(name)}}\n`), '', USUAL);
      const { title } = picture(svgFile(drawing));
      assert.ok(title.includes(name), title);
      for (const page of [drawingPage(drawing), drawingPage(drawing, asButton)])
        assert.doesNotMatch(page, /<script|<a href="javascript|onload='|<!--/);
    });

  it('has nothing that cannot be seen, or that turns the direction of writing', () => {
    const marks = ['\u202e', '\u2066', '\u200f', '\u0000', '\u001b', '\ufffe', '\uffff', '\ud800'];
    for (const mark of marks) assert.equal(escaped(`a${mark}b`), 'a\ufffdb', JSON.stringify(mark));
  });

  it('is XML, as libxml2 reads it', function () {
    needs(this, 'xmllint', 'libxml2-utils');
    for (const sample of ['harrow-lane', 'cottages', 'first-draft']) {
      const plan = planOf(readSite(`samples/${sample}`).folder.site());
      for (const kind of KINDS.filter(({ measured }) => measured?.needed !== true))
        for (const subject of subjectsOf(kind, plan)) {
          const input = svgFile(kind.draw(plan, subject, USUAL));
          const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '-'], { input, encoding: 'utf8' });
          assert.equal(status, 0, `${kind.kind} ${subject}: ${stderr}`);
        }
    }
  });
});
