// What one reads beside the text, as a person meets it in a browser: the report, the pages of rules, pages for paper.
import assert from 'node:assert/strict';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, FrameLocator, Locator } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { networkInReport } from '../../server/src/draw/in-report.ts';
import { reportHtml } from '../../server/src/report/html.ts';
import { asText } from '../../server/src/report/page/cells.ts';
import { planOf } from '../../server/src/plan.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { mistakes } from '../first-draft.ts';
import { launchBrowser } from './browser.ts';
import { eventually } from './eventually.ts';
import { editorAndBrowser } from './requirements.ts';
import { type SiteCopy, copySample } from './site-copy.ts';
import { Workbench } from './workbench.ts';

/** All that come with VS Code 1.139. */
const THEMES = [
  'Light 2026',
  'Dark 2026',
  'Dark+',
  'Dark Modern',
  'Light+',
  'Light Modern',
  'Visual Studio Dark',
  'Visual Studio Light',
  'Default High Contrast',
  'Default High Contrast Light',
];

describe('reading beside the text, in a browser', function () {
  let site: SiteCopy;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    site = await copySample('first-draft');
    await mkdir(join(site.folder, '.vscode'));
    await choose('Light 2026');
    served = await serveEditor(editor, { extensions: [repository] });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
    page.setDefaultTimeout(60_000);
    await page.goto(served.address({ folder: site.folder }));
    workbench = new Workbench(page);
    await workbench.open('streams.site.yaml');
    await workbench.squiggles().first().waitFor({ state: 'attached' });
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await served?.stop();
    await site?.remove();
  });

  function choose(theme: string): Promise<void> {
    const settings = { 'workbench.colorTheme': theme };
    return writeFile(join(site.folder, '.vscode', 'settings.json'), JSON.stringify(settings));
  }

  /** The page in front. */
  function inPage(): FrameLocator {
    return workbench.page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');
  }

  function words(text: string): Locator {
    const line = workbench.page.locator('.editor-group-container.active .view-line').filter({ hasText: text }).first();
    return line.locator('span span');
  }

  const colourOf = (word: Locator): Promise<string> =>
    word.evaluate((element) => element.ownerDocument.defaultView?.getComputedStyle(element).color ?? '');

  it('has one colour for all references in each theme, and none of a text or a key', async () => {
    const text = await readFile(join(site.folder, 'streams.site.yaml'), 'utf8');
    await workbench.goTo(text.slice(0, text.indexOf('carries: gate')).split('\n').length, 1);
    for (const theme of THEMES) {
      await choose(theme);
      await eventually(async () => {
        const stream = await colourOf(words('carries:').last());
        const device = await colourOf(words('source:').last());
        const plain = await colourOf(words('transport:').last());
        const key = await colourOf(words('carries:').filter({ hasText: 'carries' }).first());
        assert.equal(stream, device, theme);
        assert.ok(stream !== key && stream !== plain, `${theme}: ${stream}`);
      });
    }
    await choose('Light Modern');
  });

  it('shows the report from the button of the editor, with the verdict first', async () => {
    await workbench.click(workbench.page.locator('.editor-actions [aria-label*="Show report"]').first());
    const count = (severity: string): number => mistakes.filter((mistake) => mistake.severity === severity).length;
    await eventually(async () =>
      assert.equal(
        await inPage().locator('.verdict').innerText(),
        `✗ ${count('error')} errors, ${count('warning')} warnings`,
      ),
    );
    // The same page as the command line prints.
    const plan = planOf(readSite(site.folder).folder.site());
    const printed = reportHtml(plan, [], asText, networkInReport(plan, asText));
    const heads = [...printed.matchAll(/<h2>(.*?)</g)].map(([, head]) => head);
    const shown = await inPage().locator('h2').allInnerTexts();
    assert.deepEqual(
      shown.filter((head) => head !== 'Errors and warnings'),
      heads,
    );
    await workbench.picture('report-light');
  });

  it('follows an edit, and keeps the place that it is scrolled to', async () => {
    const scrolled = (): Promise<number> =>
      inPage()
        .locator('body')
        .evaluate((body) => body.ownerDocument.defaultView?.scrollY ?? 0);
    await inPage()
      .locator('body')
      .evaluate((body) => body.ownerDocument.defaultView?.scrollTo(0, 900));
    const text = await readFile(join(site.folder, 'streams.site.yaml'), 'utf8');
    await workbench.page.locator('.tab').filter({ hasText: 'streams.site.yaml' }).first().click();
    await workbench.goTo(text.split('\n').length, 1);
    await workbench.page.keyboard.type('  sparrow: {}\n');
    await inPage().locator('button.name').filter({ hasText: 'sparrow' }).first().waitFor({ state: 'attached' });
    assert.equal(await scrolled(), 900);
  });

  it('leads from a name to its place', async () => {
    await inPage().locator('button.name').filter({ hasText: 'stable/9' }).first().click();
    await workbench.page.locator('.tab.active').filter({ hasText: 'devices.site.yaml' }).waitFor();
    const line = workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(site.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () => {
      const number = Number(await line.first().innerText());
      assert.match(devices.split('\n')[number - 1] ?? '', /^ +9: /);
    });
  });

  it('is in the status bar', async () => {
    const { page } = workbench;
    await page.locator('.tab[aria-label^="Report of"]').hover();
    await page.locator('.tab[aria-label^="Report of"] .tab-actions .action-label').click();
    await page.locator('iframe.webview').first().waitFor({ state: 'detached' });
    const item = page.locator('[id*="plumbline.site"]');
    await eventually(async () => assert.match(await item.innerText(), /Harrow Lane: \d+ errors, \d+ warnings/));
    await workbench.click(item);
    await inPage().locator('.verdict').waitFor();
  });

  for (const theme of ['Dark Modern', 'Default High Contrast'])
    it(`has the colours of ${theme}`, async () => {
      await choose(theme);
      const colour = (of: Locator, part: 'color' | 'backgroundColor'): Promise<string> =>
        of.evaluate((one, name) => one.ownerDocument.defaultView?.getComputedStyle(one)[name] ?? '', part);
      await eventually(async () => {
        const editor = workbench.page.locator('.editor-group-container .monaco-editor-background').first();
        const body = inPage().locator('body');
        assert.equal(await colour(body, 'backgroundColor'), await colour(editor, 'backgroundColor'));
        const light = (await colour(inPage().locator('.verdict'), 'color')).match(/\d+/g)?.map(Number) ?? [];
        assert.ok(
          light.slice(0, 3).every((part) => part > 150),
          light.join(),
        );
      });
      await workbench.picture(`report ${theme}`);
    });

  it('is handed to the browser for printing', async () => {
    await inPage().locator('h1').click();
    const download = workbench.page.waitForEvent('download');
    await workbench.click(workbench.page.locator('.editor-actions [aria-label*="Print"]').first());
    const file = await download;
    assert.equal(file.suggestedFilename(), 'Report-of-Harrow-Lane.html');
    const path = join(site.folder, 'printed.html');
    await file.saveAs(path);
    assert.match(await readFile(path, 'utf8'), /^<!doctype html>[^]*<h1>Harrow Lane<\/h1>/);
  });

  it('shows the page of a rule as it reads, beside the text', async () => {
    await workbench.command('Problems: Focus on Problems View');
    await workbench.filterProblems('poe-budget');
    await workbench.problems('poe-budget').first().getByText('poe-budget', { exact: true }).click();
    await workbench.page.locator('.tab.active').filter({ hasText: 'Preview poe-budget.md' }).waitFor();
    await eventually(async () => assert.equal(await inPage().locator('h1').first().innerText(), 'poe-budget'));
    await workbench.filterProblems('');
    await workbench.picture('rule page');
  });

  it('shows a page for paper as a page, and saves it beside the site', async () => {
    const { page } = workbench;
    await page.locator('.tab').filter({ hasText: 'streams.site.yaml' }).first().click();
    await workbench.command('Plumbline: Make files for the equipment');
    const pick = page.locator('.quick-input-widget:visible');
    await pick.locator('input').fill('patch');
    await workbench.click(pick.locator('.monaco-list-row').first());
    await page
      .locator('.tab')
      .filter({ hasText: /^patch-schedule$/ })
      .waitFor();
    await page.keyboard.press('Escape');
    await eventually(async () => assert.match(await inPage().locator('h1').innerText(), /^Patch schedule/));
    await inPage().locator('h1').click();
    await workbench.picture('made page');
    await workbench.click(page.locator('.editor-actions [aria-label*="Save made"]').last());
    await workbench.click(pick.locator('.monaco-list-row').filter({ hasText: 'made' }).first());
    await eventually(async () =>
      assert.deepEqual((await readdir(join(site.folder, 'made'))).sort(), [
        'patch-schedule.csv',
        'patch-schedule.html',
      ]),
    );
  });
});
