import assert from 'node:assert/strict';
import { plumblineHere } from './run.ts';

const SITE = ['--site', 'samples/harrow-lane'];

describe('plumbline headroom', () => {
  it('prints what stops further cameras at a switch, and the limits one by one', async () => {
    const { status, out } = await plumblineHere(['headroom', 'paddock-cam', 'glasshouse', ...SITE]);
    assert.equal(status, 0);
    assert.match(out, /^2 more like paddock-cam at glasshouse, then glasshouse has no free port left/);
    assert.match(out, /^ {2}ports +glasshouse +2 {2}/m);
  });

  it('has a row for each switch where none is named', async () => {
    const { out } = await plumblineHere(['headroom', 'paddock-north-cam', ...SITE]);
    const rows = out.trim().split('\n');
    assert.deepEqual(
      rows.map((row) => row.split(/ {2,}/).slice(0, 2)),
      [
        ['core', '0'],
        ['stable', '0'],
        ['glasshouse', '0'],
      ],
    );
    // 29.8 W are left of the stable's budget, less than the 30 W of class 4; but there is no port for it either.
    assert.match(rows[1] ?? '', /no free port left/);
  });

  it('prints JSON', async () => {
    const { out } = await plumblineHere(['headroom', 'gate-cam', 'core', '--format', 'json', ...SITE]);
    const found = JSON.parse(out) as { limits: Record<string, unknown>[] };
    assert.deepEqual(Object.keys(found), ['camera', 'switch', 'more', 'limits']);
    assert.deepEqual(found.limits[0], { limit: 'ports', at: 'core', more: 0 });
    for (const limit of found.limits) assert.deepEqual(Object.keys(limit), ['limit', 'at', 'more']);
    const all = JSON.parse(
      (await plumblineHere(['headroom', 'gate-cam', '--format', 'json', ...SITE])).out,
    ) as unknown[];
    assert.deepEqual(all[0], found);
  });

  it('says what is near to a name that is not there', async () => {
    const { status, err } = await plumblineHere(['headroom', 'gate-cm', ...SITE]);
    assert.equal(status, 2);
    assert.match(err, /no camera gate-cm\. The nearest is gate-cam/);
    assert.match((await plumblineHere(['headroom', 'gate-cam', 'cor', ...SITE])).err, /no switch cor\. .* core/);
  });
});
