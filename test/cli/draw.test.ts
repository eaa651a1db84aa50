// `plumbline draw`: what it writes and where, and what it says where there is nothing of that name.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { plumblineHere } from './run.ts';

const site = ['--site', 'samples/harrow-lane'];

describe('plumbline draw', () => {
  it('prints SVG, the same each time', async () => {
    const first = await plumblineHere(['draw', 'network', ...site]);
    assert.match(first.out, /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 /);
    assert.deepEqual(await plumblineHere(['draw', 'network', ...site]), first);
    assert.equal(first.status, 0);
  });

  it('writes a file, by whose name it knows that it is a page', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plumbline-draw-'));
    try {
      const file = join(folder, 'core.html');
      const { out, status } = await plumblineHere(['draw', 'switch', 'core', ...site, '--out', file]);
      assert.deepEqual({ out, status }, { out: `${file}\n`, status: 0 });
      assert.match(readFileSync(file, 'utf8'), /^<!doctype html>[^]*default-src 'none'[^]*<svg [^]*<table>/);
      assert.doesNotMatch(readFileSync(file, 'utf8'), /<script/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  for (const [words, says] of [
    [['netwrok'], /There is no picture netwrok\. The nearest is network; there are stream, network, /],
    [['stream', 'gate-liv'], /There is no stream gate-liv to draw\. The nearest is gate-live; there are /],
    [['switch'], /Say of which: plumbline draw switch NAME\. There are core, stable and glasshouse\./],
    [['network', 'core'], /network is drawn of the whole site: leave core out\./],
    [['network', '--vlan', 'vido'], /There is no VLAN vido to draw\. The nearest is video; there are /],
    [['switch', 'core', '--vlan', 'video'], /switch shows all there is: leave --vlan and --stream out\./],
  ] as const)
    it(`says of ${words.join(' ')} what there is`, async () => {
      const { err, out, status } = await plumblineHere(['draw', ...words, ...site]);
      assert.match(err, says);
      assert.deepEqual({ out, status }, { out: '', status: 2 });
    });
});
