// Pages beside the text, as a person meets them in a browser: the report, the pages of rules, pages for paper.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { networkInReport } from '../../server/src/draw/in-report.ts';
import { outlookOf } from '../../server/src/outlook/outlook.ts';
import { outlookHtml } from '../../server/src/outlook/page.ts';
import { reportHtml } from '../../server/src/report/html.ts';
import { asText } from '../../server/src/report/page/cells.ts';
import { planOf } from '../../server/src/plan.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { mistakes } from '../first-draft.ts';
import { eventually } from './eventually.ts';
import { inBrowser } from './in-browser.ts';

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

describe('reading beside the text, in a browser', () => {
  const editor = inBrowser({ file: 'streams.site.yaml', theme: 'Light 2026', width: 1280 });
  const { inPage, chooseTheme } = editor;

  function words(text: string): Locator {
    const line = editor.workbench.page
      .locator('.editor-group-container.active .view-line')
      .filter({ hasText: text })
      .first();
    return line.locator('span span');
  }

  const colourOf = (word: Locator): Promise<string> =>
    word.evaluate((element) => element.ownerDocument.defaultView?.getComputedStyle(element).color ?? '');

  it('has one colour for all references in each theme, and none of a text or a key', async () => {
    const text = await readFile(join(editor.folder, 'streams.site.yaml'), 'utf8');
    await editor.workbench.goTo(text.slice(0, text.indexOf('carries: gate')).split('\n').length, 1);
    for (const theme of THEMES) {
      await chooseTheme(theme);
      await eventually(async () => {
        const stream = await colourOf(words('carries:').last());
        const device = await colourOf(words('source:').last());
        const plain = await colourOf(words('transport:').last());
        const key = await colourOf(words('carries:').filter({ hasText: 'carries' }).first());
        assert.equal(stream, device, theme);
        assert.ok(stream !== key && stream !== plain, `${theme}: ${stream}`);
      });
    }
    await chooseTheme('Light Modern');
  });

  it('shows the report from the button of the editor, with the verdict first', async () => {
    await editor.workbench.click(editor.workbench.page.locator('.editor-actions [aria-label*="Show report"]').first());
    const count = (severity: string): number => mistakes.filter((mistake) => mistake.severity === severity).length;
    await eventually(async () =>
      assert.equal(
        await inPage().locator('.verdict').innerText(),
        `✗ ${count('error')} errors, ${count('warning')} warnings`,
      ),
    );
    // The same page as the command line prints.
    const plan = planOf(readSite(editor.folder).folder.site());
    const printed = reportHtml(plan, [], asText, networkInReport(plan, asText), outlookHtml(outlookOf(plan), asText));
    const heads = [...printed.matchAll(/<h2>(.*?)</g)].map(([, head]) => head);
    const shown = await inPage().locator('h2').allInnerTexts();
    assert.deepEqual(
      shown.filter((head) => head !== 'Errors and warnings'),
      heads,
    );
    await editor.workbench.picture('report-light');
  });

  it('follows an edit, and keeps the place that it is scrolled to', async () => {
    const scrolled = (): Promise<number> =>
      inPage()
        .locator('body')
        .evaluate((body) => body.ownerDocument.defaultView?.scrollY ?? 0);
    await inPage()
      .locator('body')
      .evaluate((body) => body.ownerDocument.defaultView?.scrollTo(0, 900));
    const text = await readFile(join(editor.folder, 'streams.site.yaml'), 'utf8');
    await editor.workbench.page.locator('.tab').filter({ hasText: 'streams.site.yaml' }).first().click();
    await editor.workbench.goTo(text.split('\n').length, 1);
    await editor.workbench.page.keyboard.type('  sparrow: {}\n');
    await inPage().locator('button.name').filter({ hasText: 'sparrow' }).first().waitFor({ state: 'attached' });
    assert.equal(await scrolled(), 900);
  });

  it('leads from a name to its place', async () => {
    await inPage().locator('button.name').filter({ hasText: 'stable/9' }).first().click();
    await editor.workbench.page.locator('.tab.active').filter({ hasText: 'devices.site.yaml' }).waitFor();
    const line = editor.workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(editor.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () => {
      const number = Number(await line.first().innerText());
      assert.match(devices.split('\n')[number - 1] ?? '', /^ +9: /);
    });
  });

  it('is in the status bar', async () => {
    const { page } = editor.workbench;
    await page.locator('.tab[aria-label^="Report of"]').hover();
    await page.locator('.tab[aria-label^="Report of"] .tab-actions .action-label').click();
    await page.locator('iframe.webview').first().waitFor({ state: 'detached' });
    const item = page.locator('[id*="plumbline.site"]');
    await eventually(async () => assert.match(await item.innerText(), /Harrow Lane: \d+ errors, \d+ warnings/));
    await editor.workbench.click(item);
    await inPage().locator('.verdict').waitFor();
  });

  for (const theme of ['Dark Modern', 'Default High Contrast'])
    it(`has the colours of ${theme}`, async () => {
      await chooseTheme(theme);
      const colour = (of: Locator, part: 'color' | 'backgroundColor'): Promise<string> =>
        of.evaluate((one, name) => one.ownerDocument.defaultView?.getComputedStyle(one)[name] ?? '', part);
      await eventually(async () => {
        const background = editor.workbench.page.locator('.editor-group-container .monaco-editor-background').first();
        const body = inPage().locator('body');
        assert.equal(await colour(body, 'backgroundColor'), await colour(background, 'backgroundColor'));
        const light = (await colour(inPage().locator('.verdict'), 'color')).match(/\d+/g)?.map(Number) ?? [];
        assert.ok(
          light.slice(0, 3).every((part) => part > 150),
          light.join(),
        );
      });
      await editor.workbench.picture(`report ${theme}`);
    });

  it('is handed to the browser for printing', async () => {
    await inPage().locator('h1').click();
    const download = editor.workbench.page.waitForEvent('download');
    await editor.workbench.click(editor.workbench.page.locator('.editor-actions [aria-label*="Print"]').first());
    const file = await download;
    assert.equal(file.suggestedFilename(), 'Report-of-Harrow-Lane.html');
    const path = join(editor.folder, 'printed.html');
    await file.saveAs(path);
    assert.match(await readFile(path, 'utf8'), /^<!doctype html>[^]*<h1>Harrow Lane<\/h1>/);
  });

  it('shows the page of a rule as it reads, beside the text', async () => {
    await editor.workbench.command('Problems: Focus on Problems View');
    await editor.workbench.filterProblems('poe-budget');
    await editor.workbench.problems('poe-budget').first().getByText('poe-budget', { exact: true }).click();
    await editor.workbench.page.locator('.tab.active').filter({ hasText: 'Preview poe-budget.md' }).waitFor();
    await eventually(async () => assert.equal(await inPage().locator('h1').first().innerText(), 'poe-budget'));
    await editor.workbench.filterProblems('');
    await editor.workbench.picture('rule page');
  });

  it('shows a page for paper as a page, and saves it beside the site', async () => {
    const { page } = editor.workbench;
    await page.locator('.tab').filter({ hasText: 'streams.site.yaml' }).first().click();
    await editor.workbench.command('Plumbline: Make files for the equipment');
    const pick = page.locator('.quick-input-widget:visible');
    await pick.locator('input').fill('patch');
    await editor.workbench.click(pick.locator('.monaco-list-row').first());
    await page
      .locator('.tab')
      .filter({ hasText: /^patch-schedule$/ })
      .waitFor();
    await page.keyboard.press('Escape');
    await eventually(async () => assert.match(await inPage().locator('h1').innerText(), /^Patch schedule/));
    await inPage().locator('h1').click();
    await editor.workbench.picture('made page');
    await editor.workbench.click(page.locator('.editor-actions [aria-label*="Save made"]').last());
    await editor.workbench.click(pick.locator('.monaco-list-row').filter({ hasText: 'made' }).first());
    await eventually(async () =>
      assert.deepEqual((await readdir(join(editor.folder, 'made'))).sort(), [
        'patch-schedule.csv',
        'patch-schedule.html',
      ]),
    );
  });

  const compared = (text: string | RegExp): Promise<void> =>
    eventually(async () => assert.match(await inPage().locator('body').innerText(), new RegExp(text)));
  const compare = (): Promise<void> => editor.workbench.command('Plumbline: Compare with the last commit');
  const git = (...words: string[]): void => {
    execFileSync('git', ['-C', editor.folder, '-c', 'user.name=t', '-c', 'user.email=t@localhost', ...words]);
  };

  it('says that there is no repository to compare with, and that a site is in no commit yet', async () => {
    await editor.workbench.page.locator('.tab').filter({ hasText: 'streams.site.yaml' }).first().click();
    await editor.workbench.save();
    await compare();
    await compared('is in no repository of git');
    git('init', '-q');
    git('commit', '-q', '--allow-empty', '-m', 'empty');
    await compare();
    await compared(/holds no \*\.site\.yaml file/);
  });

  it('says that nothing differs from the last commit, then what an edit changes, and leads to its place', async () => {
    git('add', '.');
    git('commit', '-q', '-m', 'site');
    await compare();
    await compared('Nothing differs from the last commit');
    // A name that is another everywhere is the same device, known by its address.
    for (const name of await readdir(editor.folder)) {
      if (!name.endsWith('.site.yaml')) continue;
      const file = join(editor.folder, name);
      const text = await readFile(file, 'utf8');
      await writeFile(file, text.replaceAll('hayloft', 'loft').replace('poe-budget: 120 W', 'poe-budget: 121 W'));
    }
    await compared(/hayloft[\w-]*\s+loft/);
    await compared(/poe-budget\s+120 W\s+121 W/);
    await editor.workbench.picture('comparison');
    const row = inPage().locator('tr').filter({ hasText: 'poe-budget' }).filter({ hasText: '121 W' });
    await row.locator('button.name').filter({ hasText: 'stable' }).first().click();
    await editor.workbench.page.locator('.tab.active').filter({ hasText: 'devices.site.yaml' }).waitFor();
    git('commit', '-q', '-a', '-m', 'renamed');
    await compare();
    await compared('Nothing differs from the last commit');
  });
});
