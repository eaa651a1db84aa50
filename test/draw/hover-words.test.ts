// The hover of a drawing: Markdown of the server as words, which a page shows as text.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { blocksOf } from '../../client/src/pages/hover-words.ts';
import { hover } from '../../server/src/features/hover/hover.ts';
import { namedHover } from '../../server/src/features/hover/named.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { planOf } from '../../server/src/plan.ts';
import { portAnswer } from '../../server/src/report/answer/port.ts';
import { escaped, table } from '../../server/src/text/markdown.ts';
import { atCursor } from '../cursor.ts';
import { PADDOCK } from '../report/paddock.ts';
import { portOf } from '../site-of.ts';

describe('the hover of a drawing', () => {
  const plan = planOf(readSite('samples/first-draft').folder.site());

  it('is that of the editor where a text names the thing', () => {
    const { checked, file, offset } = atCursor(PADDOCK.replace('core/1', 'co$0re/1'));
    const inText = hover(checked, file, offset)?.markdown ?? '';
    assert.ok(inText.startsWith(`${namedHover(checked.plan, 'ports', 'core/1')}\n\n`), inText);
  });

  it('has the answer first, and the sum as a table', () => {
    const blocks = blocksOf(namedHover(plan, 'ports', 'core/16'));
    const answer = portAnswer(plan, portOf(plan.site, 'core/16'));
    assert.deepEqual(blocks[0], { text: answer, look: 'strong' });
    const tables = blocks.flatMap((block) => ('rows' in block ? [block] : []));
    const line = tables.flatMap(({ rows }) => rows).find(([first]) => first?.text === 'paddock');
    assert.ok(line !== undefined && line.some(({ text }) => text.endsWith('b/s')), JSON.stringify(tables));
    assert.ok(tables.every(({ rows, right }) => rows.every(({ length }) => length === right.length)));
  });

  it('is nothing where the site has no such thing', () => {
    for (const [names, name] of [
      ['ports', 'core/99'],
      ['devices', 'nobody'],
      ['lint', 'rules'],
    ] as const)
      assert.equal(namedHover(plan, names, name), '');
  });

  it('shows any text as it stands, in paragraphs, in bold and in tables', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-ascii', minLength: 1 }), (text) => {
        const wanted = text.trim();
        fc.pre(wanted !== '');
        const own = escaped(wanted);
        assert.deepEqual(blocksOf(own), [{ text: wanted, look: 'plain' }]);
        assert.deepEqual(blocksOf(`**${own}**`), [{ text: wanted, look: 'strong' }]);
        const [found] = blocksOf(table(['', 'b'], [[own, `**${own}**`]], [false, true]));
        assert.ok(found !== undefined && 'rows' in found);
        assert.deepEqual(found.rows[1], [
          { text: wanted, look: 'plain' },
          { text: wanted, look: 'strong' },
        ]);
        assert.deepEqual(found.right, [false, true]);
      }),
    );
  });
});
