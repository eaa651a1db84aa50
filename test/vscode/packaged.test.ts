// The extension as it is shipped: packed, installed in the embedded editor, and used by a person in a browser.
import assert from 'node:assert/strict';
import { readFile, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Browser } from 'playwright-core';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { NEW_SITES, NEW_SITE_FILE } from '../../server/src/site/new-site/new-site.ts';
import { ownTimeZone } from '../../server/src/site/time-zone.ts';
import { mistakes } from '../first-draft.ts';
import { launchBrowser } from './browser.ts';
import { eventually } from './eventually.ts';
import { type Packed, packExtension } from './package.ts';
import { editorAndBrowser } from './requirements.ts';
import { type SiteCopy, copySample } from './site-copy.ts';
import { Workbench } from './workbench.ts';

describe('the packed extension, installed', function () {
  let packed: Packed;
  let site: SiteCopy;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    packed = await packExtension();
    site = await copySample('first-draft');
    served = await serveEditor(editor, { packages: [packed.file] });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(300_000);
    await page.goto(served.address({ folder: site.folder }));
    workbench = new Workbench(page);
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await served?.stop();
    await site?.remove();
    await packed?.remove();
  });

  it('is less than 2.2 MB', async () => {
    const { size } = await stat(packed.file);
    console.log(`      ${size} bytes`);
    assert.ok(size < 2_200_000, `${size} bytes`);
  });

  // What the editor waits for; the server is loaded by a process of its own.
  it('has less than 600 kB to load when it is activated', async () => {
    const { size } = await stat(join(dirname(packed.file), 'dist', 'extension.cjs'));
    assert.ok(size < 600_000, `${size} bytes`);
  });

  it('shows problems in a file that is opened from the explorer', async () => {
    const file = 'streams.site.yaml';
    await workbench.open(file);
    await workbench.squiggles().first().waitFor({ state: 'attached' });
    await workbench.command('Problems: Focus on Problems View');
    for (const { rule, words } of mistakes.filter(
      (mistake) => mistake.file === file && ['quantity', 'unknown-key'].includes(mistake.rule),
    )) {
      await workbench.filterProblems(rule);
      await workbench.click(workbench.problems(rule));
      await eventually(async () =>
        assert.ok((await workbench.squiggledWords()).includes(words), `${words} is squiggled`),
      );
    }
  });

  it('has a walkthrough whose first button writes a new site, which has no problems', async () => {
    const { page } = workbench;
    await workbench.command('Welcome: Open Walkthrough...');
    const pick = page.locator('.quick-input-widget:visible');
    await workbench.click(pick.locator('.monaco-list-row').filter({ hasText: 'Plan the video side of a house' }));
    await workbench.picture('walkthrough');
    await workbench.click(page.locator('.gettingStarted').getByRole('button', { name: 'New site' }));
    await workbench.enter(NEW_SITES.flat.title);
    await workbench.enter('Folder for the new site');
    await page.locator('.tab.active').filter({ hasText: NEW_SITE_FILE }).waitFor();
    assert.equal(await readFile(join(site.folder, 'home', NEW_SITE_FILE), 'utf8'), NEW_SITES.flat.text(ownTimeZone()));
    await eventually(async () => assert.match(await workbench.languageStatus(), /Home: no problems/));
  });

  it('does not write a site where there is one', async () => {
    const input = workbench.page.locator('.quick-input-widget:visible');
    await workbench.command('Plumbline: New site');
    await workbench.enter(NEW_SITES.flat.title);
    await input.filter({ hasText: 'Folder for the new site' }).waitFor();
    await input.locator('input').fill('.');
    await input.filter({ hasText: 'is there already' }).waitFor();
    await workbench.page.keyboard.press('Escape');
  });
});
