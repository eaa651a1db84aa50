// What fails is struck out by line and sign, and the other links show what they carry then.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { failurePicture } from '../../server/src/draw/failure.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { elementNamed } from '../../server/src/failure/element.ts';
import { failureOf } from '../../server/src/failure/failure.ts';
import { planOf } from '../../server/src/plan.ts';
import { percent } from '../../server/src/text/words.ts';
import { picture } from './picture.ts';

describe('what fails, drawn', () => {
  const plan = planOf(readSite('samples/harrow-lane').folder.site());

  it('strikes out a cut cable, and shows what its standby carries', () => {
    const drawing = failurePicture.draw(plan, 'F-01', USUAL_OPTIONS);
    const { things } = picture(svgFile(drawing));
    const rows = things.filter(({ names }) => names === 'ports');
    for (const end of ['core/16', 'stable/9'])
      assert.ok(
        rows.some(({ at, texts }) => at === end && texts.includes('✕ fails')),
        end,
      );
    const element = elementNamed(plan, 'F-01');
    assert.ok(element !== undefined);
    const standby = failureOf(plan, element).takeovers.find(({ at }) => at === 'stable/10 → glasshouse/8');
    const words = percent(standby?.after ?? 0, standby?.capacity ?? 1);
    assert.ok(rows.some(({ at, texts }) => /^(stable\/10|glasshouse\/8)$/.test(at) && texts.includes(words)));
    assert.match(drawing.description, /^If the cable core\/16 – stable\/9 fails, no picture/);
  });

  it('crosses out what is dark, and lists what is lost', () => {
    const { marks, tables } = failurePicture.draw(plan, 'stable', USUAL_OPTIONS);
    const boxes = marks.flatMap((mark) => (mark.mark === 'thing' && mark.at.name === 'stable' ? [mark] : []));
    const words = boxes.flatMap((box) => box.marks.flatMap((mark) => (mark.mark === 'words' ? [mark] : [])));
    assert.ok(words.some(({ text, look }) => text === '✕ stable' && look === 'lost'));
    assert.ok(boxes.some(({ label }) => label.endsWith('✕ fails')));
    const kinds = tables[0]?.rows.map(({ cells }) => cells[0]);
    assert.deepEqual([tables[0]?.title, kinds?.filter((kind) => kind === 'recording').length], ['Lost', 6]);
  });
});
