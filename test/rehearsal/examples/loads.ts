// Everything runs: each port carries what the plan says.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import { tableOf } from '../../lab/table.ts';
import type { House } from '../house.ts';

/**
 * A port or a screen has to be in order in one window: where other work takes the processor from cameras and decoders
 * for a second, pictures come late and the film does not come round once in the window. None of four runs beside other
 * work for two to three times the processors needed a second window since the switches run before all else.
 */
const TRIES = 3;

export function loads(house: () => House): void {
  it('loads every port as it is planned, while screens show every picture', async () => {
    const counting = await house().counting();
    do await counting.window();
    while (counting.wrong.length > 0 && counting.windows < TRIES);
    const { rows, seconds, windows, wrong } = counting;
    const after = windows === 1 ? '' : `, after ${windows} windows`;
    console.log(`      bytes in ${seconds.toFixed(1)} s without FCS${after}\n${tableOf(rows)}`);
    assert.deepEqual(wrong, []);
  });
}
