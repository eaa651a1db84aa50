// What the server sends on is announced, and a screen hears it.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import { plumbline } from '../../cli/run.ts';
import { sleep } from '../../lab/run.ts';
import type { House } from '../house.ts';

/** Milliseconds in which an announcer is restarted and has announced everything, by its unit and RFC 2974 §3.1. */
const ROUND = 30_000;
const ROUNDS = 4;

export function announcements(house: () => House): void {
  /*
   * Each goes out when the announcer begins, one after the other at 4000 bit/s, and then minutes later. One that is
   * lost on a busy machine would not be heard for so long: then the announcer is killed, as by a crash, and announces
   * everything again when its unit restarts it. That has happened once in any case.
   */
  it('announces every stream that it sends, as the audit of a capture finds', async () => {
    const { announcedStreams, announcer } = await house().recorder();
    const sent = house().plan.site.streams.filter(({ group }) => group !== undefined);
    assert.equal(announcedStreams, sent.length);
    const capture = await house().capture();
    const audited = (): ReturnType<typeof plumbline> =>
      plumbline(['audit', 'announcements', capture, '--site', house().site]);
    const all = `of ${announcedStreams} sessions by 1 announcer `;
    let found = audited();
    for (let round = 1; !found.out.includes(all) && round <= ROUNDS; round++) {
      if (round > 1) announcer.kill();
      const end = Date.now() + ROUND;
      do await sleep(2000);
      while (!(found = audited()).out.includes(all) && Date.now() < end);
    }
    assert.ok(found.out.includes(all), found.out);
    assert.equal(found.status, 0, found.out + found.err);
    assert.ok(announcer.starts >= 2, announcer.output);
  });
}
