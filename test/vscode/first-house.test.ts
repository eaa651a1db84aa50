// From an empty folder to a house of two switches, five cameras, a server with two cards and two screens: by keyboard
// alone, by completion, in the real editor, until there is no problem.
import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { ownTimeZone } from '../../server/src/site/time-zone.ts';
import { launchBrowser } from './browser.ts';
import { eventually } from './eventually.ts';
import { editorAndBrowser } from './requirements.ts';
import { type Started, start } from './start.ts';
import { Workbench } from './workbench.ts';

describe('a house that is written by keyboard, in a folder that was empty', function () {
  let parent = '';
  let folder = '';
  let started: Started;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { chromium } = await editorAndBrowser(this);
    parent = await mkdtemp(join(tmpdir(), 'plumbline-house-'));
    folder = join(parent, 'house');
    await mkdir(folder);
    started = await start(folder);
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(300_000);
    await page.goto(started.address);
    workbench = new Workbench(page);
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await started?.interrupt();
    if (parent !== '') await rm(parent, { recursive: true, force: true });
  });

  const press = (key: string): Promise<void> => workbench.page.keyboard.press(key);
  const type = (text: string): Promise<void> => workbench.page.keyboard.type(text, { delay: 20 });

  /** Takes an offer by the keys of the list, which is opened where it is not there. */
  async function take(label: string): Promise<void> {
    const list = workbench.page.locator('.suggest-widget.visible');
    const row = list.locator('.monaco-list-row');
    await eventually(async () => {
      if (!(await list.isVisible())) await press('Control+Space');
      await row
        .filter({ has: workbench.page.locator('.label-name', { hasText: exactly(label) }) })
        .first()
        .waitFor({ timeout: 4000 });
    });
    for (let tries = 0; tries < 40; tries++) {
      const focused = await row.and(workbench.page.locator('.focused')).locator('.label-name').innerText();
      if (exactly(label).test(focused.replaceAll('\u00a0', ' '))) {
        await press('Enter');
        await list.waitFor({ state: 'hidden', timeout: 4000 }).catch(() => undefined);
        return;
      }
      await press('ArrowDown');
    }
    assert.fail(`${label} is in the list`);
  }

  /** On a new line below, in the column of the item above. */
  async function newLine(): Promise<void> {
    await press('Escape');
    await press('Escape');
    await press('End');
    await press('Enter');
  }

  /** In the first column. */
  async function newSection(name: string): Promise<void> {
    await newLine();
    await unindent();
    await take(name);
  }

  /** @param name typed over the one that is given, at the first stop */
  async function item(label: string, name?: string): Promise<void> {
    await take(label);
    if (name !== undefined) await type(name);
  }

  const text = (): Promise<string> => readFile(join(folder, 'home.site.yaml'), 'utf8');

  it('is offered a new site, and begins its own', async () => {
    const offer = workbench.page.locator('.notification-toast').filter({ hasText: 'This folder has no site yet.' });
    await offer.getByRole('button', { name: 'New site' }).waitFor();
    await workbench.picture('house-1-empty');
    await workbench.command('New Untitled Text File');
    await press('Control+S');
    const box = workbench.page.locator('.quick-input-widget:visible input[type=text]');
    await eventually(async () => assert.match(await box.inputValue(), /house\/Untitled/));
    await press('Control+A');
    await type(join(folder, 'home.site.yaml'));
    await eventually(async () => assert.equal(await box.inputValue(), join(folder, 'home.site.yaml')));
    // The dialog looks at each path on its way, and takes no Enter meanwhile.
    const tab = workbench.page.locator('.tab.active').filter({ hasText: 'home.site.yaml' });
    await eventually(async () => {
      if (await box.isVisible()) await press('Enter');
      await tab.waitFor({ timeout: 4000 });
    });
  });

  it('says what it is called and where it is', async () => {
    await workbench.focusEditor();
    await take('site');
    await take('name');
    await type('Home');
    await newLine();
    await take('timezone');
    await take(ownTimeZone());
  });

  it('has its VLANs and devices', async () => {
    await newSection('vlans');
    await item('VLAN for video');
    await newLine();
    await item('VLAN');
    await newSection('devices');
    await item('switch', 'core');
    await newLineAfterBlock();
    await item('switch', 'stable');
    await newLineAfterBlock();
    for (const name of ['gate', 'yard', 'paddock', 'barn', 'porch']) {
      await item('camera', `${name}-cam`);
      await press('Tab'); // keeps the name, although the text has similar words
      await newLine();
    }
    await item('server with two network cards', 'recorder');
    await newLineAfterBlock();
    await item('display', 'hall-screen');
    await newLine();
    await item('display', 'stable-screen');
    await workbench.picture('house-2-devices');
  });

  it('has its cables, with lengths typed', async () => {
    await newSection('cables');
    for (let cable = 0; cable < 10; cable++) {
      if (cable > 0) await newLine();
      await take('cable');
      await type('12 m');
    }
    await workbench.picture('house-3-cables');
  });

  it('has its streams and recordings', async () => {
    await newSection('streams');
    for (let camera = 0; camera < 5; camera++) {
      await item('stream of a camera');
      await newLineAfterBlock();
    }
    for (let live = 0; live < 2; live++) {
      await item('stream re-sent as multicast');
      await newLineAfterBlock();
    }
    await unindent();
    await take('volumes');
    await item('volume');
    await newSection('recordings');
    for (let camera = 0; camera < 5; camera++) {
      await item('recording');
      if (camera < 4) await newLineAfterBlock();
    }
    await workbench.picture('house-4-recordings');
  });

  it('has no problem once its querier is named, and is the house that was meant', async () => {
    await press('Escape');
    await press('Escape');
    await workbench.save();
    const lines = await eventually(async () => {
      const saved = (await text()).split('\n');
      assert.ok(
        saved.some((line) => line === 'recordings:'),
        'it is saved',
      );
      return saved;
    });
    const line = lines.findIndex((own) => own.startsWith('  video: {'));
    await workbench.goTo(line + 1, (lines[line] ?? '').length);
    await type(', ');
    await take('querier');
    await take('core');
    await press('Escape');
    await workbench.save();
    await eventually(async () => assert.match(await workbench.languageStatus(), /Home: no problems/));
    await workbench.picture('house-5-done');
    await workbench.page.locator('.tab.active:not(.dirty)').filter({ hasText: 'home.site.yaml' }).waitFor();
    const written = await text();
    const kinds = (kind: string): number => written.split(`kind: ${kind}`).length - 1;
    assert.deepEqual(['switch', 'camera', 'server', 'display'].map(kinds), [2, 5, 1, 2]);
    assert.equal(written.split('length: 12 m').length - 1, 10);
    assert.match(written, /querier: core/);
  });

  it('goes on inside a key by Enter', async () => {
    await press('Control+End');
    await press('Enter');
    await unindent();
    await type('traffic:');
    await workbench.page.locator('.suggest-widget.visible').waitFor({ state: 'hidden' });
    await press('Enter');
    await isInColumn(3);
    await press('Escape');
    await press('Backspace');
    await press('Backspace');
  });

  it('gets an item into its column by Control+Space, where the cursor is in another', async () => {
    const cables = async (): Promise<number[]> =>
      (await text()).split('\n').flatMap((line, index) => (line.startsWith('  - {from:') ? [index + 1] : []));
    const last = (await cables()).at(-1) ?? 0;
    await workbench.goTo(last, 200);
    await newLine();
    await isInColumn(3);
    await type(' ');
    await isInColumn(4);
    await take('cable');
    await workbench.save();
    await eventually(async () => assert.equal((await cables()).at(-1), last + 1));
  });

  /** @param column from 1, as in the status bar */
  async function isInColumn(column: number): Promise<void> {
    const place = workbench.page.locator('[id="status.editor.selection"]');
    await eventually(async () => assert.match(await place.innerText(), new RegExp(`Col ${column}$`)));
  }

  /** Below an item of several lines, of which the cursor may be in any. */
  async function newLineAfterBlock(): Promise<void> {
    await press('Escape');
    await press('Escape');
    await press('Control+End');
    await press('Enter');
    await unindent();
    await type('  ');
  }

  async function unindent(): Promise<void> {
    await closeList();
    for (let step = 0; step < 4; step++) await press('Shift+Tab');
    await closeList();
  }

  /** A list that was requested before the cursor moved may still open, so one is requested again and closed. */
  async function closeList(): Promise<void> {
    const list = workbench.page.locator('.suggest-widget.visible');
    await press('Control+Space');
    await list.waitFor();
    await press('Escape');
    await list.waitFor({ state: 'hidden' });
  }
});

function exactly(label: string): RegExp {
  return new RegExp(`^${label.replace(/[/+]/g, '\\$&')}$`);
}
