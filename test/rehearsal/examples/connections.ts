// However much is done with what a camera sends, it sends it once.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import type { House } from '../house.ts';

export function connections(house: () => House): void {
  it('asks each camera once, whatever it sends on and records of it', async () => {
    const { services } = await house().recorder();
    const { streams } = house().plan.site;
    const asked = new Map<string, number>();
    for (const { source = '', transport, port } of streams) {
      if (transport !== 'rtsp') continue;
      // ss(8), of iproute2.
      const shown = await house().onHost(source, `ss -Htn state established '( sport = :${port} )'`);
      asked.set(source, shown.split('\n').filter((line) => line !== '').length);
    }
    assert.deepEqual(
      [...asked].filter(([, connections]) => connections !== 1),
      [],
    );
    assert.equal(asked.size, 12);
    // Of some the camera's own stream is recorded and sent on, by one program.
    const both = ['gate', 'yard', 'porch', 'paddock-north', 'stable-aisle', 'seedlings'];
    assert.deepEqual(
      both.filter((name) => !services.has(`plumbline-ingest-${name}.service`)),
      [],
    );
  });
}
