/** Lists without repeats, filled with what does not belong in them. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { SiteFolder } from '../../server/src/site/folder.ts';

function problems(text: string): string[] {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane/all.site.yaml', text);
  return folder
    .site()
    .items.flatMap((item) => item.problems.map(({ problem, keyPath }) => `${problem} ${keyPath.join('/')}`));
}

describe('a list without repeats', () => {
  it('reports a name that appears twice', () => {
    assert.deepEqual(problems('streams: {paddock: {source: cam, receivers: [recorder, screen, recorder]}}\n'), [
      'repeated receivers/2',
    ]);
  });

  it('reports mappings in the place of names, equal ones too', () => {
    const found = ['wrong-type receivers/0', 'wrong-type receivers/1'];
    assert.deepEqual(problems('streams: {paddock: {source: cam, receivers: [{a: 1}, {b: 2}]}}\n'), found);
    assert.deepEqual(problems('streams: {paddock: {source: cam, receivers: [{a: 1}, {a: 1}]}}\n'), found);
  });
});
