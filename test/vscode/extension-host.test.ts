// Mocha inside the extension host of a real VS Code, through @vscode/test-electron: here the embedded editor,
// with PLUMBLINE_VSCODE=desktop the desktop, which is downloaded.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { runTests } from '@vscode/test-electron';
import { repository } from '../../client/open/install.ts';
import { uplink } from './first-draft.ts';
import { reportedPeaks } from './report.ts';
import { editorAndBrowser } from './requirements.ts';
import { copySample } from './site-copy.ts';
import type { SiteCopy } from './site-copy.ts';

/** The part of Mocha's JSON report that is read here. */
interface Results {
  readonly passes: readonly { readonly fullTitle: string; readonly duration?: number }[];
  readonly pending: readonly { readonly fullTitle: string }[];
  readonly failures: readonly { readonly fullTitle: string; readonly err: { readonly stack?: string } }[];
}

describe('inside the extension host of a real VS Code', function () {
  const isDesktop = process.env['PLUMBLINE_VSCODE'] === 'desktop';
  let site: SiteCopy | undefined;

  before(async function () {
    if (!isDesktop) await editorAndBrowser(this);
    site = await copySample('first-draft');
  });
  after(() => site?.remove());

  it('every test of test/vscode/*.suite.ts passes', async () => {
    assert.ok(site);
    const output = join(site.folder, '..', 'results.json');
    const peaks = reportedPeaks(site.folder, uplink.from, uplink.to);
    const run = runTests({
      ...(isDesktop ? {} : { vscodeExecutablePath: join(repository, 'test', 'vscode', 'embedded-code.mjs') }),
      extensionDevelopmentPath: repository,
      extensionTestsPath: join(repository, 'dist', 'test', 'host.cjs'),
      extensionTestsEnv: { PLUMBLINE_RESULTS: output, PLUMBLINE_UPLINK: JSON.stringify(peaks) },
      launchArgs: [site.folder],
    });
    const failed = await run.then(
      () => undefined,
      (error: unknown) => error,
    );
    const results = await readFile(output, 'utf8').then(
      (text) => JSON.parse(text) as Results,
      () => undefined,
    );
    if (!results) throw new Error('the tests inside the editor left no results', { cause: failed });

    for (const { fullTitle, duration } of results.passes)
      console.log(`      passed inside: ${fullTitle} (${duration ?? 0} ms)`);
    assert.deepEqual(
      results.failures.map(({ fullTitle, err }) => `${fullTitle}\n${err.stack ?? ''}`),
      [],
    );
    assert.deepEqual(results.pending, []);
    assert.ok(results.passes.length > 0, 'no test ran inside the editor');
    assert.equal(failed, undefined);
  });
});
