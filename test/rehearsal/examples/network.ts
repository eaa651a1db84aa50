// The server has the network that was made for it.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { it } from 'mocha';
import type { House } from '../house.ts';

export function network(house: () => House): void {
  it('gives the server its network by the script that was made, and finds it so by the other', async () => {
    await house().network();
    const folder = join(await house().made(), 'iproute2', 'recorder');
    const said = await house().onHost('recorder', `sh ${folder}/check-network.sh`);
    assert.match(said, /recorder: all is as planned/);
  });
}
