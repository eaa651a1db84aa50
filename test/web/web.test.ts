// The extension in VS Code for the Web: its browser-only build, in headless Chromium, with the suite of this folder.
import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { planOf } from '../../server/src/plan.ts';
import { unavailable } from '../availability.ts';
import { plumbline } from '../cli/run.ts';
import { chromiumPath, launchBrowser } from '../vscode/browser.ts';
import { uplink } from '../vscode/first-draft.ts';
import { reportedPeaks } from '../vscode/report.ts';
import { type SiteCopy, copySample } from '../vscode/site-copy.ts';
import { installWebEditor, installedWebEditor } from './install.ts';
import { type Results, marker } from './results.ts';

describe('VS Code for the Web', function () {
  let site: SiteCopy;
  let server: ChildProcess | undefined;
  let browser: Browser | undefined;
  let address: string;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const chromium = chromiumPath();
    if (chromium === undefined) unavailable(this, 'there is no Chromium on the PATH, and CHROMIUM names none');
    const installed = process.env['CI'] ? await installWebEditor() : installedWebEditor();
    if (installed === undefined)
      unavailable(this, 'VS Code for the Web is not fetched yet: node --import tsx test/web/fetch.ts');
    site = await copySample('first-draft');
    const { forward, backward } = reportedPeaks(site.folder, uplink.from, uplink.to);
    const made = plumbline(['make', 'dnsmasq', '--site', site.folder]).out;
    const plan = planOf(readSite(site.folder).folder.site());
    const drawn = OF_PLAN.flatMap((kind) =>
      subjectsOf(kind, plan)
        .slice(0, 1)
        .map((subject) => ({ kind: kind.kind, subject, title: kind.draw(plan, subject, USUAL_OPTIONS).title })),
    );
    await writeFile(join(site.folder, 'expected.json'), JSON.stringify({ peaks: [forward, backward], made, drawn }));
    server = spawn(
      process.execPath,
      [fileURLToPath(new URL('serve.mjs', import.meta.url)), installed, repository, site.folder],
      {
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    address = `http://localhost:${await portOf(server)}/`;
    browser = await launchBrowser(chromium);
  });
  after(async () => {
    await browser?.close();
    server?.kill();
    await site?.remove();
  });

  it('passes every test of site.suite.ts in a web worker', async () => {
    const page = await browser?.newPage();
    assert.ok(page);
    const said: string[] = [];
    let results: Results | undefined;
    await page.exposeFunction('codeAutomationLog', (_type: string, values: readonly unknown[]) => {
      const line = values.map(String).join(' ');
      said.push(line);
      if (line.startsWith(marker)) results = JSON.parse(line.slice(marker.length)) as Results;
    });
    const finished = new Promise<number>((resolve) => {
      void page.exposeFunction('codeAutomationExit', (code: number) => resolve(code));
    });
    await page.goto(address);
    const late = new Promise<never>((_resolve, reject) => {
      setTimeout(
        () => reject(new Error(`the tests did not end; the editor said:\n${said.join('\n').slice(-4000)}`)),
        200_000,
      ).unref();
    });
    const code = await Promise.race([finished, late]);
    assert.ok(results, `the tests left no results:\n${said.join('\n')}`);
    for (const title of results.passed) console.log(`      passed inside: ${title}`);
    assert.deepEqual(results.failed, []);
    assert.ok(results.passed.length > 6);
    assert.equal(code, 0);
  });
});

async function portOf(server: ChildProcess): Promise<string> {
  let output = '';
  return new Promise((resolve, reject) => {
    server.stdout?.on('data', (data: Buffer) => {
      output += data.toString();
      const port = /^port (\d+)$/m.exec(output)?.[1];
      if (port !== undefined) resolve(port);
    });
    server.once('exit', (code) => reject(new Error(`it ended with ${code}:\n${output}`)));
  });
}
