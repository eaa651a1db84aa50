// What hosts and switches counted is found in order.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import { plumbline } from '../../cli/run.ts';
import type { House } from '../house.ts';

/** A machine with other work to do may send for a while less, and then more, than is planned: the audit says so too. */
const TRIES = 4;

export function counters(house: () => House): void {
  it('finds the counters of hosts and switches in order', async () => {
    const counting = await house().counting();
    if (counting.windows === 0) await counting.window();
    const audited = (): string[] =>
      counting.files.flatMap((file) => {
        const { status, out, err } = plumbline(['audit', 'counters', file, '--site', house().site]);
        return status === 0 ? [] : [out + err];
      });
    let told = audited();
    for (let again = 1; told.length > 0 && again < TRIES; again++) {
      await counting.window();
      told = audited();
    }
    assert.deepEqual(told, []);
  });
}
