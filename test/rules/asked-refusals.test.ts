// What is refused to those who ask for it is looked for at every keystroke: a site that asks for nothing pays nothing.
import assert from 'node:assert/strict';
import { askedRefusals } from '../../server/src/make/refusals.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { generatedSite } from '../bench/generated-site.ts';
import { siteOf } from '../site-of.ts';

describe('What the site asks for and cannot be made', () => {
  it('is looked for in the network only where something is asked for', () => {
    // Cameras that a server records and sends on as multicast.
    const plain = generatedSite(300);
    assert.deepEqual(lookedAt(plain), ['site']);
    const first = '  camera-1:\n    source: camera-1\n';
    assert.ok(plain.includes(first), 'a camera');
    for (const asking of ['credentials: gate', 'audio: {codec: aac, bitrate: 64 kb/s}'])
      assert.ok(lookedAt(plain.replace(first, `${first}    ${asking}\n`)).includes('network'), asking);
  });
});

/** The parts of the plan that it reads. */
function lookedAt(text: string): string[] {
  const read = new Set<string>();
  const plan = new Proxy(planOf(siteOf(text)), {
    get(target, key) {
      read.add(String(key));
      return target[key as keyof Plan];
    },
  });
  askedRefusals(plan);
  return [...read];
}
