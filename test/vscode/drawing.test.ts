// A drawing beside the text, as a person meets it in a browser: by mouse and by keyboard, in light, dark and contrast.
import assert from 'node:assert/strict';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, FrameLocator, Locator } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { planOf } from '../../server/src/plan.ts';
import { contrast } from '../draw/contrast.ts';
import { picture } from '../draw/picture.ts';
import { launchBrowser } from './browser.ts';
import { eventually } from './eventually.ts';
import { editorAndBrowser } from './requirements.ts';
import { type SiteCopy, copySample } from './site-copy.ts';
import { Workbench } from './workbench.ts';

describe('a drawing beside the text, in a browser', function () {
  let site: SiteCopy;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    site = await copySample('first-draft');
    await mkdir(join(site.folder, '.vscode'));
    await choose('Light Modern');
    served = await serveEditor(editor, { extensions: [repository] });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: 1500, height: 800 } });
    page.setDefaultTimeout(60_000);
    await page.goto(served.address({ folder: site.folder }));
    workbench = new Workbench(page);
    await workbench.open('devices.site.yaml');
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

  function inPage(): FrameLocator {
    return workbench.page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');
  }

  function thing(at: string): Locator {
    return inPage().locator(`.drawing [data-at="${at}"]`).first();
  }

  const focused = (): Promise<string> =>
    inPage()
      .locator('body')
      .evaluate((body) => body.ownerDocument.activeElement?.getAttribute('data-at') ?? '');

  async function drawAll(kind: string): Promise<void> {
    const { page } = workbench;
    await page.locator('.tab').filter({ hasText: 'devices.site.yaml' }).first().click();
    await workbench.command('Plumbline: Draw');
    const pick = page.locator('.quick-input-widget:visible');
    await pick.locator('input').fill(kind);
    await workbench.click(pick.locator('.monaco-list-row').first());
    await pick.locator('.monaco-list-row').filter({ hasText: /^All/ }).first().waitFor();
    await workbench.click(pick.locator('.monaco-list-row').first());
  }

  it('is the one that the command line draws', async () => {
    await drawAll('network');
    await thing('core/16').waitFor();
    const printed = picture(svgFile(networkPicture.draw(planOf(readSite(site.folder).folder.site()), '', USUAL)));
    const shown = await inPage()
      .locator('.drawing [data-at]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    assert.deepEqual(
      shown,
      printed.things.map(({ label }) => label),
    );
  });

  it('leads from a thing to its place by mouse, and marks the thing that the cursor is at', async () => {
    await thing('stable/3').locator('text').nth(1).click();
    const line = workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(site.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () =>
      assert.match(devices.split('\n')[Number(await line.first().innerText()) - 1] ?? '', /^ +1-6: /),
    );
    // One key declares six ports: the first of them is the one that is marked.
    await eventually(async () => assert.match((await thing('stable/1').getAttribute('class')) ?? '', /here/));
    const at = devices.split('\n').findIndex((text) => /^ {2}gate-cam:/.test(text));
    await workbench.goTo(at + 1, 5);
    // A camera is at a port of its switch.
    await eventually(async () => assert.match((await thing('core/1').getAttribute('class')) ?? '', /here/));
  });

  it('is one stop of the tab key, and arrows lead to each thing once', async () => {
    const stops = inPage().locator('.drawing [tabindex="0"]');
    assert.equal(await stops.count(), 1);
    await stops.first().focus();
    await workbench.page.keyboard.press('Home');
    const all = await inPage()
      .locator('.drawing [data-at]')
      .evaluateAll((things) => things.map((one) => one.getAttribute('data-at') ?? ''));
    const walked = [await focused()];
    while (walked.length < all.length) {
      await workbench.page.keyboard.press('ArrowDown');
      walked.push(await focused());
    }
    assert.deepEqual(walked, all);
    await workbench.page.keyboard.press('ArrowLeft');
    assert.equal(await focused(), all.at(-2));
    assert.equal(await stops.count(), 1);
    await workbench.page.keyboard.press('Home');
    assert.equal(await focused(), 'core');
  });

  it('shows what has the focus, and leads there by Enter', async () => {
    const stroke = (): Promise<string> =>
      thing('core')
        .locator('rect')
        .first()
        .evaluate((rect) => rect.ownerDocument.defaultView?.getComputedStyle(rect).strokeWidth ?? '');
    assert.equal(await stroke(), '3px');
    await workbench.page.keyboard.press('Enter');
    const line = workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(site.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () =>
      assert.match(devices.split('\n')[Number(await line.first().innerText()) - 1] ?? '', /^ {2}core:/),
    );
  });

  it('follows an edit, and keeps the focus and where it is scrolled to', async () => {
    await thing('stable/2').focus();
    const scrolled = (): Promise<number> =>
      inPage()
        .locator('body')
        .evaluate((body) => body.ownerDocument.defaultView?.scrollY ?? 0);
    const before = await scrolled();
    const file = join(site.folder, 'devices.site.yaml');
    const text = await readFile(file, 'utf8');
    await writeFile(file, `${text}  swallow: {kind: camera, address: 192.168.20.99}\n`);
    await thing('swallow').waitFor();
    assert.equal(await focused(), 'stable/2');
    assert.equal(await scrolled(), before);
  });

  for (const theme of ['Light Modern', 'Dark Modern', 'Default High Contrast', 'Default High Contrast Light'])
    it(`can be read in ${theme}`, async () => {
      await choose(theme);
      const colour = (of: Locator, part: 'fill' | 'stroke' | 'backgroundColor'): Promise<string> =>
        of.evaluate((one, name) => one.ownerDocument.defaultView?.getComputedStyle(one)[name] ?? '', part);
      await eventually(async () => {
        const editor = workbench.page.locator('.editor-group-container .monaco-editor-background').first();
        const paper = await colour(inPage().locator('.drawing'), 'backgroundColor');
        assert.equal(paper, await colour(editor, 'backgroundColor'));
        for (const at of ['core', 'stable', 'core/1']) {
          for (const text of await thing(at).locator('text').all())
            assert.ok(
              contrast(await colour(text, 'fill'), await colour(thing('core').locator('rect').first(), 'fill')) >= 4.5,
              at,
            );
        }
        assert.ok(contrast(await colour(thing('core').locator('rect').first(), 'stroke'), paper) >= 3);
        for (const line of await inPage().locator('.drawing path').all())
          assert.ok(contrast(await colour(line, 'stroke'), paper) >= 3);
      });
      await workbench.picture(`drawing ${theme}`);
    });
});
