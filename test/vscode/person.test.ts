// `npm start` as a person meets it: the editor opened in a browser, on a copy of samples/first-draft.
// A person looks at the pictures in dist/screenshots, too.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { mistakes } from '../first-draft.ts';
import { launchBrowser } from './browser.ts';
import { addressClash, uplink } from './first-draft.ts';
import { showsRate } from './rates.ts';
import { reportedPeaks } from './report.ts';
import { editorAndBrowser } from './requirements.ts';
import { copySample } from './site-copy.ts';
import type { SiteCopy } from './site-copy.ts';
import { eventually } from './eventually.ts';
import { start } from './start.ts';
import type { Started } from './start.ts';
import { Workbench } from './workbench.ts';

describe('npm start, as a person drives it in a browser', function () {
  let site: SiteCopy;
  let started: Started;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { chromium } = await editorAndBrowser(this);
    site = await copySample('first-draft');
    started = await start(site.folder);
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
    await site?.remove();
  });

  it('shows a file already open, with squiggles in it and its problems below', async () => {
    await workbench.squiggles().first().waitFor({ state: 'attached' });
    await workbench.problems('plumbline').first().waitFor();
    await workbench.picture('1-opened');
  });

  it('lists the problems of a file that is opened from the explorer, and squiggles their words', async () => {
    const file = 'streams.site.yaml';
    await workbench.open(file);
    const expected = mistakes.filter((mistake) => mistake.file === file);
    for (const { rule, words } of expected) {
      await workbench.filterProblems(rule);
      const alike = expected.filter((mistake) => mistake.rule === rule);
      const index = alike.findIndex((mistake) => mistake.words === words);
      await workbench.click(workbench.problems(rule).nth(index));
      await eventually(async () =>
        assert.ok((await workbench.squiggledWords()).includes(words), `${words} is squiggled`),
      );
    }
    await workbench.picture('2-problems');
    await workbench.filterProblems('');
  });

  it('shows the load of an uplink when the mouse rests on it', async () => {
    await workbench.open(uplink.file);
    await goTo(uplink.file, uplink.from, uplink.line);
    const peaks = reportedPeaks(site.folder, uplink.from, uplink.to);
    await workbench.hoverAtCursor((text) => {
      for (const rate of [peaks.forward, peaks.backward])
        assert.ok(showsRate(text, rate), `${rate} bit/s in:\n${text}`);
    });
    await workbench.picture('3-hover');
    await workbench.page.keyboard.press('Escape');
  });

  it('puts an address clash right from the light bulb, and saves it to disk', async () => {
    const { file, address, line, rule, fix } = addressClash;
    const path = join(site.folder, file);
    // The editor may save by itself as soon as it is put right.
    const before = await readFile(path, 'utf8');
    await workbench.open(file);
    const clashes = workbench.problems(rule);
    await workbench.filterProblems(rule);
    await eventually(async () => assert.equal(await clashes.count(), 2, 'one at each of the two cameras'));
    await goTo(file, address, line);
    const offers = await workbench.lightBulb();
    await workbench.picture('4-light-bulb');
    await workbench.click(offers.filter({ hasText: fix }).first());
    await eventually(async () => assert.equal(await clashes.count(), 0));
    await workbench.filterProblems('');
    await workbench.focusEditor();
    await workbench.save();
    await workbench.page.locator('.tab.active:not(.dirty)').filter({ hasText: file }).waitFor();
    await workbench.problems('plumbline').first().waitFor();
    await workbench.picture('5-fixed-and-saved');
    const after = await readFile(path, 'utf8');
    assert.notEqual(after, before);
    const changed = after.split('\n').filter((text, index) => text !== before.split('\n')[index]);
    assert.equal(changed.length, 1, 'one line is changed, and the rest is as it was');
  });

  it('tells how the site is beside the name of the language', async () => {
    const severities = mistakes.map(({ severity }) => severity);
    const left = (severity: string): number => severities.filter((other) => other === severity).length;
    const clash = 2; // the address clash, reported at both cameras and put right above
    await eventually(async () => {
      const told = await workbench.languageStatus();
      assert.match(told, new RegExp(`Harrow Lane: ${left('error') - clash} errors, ${left('warning')} warnings`));
    });
    await workbench.picture('6-status');
  });

  it('answers nobody without the secret, nor by another name, nor to another page', async () => {
    const { origin, port } = new URL(started.address);
    for (const path of ['/', '/healthz', '/?secret=x', '/vscode-remote-resource?path=/etc/hostname'])
      assert.equal((await fetch(`${origin}${path}`)).status, 403, path);
    assert.equal((await fetch(started.address.replace('127.0.0.1', 'localhost'))).status, 403, port);
    assert.equal((await fetch(started.address, { headers: { origin: 'http://example.org' } })).status, 403);
    assert.equal((await fetch(started.address)).status, 200);
  });

  it('has popped up no message', async () => {
    assert.equal(await workbench.page.locator('.notification-toast').count(), 0);
  });

  it('ends with Ctrl+C, and leaves nothing running', async () => {
    await browser.close();
    assert.equal(await started.interrupt(), 0);
    await assert.rejects(fetch(started.address), 'nothing answers any more');
  });

  /** Puts the cursor on a word, in the line of a file that holds a text. */
  async function goTo(file: string, word: string, holds = word): Promise<void> {
    const lines = (await readFile(join(site.folder, file), 'utf8')).split('\n');
    const index = lines.findIndex((text) => text.includes(holds));
    assert.ok(index >= 0, `${file} holds ${JSON.stringify(holds)}`);
    await workbench.goTo(index + 1, (lines[index] ?? '').indexOf(word) + 1);
  }
});
