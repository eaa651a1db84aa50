// The first steps of a new user, as a person takes them in a browser: the walkthrough from its first step to its last,
// what is filled in and what is left, and the report, which comes back with the window and can be read in each look.
import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, FrameLocator, Locator, Page } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { NEW_SITES, NEW_SITE_FILE } from '../../server/src/site/new-site/new-site.ts';
import { ownTimeZone } from '../../server/src/site/time-zone.ts';
import { launchBrowser } from './browser.ts';
import { faintTexts } from './contrast.ts';
import { eventually } from './eventually.ts';
import { editorAndBrowser } from './requirements.ts';
import { Workbench } from './workbench.ts';

/** Of the window. */
const [WIDTH, HEIGHT] = [1440, 900];

describe('the first steps, in a browser', function () {
  let folder: string;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    folder = join(await mkdtemp(join(tmpdir(), 'plumbline-first-steps-')), 'empty');
    await mkdir(folder);
    served = await serveEditor(editor, { extensions: [repository] });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: WIDTH, height: HEIGHT } });
    page.setDefaultTimeout(300_000);
    await page.goto(served.address({ folder }));
    workbench = new Workbench(page);
    await page.locator('.explorer-folders-view').waitFor();
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await served?.stop();
    if (folder !== undefined) await rm(join(folder, '..'), { recursive: true });
  });

  const pick = (): Locator => workbench.page.locator('.quick-input-widget:visible');
  const tab = (name: string): Locator => workbench.page.locator('.tab').filter({ hasText: name }).first();
  const file = (): Promise<string> => readFile(join(folder, NEW_SITE_FILE), 'utf8');

  /** A step of the walkthrough, opened, with its picture beside it; and whether it is done. */
  async function step(id: string): Promise<{ readonly button: Locator; readonly isDone: () => Promise<boolean> }> {
    await tab('Welcome').click();
    const own = workbench.page.locator(`.getting-started-step[data-step-id$="#${id}"]`);
    await own.waitFor();
    if ((await own.getAttribute('aria-expanded')) !== 'true') await own.dispatchEvent('click');
    await workbench.picture(`walkthrough ${id}`);
    return {
      button: own.locator('.monaco-button'),
      isDone: async () => (await own.locator('[role=checkbox]').getAttribute('aria-checked')) === 'true',
    };
  }

  it('begin with the walkthrough, whose first step writes a site that has no problems', async () => {
    await eventually(async () => {
      await command(workbench.page, 'Welcome: Open Walkthrough...');
      await pick().locator('input').fill('video side', { timeout: 8000 });
      await pick()
        .locator('.monaco-list-row')
        .filter({ hasText: 'Plan the video side' })
        .first()
        .click({ timeout: 8000 });
    }, 120);
    const { button, isDone } = await step('site');
    assert.equal(await isDone(), false);
    await button.click();
    await workbench.enter(NEW_SITES.flat.title);
    await workbench.enter('Folder for the new site');
    await tab(NEW_SITE_FILE).waitFor();
    assert.equal(await file(), NEW_SITES.flat.text(ownTimeZone()));
    await eventually(async () => assert.match(await workbench.languageStatus(), /Home: no problems/));
    assert.equal(await (await step('site')).isDone(), true);
  });

  it('go on to the figures at the ends of lines and the sum on hover', async () => {
    const { button, isDone } = await step('figures');
    assert.equal(await isDone(), false);
    await button.click();
    await workbench.enter(NEW_SITE_FILE);
    assert.equal(await (await step('figures')).isDone(), true);
    await tab(NEW_SITE_FILE).click();
    const lines = (await file()).split('\n');
    const stream = lines.indexOf('  gate:');
    await workbench.goTo(stream + 1, 4);
    await eventually(async () => {
      const shown = await workbench.page.locator('.editor-group-container.active .view-line').allInnerTexts();
      assert.ok(
        shown.some((line) => /gate:.*Mb\/s/.test(line.replaceAll('\u00a0', ' '))),
        'the stream has its rate beside it',
      );
    });
    await workbench.hoverAtCursor((text) => assert.match(text, /^[\d.]+ Mb\/s, at most [\d.]+ · reaches recorder/));
    await workbench.picture('first hover');
    await workbench.page.keyboard.press('Escape');
  });

  it('go on to a mistake, which is reported as the step says, and is put right', async () => {
    const { button, isDone } = await step('mistake');
    assert.equal(await isDone(), false);
    await button.click();
    await workbench.page.locator('.markers-panel').waitFor();
    assert.equal(await (await step('mistake')).isDone(), true);
    // The text of the step, at its place in the site.
    const said = await readFile(join(repository, 'client', 'walkthrough', 'mistake.md'), 'utf8');
    const wrong = /```yaml\n(.*)\n```/.exec(said)?.[1] ?? '';
    const right = wrong.replace('speed: 10 Mb/s', 'speed: 1 Gb/s');
    const lines = (await file()).split('\n');
    assert.ok(lines.includes(right), `the new site has ${right}`);
    await tab(NEW_SITE_FILE).click();
    await workbench.goTo(lines.indexOf(right) + 1, right.length + 1);
    await workbench.page.keyboard.press('Shift+Home');
    await workbench.page.keyboard.press('Shift+Home');
    await workbench.page.keyboard.insertText(wrong);
    // The cable is underlined, not the speed.
    await workbench.problems('recorder/eth runs at 10 Mb/s').first().waitFor();
    await eventually(async () => assert.deepEqual(await workbench.squiggledWords(), ['recorder']));
    await workbench.picture('first mistake');
    await workbench.focusEditor();
    await eventually(async () => {
      await workbench.page.keyboard.press('Control+Z');
      const shown = await workbench.page.locator('.view-line').allInnerTexts();
      assert.ok(shown.some((line) => line.replaceAll('\u00a0', ' ').trim() === right.trim()));
    });
    await workbench.problems('recorder/eth').first().waitFor({ state: 'detached' });
  });

  it('end with the settings, of which each has words', async () => {
    const { button, isDone } = await step('settings');
    assert.equal(await isDone(), false);
    await button.click();
    const settings = workbench.page.locator('.settings-editor');
    await settings.getByText('Show figures at the end of lines').waitFor();
    await workbench.picture('settings');
    await workbench.page.keyboard.press('Escape');
    await settings.waitFor({ state: 'detached' });
    assert.equal(await (await step('settings')).isDone(), true);
  });

  it('have what is `auto` filled in, with what is left and why, which leads there', async () => {
    const { page } = workbench;
    const before = await file();
    const written = before
      .replace('vlans:\n', 'vlans:\n  house: {id: 10, subnet: 192.168.10.0/24}\n')
      .replace('address: 192.168.20.32', 'address: auto')
      .replace('devices:\n', 'devices:\n  den-screen: {kind: display, address: auto}\n');
    await writeFile(join(folder, NEW_SITE_FILE), written);
    await tab(NEW_SITE_FILE).click();
    // Once the editor has what was written beside it: it is filled in once.
    await eventually(async () => {
      await workbench.goTo(1, 1);
      const lines = page.locator('.editor-group-container.active .view-line');
      await lines.filter({ hasText: 'house: {id: 10' }).waitFor({ timeout: 8000 });
    });
    await workbench.command('Plumbline: Fill in addresses');
    const toast = page.locator('.notification-toast').filter({ hasText: 'Filled in 1 address' });
    await toast.waitFor();
    assert.match(
      await toast.innerText(),
      /1 address is left as ‘auto’\. den-screen: no address, because its VLAN is not/,
    );
    await workbench.picture('filled in');
    await toast.getByRole('button', { name: 'Show' }).click();
    await pick().locator('.monaco-list-row').filter({ hasText: 'yard-cam: address 192.168.20.32 in video' }).waitFor();
    await pick().locator('.monaco-list-row').filter({ hasText: 'den-screen' }).click();
    const line = page.locator('.editor-group-container.active .active-line-number');
    const place = written.split('\n').findIndex((own) => own.includes('den-screen: '));
    await eventually(async () => assert.equal(Number(await line.first().innerText()), place + 1));
    await workbench.save();
    await eventually(async () =>
      assert.equal(await file(), written.replace(/(yard-cam.*address: )auto/, '$1192.168.20.32')),
    );
  });

  /** The report, as the active page. */
  function report(): FrameLocator {
    return workbench.page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');
  }

  // A browser may not have stored yet what was opened last when the window goes: then it is opened again.
  it('have a report that comes back with the window, where it was', async () => {
    const body = report().locator('body');
    const isAt = (place: number, seconds: number): Promise<void> =>
      eventually(async () => assert.equal(await body.evaluate(scrolled, undefined, { timeout: 5000 }), place), seconds);
    await eventually(async () => {
      await tab(NEW_SITE_FILE).click();
      await workbench.command('Plumbline: Show report');
      await report().locator('.verdict').waitFor();
      await body.evaluate((element) => element.ownerDocument.defaultView?.scrollTo(0, 300));
      await isAt(300, 20);
      const gone = workbench.page.waitForEvent('domcontentloaded');
      await workbench.command('Developer: Reload Window');
      await gone;
      await isAt(300, 20);
    }, 180);
    await workbench.page.locator('.tab[aria-label^="Report of Home"]').waitFor();
  });

  for (const theme of ['Light Modern', 'Dark Modern', 'Default High Contrast', 'Default High Contrast Light'])
    it(`have a report whose texts all can be read in ${theme}`, async () => {
      await mkdir(join(folder, '.vscode'), { recursive: true });
      await writeFile(join(folder, '.vscode', 'settings.json'), JSON.stringify({ 'workbench.colorTheme': theme }));
      const { page } = workbench;
      const ground = (of: Locator): Promise<string> =>
        of.evaluate((one) => one.ownerDocument.defaultView?.getComputedStyle(one).backgroundColor ?? '');
      const isLight = theme.includes('Light');
      await eventually(async () => {
        const editor = await ground(page.locator('.editor-group-container .monaco-editor-background').first());
        assert.equal(await ground(report().locator('body')), editor);
        assert.equal(Number(/\d+/.exec(editor)?.[0]) > 128, isLight, editor);
      });
      assert.deepEqual(await faintTexts(report().locator('body')), []);
      await workbench.picture(`first report ${theme}`);
    });

  it('have a report of which nothing is cut off at 200 % zoom', async () => {
    // As much room as the window has when everything in it is twice as large.
    await workbench.page.setViewportSize({ width: WIDTH / 2, height: HEIGHT / 2 });
    const cut = await report()
      .locator('body')
      .evaluate((body) => {
        const view = body.ownerDocument.defaultView;
        const root = body.ownerDocument.documentElement;
        const hidden = [...body.querySelectorAll('*')].filter(
          (one) =>
            one.scrollWidth > one.clientWidth + 1 &&
            ['hidden', 'clip'].includes(view?.getComputedStyle(one).overflowX ?? ''),
        );
        return [
          ...(root.scrollWidth > root.clientWidth + 1 ? [`the page: ${root.scrollWidth} of ${root.clientWidth}`] : []),
          ...hidden.map((one) => `${one.tagName} ${one.className}`),
        ];
      });
    await workbench.picture('first report zoomed');
    assert.deepEqual(cut, []);
  });
});

function scrolled(body: {
  readonly ownerDocument: { readonly defaultView: { readonly scrollY: number } | null };
}): number {
  return body.ownerDocument.defaultView?.scrollY ?? 0;
}

/** Runs a command in a window that has just opened, and may not know it yet. */
async function command(page: Page, title: string): Promise<void> {
  await eventually(async () => {
    await page.keyboard.press('Escape');
    await page.keyboard.press('F1');
    const palette = page.locator('.quick-input-widget:visible');
    await palette.locator('input').fill(`>${title}`, { timeout: 5000 });
    await palette.locator('.monaco-list-row').filter({ hasText: title }).first().click({ timeout: 5000 });
  });
}
