// JUnit's XML, read with the package junit2json. It has no published schema; what CI services make of it:
// common practice, no source.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'junit2json';
import { mistakes } from '../first-draft.ts';
import { plumblineHere } from './run.ts';

type Suites = Awaited<ReturnType<typeof read>>;

async function read(out: string) {
  const parsed = await parse(out);
  assert.ok(parsed && 'testsuite' in parsed);
  return parsed;
}

const cases = ({ testsuite }: Suites) => (testsuite ?? []).flatMap(({ testcase }) => testcase ?? []);

describe('plumbline check --format junit', () => {
  it('has a suite for each file and a failed case for each error, as the exit status counts them', async () => {
    const { status, out } = await plumblineHere(['check', '--format', 'junit', 'samples/first-draft']);
    const report = await read(out);
    assert.equal(status, 1);
    assert.deepEqual(
      report.testsuite?.map(({ name }) => name),
      ['cables', 'devices', 'recording', 'site', 'streams', 'television'].map(
        (name) => `samples/first-draft/${name}.site.yaml`,
      ),
    );
    const failed = cases(report).filter(({ failure }) => failure !== undefined);
    const errors = mistakes.filter(({ severity }) => severity === 'error');
    assert.deepEqual(failed.map(({ failure }) => failure?.[0]?.type).sort(), errors.map(({ rule }) => rule).sort());
    assert.equal(report.failures, errors.length);
    assert.equal(report.tests, cases(report).length);
    assert.match(String(failed[0]?.failure?.[0]?.inner), /^samples\/first-draft\/cables\.site\.yaml:\d+:\d+ error /);
  });

  it('counts warnings as failures where the command fails by them', async () => {
    const report = await read(
      (await plumblineHere(['check', '--format', 'junit', '--fail-on', 'warning', 'samples/first-draft'])).out,
    );
    assert.equal(report.failures, mistakes.filter(({ severity }) => severity !== 'information').length);
  });

  it('has a passed case for each file of a clean site', async () => {
    const report = await read((await plumblineHere(['check', '--format', 'junit', 'samples/harrow-lane'])).out);
    assert.ok((report.tests ?? 0) > 1);
    assert.equal(report.failures, 0);
    assert.ok(cases(report).every(({ failure }) => failure === undefined));
  });

  it('writes what XML cannot hold so that it can be read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plumbline-junit-'));
    try {
      writeFileSync(join(folder, 'a.site.yaml'), 'devices:\n  "gate <cam> & \\"yard\\"\\u0001": {kind: camera}\n');
      const { out } = await plumblineHere(['check', '--format', 'junit', '--fail-on', 'hint', folder]);
      const messages = cases(await read(out)).map(({ failure }) => failure?.[0]?.message ?? '');
      assert.ok(
        messages.some((message) => message.includes('gate <cam> & "yard"')),
        messages.join('\n'),
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
