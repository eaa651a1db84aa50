// Screens show what is sent to them, and know of it by nothing but the descriptions that were made.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import type { House } from '../house.ts';

export function pictures(house: () => House): void {
  it('lets screens join by the descriptions that were made, and decode', async () => {
    const screens = await house().screens();
    const watched = house().plan.site.streams.flatMap(({ name, transport, receivers }) =>
      transport === 'rtsp' ? [] : receivers.filter((each) => each !== 'recorder').map((each) => `${name} at ${each}`),
    );
    assert.deepEqual(screens.map(({ name }) => name).sort(), watched.sort());
    // Eighteen pictures on three screens, and one in the office, in another VLAN.
    assert.equal(screens.length, 19);
  });
}
