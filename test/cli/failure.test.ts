import assert from 'node:assert/strict';
import { plumblineHere } from './run.ts';

const SITE = ['--site', 'samples/harrow-lane'];

describe('plumbline failure', () => {
  it('prints what is lost, what takes over and when it is back', async () => {
    const { status, out } = await plumblineHere(['failure', 'F-01', ...SITE]);
    assert.equal(status, 0);
    assert.match(out, /^If the cable core\/16 – stable\/9 fails, no picture and no recording is lost\. /);
    assert.match(out, /^ {2}stable\/10 → glasshouse\/8 +0 b\/s +→ +\S+ Mb\/s +\S+ % of 1 Gb\/s$/m);
    assert.match(out, /IEEE 802\.1D/);
    assert.match((await plumblineHere(['failure', 'stable', ...SITE])).out, /^ {2}recordings +paddock, /m);
  });

  it('takes a cable by either end or its label', async () => {
    const [byLabel, ...others] = await Promise.all(
      ['F-01', 'core/16', 'stable/9'].map(async (name) => (await plumblineHere(['failure', name, ...SITE])).out),
    );
    for (const out of others) assert.equal(out, byLabel);
  });

  it('prints JSON', async () => {
    const { out } = await plumblineHere(['failure', 'glasshouse', '--format', 'json', ...SITE]);
    const found = JSON.parse(out) as Record<string, unknown>;
    assert.deepEqual(found['element'], { kind: 'device', name: 'glasshouse' });
    assert.deepEqual(found['recordings'], ['seedlings', 'glasshouse-door']);
    assert.deepEqual(found['dark'], ['seedlings-cam', 'glasshouse-door-cam']);
    assert.equal(found['backAfter'], null);
  });

  it('ranks what must not fail, the worst first, equal ones together', async () => {
    const { out } = await plumblineHere(['failure', '--all', ...SITE]);
    const [head, first, ...rest] = out.split('\n');
    assert.match(head ?? '', /^recordings +cameras +pictures +are lost with$/);
    assert.match(first ?? '', /^ +12 +12 +19 +any of 2 devices: core and stairs-ups$/);
    assert.ok(rest.some((line) => /any of \d cables: core\/2 – drive-cam\/eth, /.test(line)));
    const all = JSON.parse((await plumblineHere(['failure', '--all', '--format', 'json', ...SITE])).out) as {
      recordings: number;
    }[];
    assert.equal(all[0]?.recordings, 12);
  });

  it('says what is near to a name that is not there, and asks for one', async () => {
    assert.match((await plumblineHere(['failure', 'F-O1', ...SITE])).err, /called F-O1\. The nearest is F-01/);
    const { status, err } = await plumblineHere(['failure', ...SITE]);
    assert.equal(status, 2);
    assert.match(err, /Say what fails, or --all/);
    assert.match((await plumblineHere(['failure', 'F-01', '--all', ...SITE])).err, /not both/);
    assert.match((await plumblineHere(['failure', 'core/13', ...SITE])).err, /No cable is in core\/13/);
  });
});
