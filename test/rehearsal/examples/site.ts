// The site at an eighth of its rates is as sound as the sample, and all that its equipment needs can be made from it.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import { plumbline } from '../../cli/run.ts';
import type { House } from '../house.ts';

export function site(house: () => House): void {
  it('has a site without a finding, of which all is made', async () => {
    const { status, out } = plumbline(['check', house().site]);
    assert.equal(status, 0, out);
    await house().made();
  });
}
