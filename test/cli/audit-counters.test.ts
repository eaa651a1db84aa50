import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asIfMib, asLinux, asPlanned, harrowLane } from '../audit/counters/counted.ts';
import { plumblineHere } from './run.ts';

const SITE = ['--site', 'samples/harrow-lane'];

describe('plumbline audit counters', () => {
  const plan = harrowLane();
  let folder: string;
  let file: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-counters-'));
    file = join(folder, 'counters');
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const given = (text: string | Uint8Array, ...words: string[]) => {
    writeFileSync(file, text);
    return plumblineHere(['audit', 'counters', file, ...SITE, ...words]);
  };

  it('shows what was measured beside what is planned, and finds nothing where they agree', async () => {
    const { status, out, err } = await given(asLinux(plan, asPlanned(plan), { devices: ['recorder'] }));
    assert.deepEqual([status, err], [0, '']);
    assert.match(out, /^port +planned +peak +measured +busiest 10 s +difference\n/);
    assert.match(out, /\nrecorder\/cams → core\/5 +41 Mb\/s +65\.6 Mb\/s +41 Mb\/s +41 Mb\/s +0 b\/s\n/);
    assert.match(out, /2 interfaces in 14 samples: 4 of 4 directions as planned/);
  });

  it('finds what differs, at the end of the cable, in every format', async () => {
    const text = asIfMib(plan, () => 0, { devices: ['recorder'] });
    const { status, out } = await given(text);
    assert.equal(status, 1);
    assert.match(
      out,
      /recording\.site\.yaml:\d+:\d+ warning recorder\/cams → core\/5 carried .* \[port-below-plan\]\n.*to: recorder\/cams/,
    );
    const sarif = JSON.parse((await given(text, '--format', 'sarif')).out) as {
      runs: { tool: { driver: { rules: { id: string }[] } }; results: { ruleId: string; ruleIndex: number }[] }[];
    };
    const [run] = sarif.runs;
    assert.ok(run !== undefined && run.results.length > 0);
    for (const { ruleId, ruleIndex } of run.results) assert.equal(run.tool.driver.rules[ruleIndex]?.id, ruleId);
    assert.ok(
      (JSON.parse((await given(text, '--format', 'json')).out) as { diagnostics: object[] }).diagnostics.length > 0,
    );
    assert.equal((await given(text, '--fail-on', 'error')).status, 0);
    assert.equal((await given(text, '--tolerance', '100 %')).status, 0);
  });

  it('takes several files, and a device for those that name none', async () => {
    const other = join(folder, 'other');
    writeFileSync(other, asLinux(plan, asPlanned(plan), { devices: ['core'] }));
    const text = asLinux(plan, asPlanned(plan), { devices: ['recorder'] }).replaceAll('"device":"recorder",', '');
    const { status, out } = await given(text, other, '--device', 'recorder');
    assert.equal(status, 0);
    assert.match(out, /16 interfaces/);
    assert.match(
      (await given(text)).err,
      /counters: Nothing says whose counters these are: name the device by --device/,
    );
  });

  for (const [title, text, why] of [
    ['nothing', '', /there are no counters in it/],
    ['a header alone', 'time,ifName,ifInOctets\n', /there are no counters in it/],
    ['no UTF-8', Uint8Array.of(0x7b, 0xff, 0xfe), /cannot be read: it is not UTF-8 text/],
    ['a million brackets', '['.repeat(1_000_000), /is not whole JSON/],
    ['a line of 17 MB', 'a'.repeat(17_000_000), /Line 1 is longer than 16000000 characters/],
    ['a list of numbers', '[1, 2]', /is what ip prints, without the time/],
    [
      'an unknown device',
      'time,device,ifName,ifInOctets\n1772366400,__proto__,5,5\n',
      /The site has no device __proto__/,
    ],
  ] as const) {
    it(`says what is wrong with ${title}, and does nothing`, async () => {
      const { status, out, err } = await given(text);
      assert.deepEqual([status, out], [2, '']);
      assert.match(err, why);
      assert.ok(err.length < 1000);
    });
  }

  it('says what is wrong with what it is asked', async () => {
    assert.match(
      (await plumblineHere(['audit', 'counters', join(folder, 'none'), ...SITE])).err,
      /cannot be read: it does not exist/,
    );
    assert.match((await plumblineHere(['audit', 'counters', folder, ...SITE])).err, /cannot be read: it is a folder/);
    assert.match(
      (await given('', '--tolerance', 'much')).err,
      /--tolerance is much: write a number, a space and a unit, such as '10 %'/,
    );
    for (const words of [
      ['audit', 'counters'],
      ['audit', 'counters', file, '--nonsense'],
    ])
      assert.equal((await plumblineHere(words)).status, 2);
  });

  it('explains what it finds', async () => {
    const { status, out } = await plumblineHere(['explain', 'port-below-plan']);
    assert.equal(status, 0);
    assert.match(out, /^# port-below-plan\n\nA port carried less/);
    assert.match((await plumblineHere(['explain', 'port-below-plam'])).err, /The nearest name is port-below-plan/);
  });
});
